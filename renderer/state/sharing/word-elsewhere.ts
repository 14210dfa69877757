/**
 * The word that a learner left on another machine: that everything of theirs
 * is taken back. It is found by its file's name, so that nobody else's files
 * are read on a learner's machine.
 */
import { ok, type Result } from "../../../core/result";
import {
  idInFileName,
  markInFileName,
} from "../../../core/sharing/results-file-name";
import type { ResultsFolder } from "../../platform/results-folder";
import type { TurnwiseDatabase } from "../../storage/database";
import { learnerMark, readResultsFile } from "../../storage/results-files";
import {
  changeSharing,
  filesOf,
  readSent,
  type SharingSettings,
} from "../../storage/sent-blocks";
import type { StorageError } from "../../storage/storage-error";
import { takeIn } from "../../storage/take-in";

/** A word is 200 bytes: what is larger under such a name is not read. Units: bytes. */
const WORD_LIMITS = { packed: 2_000, unpacked: 10_000 };

/**
 * Looks for words of this learner that are new here. Where there is one, this
 * machine shares nothing more until the learner chooses again, also where the
 * file has not arrived whole: its name says whose it is. One that can be read
 * also says what no longer counts, whose files go, and how late the next block
 * has to be made.
 *
 * Resolves with whether there was a new one.
 */
export async function hearWordElsewhere(
  database: TurnwiseDatabase,
  learner: string,
  folder: ResultsFolder,
  names: readonly string[],
  { wordsMet = [] }: SharingSettings,
): Promise<Result<boolean, StorageError>> {
  const mark = await learnerMark(learner);
  const words = names.filter((name) => markInFileName(name) === mark);
  const ids = words.flatMap((name) => idInFileName(name) ?? []);
  const fresh = ids.filter((id) => !wordsMet.includes(id));
  if (fresh.length > 0) {
    // First: a window that is killed after it would otherwise go on sharing.
    const stopped = await changeSharing(database, learner, {
      part: "nothing",
      stoppedElsewhere: true,
      wordsMet: [...wordsMet, ...fresh],
    });
    if (!stopped.ok) return stopped;
  }
  for (const name of words) {
    const heard = await hearWord(database, learner, folder, name);
    if (!heard.ok) return heard;
  }
  return ok(fresh.length > 0);
}

async function hearWord(
  database: TurnwiseDatabase,
  learner: string,
  folder: ResultsFolder,
  name: string,
): Promise<Result<void, StorageError>> {
  const bytes = await folder.read(name);
  const word = bytes.ok
    ? await readResultsFile(name, bytes.value, WORD_LIMITS)
    : bytes;
  // Not whole yet: it is read the next time.
  if (!word.ok) return ok(undefined);
  const { block } = word.value;
  if (block.kind !== "withdrawn" || block.learner !== learner)
    return ok(undefined);
  const sent = await readSent(database, learner);
  if (!sent.ok) return sent;
  const hidden = sent.value.blocks.filter(
    ({ madeAt }) => madeAt <= block.madeAt,
  );
  // One that cannot be removed no longer counts, wherever it is read. What else
  // a bundle held goes out anew, as what is not in the folder.
  for (const file of new Set(hidden.flatMap(filesOf)))
    await folder.remove(file);
  const taken = await takeIn(database, word.value);
  return taken.ok ? ok(undefined) : taken;
}
