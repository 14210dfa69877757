import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stageOfCase } from "../../../core/cases/case-table";
import type { Stage } from "../../../core/cases/stage";
import { startOf } from "../../../core/cases/position";
import { recognise } from "../../../core/cases/recognise";
import { HOLDS } from "../../../core/cases/variant";
import { shownPosition } from "../../../core/cases/known-layer";
import { applyTurns } from "../../../core/cube/held-cube";
import { SOLVED } from "../../../core/cube/cubies";
import { agreesWith } from "../../../core/cube/partly-known";
import { hasNoOneWay } from "../../../core/deck/deck-contradiction";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { OPENINGS } from "../../../core/memory/variant-opening";
import {
  type PracticeChoice,
  practicePositions,
} from "../../../core/paper/practice-positions";
import {
  setUpStart,
  setUpStartInWords,
} from "../../../core/paper/set-up-start";
import { LARGEST_NUMBER } from "../../../core/paper/sheet";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";
import { createSetUpFinder } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/steps";

const choice: fc.Arbitrary<PracticeChoice> = fc.record({
  cases: fc.constantFrom(...STARTER_DECKS).chain((deck) =>
    fc.subarray([...deck.cases], {
      minLength: 1,
      maxLength: Math.min(12, deck.cases.length),
    }),
  ),
  count: fc.integer({ min: 1, max: 24 }),
  hold: fc.constantFrom(...HOLDS),
  opening: fc.constantFrom(...OPENINGS),
  number: fc.integer({ min: 1, max: LARGEST_NUMBER }),
});

describe("the positions of a practice sheet", () => {
  it("are the same for the same number, and as many as were asked for", () => {
    fc.assert(
      fc.property(choice, (chosen) => {
        const drawn = practicePositions(chosen);
        expect(drawn).toHaveLength(chosen.count);
        expect(practicePositions(chosen)).toEqual(drawn);
      }),
      { numRuns: 50 },
    );
  });

  it("are others for another number", () => {
    const [deck] = STARTER_DECKS;
    const drawn = (number: number) =>
      practicePositions({
        cases: deck?.cases ?? [],
        count: 12,
        hold: "up",
        opening: "anywhere",
        number,
      });
    expect(drawn(1)).not.toEqual(drawn(2));
  });

  it("ask each case as often as any other, and none twice running", () => {
    fc.assert(
      fc.property(choice, (chosen) => {
        const ids = practicePositions(chosen).map((position) => position.case);
        const times = chosen.cases.map(
          (one) => ids.filter((id) => id === one.case).length,
        );
        expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
        if (chosen.cases.length > 1)
          ids.forEach((id, n) => expect(id).not.toBe(ids[n + 1]));
      }),
      { numRuns: 50 },
    );
  });

  it("show their cases, as far as they are opened up", () => {
    fc.assert(
      fc.property(choice, (chosen) => {
        for (const position of practicePositions(chosen)) {
          const { home, seenFrom, turnedAway } = position.variant;
          const stage = stageOfCase(position.case);
          const shown = recognise(position.cubies, stage, home);
          // Two corners in each other's homes are a task: each shows a case.
          if (!hasNoOneWay(position.case))
            expect(shown?.case).toBe(position.case);
          if (chosen.opening !== "anywhere") expect(seenFrom).toBe(0);
          if (chosen.opening === "front") {
            expect(home).toBe(0);
            expect(turnedAway).toBe(0);
          }
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe("the cube that set-ups start from", () => {
  it("is enough for every position, and the same turns lead there from a solved cube", () => {
    const finder = createSetUpFinder();
    for (const deck of STARTER_DECKS) {
      const positions = practicePositions({
        cases: deck.cases,
        count: 2,
        hold: "up",
        opening: "anywhere",
        number: 3,
      });
      for (const full of positions) {
        const position = shownPosition(full);
        const start = setUpStart(position);
        const found = runToEnd(finder.find(start, position, randomSource(1)));
        if (!found.ok) throw new Error(`${position.case}: ${found.error.code}`);
        const solved = { cubies: SOLVED, hold: start.hold };
        const there = applyTurns(solved, found.value.turns);
        expect(agreesWith(there.cubies, position.cubies)).toBe(true);
        expect(there.hold).toBe(startOf(position).hold);
      }
    }
  });

  it("is told by what is done and by how it is held", () => {
    const told = (...stages: Stage[]) =>
      setUpStartInWords(stages, "up", USUAL_SCHEME);
    expect(told("first-layer-corners")).toBe(
      "Start each set-up with your white layer done, white on top and green in front. A solved cube is fine too.",
    );
    expect(told("first-layer-edges")).toContain("your white cross done");
    expect(told("pairs")).toContain(
      "your first two layers done, yellow on top",
    );
    expect(told("last-layer-turned")).toContain(
      "this step already done, yellow on top",
    );
  });

  it("is told more broadly where a sheet has several stages", () => {
    const told = (...stages: Stage[]) =>
      setUpStartInWords(stages, "up", USUAL_SCHEME);
    expect(told("first-layer-edges", "first-layer-corners")).toBe(
      "Start each set-up with the step already done, white on top and green in front. A solved cube is fine too.",
    );
    expect(told("first-layer-edges", "last-layer-turned")).toBe(
      "Start each set-up with the step already done. A solved cube is fine too.",
    );
  });
});
