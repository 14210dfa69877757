import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { NO_ROTATION, ROTATIONS } from "../../../core/cube/symmetries";
import { isSliceTurn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { easeOf } from "../../../core/solver/ease-of-turning";
import { easiestWriting } from "../../../core/solver/easiest-writing";
import {
  effectOf,
  faceTurnsOf,
  normalised,
  turnSeen,
} from "../../../core/solver/face-turn-sequence";
import { EVERY_TURN } from "../../../core/solver/turn-costs";
import { faceTurnsOfSequence } from "../../../core/solver/turns-in-holds";
import { turnsOf } from "../notation/turns-of";

const sequences = fc
  .array(fc.nat(17), { maxLength: 14 })
  .map((turns) => normalised(turns));

function fromFaces(text: string) {
  return easiestWriting(faceTurnsOf(NO_ROTATION, turnsOf(text)), NO_ROTATION);
}

describe("the easiest writing of face turns", () => {
  it("does the same to the pieces, from every hold, and costs what it says", () => {
    fc.assert(
      fc.property(
        sequences,
        fc.constantFrom(...ROTATIONS),
        (sequence, hold) => {
          const { turns, ease } = easiestWriting(sequence, hold);
          const made = applyTurns({ cubies: SOLVED, hold }, turns);
          expect(made.cubies).toEqual(effectOf(sequence));
          expect(easeOf(turns)).toBeCloseTo(ease, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("is never harder than the face turns as they are", () => {
    fc.assert(
      fc.property(
        sequences,
        fc.constantFrom(...ROTATIONS),
        (sequence, hold) => {
          const plain = sequence.map((turn) => turnSeen(hold, turn));
          expect(easiestWriting(sequence, hold).ease).toBeLessThanOrEqual(
            easeOf(plain) + 1e-9,
          );
        },
      ),
      { numRuns: 60 },
    );
  });

  it.each(["B L", "B' D2", "F2 B", "L D'", "D B2"])(
    "of %s is the easiest of all that one and two turns, with the whole cube turned before each or not, can do",
    (text) => {
      const wanted = faceTurnsOf(NO_ROTATION, turnsOf(text));
      const indices = [...EVERY_TURN.keys()];
      const isWhole = (turn: number) =>
        "xyz".includes(EVERY_TURN[turn]?.layer ?? "");
      const begun = (sequence: readonly number[]) =>
        faceTurnsOfSequence(sequence).every((face, i) => face === wanted[i]);
      const grown = (sequence: readonly number[]) =>
        indices
          .map((turn) => [...sequence, turn])
          .filter((longer) => begun(longer));
      let open: (readonly number[])[] = [[]];
      let least = Infinity;
      for (let length = 1; length <= 4; length++) {
        open = open
          .flatMap(grown)
          .filter(
            (sequence) =>
              !(isWhole(sequence.at(-1) ?? 0) && isWhole(sequence.at(-2) ?? 0)),
          );
        for (const sequence of open) {
          if (faceTurnsOfSequence(sequence).length < wanted.length) continue;
          const turns = sequence.flatMap((turn) => EVERY_TURN[turn] ?? []);
          least = Math.min(least, easeOf(turns));
        }
      }
      const { ease } = fromFaces(text);
      // Of two opposite faces neither is made wide, which the blind way tries.
      if (text === "F2 B") expect(ease).toBeGreaterThanOrEqual(least);
      else expect(ease).toBeCloseTo(least, 9);
    },
  );

  it("makes a slice of two opposite faces that turn together", () => {
    const { turns } = fromFaces("R' L");
    expect(turns.some(isSliceTurn)).toBe(true);
    expect(turns).toHaveLength(1);
  });

  it("leaves what is easy as it is", () => {
    expect(formatTurns(fromFaces("R U R' U R U2 R'").turns)).toBe(
      "R U R' U R U2 R'",
    );
    expect(fromFaces("")).toEqual({ turns: [], ease: 0 });
  });
});
