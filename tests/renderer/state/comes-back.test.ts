import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Hold } from "../../../core/cases/variant";
import { planCandidates } from "../../../core/memory/plan-candidates";
import { memoryKey } from "../../../core/memory/schedule";
import { sampleReview } from "../storage/sample-review";
import { beginEmpty, openWindow } from "./open-window";

beginEmpty();

const LAST_LAYER_CASE: CaseId = "last-layer-turned:1212-1111";

const ANSWERED: readonly (readonly [CaseId, Hold])[] = [
  ["E1", "up"],
  ["C1", "up"],
  ["C1", "down"],
  [LAST_LAYER_CASE, "up"],
];

describe("what comes back to a learner", () => {
  it("is what a day's plan could ask of what is known, on the same days", async () => {
    const first = await openWindow();
    const { id } = first.current.learner;
    await first.database.reviews.bulkPut(
      ANSWERED.map(([one, hold]) => ({
        ...sampleReview({ learner: id, case: one, hold }),
      })),
    );
    const { current } = await openWindow();
    expect(current.memories.size).toBe(ANSWERED.length);

    const planned = planCandidates({
      learner: id,
      decks: current.decks,
      hold: "up",
      memories: current.memories,
      today: current.today,
    }).filter(({ memory }) => memory !== undefined);
    expect(planned.map(({ planned: { case: one } }) => one)).toEqual([
      "E1",
      "C1",
    ]);
    const due = new Map(
      planned.map(({ planned: { case: one, hold }, due }) => [
        memoryKey(id, one, hold),
        due,
      ]),
    );
    for (const [key, memory] of current.memories)
      expect(current.comesBackOn(memory)).toBe(due.get(key));
  });
});
