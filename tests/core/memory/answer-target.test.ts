import { expect, it } from "vitest";
import { answerTarget } from "../../../core/memory/answer-target";
import { ANSWER_WAYS } from "../../../core/memory/review";

// Source: the design's architecture, "each way of answering has baselines and
// targets of its own"; first-layer targets are of a real cube.
it("a deck's target is that of a cube in the hands, and writing is given longer", () => {
  expect(answerTarget(8, "my-cube")).toBe(8);
  expect(answerTarget(8, "write-it")).toBeGreaterThan(8);
  for (const way of ANSWER_WAYS)
    expect(answerTarget(8, way)).toBeGreaterThanOrEqual(8);
});
