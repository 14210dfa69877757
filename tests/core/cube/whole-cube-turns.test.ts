import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { ROTATIONS } from "../../../core/cube/symmetries";
import { isWholeCubeTurn } from "../../../core/cube/turns";
import { wholeCubeTurnsBetween } from "../../../core/cube/whole-cube-turns";

describe("turning the whole cube from one hold to another", () => {
  it("takes at most two turns between any of the 24 holds, none where they are the same", () => {
    const lengths = new Map<number, number>();
    for (const from of ROTATIONS) {
      for (const to of ROTATIONS) {
        const turns = wholeCubeTurnsBetween(from, to);
        expect(turns.every(isWholeCubeTurn)).toBe(true);
        expect(applyTurns({ cubies: SOLVED, hold: from }, turns).hold).toBe(to);
        lengths.set(turns.length, (lengths.get(turns.length) ?? 0) + 1);
      }
    }
    // One rotation is none, nine are one turn (x, y or z, three ways each).
    expect(lengths).toEqual(
      new Map([
        [0, 24],
        [1, 9 * 24],
        [2, 14 * 24],
      ]),
    );
  });
});
