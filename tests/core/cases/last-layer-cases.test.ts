import { describe, expect, it } from "vitest";
import { caseChance } from "../../../core/cases/case-chance";
import {
  hasInverses,
  type LastLayerCase,
  lastLayerCases,
  lastLayerInverseOf,
  lastLayerTwinOf,
} from "../../../core/cases/last-layer-cases";
import { tradeNameOf } from "../../../core/cases/last-layer-names";
import { lastLayerPositionSampler } from "../../../core/cases/last-layer-position";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { recogniseLastLayer } from "../../../core/cases/recognise-last-layer";
import { type Cubies, invert } from "../../../core/cube/cubies";
import { emptyCubies } from "../../../core/cube/sample-state";
import { inverseTurns } from "../../../core/notation/inverse";
import { mirrorTurns } from "../../../core/notation/mirror";
import { randomSource } from "../../../core/random-source";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
} from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";
import { madeOnTop } from "./made-on-top";

const SEED = 13;

function shownBy(state: Cubies, stage: LastLayerStage): LastLayerCase {
  const shown = recogniseLastLayer(state, stage);
  if (shown === undefined || shown === "answered")
    throw new Error(`no case of ${stage} is shown`);
  return shown;
}

const NAMED = [
  ...LAST_LAYER_ORIENTATIONS.map(({ number, sequence, ...rest }) => ({
    stage: "last-layer-turned" as const,
    name: String(number),
    turns: turnsOf(sequence),
    code: `${rest.cornerTwists}-${rest.edgeFlips}`,
  })),
  ...LAST_LAYER_PERMUTATIONS.map(({ name, sequence }) => ({
    stage: "last-layer-placed" as const,
    name,
    turns: turnsOf(sequence),
    code: undefined,
  })),
];

describe("what the trade calls the last layer's cases (last-layer.json)", () => {
  it.each(NAMED)(
    "$stage $name is the name of the case that the listed sequence answers",
    ({ stage, name, turns, code }) => {
      const shown = shownBy(madeOnTop(inverseTurns(turns)), stage);
      expect(tradeNameOf(shown)).toBe(name);
      if (code !== undefined) expect(shown.code).toBe(code);
    },
  );

  it("names each of the 57 and the 21 once, and all of them", () => {
    for (const stage of ["last-layer-turned", "last-layer-placed"] as const) {
      const names = lastLayerCases(stage).map(tradeNameOf).toSorted();
      const listed = NAMED.filter((row) => row.stage === stage);
      expect(names).toEqual(listed.map(({ name }) => name).toSorted());
    }
  });

  // Source: common practice: with the edges up, the seven are 21 to 27; with
  // the corners placed, the four are Ua, Ub, H and Z.
  it("names the second steps of two looks too, and nothing that shows less", () => {
    const names = (stage: LastLayerStage) =>
      lastLayerCases(stage).map(tradeNameOf).toSorted();
    expect(names("last-layer-corners-turned")).toEqual([
      "21",
      "22",
      "23",
      "24",
      "25",
      "26",
      "27",
    ]);
    expect(names("last-layer-edges-placed-last")).toEqual([
      "H",
      "Ua",
      "Ub",
      "Z",
    ]);
    for (const stage of LAST_LAYER_STAGES.filter(
      (other) =>
        ![
          "last-layer-turned",
          "last-layer-placed",
          "last-layer-corners-turned",
          "last-layer-edges-placed-last",
        ].includes(other),
    ))
      expect(new Set(names(stage)), stage).toEqual(new Set([undefined]));
  });
});

describe("twins", () => {
  it.each(NAMED)(
    "$stage $name: what the mirrored sequence answers is the twin",
    ({ stage, turns }) => {
      const one = shownBy(madeOnTop(inverseTurns(turns)), stage);
      const mirrored = mirrorTurns(turns, "left-right");
      const twin = shownBy(madeOnTop(inverseTurns(mirrored)), stage);
      expect(lastLayerTwinOf(one)).toBe(twin);
    },
  );

  it.each(LAST_LAYER_STAGES)(
    "of twins in %s are the cases themselves",
    (stage) => {
      const strays = lastLayerCases(stage).filter((one) => {
        const twin = lastLayerTwinOf(one);
        return lastLayerTwinOf(twin) !== one || twin.size !== one.size;
      });
      expect(strays).toEqual([]);
    },
  );
});

describe("inverses", () => {
  it.each(NAMED.filter(({ stage }) => stage === "last-layer-placed"))(
    "$stage $name: what the sequence makes of a solved cube is the inverse",
    ({ stage, turns }) => {
      const one = shownBy(madeOnTop(inverseTurns(turns)), stage);
      expect(lastLayerInverseOf(one)).toBe(shownBy(madeOnTop(turns), stage));
    },
  );

  it.each(LAST_LAYER_STAGES.filter(hasInverses))(
    "in %s are what the inverse of any state of a case shows",
    (stage) => {
      const random = randomSource(SEED);
      const state = emptyCubies();
      const strays = lastLayerCases(stage).filter((one) => {
        const inverse = lastLayerInverseOf(one);
        const sampler = lastLayerPositionSampler(one);
        return Array.from({ length: 5 }).some(() => {
          sampler.drawInPlace(random, state);
          return recogniseLastLayer(invert(state), stage) !== inverse;
        });
      });
      expect(strays).toEqual([]);
    },
  );

  it("are none where a stage does not see which piece it asks to turn: one case's states have inverses of several", () => {
    const without = LAST_LAYER_STAGES.filter((stage) => !hasInverses(stage));
    expect(without).toEqual([
      "last-layer-edges-turned",
      "last-layer-corners-turned",
      "last-layer-turned",
    ]);
    const random = randomSource(SEED);
    const state = emptyCubies();
    for (const stage of without) {
      const several = lastLayerCases(stage).some((one) => {
        expect(lastLayerInverseOf(one)).toBeUndefined();
        const sampler = lastLayerPositionSampler(one);
        const shown = new Set(
          Array.from({ length: 100 }, () => {
            sampler.drawInPlace(random, state);
            return shownBy(invert(state), stage).code;
          }),
        );
        return shown.size > 1;
      });
      expect(several, stage).toBe(true);
    }
  });
});

describe("chances", () => {
  // Source: check-values, "Cases" (computed): of 216, number 20 has one look,
  // number 57 two; of 288, H has one in 72 and Z one in 36.
  it("are those of the tables", () => {
    const chanceOf = (stage: LastLayerStage, name: string) => {
      const one = lastLayerCases(stage).find(
        (other) => tradeNameOf(other) === name,
      );
      const { part = 0, whole = 1 } = (one && caseChance(one.id)) ?? {};
      return part / whole;
    };
    expect(chanceOf("last-layer-turned", "20")).toBeCloseTo(1 / 216, 12);
    expect(chanceOf("last-layer-turned", "57")).toBeCloseTo(1 / 108, 12);
    expect(chanceOf("last-layer-turned", "45")).toBeCloseTo(1 / 54, 12);
    expect(chanceOf("last-layer-placed", "H")).toBeCloseTo(1 / 72, 12);
    expect(chanceOf("last-layer-placed", "Z")).toBeCloseTo(1 / 36, 12);
    expect(chanceOf("last-layer-placed", "T")).toBeCloseTo(1 / 18, 12);
  });
});
