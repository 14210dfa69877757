/**
 * A learner's own files of a past month become one: who shares every day for
 * two years would otherwise leave 700 files in the folder, and a class of
 * 2,000 over a million.
 *
 * The bundle is written and read back before anything is removed, and what was
 * begun is finished at the next sharing; meanwhile blocks are there twice,
 * which is the same union.
 */
import { ok, type Result } from "../../../core/result";
import type { Milliseconds } from "../../../core/memory/review";
import { MOST_PARTS } from "../../../core/sharing/results-bundle";
import { resultsFileName } from "../../../core/sharing/results-file-name";
import type { ResultsFolder } from "../../platform/results-folder";
import type { TurnwiseDatabase } from "../../storage/database";
import { readResultsFile } from "../../storage/results-files";
import {
  packBundle,
  PART_LIMITS,
  readResultsIn,
} from "../../storage/results-bundle";
import {
  noteWithin,
  readSent,
  type SentBlock,
} from "../../storage/sent-blocks";
import type { SharingError } from "./sharing-error";

const OK = ok(undefined);

/**
 * A block of more answers is too large to be a part, which is known without
 * reading its file: with their turns they are up to 240 bytes each, packed.
 */
const MOST_ANSWERS = 1_000;

/** The month of an instant, UTC. Shape: "2026-11"; later months sort behind. */
function monthOf(at: Milliseconds): string {
  return new Date(at).toISOString().slice(0, -17);
}

/**
 * Puts together what this machine laid into the folder in each past month, or
 * in one that has enough for a bundle: where a clock once ran ahead, all that
 * comes after is dated in the month it ran to. Files that cannot be read, or
 * are too large to be a part, are left as they are.
 *
 * Shape: `names` of the files that are in the folder.
 * Errors: those of the folder and the store; nothing is lost then.
 */
export async function bundlePastMonths(
  database: TurnwiseDatabase,
  learner: string,
  folder: ResultsFolder,
  names: readonly string[],
  now: Milliseconds,
): Promise<Result<void, SharingError>> {
  const there = new Set(names);
  const isThere = (id: string) => there.has(resultsFileName(id));
  const sent = await readSent(database, learner);
  if (!sent.ok) return sent;
  const months = new Map<string, SentBlock[]>();
  for (const block of sent.value.blocks) {
    const { id, madeAt, within, answers } = block;
    if (!isThere(id) || answers.length > MOST_ANSWERS) continue;
    // A bundle that was written, and the window closed before its parts went.
    const key =
      within !== undefined && isThere(within) ? within : monthOf(madeAt);
    months.set(key, [...(months.get(key) ?? []), block]);
  }
  for (const [key, blocks] of months) {
    const isBegun = blocks[0]?.within === key;
    if (!isBegun && key >= monthOf(now) && blocks.length < MOST_PARTS) continue;
    const held = isBegun ? await removeParts(folder, key, blocks) : ok(false);
    if (!held.ok) return held;
    // Where the bundle is half-written, it is written once more.
    if (held.value) continue;
    const bundled = await bundle(database, folder, blocks);
    if (!bundled.ok) return bundled;
  }
  return OK;
}

async function bundle(
  database: TurnwiseDatabase,
  folder: ResultsFolder,
  blocks: readonly SentBlock[],
): Promise<Result<void, SharingError>> {
  // One alone stays as it is, and is not read to find that out.
  if (blocks.length < 2) return OK;
  const parts: { readonly block: SentBlock; bytes: Uint8Array<ArrayBuffer> }[] =
    [];
  // In an order of their own, so that the same parts are the same bundle.
  const inOrder = blocks.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  for (const block of inOrder.slice(0, MOST_PARTS)) {
    const name = resultsFileName(block.id);
    const bytes = await folder.read(name);
    if (!bytes.ok) continue;
    const read = await readResultsFile(name, bytes.value, PART_LIMITS);
    if (read.ok) parts.push({ block, bytes: bytes.value });
  }
  if (parts.length < 2) return OK;
  const { id, bytes } = await packBundle(parts.map((part) => part.bytes));
  // Noted first, so that taking everything back finds it.
  const held = parts.map(({ block }) => block);
  const noted = await noteWithin(
    database,
    held.map((block) => block.id),
    id,
  );
  if (!noted.ok) return noted;
  const written = await folder.write(resultsFileName(id), bytes);
  if (!written.ok) return written;
  const removed = await removeParts(folder, id, held);
  return removed.ok ? OK : removed;
}

/** Removes the files of parts whose bundle can be read back with them in it. Resolves with whether it could. */
async function removeParts(
  folder: ResultsFolder,
  id: string,
  blocks: readonly SentBlock[],
): Promise<Result<boolean, SharingError>> {
  const name = resultsFileName(id);
  const bytes = await folder.read(name);
  if (!bytes.ok) return bytes;
  const read = await readResultsIn(name, bytes.value);
  if (!read.ok) return ok(false);
  const held = new Set(read.value.blocks.map((one) => one.id));
  for (const block of blocks)
    if (held.has(block.id)) {
      const removed = await folder.remove(resultsFileName(block.id));
      if (!removed.ok) return removed;
    }
  return ok(true);
}
