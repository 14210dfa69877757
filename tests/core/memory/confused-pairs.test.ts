import { describe, expect, it } from "vitest";
import { confusedPairs } from "../../../core/memory/confused-pairs";
import { sampleReview } from "./sample-review";

describe("two cases", () => {
  it("are confused once one was taken for the other, either way round", () => {
    const areConfused = confusedPairs([
      sampleReview(1, { case: "C1", verdict: "missed", answeredAs: "C3" }),
      sampleReview(2, { case: "C4", verdict: "missed" }),
    ]);
    expect(areConfused("C1", "C3")).toBe(true);
    expect(areConfused("C3", "C1")).toBe(true);
    expect(areConfused("C1", "C4")).toBe(false);
    expect(areConfused("C4", "C4")).toBe(false);
  });

  it("are confused no more after a thousand answers without it", () => {
    const old = sampleReview(1, { case: "C1", answeredAs: "C3" });
    const since = Array.from({ length: 1000 }, (_, i) => sampleReview(i + 2));
    expect(confusedPairs([old, ...since])("C1", "C3")).toBe(false);
    expect(confusedPairs([old, ...since.slice(1)])("C1", "C3")).toBe(true);
  });
});
