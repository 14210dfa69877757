import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ROTATIONS } from "../../../core/cube/symmetries";
import { present } from "../../../core/invariant";
import { isWholeCubeTurn } from "../../../core/cube/turns";
import { dressed } from "../../../core/solver/dressing";
import { turnSeen } from "../../../core/solver/face-turn-sequence";

describe("a dressed sequence", () => {
  it("never turns the whole cube there and back around turns of the top and bottom alone, which helps nobody", () => {
    const hold = present(ROTATIONS[0], "there are rotations");
    const isUpright = ({ layer }: { readonly layer: string }) =>
      layer === "U" || layer === "D";
    fc.assert(
      fc.property(
        fc.array(fc.nat(17), { minLength: 1, maxLength: 9 }),
        (sequence) => {
          fc.pre(sequence.some((turn) => !isUpright(turnSeen(hold, turn))));
          const { turns } = dressed(sequence, hold, hold, true);
          const whole = turns.flatMap((turn, i) =>
            isWholeCubeTurn(turn) ? [i] : [],
          );
          expect(whole.length).toBeGreaterThan(1);
          whole.slice(1).forEach((at, i) => {
            const between = turns.slice((whole[i] ?? at) + 1, at);
            expect(between.every(isUpright)).toBe(false);
          });
        },
      ),
    );
  });
});
