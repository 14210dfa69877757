import { describe, expect, it } from "vitest";
import { lastLayerOrbits } from "../../../core/cases/last-layer-orbits";
import {
  LAST_LAYER_RULES,
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import type { LookPart } from "../../../core/cases/last-layer-look";
import {
  type Aspect,
  classSizes,
  topStates,
} from "../../oracles/last-layer-classes";
import { LAST_LAYER_ORIENTATIONS } from "../../reference/published-values";

const count = (stage: LastLayerStage) => lastLayerOrbits(stage).orbits.length;

/** How many cases, the solved one among them, have each chance: "1 in n" to number. */
function chances(stage: LastLayerStage): ReadonlyMap<number, number> {
  const { orbits, looks, solvedLooks } = lastLayerOrbits(stage);
  const tally = new Map<number, number>();
  for (const size of [solvedLooks, ...orbits.map((orbit) => orbit.size)])
    tally.set(looks / size, (tally.get(looks / size) ?? 0) + 1);
  return tally;
}

describe("the last layer's cases, without the solved one", () => {
  // Source: check-values, "Cases": 57 and 21 common practice; the rest computed.
  it.each([
    ["last-layer-turned", 57],
    ["last-layer-placed", 21],
    ["last-layer-corners", 42],
    ["last-layer-but-edges-turned", 493],
    ["last-layer-whole", 3915],
  ] as const)("of %s are %i, as published", (stage, published) => {
    expect(count(stage)).toBe(published);
  });

  // Source: check-values, "Cases": states of the last layer, and those that
  // show each part by itself.
  it("gather 216 ways to be turned, 288 to be placed, and 62,208 states", () => {
    expect(lastLayerOrbits("last-layer-turned").looks).toBe(216);
    expect(lastLayerOrbits("last-layer-placed").looks).toBe(288);
    expect(lastLayerOrbits("last-layer-whole").looks).toBe(62_208);
  });

  // Source: check-values, "Cases" (computed): 51 of 1/54, 5 of 1/108, 2 of 1/216.
  it("of turning have the chances 1/54, 1/108 and 1/216", () => {
    expect(chances("last-layer-turned")).toEqual(
      new Map([
        [54, 51],
        [108, 5],
        [216, 2],
      ]),
    );
  });

  // Source: check-values, "Cases" (computed): 16 of 1/18, 2 of 1/36, 4 of 1/72.
  it("of placing have the chances 1/18, 1/36 and 1/72", () => {
    expect(chances("last-layer-placed")).toEqual(
      new Map([
        [18, 16],
        [36, 2],
        [72, 4],
      ]),
    );
  });

  // Source: check-values, "Cases" (computed): 40 not oriented, two swaps, solved.
  it("of the corners are two with all corners up, and 40 others", () => {
    const up = lastLayerOrbits("last-layer-corners").orbits.filter(({ code }) =>
      code.startsWith("0000-"),
    );
    expect(up.map(({ code }) => code)).toEqual(["0000-0132", "0000-0321"]);
  });
});

const ASPECTS: Readonly<Record<LookPart, Aspect>> = {
  cornerTwists: "corners turned",
  edgeFlips: "edges turned",
  cornerPlaces: "corners placed",
  edgePlaces: "edges placed",
};

describe("the last layer's cases, counted again by stickers", () => {
  // The two largest are left to their published counts: by stickers they take
  // 2 s and 18 s (run once; they agree).
  const counted = LAST_LAYER_STAGES.filter(
    (stage) =>
      stage !== "last-layer-whole" && stage !== "last-layer-but-edges-turned",
  );
  // Any sequences that restore the first two layers will do, as long as they
  // reach everything. Source: last-layer.json, numbers 27, 33, 45 and 26.
  const sequences = [27, 33, 45, 26].map(
    (wanted) =>
      LAST_LAYER_ORIENTATIONS.find(({ number }) => number === wanted)
        ?.sequence ?? "",
  );
  const states = topStates(["U", ...sequences]);

  it("reach the 62,208 states that the group has", () => {
    expect(states).toHaveLength(62_208);
  });

  // Issue 4, section 1, in the order of the rules: beginner's steps 3, 2, 4, 7;
  // two looks 3 and 7, 2 and 4; 57; 21; 42.
  it("are 3, 2, 4, 7 in beginner's steps, then 7, 2, 4 in two looks", () => {
    expect(counted.map(count)).toEqual([3, 2, 4, 7, 7, 2, 4, 57, 21, 42]);
  });

  it.each(counted)("of %s are as many, each with as many looks", (stage) => {
    const { done, asks } = LAST_LAYER_RULES[stage];
    const { orbits, solvedLooks } = lastLayerOrbits(stage);
    const ours = [solvedLooks, ...orbits.map(({ size }) => size)];
    expect(
      classSizes(
        states,
        done.map((part) => ASPECTS[part]),
        asks.map((part) => ASPECTS[part]),
      ),
    ).toEqual(ours.toSorted((a, b) => a - b));
  });
});
