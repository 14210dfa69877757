/**
 * What this machine itself shared: one row for each block, beside those that
 * were heard, with the ids of its answers. By them an answer goes out once, and
 * by the blocks' ids their files are found again when they are taken back.
 */
import * as v from "valibot";
import type { Milliseconds } from "../../core/memory/review";
import type { SharedPart } from "../../core/sharing/shared-answer";
import { SHARED_PARTS } from "../../core/sharing/shared-answer";
import { resultsFileName } from "../../core/sharing/results-file-name";
import { MILLISECONDS } from "../../core/memory/stored-row";
import { ok, type Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import { type HeardRow, parseHeardRow } from "./heard-rows";
import { sharingKey } from "./learners";
import { mergeSetting, readSetting } from "./settings";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

/** A block that was sent from here and not taken back. */
export type SentBlock = Extract<HeardRow, { kind: "sent" }>;

// A field that was taken away is stored as undefined.
const SETTINGS = v.looseObject({
  part: v.fallback(v.picklist(SHARED_PARTS), "nothing"),
  /** The name for the class; the learner's own where absent. */
  name: v.optional(v.string()),
  /** When the learner's last block was made here. */
  lastMadeAt: v.optional(MILLISECONDS),
  /** The learner's day on which something was last laid into the folder. */
  sharedOn: v.optional(v.number()),
  /** The ids of withdrawals of this learner that were met here, their own among them. */
  wordsMet: v.fallback(v.optional(v.array(v.string())), undefined),
  /** Whether sharing stopped here because the learner took everything back elsewhere, and has not chosen since. */
  stoppedElsewhere: v.optional(v.boolean()),
  /** Whether a file was handed over that nobody here can take out of a folder. */
  handedOver: v.optional(v.boolean()),
});

/** What a learner shares from this machine. */
export type SharingSettings = Readonly<v.InferOutput<typeof SETTINGS>>;

/** What a learner chose; nothing is shared before they have. */
export async function readSharing(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<SharingSettings, StorageError>> {
  const stored = await readSetting(database, sharingKey(learner));
  if (!stored.ok) return stored;
  const parsed = v.safeParse(SETTINGS, stored.value);
  return ok(parsed.success ? parsed.output : { part: "nothing" });
}

/** Changes some of it. A field that is undefined goes. */
export function changeSharing(
  database: TurnwiseDatabase,
  learner: string,
  patch: { readonly [Field in keyof SharingSettings]?: unknown },
): Promise<Result<void, StorageError>> {
  return mergeSetting(database, sharingKey(learner), patch);
}

/** What was sent of a learner's and holds, and when their newest block was made, as far as it is known here. */
export async function readSent(
  database: TurnwiseDatabase,
  learner: string,
): Promise<
  Result<
    {
      readonly blocks: readonly SentBlock[];
      /** How many answers are in them, each once. */
      readonly answers: number;
      readonly last: Milliseconds | undefined;
    },
    StorageError
  >
> {
  const rows = await tryReading(() =>
    database.heard.where("learner").equals(learner).toArray(),
  );
  if (!rows.ok) return rows;
  const blocks: SentBlock[] = [];
  let last: Milliseconds | undefined;
  for (const stored of rows.value) {
    const row = parseHeardRow(stored);
    if (!row.ok) continue;
    if (row.value.kind === "sent") blocks.push(row.value);
    if (last === undefined || row.value.madeAt > last) last = row.value.madeAt;
  }
  const ids = blocks.flatMap((block) => block.answers);
  return ok({ blocks, answers: new Set(ids).size, last });
}

/** The names of the files that a block may lie in: its own, and the bundle's it was put into. */
export function filesOf({ id, within }: SentBlock): readonly string[] {
  return [id, ...(within === undefined ? [] : [within])].map(resultsFileName);
}

/** Notes that the files of some blocks are put into a bundle. */
export function noteWithin(
  database: TurnwiseDatabase,
  ids: readonly string[],
  within: string,
): Promise<Result<void, StorageError>> {
  return tryWriting(async () => {
    await database.heard.where("id").anyOf(ids).modify({ within });
  });
}

/** Notes a block that lies in the folder now. */
export function noteSent(
  database: TurnwiseDatabase,
  block: {
    readonly id: string;
    readonly learner: string;
    readonly madeAt: Milliseconds;
    readonly part: Exclude<SharedPart, "nothing">;
    readonly answers: readonly string[];
  },
): Promise<Result<void, StorageError>> {
  return tryWriting(async () => {
    await database.heard.put({ ...block, kind: "sent" });
  });
}
