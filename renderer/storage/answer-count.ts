/** Counting what is stored. */
import type { Result } from "../../core/result";
import { reviewsInBlock } from "./backup-survey";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryReading } from "./storage-error";

/** How many answers and whole runs are stored for everybody on this machine, readable or not, and when the first was given. */
export interface AnswerCount {
  /** Showings are none. */
  readonly answers: number;
  /** Answers and showings: what a backup carries. */
  readonly reviews: number;
  /** Runs that were struck out as well: they are kept. The striking itself is none. */
  readonly runs: number;
  /** Units: milliseconds since 1970; undefined without any that says. */
  readonly first: number | undefined;
}

function fieldOf(row: unknown, name: "at" | "asking"): unknown {
  return typeof row === "object" && row !== null
    ? Reflect.get(row, name)
    : undefined;
}

function instantOf(row: unknown): number | undefined {
  const at = fieldOf(row, "at");
  return typeof at === "number" ? at : undefined;
}

/** Of a damaged row nobody knows: it counts as an answer, so that it is missed. */
function isShowing(row: unknown): boolean {
  return fieldOf(row, "asking") === "shown";
}

/** Counts everybody's answers and runs, for the reminder of a backup. */
export function countAnswers(
  database: TurnwiseDatabase,
): Promise<Result<AnswerCount, StorageError>> {
  const { reviews, blocks, runs } = database;
  return tryReading(() =>
    database.transaction("r", [reviews, blocks, runs], async () => {
      let stored = await reviews.count();
      let shown = await reviews.filter(isShowing).count();
      const firsts: number[] = [];
      await blocks.each((block) => {
        const sealed = reviewsInBlock(block) ?? [];
        stored += sealed.length;
        shown += sealed.filter(isShowing).length;
        firsts.push(instantOf(sealed[0]) ?? Infinity);
      });
      // A log is short until it is sealed: blocks hold the oldest.
      if (firsts.length === 0)
        await reviews.each((row) => {
          firsts.push(instantOf(row) ?? Infinity);
        });
      let made = 0;
      await runs.each((row) => {
        if (Object.hasOwn(row, "strikes")) return;
        made += 1;
        firsts.push(instantOf(row) ?? Infinity);
      });
      const first = firsts.reduce((a, b) => Math.min(a, b), Infinity);
      return {
        answers: stored - shown,
        reviews: stored,
        runs: made,
        first: first === Infinity ? undefined : first,
      };
    }),
  );
}
