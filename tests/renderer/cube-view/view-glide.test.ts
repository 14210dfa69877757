import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { usualView } from "../../../core/picture/projection";
import { isFarView, viewBetween } from "../../../renderer/cube-view/view-glide";

const FRONT = usualView(73);
const UNDERNEATH = { ...FRONT, pitch: -50 };
const BEHIND = { ...FRONT, yaw: 205 };

describe("gliding to a view", () => {
  it("starts at the one and ends at the other", () => {
    expect(viewBetween(FRONT, UNDERNEATH, 0)).toEqual(FRONT);
    expect(viewBetween(FRONT, UNDERNEATH, 1)).toEqual(UNDERNEATH);
    expect(viewBetween(FRONT, UNDERNEATH, 2)).toEqual(UNDERNEATH);
    expect(viewBetween(FRONT, UNDERNEATH, 0.5).pitch).toBeCloseTo(-12.5, 9);
  });

  it("goes round the shorter way, and never back", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 400 }),
        fc.integer({ min: -400, max: 400 }),
        (from, to) => {
          const at = (share: number) =>
            viewBetween({ ...FRONT, yaw: from }, { ...FRONT, yaw: to }, share)
              .yaw;
          const steps = [0, 0.2, 0.4, 0.6, 0.8, 0.999].map(at);
          const gone = (steps.at(-1) ?? NaN) - from;
          expect(Math.abs(gone)).toBeLessThanOrEqual(180);
          steps.slice(1).forEach((yaw, i) => {
            expect((yaw - (steps[i] ?? NaN)) * gone).toBeGreaterThanOrEqual(0);
          });
        },
      ),
    );
  });

  it("is for looks and not for the few degrees of a drag", () => {
    expect(isFarView(FRONT, UNDERNEATH)).toBe(true);
    expect(isFarView(FRONT, BEHIND)).toBe(true);
    expect(isFarView(FRONT, { ...FRONT, yaw: 28 })).toBe(false);
    expect(isFarView(FRONT, { ...FRONT, yaw: FRONT.yaw + 360 })).toBe(false);
  });
});
