import { describe, expect, it } from "vitest";
import { formatResult, quantile, resultFrom } from "./result";

describe("a quantile", () => {
  // Source: the definition; worked by hand.
  it("of five samples is the third for the median, whatever their order", () => {
    expect(quantile([5, 1, 4, 2, 3], 0.5)).toBe(3);
    expect(quantile([10, 1, 9, 2], 0.5)).toBe(5.5);
  });

  it("lies between two samples in proportion", () => {
    expect(quantile([0, 10], 0.95)).toBeCloseTo(9.5);
    expect(quantile([7], 0.95)).toBe(7);
  });

  it("is refused without a sample", () => {
    expect(() => quantile([], 0.5)).toThrow(RangeError);
  });
});

describe("a result", () => {
  const time = { name: "a", unit: "ms", better: "lower", samples: [4, 2, 3] };
  const lower = { ...time, better: "lower" } as const;

  it("meets a target that is a limit above for times and below for rates", () => {
    expect(resultFrom({ ...lower, target: 3 }).met).toBe(true);
    expect(resultFrom({ ...lower, target: 2.9 }).met).toBe(false);
    const higher = { ...time, better: "higher" } as const;
    expect(resultFrom({ ...higher, target: 3 }).met).toBe(true);
    expect(resultFrom({ ...higher, target: 3.1 }).met).toBe(false);
    expect(resultFrom(lower).met).toBeNull();
  });

  it("has its bad end as p95, high for times and low for rates", () => {
    const samples = Array.from({ length: 101 }, (_, i) => i);
    expect(resultFrom({ ...lower, samples }).p95).toBe(95);
    expect(resultFrom({ ...lower, better: "higher", samples }).p95).toBe(5);
    expect(resultFrom({ ...lower, samples: [1] }).p95).toBeNull();
  });

  it("holds every field, compared by medians", () => {
    const reference = { name: "other", version: "1.0.0", samples: [6, 6, 9] };
    expect(resultFrom({ ...lower, reference })).toEqual({
      name: "a",
      unit: "ms",
      better: "lower",
      value: 3,
      p95: expect.closeTo(3.9) as number,
      n: 3,
      target: null,
      met: null,
      reference: "other",
      referenceVersion: "1.0.0",
      referenceValue: 6,
      ratio: 0.5,
    });
  });

  it("tells a person of a missed target", () => {
    expect(formatResult(resultFrom({ ...lower, target: 1 }))).toContain(
      "met: false",
    );
  });
});
