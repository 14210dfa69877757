// @vitest-environment node
import "fake-indexeddb/auto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { backupWriter } from "../../../core/backup/backup-writer";
import type { BackupContents } from "../../../core/backup/backup-reader";
import { dayNumber } from "../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../core/memory/review";
import { memoriesOf } from "../../../core/memory/schedule";
import { ANN, readLines } from "../../core/backup/sample-backup";
import { restore } from "../../../renderer/storage/restore";
import { readLog } from "../../../renderer/storage/reviews";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { sampleReview } from "./sample-review";
import { tellSoak, tries } from "../../soak/times";

const DAY = 86_400_000;

/** Answers of a few weeks: many on one day, some at one instant, some with a clock set back. */
const LOG: fc.Arbitrary<readonly Review[]> = fc
  .uniqueArray(fc.uuid(), { minLength: 1, maxLength: 25 })
  .chain((ids) =>
    fc.tuple(
      ...ids.map((id) =>
        fc
          .record({
            case: fc.constantFrom("E1" as const, "E8a" as const),
            hold: fc.constantFrom("up" as const, "down" as const),
            asking: fc.constantFrom("alone" as const, "again" as const),
            verdict: fc.constantFrom("right" as const, "missed" as const),
            corrections: fc.constantFrom(0, 0, 1),
            day: fc.nat(30),
            setBack: fc.constantFrom(0, 0, 2),
            instant: fc.nat(3),
          })
          .map(({ day, setBack, instant, ...told }) =>
            sampleReview({
              ...told,
              id,
              learner: ANN.id,
              at: (day * DAY + instant) as Milliseconds,
              localDay: dayNumber(20_000 + day - setBack),
            }),
          ),
      ),
    ),
  );

function contentsOf(reviews: readonly Review[]): BackupContents {
  const writer = backupWriter();
  const about = {
    madeAt: 1,
    learners: 1,
    reviews: reviews.length,
    decks: 0,
    runs: 0,
  };
  const row = (kind: "learner" | "review", content: unknown) =>
    writer.row({ kind, content, table: "reviews", key: "" });
  const text = [
    writer.header(about),
    row("learner", ANN),
    ...reviews.map((review) => row("review", review)),
    writer.end(),
  ].join("");
  const read = readLines(text.trimEnd().split("\n"));
  if (!read.ok) throw new Error(read.error.code);
  return read.value;
}

const MERGES = tries(150);

describe("logs that are merged", () => {
  it("make the same memories in any order and however they were divided", async () => {
    const database = await openTestDatabase();
    await fc.assert(
      fc.asyncProperty(
        LOG,
        // For each answer the machines that have it: at least one of three.
        fc.infiniteStream(fc.integer({ min: 1, max: 7 })),
        fc.shuffledSubarray([0, 1, 2], { minLength: 3 }),
        fc.nat(3),
        async (log, where, order, sealedEvery) => {
          for (const table of database.tables) await table.clear();
          const parts: Review[][] = [[], [], []];
          for (const review of log) {
            const machines = where.next().value as number;
            for (const [i, part] of parts.entries())
              if ((machines >> i) % 2 === 1) part.push(review);
          }
          for (const i of order) {
            const contents = contentsOf((parts[i] ?? []).toReversed());
            const choice = {
              learners: [ANN.id],
              decks: "new",
              ofClass: true,
              nameless: "",
              now: 1,
            } as const;
            const done = await restore(database, contents, choice);
            expect(done.ok).toBe(true);
            // As sealing does it, and with what came first in the front.
            const loose = await database.reviews.toArray();
            const moved = loose.slice(0, sealedEvery);
            await database.blocks.put({
              learner: ANN.id,
              number: i,
              reviews: moved,
            });
            await database.reviews.bulkDelete(
              moved.map((row) => String(row["id"])),
            );
          }
          const merged = await readLog(database, ANN.id);
          if (!merged.ok) throw new Error(merged.error.code);
          expect(merged.value.reviews).toHaveLength(log.length);
          expect(memoriesOf(merged.value.reviews)).toEqual(memoriesOf(log));
        },
      ),
      { numRuns: MERGES },
    );
    tellSoak(`${MERGES} logs merged from three machines`);
    database.close();
    await forgetDatabases();
  });
});
