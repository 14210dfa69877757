/**
 * The lines of a backup that only a coach's machine has: sheets that were
 * printed, by their codes, so that their ticks can come in; people who shared
 * results, with what the coach calls them and whether they were deleted here;
 * and the blocks that they shared.
 *
 * A block may be larger than a line, so its answers stand in parts, each a
 * line of its own. What rows mean is for the store to say, as with decks: a
 * line only has to be able to find its place.
 */
import * as v from "valibot";
import { COUNT, readBySchema, type StoredRowError } from "../memory/stored-row";
import { ok, type Result } from "../result";

/** A row as the store has it, known to be JSON and no more. */
export type BackupRow = Readonly<Record<string, unknown>>;

/** One part of a block that was shared. */
export interface HeardPart {
  /** The block's row, without its answers. */
  readonly row: BackupRow & { readonly id: string };
  /** Counted from 0; below `parts`. */
  readonly part: number;
  readonly parts: number;
  /** Absent where the block has none to have, as a withdrawal. */
  readonly answers?: readonly unknown[] | undefined;
}

/** A line of these, by its kind. */
export type ClassLine =
  | { readonly kind: "sheet"; readonly code: string; readonly row: BackupRow }
  | { readonly kind: "classmate"; readonly id: string; readonly row: BackupRow }
  | { readonly kind: "heard"; readonly part: HeardPart };

/** More parts than lines may be in a backup nobody has. */
const MOST_PARTS = 1_000_000;

const ID = v.pipe(v.string(), v.minLength(1));

const SHEET = v.looseObject({ code: ID });

const CLASSMATE = v.looseObject({ id: ID });

const HEARD = v.pipe(
  v.looseObject({
    row: v.looseObject({ id: ID }),
    part: COUNT,
    parts: v.pipe(COUNT, v.minValue(1), v.maxValue(MOST_PARTS)),
    answers: v.optional(v.array(v.unknown())),
  }),
  v.check(({ part, parts }) => part < parts),
);

/** What each of these kinds makes of the value under its name. */
export const CLASS_KINDS = {
  sheet: (value) => {
    const parsed = readBySchema(SHEET, value);
    return parsed.ok
      ? ok({ kind: "sheet", code: parsed.value.code, row: parsed.value })
      : parsed;
  },
  classmate: (value) => {
    const parsed = readBySchema(CLASSMATE, value);
    return parsed.ok
      ? ok({ kind: "classmate", id: parsed.value.id, row: parsed.value })
      : parsed;
  },
  heard: (value) => {
    const parsed = readBySchema(HEARD, value);
    return parsed.ok ? ok({ kind: "heard", part: parsed.value }) : parsed;
  },
} satisfies Record<
  ClassLine["kind"],
  (value: unknown) => Result<ClassLine, StoredRowError>
>;
