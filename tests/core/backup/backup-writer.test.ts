import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LONGEST_LINE } from "../../../core/backup/backup-line";
import { backupReader } from "../../../core/backup/backup-reader";
import { backupWriter } from "../../../core/backup/backup-writer";
import { ANN, answersOf } from "./sample-backup";

function backupOf(contents: readonly unknown[]) {
  const writer = backupWriter();
  const reader = backupReader();
  const counts = { learners: 0, reviews: contents.length, decks: 0, runs: 0 };
  reader.push(writer.header({ madeAt: 1, ...counts }));
  for (const content of contents)
    reader.push(
      writer.row({ kind: "review", content, table: "reviews", key: "k" }),
    );
  reader.push(writer.end());
  return { read: reader.finish(), writer };
}

function contentsOf(contents: readonly unknown[]) {
  const { read } = backupOf(contents);
  if (!read.ok) throw new Error(read.error.code);
  return read.value;
}

describe("a written backup", () => {
  it("can be read again whatever stands in the store", () => {
    fc.assert(
      fc.property(
        fc.array(fc.anything({ withBigInt: true, withDate: true })),
        (contents) => {
          const { damaged, reviews } = contentsOf(contents);
          expect(damaged.length + reviews.size).toBe(contents.length);
        },
      ),
    );
  });

  it("carries as damaged what reads differently from how it lies in the store", () => {
    const [good] = answersOf(ANN, 1);
    const circle: Record<string, unknown> = { ...good };
    circle["self"] = circle;
    const proto: unknown = JSON.parse(
      JSON.stringify(good).replace("{", '{"__proto__":{},'),
    );
    const rows = [{ ...good, total: Number.NaN }, proto, circle];
    const { damaged, reviews } = contentsOf(rows);
    expect(reviews.size).toBe(0);
    expect(damaged).toEqual([
      {
        table: "reviews",
        key: "k",
        row: JSON.stringify({ ...good, total: null }),
      },
      { table: "reviews", key: "k", row: JSON.stringify(proto) },
      { table: "reviews", key: "k", row: "", cut: true },
    ]);
  });

  it("says how many rows were too large to carry whole", () => {
    const [good] = answersOf(ANN, 1);
    const huge = { ...good, id: 7, more: '"'.repeat(LONGEST_LINE / 2) };
    const { read, writer } = backupOf([good, huge]);
    expect(writer.cut).toBe(1);
    expect(writer.counts).toMatchObject({ reviews: 1, damaged: 1 });
    const [cut] = read.ok ? read.value.damaged : [];
    expect(cut?.cut).toBe(true);
    expect(JSON.stringify(huge).startsWith(cut?.row ?? "?")).toBe(true);
  });
});
