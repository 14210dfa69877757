/**
 * Taking results in: from the shared folder, or from files that somebody
 * chose. A file whose content is here already and whole, as its name and what
 * was noted of damage say, is not read; one that cannot be read is told and left alone, and is read again at the next
 * look.
 */
import { isAnswer } from "../../../core/progress/answer-log";
import { err, ok, type Result } from "../../../core/result";
import {
  idInFileName,
  MAX_RESULTS_BYTES,
} from "../../../core/sharing/results-file-name";
import { breather } from "../../platform/breather";
import type { FolderError, ResultsFolder } from "../../platform/results-folder";
import type { TurnwiseDatabase } from "../../storage/database";
import { mayHaveAnswers, readKnownBlocks } from "../../storage/classmates";
import {
  forgetDamagedResults,
  readDamagedResults,
} from "../../storage/damaged-results";
import { readResultsIn } from "../../storage/results-bundle";
import type { ResultsFileError } from "../../storage/results-files";
import type { StorageError } from "../../storage/storage-error";
import { noteBundle, takeIn, type TakenIn } from "../../storage/take-in";

/** Somebody whose results came. */
export interface Arrival {
  readonly learner: string;
  readonly name: string;
  /** How many answers came, each once; showings are none. */
  readonly answers: number;
  /** Whether some of them may have been here: they practise here, or shared before. */
  readonly wasHere: boolean;
}

/** What a look came to. */
export interface Intake {
  /** By learner; in the order in which they came. */
  readonly arrivals: readonly Arrival[];
  /** People who took back what they had shared. */
  readonly withdrawn: number;
  /** Files of people whose results were deleted here and stay away. */
  readonly leftOut: number;
  /** Files that were here before, or no longer count. */
  readonly known: number;
  /** Files that could not be read, and why. */
  readonly unread: readonly {
    readonly name: string;
    readonly error: ResultsFileError | FolderError;
  }[];
}

type Bytes = Uint8Array<ArrayBuffer>;

/** A file, not yet read. */
interface Waiting {
  readonly name: string;
  readonly read: () => Promise<Result<Bytes, ResultsFileError | FolderError>>;
}

async function takeAll(
  database: TurnwiseDatabase,
  files: readonly Waiting[],
  onprogress: (done: number, of: number) => void,
): Promise<Result<Intake, StorageError>> {
  const arrivals = new Map<string, Omit<Arrival, "answers">>();
  const came = new Map<string, Set<string>>();
  const unread: { name: string; error: ResultsFileError | FolderError }[] = [];
  const gone = new Set<string>();
  let [leftOut, known] = [0, 0];
  const breathe = breather();
  for (const [n, { name, read }] of files.entries()) {
    onprogress(n, files.length);
    await breathe();
    const bytes = await read();
    const file = bytes.ok ? await readResultsIn(name, bytes.value) : bytes;
    if (!file.ok) {
      unread.push({ name, error: file.error });
      continue;
    }
    const outcomes = new Set<TakenIn>();
    for (const named of file.value.blocks) {
      const before = await mayHaveAnswers(database, named.block.learner);
      if (!before.ok) return before;
      const taken = await takeIn(database, named);
      if (!taken.ok) return taken;
      outcomes.add(taken.value);
      const { block } = named;
      if (taken.value !== "new") continue;
      if (block.kind === "withdrawn") gone.add(block.learner);
      else {
        const { learner, name } = block;
        const wasHere = arrivals.get(learner)?.wasHere ?? before.value;
        arrivals.set(learner, { learner, name, wasHere });
        const ids = came.get(learner) ?? new Set();
        for (const answer of block.answers)
          if (isAnswer(answer)) ids.add(answer.id);
        came.set(learner, ids);
      }
    }
    if (outcomes.has("left-out")) leftOut += 1;
    else if (!outcomes.has("new")) known += 1;
    if (file.value.isBundle) {
      const noted = await noteBundle(database, file.value);
      if (!noted.ok) return noted;
    }
  }
  const all = [...arrivals.values()].map((one) => ({
    ...one,
    answers: came.get(one.learner)?.size ?? 0,
  }));
  return ok({ arrivals: all, withdrawn: gone.size, leftOut, known, unread });
}

/** Looks through the shared folder. Errors: those of the folder as a whole, and of the store. */
export async function lookThroughFolder(
  database: TurnwiseDatabase,
  folder: ResultsFolder,
  onprogress: (done: number, of: number) => void = () => undefined,
): Promise<Result<Intake, FolderError | StorageError>> {
  const names = await folder.list();
  if (!names.ok) return names;
  const here = await readKnownBlocks(database);
  if (!here.ok) return here;
  const torn = await readDamagedResults(database);
  if (!torn.ok) return torn;
  const again = new Set(torn.value);
  const waiting = names.value
    .filter((name) => {
      const id = idInFileName(name) ?? "";
      return again.has(id) || !here.value.has(id);
    })
    .map((name) => ({ name, read: () => folder.read(name) }));
  const came = await takeAll(database, waiting, onprogress);
  if (!came.ok || again.size === 0) return came;
  // Those that are not in the folder, or not whole there, are looked for again.
  const unread = new Set(came.value.unread.map(({ name }) => name));
  const read = waiting.filter(({ name }) => !unread.has(name));
  const forgotten = await forgetDamagedResults(
    database,
    new Set(read.flatMap(({ name }) => idInFileName(name) ?? [])),
  );
  return forgotten.ok ? came : forgotten;
}

/** Takes in files that somebody chose. */
export function takeFiles(
  database: TurnwiseDatabase,
  files: readonly File[],
  onprogress: (done: number, of: number) => void = () => undefined,
): Promise<Result<Intake, StorageError>> {
  return takeAll(
    database,
    files.map((file) => ({ name: file.name, read: () => bytesOf(file) })),
    onprogress,
  );
}

async function bytesOf(file: File): Promise<Result<Bytes, ResultsFileError>> {
  const limit = MAX_RESULTS_BYTES;
  if (file.size > limit) return err({ code: "packed-too-large", limit });
  try {
    return ok(new Uint8Array(await file.arrayBuffer()));
  } catch (thrown) {
    const reason = thrown instanceof Error ? thrown.name : "unknown";
    return err({ code: "file-not-read", reason });
  }
}
