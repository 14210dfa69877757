/** Counting what is stored. */
import type { Result } from "../../core/result";
import { reviewsInBlock } from "./backup-survey";
import type { TurnwiseDatabase } from "./database";
import { type StorageError, tryReading } from "./storage-error";

/** How many answers are stored for everybody on this machine, readable or not, and when the first was given. */
export interface AnswerCount {
  readonly answers: number;
  /** Units: milliseconds since 1970; undefined without any that says. */
  readonly first: number | undefined;
}

function instantOf(row: unknown): number | undefined {
  const at: unknown =
    typeof row === "object" && row !== null
      ? Reflect.get(row, "at")
      : undefined;
  return typeof at === "number" ? at : undefined;
}

/** Counts everybody's answers, for the reminder of a backup. */
export function countAnswers(
  database: TurnwiseDatabase,
): Promise<Result<AnswerCount, StorageError>> {
  const { reviews, blocks } = database;
  return tryReading(() =>
    database.transaction("r", [reviews, blocks], async () => {
      let answers = await reviews.count();
      const firsts: number[] = [];
      await blocks.each((block) => {
        const sealed = reviewsInBlock(block) ?? [];
        answers += sealed.length;
        firsts.push(instantOf(sealed[0]) ?? Infinity);
      });
      // A log is short until it is sealed: blocks hold the oldest.
      if (firsts.length === 0)
        await reviews.each((row) => {
          firsts.push(instantOf(row) ?? Infinity);
        });
      const first = firsts.reduce((a, b) => Math.min(a, b), Infinity);
      return { answers, first: first === Infinity ? undefined : first };
    }),
  );
}
