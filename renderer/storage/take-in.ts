/**
 * Taking in a block of results that was read.
 *
 * One transaction a block, which looks at the block's own row and its
 * learner's and at nothing else: what it costs does not depend on how much is
 * there (bench `federation`). A row that is damaged counts as none: the block
 * takes its place. Only a withdrawal reads more, the blocks of that
 * one learner. The tables are the same whatever the order the blocks come in,
 * and however often.
 */
import type { NamedBlock } from "../../core/sharing/results-block";
import type { Milliseconds } from "../../core/memory/review";
import { parseAnswerLine } from "../../core/sharing/shared-answer";
import type { Result } from "../../core/result";
import { forgetComputed } from "./cache";
import type { RawRow, TurnwiseDatabase } from "./database";
import { joined, readClassmateRow } from "./classmate-row";
import { type ClassmateRow, parseHeardRow } from "./heard-rows";
import type { ResultsInFile } from "./results-bundle";
import { type StorageError, tryWriting } from "./storage-error";

/**
 * What became of a block: it is new here, or was here before; its learner has
 * taken it back; or the coach deleted that learner's results here.
 */
export type TakenIn = "new" | "known" | "withdrawn" | "left-out";

type Shared = NonNullable<ClassmateRow["shared"]>;

/** Takes in a block. Errors: those of the store; nothing of the block is there then. */
export function takeIn(
  database: TurnwiseDatabase,
  { id, block }: NamedBlock,
): Promise<Result<TakenIn, StorageError>> {
  const { heard, classmates, cache } = database;
  const { learner, madeAt } = block;
  return tryWriting(() =>
    database.transaction("rw", [heard, classmates, cache], async () => {
      const stored = await heard.get(id);
      if (stored !== undefined && !isTorn(stored)) return "known";
      // What was computed without the damaged row goes by the same key as with
      // the whole one.
      if (stored !== undefined) await forgetComputed(database, [learner]);
      const row = await readClassmateRow(database, learner);
      if (block.kind === "withdrawn") {
        await heard.put({ id, learner, madeAt, kind: "withdrawn" });
        await withdraw(database, row, madeAt);
        return "new";
      }
      const emptied =
        row.withdrawnAt !== undefined && madeAt <= row.withdrawnAt
          ? "withdrawn"
          : row.leftOut === true
            ? "left-out"
            : undefined;
      if (emptied !== undefined) {
        await heard.put({ id, learner, madeAt, kind: "emptied" });
        return emptied;
      }
      const { kind, name, answers } = block;
      await heard.put({ id, learner, madeAt, kind, name, answers });
      const shared = joined(row.shared, { id, ...block });
      await classmates.put({ ...row, shared });
      return "new";
    }),
  );
}

/**
 * Notes a bundle whose blocks were all taken in, so that its file is not read
 * again: by a row that holds nothing, as of a block that was emptied, and that
 * goes where these go to be read again. It is dated as its newest block, so
 * that a bundle in which nothing counts is told from the others.
 */
export function noteBundle(
  { heard }: TurnwiseDatabase,
  { id, blocks }: ResultsInFile,
): Promise<Result<void, StorageError>> {
  const [{ block: first }] = blocks;
  const { learner, madeAt } = blocks.reduce(
    (newest, { block }) => (block.madeAt > newest.madeAt ? block : newest),
    first,
  );
  return tryWriting(async () => {
    await heard.put({ id, learner, madeAt, kind: "emptied" });
  });
}

/** Whether a block's row is damaged, so that its file is to be read once more. What this machine sent itself is in its own log. */
export function isTorn(stored: RawRow): boolean {
  const row = parseHeardRow(stored);
  if (!row.ok) return stored["kind"] !== "sent";
  return (
    row.value.kind === "answers" &&
    row.value.answers.some((answer) => !parseAnswerLine(answer).ok)
  );
}

/** Empties the learner's blocks made until then, and says anew what the others say. Call it inside a transaction over both tables and the cache. */
export async function withdraw(
  database: TurnwiseDatabase,
  row: ClassmateRow,
  at: Milliseconds,
): Promise<void> {
  const { heard, classmates } = database;
  const { id: learner, nickname, withdrawnAt, leftOut } = row;
  const until =
    withdrawnAt !== undefined && withdrawnAt > at ? withdrawnAt : at;
  let shared: Shared | undefined;
  let isAnyTorn = false;
  for (const stored of await heard.where("learner").equals(learner).toArray()) {
    const read = parseHeardRow(stored);
    if (!read.ok) {
      // Nobody can say when it was made: it goes, and its file, if it is there,
      // says whether it still counts.
      await heard.delete(String(stored["id"]));
      isAnyTorn = true;
      continue;
    }
    const { id, kind, madeAt } = read.value;
    if (kind !== "answers" && kind !== "sent") continue;
    if (madeAt <= until)
      await heard.put({ id, learner, madeAt, kind: "emptied" });
    else if (kind === "answers") shared = joined(shared, read.value);
  }
  // It may have come in a bundle, whose row does not say what was in it.
  if (isAnyTorn)
    await heard
      .where("learner")
      .equals(learner)
      .filter(({ kind }) => kind === "emptied")
      .delete();
  await classmates.put({
    id: learner,
    ...(shared !== undefined && { shared }),
    ...(nickname !== undefined && { nickname }),
    ...(leftOut !== undefined && { leftOut }),
    withdrawnAt: until,
  });
  // What a class page made of them is theirs as well.
  await forgetComputed(database, [learner]);
}
