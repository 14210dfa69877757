import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type ChosenPiece,
  type KnownOfCases,
  MOST_CHOICES,
  type PieceQuestion,
  placeOfPiece,
  recognisingQuestion,
} from "../../../core/answer/recognising-question";
import { areAlike } from "../../../core/cases/alike";
import { type CaseId, FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { casesOfStage, stageOfCase } from "../../../core/cases/case-table";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import { LAST_LAYER_STAGES } from "../../../core/cases/last-layer-stages";
import { HOLDS } from "../../../core/cases/variant";
import { CORNER_FACES, EDGE_FACES } from "../../../core/cube/pieces";
import { isRecognisable } from "../../../core/memory/recognising-round";
import { RECOGNISING_WAYS } from "../../../core/memory/review";
import {
  seenCornerFaces,
  seenEdgeFaces,
} from "../../../core/notation/place-words";
import { randomSource } from "../../../core/random-source";

const NOTHING_KNOWN: KnownOfCases = {
  mixedUpWith: [],
  isMet: () => false,
};

function position(id: CaseId, seed: number, hold: "up" | "down" = "up") {
  const random = randomSource(seed);
  const variant = randomVariant(random, id, {
    placedCount: 0,
    turnedAway: true,
    seenFromAnywhere: true,
  });
  return randomPosition(random, id, variant, hold);
}

function which(id: CaseId, known: Partial<KnownOfCases> = {}, seed = 1) {
  const question = recognisingQuestion(
    position(id, seed),
    "which-is-it",
    randomSource(seed),
    { ...NOTHING_KNOWN, ...known },
  );
  if (question.way !== "which-is-it") throw new Error("another question");
  return question;
}

function aboutPiece(
  at: Position,
  way: PieceQuestion["way"],
  seed: number,
): PieceQuestion {
  const question = recognisingQuestion(
    at,
    way,
    randomSource(seed),
    NOTHING_KNOWN,
  );
  if (question.way === "which-is-it") throw new Error("another question");
  return question;
}

function colours({ kind, piece }: ChosenPiece): readonly string[] {
  return (kind === "corner" ? CORNER_FACES : EDGE_FACES)[piece] ?? [];
}

/** Cases of every stage, a few of the largest. */
const SOME_CASES: readonly CaseId[] = [
  ...FIRST_LAYER_IDS,
  ...(["second-layer-edges", "pairs", ...LAST_LAYER_STAGES] as const).flatMap(
    (stage) =>
      casesOfStage(stage)
        .map(({ id }): CaseId => id)
        .filter((_, i, all) => i % Math.ceil(all.length / 30) === 0),
  ),
].filter((id) => id !== "S1" && id !== "S2");

const anyCase = fc.constantFrom(...SOME_CASES);
const belowLastLayer = fc.constantFrom(
  ...SOME_CASES.filter((id) => isRecognisable(id, "find-it")),
);
const seeds = fc.integer();
const holds = fc.constantFrom(...HOLDS);

describe("which is it", () => {
  it("has the true case among two to four choices of its stage, and no other that the cube shows", () => {
    fc.assert(
      fc.property(anyCase, seeds, holds, (id, seed, hold) => {
        const shown = position(id, seed, hold);
        const question = recognisingQuestion(
          shown,
          "which-is-it",
          randomSource(seed),
          NOTHING_KNOWN,
        );
        if (question.way !== "which-is-it") throw new Error("another question");
        const { choices, right } = question;
        expect(choices[right]).toBe(id);
        expect(choices.length).toBeGreaterThanOrEqual(2);
        expect(choices.length).toBeLessThanOrEqual(MOST_CHOICES);
        expect(new Set(choices).size).toBe(choices.length);
        const stage = stageOfCase(id);
        const seen = recognise(shown.cubies, stage, shown.variant.home)?.case;
        for (const [i, choice] of choices.entries()) {
          expect(stageOfCase(choice)).toBe(stage);
          expect(choice === seen).toBe(i === right);
        }
      }),
    );
  });

  it("offers the learner's own confusions first, then what was met", () => {
    // C6's look-alikes are C9, its twin, C7 and C8, and C12 from another side.
    const others = (known: Partial<KnownOfCases>) =>
      which("C6", known)
        .choices.filter((id) => id !== "C6")
        .toSorted();
    expect(others({})).toEqual(["C7", "C8", "C9"]);
    expect(others({ mixedUpWith: ["C3"] })).toEqual(["C3", "C7", "C9"]);
    expect(others({ isMet: (id) => id === "C12" })).toEqual([
      "C12",
      "C7",
      "C9",
    ]);
    expect(
      others({ mixedUpWith: ["E1", "S1", "C6", "C3", "C4", "C5", "C1"] }),
    ).toEqual(["C3", "C4", "C5"]);
  });

  it("fills up with the family where a case has few look-alikes", () => {
    // E1 is like E3 alone; E2a and E2b go straight up as it does (first-layer.md).
    expect(which("E1").choices.toSorted()).toEqual(["E1", "E2a", "E2b", "E3"]);
    // E3 stands alone in its family, and goes with that of E1, its look-alike.
    expect(which("E3").choices.toSorted()).toEqual(["E1", "E2a", "E2b", "E3"]);
    // Two edges stand above the middle layer; what else was met makes up the rest.
    const above = "second-layer-edges:DF-F";
    expect(which(above).choices).toHaveLength(2);
    expect(which(above, { isMet: () => true }).choices).toHaveLength(4);
  });

  it("has the right one in every place, and all look-alikes of a pair", () => {
    const places = new Set(
      Array.from({ length: 60 }, (_, seed) => which("C6", {}, seed).right),
    );
    expect(places.size).toBe(MOST_CHOICES);
    for (const choice of which("C6").choices)
      expect(choice === "C6" || areAlike(choice, "C6")).toBe(true);
  });
});

describe("find it", () => {
  it("has the piece among four of its kind, each with one of its colours", () => {
    fc.assert(
      fc.property(belowLastLayer, seeds, holds, (id, seed, hold) => {
        const { piece, choices, right } = aboutPiece(
          position(id, seed, hold),
          "find-it",
          seed,
        );
        expect(choices[right]).toEqual(piece);
        expect(choices).toHaveLength(MOST_CHOICES);
        expect(new Set(choices.map((one) => one.piece)).size).toBe(
          MOST_CHOICES,
        );
        const own = colours(piece);
        const others = choices.filter((_, i) => i !== right);
        for (const other of others) {
          expect(other.kind).toBe(piece.kind);
          expect(colours(other).some((face) => own.includes(face))).toBe(true);
        }
        // No colour alone finds it.
        for (const face of own)
          expect(others.some((other) => colours(other).includes(face))).toBe(
            true,
          );
      }),
    );
  });

  it("numbers them as they are met on the cube, from the top down", () => {
    fc.assert(
      fc.property(belowLastLayer, seeds, holds, (id, seed, hold) => {
        const at = position(id, seed, hold);
        const cube = startOf(at);
        const heights = aboutPiece(at, "find-it", seed).choices.map((one) => {
          const place = placeOfPiece(cube, one);
          const faces =
            place.kind === "corner"
              ? seenCornerFaces(cube.hold, place.piece)
              : seenEdgeFaces(cube.hold, place.piece);
          return faces.includes("U") ? 0 : faces.includes("D") ? 2 : 1;
        });
        expect(heights).toEqual(heights.toSorted((a, b) => a - b));
      }),
    );
  });
});

describe("where is home", () => {
  it("offers the four homes of the piece's stage, whatever the piece", () => {
    fc.assert(
      fc.property(belowLastLayer, seeds, holds, (id, seed, hold) => {
        const { piece, choices, right } = aboutPiece(
          position(id, seed, hold),
          "where-is-home",
          seed,
        );
        expect(choices[right]).toEqual(piece);
        expect(choices).toHaveLength(4);
        const isOfStage = (one: ChosenPiece) => {
          const first = colours(one).includes("U");
          if (one.kind === "corner") return first;
          return stageOfCase(id) === "first-layer-edges"
            ? first
            : !first && !colours(one).includes("D");
        };
        for (const choice of choices) expect(isOfStage(choice)).toBe(true);
      }),
    );
  });

  it("numbers the homes the same way however the cube is held: left, front, back, right", () => {
    for (let seed = 0; seed < 12; seed++) {
      const at = position("E1", seed);
      const { hold } = startOf(at);
      const { choices } = aboutPiece(at, "where-is-home", seed);
      const sides = choices.map((one) =>
        one.kind === "edge"
          ? seenEdgeFaces(hold, one.piece)
              .filter((face) => face !== "U")
              .join("")
          : "",
      );
      expect(sides).toEqual(["L", "F", "B", "R"]);
    }
  });
});

describe("a question", () => {
  it("is the same again from the same seed", () => {
    fc.assert(
      fc.property(
        belowLastLayer,
        seeds,
        fc.constantFrom(...RECOGNISING_WAYS),
        (id, seed, way) => {
          const ask = () =>
            recognisingQuestion(
              position(id, seed),
              way,
              randomSource(seed),
              NOTHING_KNOWN,
            );
          expect(ask()).toEqual(ask());
        },
      ),
    );
  });

  it("about a pair asks for either of its pieces", () => {
    const kinds = new Set(
      Array.from(
        { length: 30 },
        (_, seed) =>
          aboutPiece(position("pairs:DFR-R.FR-F", seed), "find-it", seed).piece
            .kind,
      ),
    );
    expect(kinds.size).toBe(2);
  });

  it("is not asked of a task of two corners, nor about one piece of the last layer", () => {
    const ask = (id: CaseId, way: "which-is-it" | "find-it") => () =>
      recognisingQuestion(position(id, 1), way, randomSource(1), NOTHING_KNOWN);
    expect(ask("S1", "which-is-it")).toThrow();
    const [last] = casesOfStage("last-layer-placed");
    expect(ask(last?.id ?? "S1", "find-it")).toThrow();
    expect(ask(last?.id ?? "S1", "which-is-it")).not.toThrow();
  });
});
