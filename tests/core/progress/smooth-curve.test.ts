import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  LEAST_POINTS,
  smoothCurve,
  type WeightedPoint,
} from "../../../core/progress/smooth-curve";

const points = (count: number, y: (x: number) => number): WeightedPoint[] =>
  Array.from({ length: count }, (_, x) => ({ x, y: y(x), weight: 1 }));

describe("a smooth curve", () => {
  it("is none through few points", () => {
    expect(smoothCurve(points(LEAST_POINTS - 1, () => 1))).toBeUndefined();
    expect(smoothCurve([])).toBeUndefined();
    expect(smoothCurve(points(LEAST_POINTS, () => 1))).toHaveLength(
      LEAST_POINTS,
    );
  });

  it("through points on a line is that line, whatever they weigh and wherever they lie", () => {
    const coefficient = fc.integer({ min: -50, max: 50 });
    const places = fc.uniqueArray(fc.integer({ min: 0, max: 20_000 }), {
      minLength: LEAST_POINTS,
      maxLength: 60,
    });
    fc.assert(
      fc.property(coefficient, coefficient, places, (slope, start, xs) => {
        const line = xs.map((x, i) => ({
          x,
          y: start + slope * x,
          weight: 1 + (i % 5),
        }));
        smoothCurve(line)?.forEach((height, i) =>
          expect(height).toBeCloseTo(line[i]?.y ?? NaN, 2),
        );
      }),
    );
  });

  it("follows a bend and calms a scatter", () => {
    const fall = (x: number) => 2 + 8 * Math.exp(-x / 10);
    const scatter = (x: number) => fall(x) + (x % 2 === 0 ? 1 : -1);
    const curve = smoothCurve(points(40, scatter)) ?? [];
    const distances = curve.map((height, x) => Math.abs(height - fall(x)));
    expect(Math.max(...distances.slice(3))).toBeLessThan(0.7);
    expect(curve[0]).toBeGreaterThan(6);
    expect(curve[39]).toBeLessThan(3);
  });

  it("stands points in one place on their middle", () => {
    const heap = Array.from({ length: 10 }, (_, y) => ({ x: 3, y, weight: 1 }));
    expect(smoothCurve(heap)?.[0]).toBeCloseTo(4.5);
  });
});
