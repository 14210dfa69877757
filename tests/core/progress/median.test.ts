import { describe, expect, it } from "vitest";
import { median } from "../../../core/progress/median";

describe("the median", () => {
  it("is the middle one, or the mean of the two middle ones", () => {
    expect(median([])).toBeUndefined();
    expect(median([7])).toBe(7);
    expect(median([9, 1, 5])).toBe(5);
    expect(median([9, 1, 5, 2])).toBe(3.5);
  });
});
