/**
 * What others shared, as rows: one for each block, one for each person.
 *
 * A block's row stays when what was in it goes, because it was withdrawn or
 * deleted here: by its id a file in a shared folder is known without being
 * read again.
 */
import * as v from "valibot";
import { LONGEST_NAME } from "../../core/memory/learner";
import {
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
} from "../../core/memory/stored-row";
import { ok, type Result } from "../../core/result";

const NAME = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_NAME));

const BLOCK_ID = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/));

const PLACE = { id: BLOCK_ID, learner: v.string(), madeAt: MILLISECONDS };

const HEARD = v.variant("kind", [
  v.object({
    ...PLACE,
    kind: v.literal("answers"),
    name: NAME,
    answers: v.array(v.unknown()),
  }),
  v.object({ ...PLACE, kind: v.literal("withdrawn") }),
  v.object({ ...PLACE, kind: v.literal("emptied") }),
  v.object({
    ...PLACE,
    kind: v.literal("sent"),
    part: v.picklist(["answers", "turns"]),
    answers: v.array(v.string()),
    /** The bundle that its file was put into. */
    within: v.exactOptional(BLOCK_ID),
  }),
]);

/**
 * A block's row. Its answers are not yet parsed; of a block that this machine
 * itself sent there are the ids alone, since the answers are in its own log.
 */
export type HeardRow = v.InferOutput<typeof HEARD>;

/** The row of a block, as it was stored. */
export function parseHeardRow(row: unknown): Result<HeardRow, StoredRowError> {
  return readBySchema(HEARD, row);
}

const CLASSMATE = v.object({
  id: v.string(),
  /** Of the newest block that holds; absent where none does. */
  shared: v.exactOptional(
    v.object({
      name: NAME,
      /** The block that has the name. */
      id: BLOCK_ID,
      madeAt: MILLISECONDS,
      /** When the newest answer was given. */
      newest: MILLISECONDS,
    }),
  ),
  /** What the coach calls them. */
  nickname: v.exactOptional(NAME),
  /** Blocks made until then are withdrawn. */
  withdrawnAt: v.exactOptional(MILLISECONDS),
  /** Deleted here by the coach: nothing of theirs is kept until they ask for it again. */
  leftOut: v.exactOptional(v.literal(true)),
});

/** A person's row. */
export type ClassmateRow = v.InferOutput<typeof CLASSMATE>;

/** A person's row as it was stored; of somebody not heard of before, an empty one. */
export function parseClassmateRow(
  row: unknown,
  id: string,
): Result<ClassmateRow, StoredRowError> {
  return row === undefined ? ok({ id }) : readBySchema(CLASSMATE, row);
}
