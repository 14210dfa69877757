/**
 * Who shared results with this machine, and what: read from the tables that
 * `take-in.ts` fills. For the class page: `readClassmates` says who there is,
 * `readHeardAnswers` all that somebody shared, `heardDigests` whether that has
 * changed since it was last looked at.
 *
 * Answers are a union: each once, by its id, whatever the blocks were in which
 * it came. A learner who practises on this machine may stand here as well,
 * under the same id; their own log is never touched by what is heard.
 */
import { Dexie } from "dexie";
import type { Milliseconds } from "../../core/memory/review";
import { inReplayOrder } from "../../core/memory/schedule";
import { isMadeAfter } from "../../core/sharing/results-block";
import {
  parseAnswerLine,
  type SharedAnswer,
} from "../../core/sharing/shared-answer";
import { ok, type Result } from "../../core/result";
import { sha256 } from "../platform/digest";
import { readClassmateRow } from "./classmate-row";
import type { TurnwiseDatabase } from "./database";
import { type HeardRow, parseClassmateRow, parseHeardRow } from "./heard-rows";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** Somebody whose results are here. */
export interface Classmate {
  /** The id that they have on their own machine. */
  readonly id: string;
  /** The name they share under. */
  readonly name: string;
  /** What the coach calls them instead. */
  readonly nickname?: string;
  /** When they gave the newest answer that is here. */
  readonly newest: Milliseconds;
}

/** What somebody shared, as far as it could be read. */
export interface HeardLog {
  /** In the order of replay, (at, id); each once; without what was withdrawn. */
  readonly answers: readonly SharedAnswer[];
  /** Blocks and answers in the store that could not be read. */
  readonly damaged: number;
  /** The ids of the blocks in which they are, and where there is one, of all that hold nothing: a bundle among them may have brought it. */
  readonly damagedBlocks: readonly string[];
}

/** Everybody who shared results that hold, by name. Rows that cannot be read are left out. */
export async function readClassmates(
  database: TurnwiseDatabase,
): Promise<Result<readonly Classmate[], StorageError>> {
  const rows = await tryReading(() => database.classmates.toArray());
  if (!rows.ok) return rows;
  const classmates = rows.value.flatMap((stored): readonly Classmate[] => {
    const row = parseClassmateRow(stored, "");
    if (!row.ok || row.value.shared === undefined) return [];
    const { id, shared, nickname } = row.value;
    const { name, newest } = shared;
    return [{ id, name, newest, ...(nickname !== undefined && { nickname }) }];
  });
  return ok(
    classmates.sort((a, b) =>
      a.name === b.name ? (a.id < b.id ? -1 : 1) : a.name < b.name ? -1 : 1,
    ),
  );
}

/**
 * All answers that a learner shared with this machine.
 *
 * Of an answer that came twice, what the newest block says counts: who first
 * shared without their turns may share them later.
 */
export async function readHeardAnswers(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<HeardLog, StorageError>> {
  const stored = await tryReading(() =>
    database.heard.where("learner").equals(learner).toArray(),
  );
  if (!stored.ok) return stored;
  const blocks: Extract<HeardRow, { kind: "answers" }>[] = [];
  const damagedBlocks = new Set<string>();
  let damaged = 0;
  for (const one of stored.value) {
    const row = parseHeardRow(one);
    if (!row.ok) {
      damaged += 1;
      damagedBlocks.add(String(one["id"]));
    } else if (row.value.kind === "answers") blocks.push(row.value);
  }
  blocks.sort((a, b) => (isMadeAfter(a, b) ? 1 : -1));
  const answers = new Map<string, SharedAnswer>();
  for (const block of blocks)
    for (const one of block.answers) {
      const answer = parseAnswerLine(one);
      if (answer.ok) answers.set(answer.value.id, { ...answer.value, learner });
      else {
        damaged += 1;
        damagedBlocks.add(block.id);
      }
    }
  if (damagedBlocks.size > 0)
    for (const { id, kind } of stored.value)
      if (kind === "emptied") damagedBlocks.add(String(id));
  return ok({
    answers: inReplayOrder([...answers.values()]),
    damaged,
    damagedBlocks: [...damagedBlocks],
  });
}

/**
 * For everybody whose results are here, a key that changes with whatever
 * `readHeardAnswers` depends on: the blocks' ids joined and digested, without
 * reading an answer. By learner; somebody who withdrew everything has one too.
 */
export async function heardDigests(
  database: TurnwiseDatabase,
): Promise<Result<ReadonlyMap<string, string>, StorageError>> {
  return tryReading(async () => {
    const { heard, classmates } = database;
    const [learners, ids, out] = await database.transaction(
      "r",
      [heard, classmates],
      () => {
        // Both in the index's order: by learner, then by id.
        const all = heard.where("learner").between(Dexie.minKey, Dexie.maxKey);
        const leftOut = classmates.filter((row) => row["leftOut"] === true);
        return Promise.all([
          all.clone().keys(),
          all.clone().primaryKeys(),
          leftOut.primaryKeys(),
        ]);
      },
    );
    const outIds = new Set(out);
    const blocks = new Map<unknown, string[]>();
    learners.forEach((learner, i) => {
      const own = blocks.get(learner) ?? [];
      if (own.length === 0) blocks.set(learner, own);
      own.push(ids[i] ?? "");
    });
    const digests = new Map<string, string>();
    for (const [learner, own] of blocks)
      if (typeof learner === "string")
        digests.set(learner, await digestOf(own, outIds.has(learner)));
    return digests;
  });
}

async function digestOf(
  ids: readonly string[],
  isLeftOut: boolean,
): Promise<string> {
  const text = [isLeftOut ? "left out" : "", ...ids].join("\n");
  return sha256(new TextEncoder().encode(text));
}

/** The ids of all blocks that need not be read again. A row that has lost its learner is nobody's, and would stay so. */
export function readKnownBlocks({
  heard,
}: TurnwiseDatabase): Promise<Result<ReadonlySet<string>, StorageError>> {
  return tryReading(
    async () =>
      new Set(await heard.where("learner").startsWith("").primaryKeys()),
  );
}

/** Whether answers of somebody may be here already: they practise on this machine, or have shared before. */
export function mayHaveAnswers(
  { learners, classmates }: TurnwiseDatabase,
  learner: string,
): Promise<Result<boolean, StorageError>> {
  return tryReading(async () => {
    if ((await learners.get(learner)) !== undefined) return true;
    return (await classmates.get(learner))?.["shared"] !== undefined;
  });
}

/** Calls somebody by another name here; by their own again where it is undefined. */
export function saveNickname(
  database: TurnwiseDatabase,
  learner: string,
  nickname: string | undefined,
): Promise<Result<void, StorageError>> {
  return tryWriting(async () => {
    // A field that is undefined goes.
    await database.classmates.update(learner, { nickname });
  });
}

/**
 * Deletes what somebody shared from this machine, with their name. It stays
 * away, whatever the shared folder holds, until `readAgain`; their own machine
 * is not told.
 */
export function deleteClassmate(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<void, StorageError>> {
  const { classmates, heard, cache } = database;
  return tryWriting(() =>
    database.transaction("rw", [classmates, heard, cache], async () => {
      const { withdrawnAt } = await readClassmateRow(database, learner);
      await heard
        .where("learner")
        .equals(learner)
        .modify((stored, place) => {
          const { id, madeAt, kind } = stored;
          // A damaged row may still hold answers and a name.
          if (kind !== "withdrawn" && kind !== "sent")
            place.value = {
              ...{ id, learner, kind: "emptied" },
              madeAt: typeof madeAt === "number" ? madeAt : 0,
            };
        });
      await classmates.put({
        id: learner,
        ...(withdrawnAt !== undefined && { withdrawnAt }),
        leftOut: true,
      });
      await cache.filter((kept) => kept["learner"] === learner).delete();
    }),
  );
}

/** How many people's results were deleted here and stay away. */
export function countLeftOut(
  database: TurnwiseDatabase,
): Promise<Result<number, StorageError>> {
  return tryReading(() =>
    database.classmates.filter((row) => row["leftOut"] === true).count(),
  );
}

/** Lets in again what was deleted here: the next look at the folder, or at a file, takes it in. */
export function readAgain(
  database: TurnwiseDatabase,
): Promise<Result<void, StorageError>> {
  const { classmates, heard } = database;
  return tryWriting(() =>
    database.transaction("rw", [classmates, heard], async () => {
      const out = await classmates
        .filter((row) => row["leftOut"] === true)
        .primaryKeys();
      for (const id of out) {
        // A field that is undefined goes.
        await classmates.update(id, { leftOut: undefined });
        await heard
          .where("learner")
          .equals(id)
          .filter(({ kind }) => kind === "emptied")
          .delete();
      }
    }),
  );
}
