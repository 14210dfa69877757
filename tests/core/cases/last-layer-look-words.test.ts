import { describe, expect, it } from "vitest";
import {
  type LastLayerCase,
  lastLayerCases,
} from "../../../core/cases/last-layer-cases";
import { PART_TEXTS, stateOfLook } from "../../../core/cases/last-layer-look";
import {
  lastLayerInWords,
  sideOfTwoCorners,
} from "../../../core/cases/last-layer-look-words";
import type { SeenLook } from "../../../core/cases/last-layer-orbits";
import { roundDirection } from "../../../core/cases/last-layer-rounds";
import {
  LAST_LAYER_RULES,
  LAST_LAYER_STAGES,
  type LastLayerRule,
} from "../../../core/cases/last-layer-stages";
import { lastLayerCaseInWords } from "../../../core/cases/last-layer-words";
import { formatFacelets } from "../../../core/cube/facelets";
import { rotationAbout } from "../../../core/cube/symmetries";
import {
  facingsSaid,
  type LayerPieces,
  movesSaid,
  roundsSeen,
  turnedUnder,
} from "./seen-last-layer";

const YELLOW = { last: "yellow" };

function faceletsOf(look: SeenLook): string {
  return formatFacelets({
    cubies: stateOfLook(look),
    hold: rotationAbout("z", 2),
  });
}

/** What the picture shows of some parts of a look, in the same order. */
function told(
  facelets: string,
  parts: { readonly facing: LayerPieces[]; readonly placing: LayerPieces[] },
  before: string,
): string {
  const facing = parts.facing.map((kind) => facingsSaid(facelets, kind));
  if (parts.placing.length === 0) return facing.join(" ");
  const moves = parts.placing
    .map((kind) => movesSaid(facelets, kind))
    .filter((words) => words !== "")
    .join("; ");
  const piece =
    parts.placing.length === 2 ? "piece" : parts.placing[0]?.slice(0, -1);
  const said = `${before}${moves === "" ? `every ${piece} is in its place` : moves}.`;
  return [...facing, said.charAt(0).toUpperCase() + said.slice(1)].join(" ");
}

function partsSeen({ stage }: LastLayerCase) {
  const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const seen = [...done, ...asks];
  const facing: LayerPieces[] = [];
  const placing: LayerPieces[] = [];
  if (seen.includes("cornerTwists")) facing.push("corners");
  if (seen.includes("edgeFlips")) facing.push("edges");
  if (seen.includes("cornerPlaces")) placing.push("corners");
  if (seen.includes("edgePlaces")) placing.push("edges");
  return { facing, placing };
}

describe("a look in words", () => {
  it("says what the picture shows, for every text of every part", () => {
    const parts = [
      ["cornerTwists", { facing: ["corners"], placing: [] }],
      ["edgeFlips", { facing: ["edges"], placing: [] }],
      ["cornerPlaces", { facing: [], placing: ["corners"] }],
      ["edgePlaces", { facing: [], placing: ["edges"] }],
    ] as const;
    for (const [part, { facing, placing }] of parts)
      for (const text of PART_TEXTS[part]) {
        const look = { [part]: text };
        const wanted = told(
          faceletsOf(look),
          { facing: [...facing], placing: [...placing] },
          "",
        );
        expect(lastLayerInWords(look, YELLOW), text).toBe(wanted);
      }
  });

  it("is such as these", () => {
    expect(
      lastLayerInWords({ cornerTwists: "0021", edgeFlips: "0011" }, YELLOW),
    ).toBe(
      "Corners: front right has yellow on top, front left on top, back left on the back, back right on the back. Edges: right has yellow on top, front on top, left on the left, back on the back.",
    );
    expect(
      lastLayerInWords({ edgePlaces: "1203", cornerPlaces: "0132" }, YELLOW),
    ).toBe(
      "Back left and back right corners change places; right, front and left edges go round clockwise.",
    );
    expect(lastLayerInWords({ edgePlaces: "0123" }, YELLOW)).toBe(
      "Every edge is in its place.",
    );
    expect(lastLayerInWords({ edgeFlips: "0000" }, { last: "plum" })).toBe(
      "Edges: plum is on top at all four.",
    );
  });
});

describe("a case in words", () => {
  it.each(LAST_LAYER_STAGES)(
    "says of %s what the picture of its first look shows, but for a turn of the top",
    (stage) => {
      const before = "but for a turn of the top, ";
      const wrong: string[] = [];
      for (const one of lastLayerCases(stage)) {
        const parts = partsSeen(one);
        const { placing } = parts;
        const ways = turnedUnder(faceletsOf(one.lookAt(0)));
        const words = lastLayerCaseInWords(one, YELLOW);
        const chosen = ways.find((way) => told(way, parts, before) === words);
        if (chosen === undefined) {
          wrong.push(one.code);
          continue;
        }
        // What is placed before stays where it is: then nothing is chosen.
        const { done }: LastLayerRule = LAST_LAYER_RULES[stage];
        if (done.some((part) => part.endsWith("Places"))) continue;
        const counted =
          stage === "last-layer-but-edges-turned"
            ? (["corners"] as const)
            : placing;
        const moved = (way: string) =>
          counted.flatMap((kind) => roundsSeen(way, kind).flat()).length;
        if (moved(chosen) !== Math.min(...ways.map(moved)))
          wrong.push(`${one.code} could be told with fewer`);
      }
      expect(wrong).toEqual([]);
    },
  );

  it.each([
    "last-layer-corners-placed",
    "last-layer-corners-turned-last",
    "last-layer-edges-placed-last",
  ] as const)("leaves placed in %s what is placed before it", (stage) => {
    for (const one of lastLayerCases(stage)) {
      const words = lastLayerCaseInWords(one, YELLOW);
      if (stage === "last-layer-corners-placed")
        expect(words).not.toContain("edges change");
      else expect(words).not.toMatch(/corners (change|go)/);
    }
  });
});

describe("words of single rounds", () => {
  it("name the side of two corners that are neighbours", () => {
    expect(
      [
        [0, 1],
        [1, 2],
        [2, 3],
        [0, 3],
        [0, 2],
        [1, 3],
      ].map(sideOfTwoCorners),
    ).toEqual(["front", "left", "back", "right", undefined, undefined]);
  });

  it("know no direction for two pieces, nor for four that cross", () => {
    expect(roundDirection([0, 2])).toBeUndefined();
    expect(roundDirection([0, 2, 1, 3])).toBeUndefined();
    expect(roundDirection([0, 1, 2, 3])).toBe("clockwise");
    expect(roundDirection([0, 3, 2, 1])).toBe("anticlockwise");
    expect(roundDirection([1, 2, 3])).toBe("clockwise");
    expect(roundDirection([0, 3, 1])).toBe("anticlockwise");
  });
});
