import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heardCollector } from "../../../core/backup/heard-parts";
import { inParts } from "../../../core/backup/in-parts";

const ROW = { id: "b1", learner: "ann" };

describe("a block in parts", () => {
  it("is the same block again, whatever the order of its parts and however often they come", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ maxLength: 30 }), { maxLength: 20 }),
        fc.integer({ min: 1, max: 100 }),
        fc.gen(),
        (answers, most, gen) => {
          const parts = inParts({ ...ROW, answers }, most);
          const order = gen(fc.shuffledSubarray, [...parts, ...parts], {
            minLength: 2 * parts.length,
          });
          const collector = heardCollector();
          for (const part of order) expect(collector.take(part)).toBe(true);
          expect(collector.answers).toBe(answers.length);
          expect([...collector.finish().blocks]).toEqual([
            ["b1", { ...ROW, answers }],
          ]);
        },
      ),
    );
  });

  it("has no part that is larger than told, one answer excepted", () => {
    const parts = inParts({ ...ROW, answers: ["aa", "bb", "c".repeat(20)] }, 8);
    expect(parts.map(({ answers }) => answers)).toEqual([
      ["aa", "bb"],
      ["c".repeat(20)],
    ]);
  });

  it("without a list of answers is one part, and without any is a block without any", () => {
    for (const row of [ROW, { ...ROW, answers: [] }]) {
      const parts = inParts(row);
      expect(parts).toHaveLength(1);
      const collector = heardCollector();
      parts.forEach((part) => collector.take(part));
      expect(collector.finish().blocks.get("b1")).toEqual(row);
    }
  });
});
