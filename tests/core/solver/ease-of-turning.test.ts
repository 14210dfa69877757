import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import { mirrorTurns } from "../../../core/notation/mirror";
import { easeOf, HAND_COSTS } from "../../../core/solver/ease-of-turning";
import {
  type Grip,
  GRIPS,
  handTurns,
  CHANGE_COST,
  REGRIP_COST,
} from "../../../core/solver/hands";
import {
  EVERY_TURN,
  indexOfTurn,
  TURNS_COUNTED,
} from "../../../core/solver/turn-costs";
import { turnsOf } from "../notation/turns-of";

function ease(text: string): number {
  return easeOf(turnsOf(text));
}

function one(text: string): Turn {
  const [only] = turnsOf(text);
  if (only === undefined) throw new Error("one turn is written");
  return only;
}

const turn = fc.constantFrom(...EVERY_TURN);

describe("what a single turn costs", () => {
  it("is 1 for a turn of the right side and of the top by the right hand: the unit", () => {
    expect(["R", "R'", "U", "U'"].map(ease)).toEqual([1, 1, 1, 1]);
    expect(ease("")).toBe(0);
  });

  it.each([
    ["a face out of sight more than the front", "F", "B"],
    ["the front more than the top", "U", "F"],
    ["the bottom more than the top", "U", "D"],
    ["the back more than the bottom", "D", "B"],
    ["the left side more than the right, for a right-handed person", "R", "L"],
    ["a half turn more than a quarter of the right side", "R", "R2"],
    ["a half turn more than a quarter of the top", "U", "U2"],
    ["a half turn of the back more than one of the front", "F2", "B2"],
    ["a half turn of the front more than one of the top", "U2", "F2"],
    ["a wide layer more than its face", "R", "Rw"],
    ["the top two layers more than the top", "U", "Uw"],
    ["a slice more than the face beside it", "R", "M'"],
    ["a slice pushed down behind less than one pulled", "M'", "M"],
    ["the slices that fingers do not lie behind more than M", "M", "E"],
    ["the slice between front and back most", "E", "S"],
    ["the whole cube about the left–right axis least", "x", "y"],
    ["the whole cube tilted more than turned", "y", "z"],
    ["the whole cube turned half more than a quarter", "x", "x2"],
  ])("counts %s", (_, easier, harder) => {
    expect(ease(easier)).toBeLessThan(ease(harder));
  });
});

describe("what a sequence costs", () => {
  it.each([
    [
      "a regrip where one wrist would have to go on and on",
      "R U R' U R",
      "R U R U R",
    ],
    ["a half turn of the bottom and the back", "R U R' U'", "R D2 B'"],
    ["a turn of the whole cube", "R U R'", "y R U R'"],
    ["a turn of the whole cube in the midst", "R U R' F", "R U y R' F"],
    ["hands changing parts", "R U R' U R U R'", "R U R' U L U L'"],
    ["three turns by the left hand", "R U R'", "L' U' L"],
    ["more turns of the same kind", "R U R' U'", "R U R' U' R U R' U'"],
  ])("counts %s", (_, easier, harder) => {
    expect(ease(easier)).toBeLessThan(ease(harder));
  });

  it("prefers the front with the thumb underneath: the index finger pulls it", () => {
    expect(ease("R' F") - ease("R'")).toBeLessThan(ease("R F") - ease("R"));
  });

  it.each([
    // Source: common practice; which of two sequences for one case people turn.
    ["R U R' U R U2 R'", "L U L' U L U2 L'"],
    ["R U R' U'", "F U F' U'"],
    ["F R U R' U' F'", "B U L U' L' B'"],
    [
      "R U R' U' R' F R2 U' R' U' R U R' F'",
      "B L U L' U' B' U B U L U' L' U' B'",
    ],
    ["R U R'", "F' L F L'"],
  ])("prefers %s to %s", (easier, harder) => {
    expect(ease(easier)).toBeLessThan(ease(harder));
  });

  it("never shrinks when a turn is added, at the end or at the beginning", () => {
    fc.assert(
      fc.property(fc.array(turn, { maxLength: 12 }), turn, (turns, more) => {
        expect(easeOf([...turns, more])).toBeGreaterThan(easeOf(turns));
        expect(easeOf([more, ...turns])).toBeGreaterThan(easeOf(turns));
      }),
    );
  });

  it("is at most that of its parts and a fresh grip between them, and at least theirs", () => {
    // Both hands taking hold anew, and changing parts.
    const fresh = (2 * REGRIP_COST + CHANGE_COST) / 5;
    const part = fc.array(turn, { maxLength: 8 });
    fc.assert(
      fc.property(part, part, (first, second) => {
        const apart = easeOf(first) + easeOf(second);
        const whole = easeOf([...first, ...second]);
        expect(whole).toBeGreaterThanOrEqual(apart - 1e-9);
        expect(whole).toBeLessThanOrEqual(apart + fresh + 1e-9);
      }),
    );
  });

  it("is the same reckoned from the end", () => {
    fc.assert(
      fc.property(fc.array(turn, { maxLength: 12 }), (turns) => {
        const growing = HAND_COSTS.backwards(turns.length);
        let cost = 0;
        turns
          .map(indexOfTurn)
          .toReversed()
          .forEach((index, depth) => {
            cost = growing.costWith(depth, index);
            growing.grow(depth, index);
          });
        expect(cost / 5).toBeCloseTo(easeOf(turns), 9);
      }),
    );
  });

  it("is that of the best among all grips, tried one by one", () => {
    // Every way to hold, to turn and to take hold anew, without a table.
    const tried = (grip: Grip, turns: readonly Turn[]): number => {
      const [first, ...rest] = turns;
      if (first === undefined) return 0;
      return Math.min(
        ...GRIPS.flatMap((taken) => {
          const changes =
            (taken.right === grip.right ? 0 : REGRIP_COST) +
            (taken.left === grip.left ? 0 : REGRIP_COST) +
            (taken.turning === grip.turning ? 0 : CHANGE_COST);
          return handTurns(taken, first).map(
            (made) => changes + made.cost + tried(made.grip, rest),
          );
        }),
      );
    };
    const sided = EVERY_TURN.filter(({ layer }) => !"xyz".includes(layer));
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...sided), { maxLength: 3 }),
        (turns) => {
          const least = Math.min(...GRIPS.map((grip) => tried(grip, turns)));
          expect(easeOf(turns)).toBeCloseTo(least / 5, 9);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("the two hands", () => {
  const cost = (text: string, right: Grip["right"], left: Grip["left"]) =>
    Math.min(
      ...turnsOf(text).flatMap((one) =>
        handTurns({ right, left, turning: "right" }, one).map(
          (made) => made.cost,
        ),
      ),
    );

  it("pull the top with an index finger from behind, and push it from on top", () => {
    expect(cost("U", 0, 0)).toBeLessThan(cost("U", -1, 0));
    expect(cost("U", 1, 0)).toBe(cost("U", 0, 0));
    expect(cost("U'", 0, 0)).toBeLessThan(cost("U'", 0, -1));
  });

  it("pull the bottom with a ring finger more easily than they push it", () => {
    expect(cost("D'", 0, -1)).toBeLessThan(cost("D", 0, -1));
    expect(cost("D", -1, 0)).toBeLessThan(cost("D'", -1, 0));
  });

  it("cannot turn a wrist further than its thumb goes without a fresh grip", () => {
    expect(
      handTurns({ right: 1, left: 0, turning: "right" }, one("R")),
    ).toEqual([]);
    expect(
      handTurns({ right: 0, left: 1, turning: "right" }, one("L'")),
    ).toEqual([]);
    expect(
      handTurns({ right: -1, left: 0, turning: "right" }, one("R2")),
    ).toHaveLength(1);
  });

  it("do the same in a mirror, but that the left wrist is a little slower", () => {
    fc.assert(
      fc.property(fc.array(turn, { maxLength: 10 }), (turns) => {
        const mirrored = mirrorTurns(turns, "left-right");
        const wrists = turns.filter(({ layer }) =>
          ["R", "L", "Rw", "Lw"].includes(layer),
        ).length;
        expect(Math.abs(easeOf(mirrored) - easeOf(turns))).toBeLessThanOrEqual(
          wrists / 5 + 1e-9,
        );
      }),
    );
  });
});

describe("turns counted one by one", () => {
  it("cost one each", () => {
    const growing = TURNS_COUNTED.forwards(3);
    expect([0, 1, 2].map((depth) => growing.costWith(depth, 4))).toEqual([
      1, 2, 3,
    ]);
  });
});
