/** A person's row, made anew from their blocks where it is damaged. */
import type { Milliseconds } from "../../core/memory/review";
import { isMadeAfter } from "../../core/sharing/results-block";
import type { TurnwiseDatabase } from "./database";
import {
  type ClassmateRow,
  parseClassmateRow,
  parseHeardRow,
} from "./heard-rows";

type Shared = NonNullable<ClassmateRow["shared"]>;

/** The later of two instants, either of which may be missing. */
export function later(
  a: Milliseconds | undefined,
  b: Milliseconds | undefined,
): Milliseconds | undefined {
  return a === undefined || (b !== undefined && b > a) ? b : a;
}

function instantOf(answer: unknown): number {
  return typeof answer === "object" &&
    answer !== null &&
    "at" in answer &&
    typeof answer.at === "number"
    ? answer.at
    : 0;
}

/** What a block says of its learner, joined with what others said: the newest name, and the newest answer. */
export function joined(
  others: Shared | undefined,
  block: Omit<Shared, "newest"> & { readonly answers: readonly unknown[] },
): Shared {
  const { id, name, madeAt, answers } = block;
  let newest = others?.newest ?? 0;
  for (const answer of answers) newest = Math.max(newest, instantOf(answer));
  const said =
    others === undefined || isMadeAfter(block, others)
      ? { id, name, madeAt }
      : others;
  return { ...said, newest: newest as Milliseconds };
}

/**
 * A person's row; of somebody not heard of before, an empty one. Call it
 * inside a transaction over both tables.
 *
 * A damaged one is made of their blocks again: what is here comes from no
 * folder a second time, and a withdrawal that was forgotten would let in what
 * was taken back. What the coach said of them is lost.
 */
export async function readClassmateRow(
  database: TurnwiseDatabase,
  learner: string,
): Promise<ClassmateRow> {
  const stored = await database.classmates.get(learner);
  const read = parseClassmateRow(stored, learner);
  return read.ok ? read.value : rowOfBlocks(database, learner);
}

/** What a person's blocks say of them, and nothing that the coach said. Call it inside a transaction over the blocks. */
export async function rowOfBlocks(
  { heard }: TurnwiseDatabase,
  learner: string,
): Promise<ClassmateRow> {
  let shared: Shared | undefined;
  let withdrawnAt: Milliseconds | undefined;
  for (const stored of await heard.where("learner").equals(learner).toArray()) {
    const block = parseHeardRow(stored);
    if (!block.ok) continue;
    const { kind, madeAt } = block.value;
    if (kind === "withdrawn" && madeAt > (withdrawnAt ?? -1))
      withdrawnAt = madeAt;
    if (block.value.kind === "answers") shared = joined(shared, block.value);
  }
  return {
    id: learner,
    ...(shared !== undefined && { shared }),
    ...(withdrawnAt !== undefined && { withdrawnAt }),
  };
}
