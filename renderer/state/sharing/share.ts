/**
 * What a learner sends: new answers into the shared folder, everything as
 * files to hand over, and the word that takes all of it back.
 *
 * The folder says what was sent: an answer counts as shared while the file it
 * went in lies there, so that a folder that was emptied, or another one, fills
 * again. One window at a time shares for a learner (a Web Lock), or two would
 * send the same twice; that would still be the same union.
 */
import type { Learner } from "../../../core/memory/learner";
import type {
  LocalDay,
  Milliseconds,
  Review,
} from "../../../core/memory/review";
import { isAnswer } from "../../../core/progress/answer-log";
import { err, ok, type Result } from "../../../core/result";
import type { ResultsBlock } from "../../../core/sharing/results-block";
import {
  resultsFileName,
  withdrawalFileName,
} from "../../../core/sharing/results-file-name";
import {
  blocksToShare,
  nextMadeAt,
} from "../../../core/sharing/results-writer";
import type { SharedPart } from "../../../core/sharing/shared-answer";
import type { ResultsFolder } from "../../platform/results-folder";
import { webLocks } from "../../platform/web-locks";
import { later } from "../../storage/classmate-row";
import type { TurnwiseDatabase } from "../../storage/database";
import { sharingKey } from "../../storage/learners";
import { learnerMark, packResults } from "../../storage/results-files";
import {
  changeSharing,
  filesOf,
  noteSent,
  readSent,
  readSharing,
  type SentBlock,
} from "../../storage/sent-blocks";
import type { StorageError } from "../../storage/storage-error";
import { takeIn } from "../../storage/take-in";
import { bundlePastMonths } from "./bundle-months";
import type { SharingError } from "./sharing-error";
import { hearWordElsewhere } from "./word-elsewhere";

/** Whose answers are shared, and when. */
export interface Sharer {
  readonly database: TurnwiseDatabase;
  readonly learner: Learner;
  /** The whole log. */
  readonly reviews: readonly Review[];
  readonly now: Milliseconds;
  readonly today: LocalDay;
}

/** What was laid into the folder. */
export interface Sent {
  readonly answers: number;
  /** Showings, which go along and are no answers. */
  readonly shown: number;
  /** Answers that no other Turnwise could read, and that stay here. */
  readonly leftOut: number;
}

/** A file to hand over. */
export interface ResultsFile {
  readonly name: string;
  readonly file: Blob;
}

function alone<T>(learner: string, act: () => Promise<T>): Promise<T> {
  const locks = webLocks();
  return locks === undefined ? act() : locks.request(sharingKey(learner), act);
}

type Part = Exclude<SharedPart, "nothing">;

/** The ids of answers that need not be sent: in a file that is there, with as much of them as is now shared. */
function sharedIds(
  blocks: readonly SentBlock[],
  names: readonly string[],
  part: Part,
): ReadonlySet<string> {
  const there = new Set(names);
  return new Set(
    blocks
      .filter(
        (block) =>
          filesOf(block).some((name) => there.has(name)) &&
          (part === "answers" || block.part === "turns"),
      )
      .flatMap(({ answers }) => answers),
  );
}

/**
 * Lays into the folder what is not there yet.
 *
 * Errors: `nothing-chosen`; `taken-back-elsewhere`, and nothing is laid
 *         there; those of the folder and the store. What was laid
 *         there before an error is known to be there.
 */
export function shareNow(
  { database, learner, reviews, now, today }: Sharer,
  folder: ResultsFolder,
): Promise<Result<Sent, SharingError>> {
  return alone(learner.id, async () => {
    const settings = await readSharing(database, learner.id);
    if (!settings.ok) return settings;
    const { part, name = learner.name, lastMadeAt } = settings.value;
    if (part === "nothing") return err({ code: "nothing-chosen" });
    const names = await folder.list();
    if (!names.ok) return names;
    const word = await hearWordElsewhere(
      ...[database, learner.id, folder, names.value, settings.value],
    );
    if (!word.ok) return word;
    if (word.value) return err({ code: "taken-back-elsewhere" });
    const sent = await readSent(database, learner.id);
    if (!sent.ok) return sent;
    const shared = sharedIds(sent.value.blocks, names.value, part);
    const fresh = reviews.filter(({ id }) => !shared.has(id));
    const last = later(sent.value.last, lastMadeAt);
    let [answers, shown, leftOut] = [0, 0, 0];
    for (const block of blocksToShare({
      ...{ learner: learner.id, name, part, reviews: fresh, now, last },
    })) {
      const packed = await packResults(block);
      leftOut += packed.leftOut;
      if (packed.answers.length === 0) continue;
      // Noted first: a file that nobody noted would stay in the folder when
      // the learner takes everything back. One that was noted and is not there
      // is not counted as shared, and goes out anew.
      const { madeAt } = block;
      const noted = await noteSent(database, {
        ...{ id: packed.id, learner: learner.id, madeAt, part },
        answers: packed.answers,
      });
      if (!noted.ok) return noted;
      const written = await folder.write(
        resultsFileName(packed.id),
        packed.bytes,
      );
      if (!written.ok) return written;
      const laid = new Set(packed.answers);
      for (const one of block.answers) {
        if (!laid.has(one.id)) continue;
        if (isAnswer(one)) answers += 1;
        else shown += 1;
      }
    }
    // A look at which nothing was new leaves the day's block to what comes.
    if (answers + shown > 0) {
      const changed = await changeSharing(database, learner.id, {
        sharedOn: today,
      });
      if (!changed.ok) return changed;
    }
    // What is laid there is shared, though it could not be put together: some
    // folders let nobody remove a file. It is tried again at the next sharing.
    await bundlePastMonths(...[database, learner.id, folder, names.value, now]);
    return ok({ answers, shown, leftOut });
  });
}

async function fileOf(block: ResultsBlock, name: string): Promise<ResultsFile> {
  const { bytes } = await packResults(block);
  return { name, file: new Blob([bytes], { type: "application/gzip" }) };
}

/**
 * Everything that is shared, as files to hand over: one, but for a log of more
 * than 20,000 answers. None where there is no answer.
 *
 * Shape: `title` is the file's name without its ending.
 */
export function filesToHandOver(
  { database, learner, reviews, now }: Sharer,
  title: string,
): Promise<Result<readonly ResultsFile[], SharingError>> {
  return alone(learner.id, async () => {
    const settings = await readSharing(database, learner.id);
    if (!settings.ok) return settings;
    const { part, name = learner.name, lastMadeAt } = settings.value;
    if (part === "nothing") return err({ code: "nothing-chosen" });
    const sent = await readSent(database, learner.id);
    if (!sent.ok) return sent;
    const last = later(sent.value.last, lastMadeAt);
    const blocks = blocksToShare({
      ...{ learner: learner.id, name, part, reviews, now, last },
    });
    const made = blocks.at(-1)?.madeAt;
    if (made !== undefined) {
      const noted = await changeSharing(database, learner.id, {
        lastMadeAt: made,
        handedOver: true,
      });
      if (!noted.ok) return noted;
    }
    const numbered = (n: number) =>
      blocks.length === 1 ? title : `${title}, ${n + 1} of ${blocks.length}`;
    return ok(
      await Promise.all(
        blocks.map((block, n) =>
          fileOf(block, `${numbered(n)}.turnwise-results`),
        ),
      ),
    );
  });
}

/** What came of taking everything back. */
export interface TakenBack {
  /** Files of this machine that could not be removed from the folder; they no longer count. */
  readonly left: number;
  /** What is to be handed to whoever was handed a file; undefined where nobody was. */
  readonly file: ResultsFile | undefined;
}

/**
 * Takes back everything the learner ever shared, from any machine: the word
 * goes into the folder, the files that this machine laid there go out of it,
 * and nothing more is shared.
 *
 * Errors: those of the folder and the store. Nothing was taken back then.
 */
export function takeBack(
  { database, learner, now }: Sharer,
  folder: ResultsFolder | undefined,
  title: string,
): Promise<Result<TakenBack, SharingError>> {
  return alone(learner.id, async () => {
    const settings = await readSharing(database, learner.id);
    if (!settings.ok) return settings;
    const { part, lastMadeAt, handedOver = false } = settings.value;
    const { wordsMet = [] } = settings.value;
    const sent = await readSent(database, learner.id);
    if (!sent.ok) return sent;
    const { blocks } = sent.value;
    // Without the folder its files would go on telling.
    if (folder === undefined && blocks.length > 0)
      return err({ code: "no-folder" });
    const block = {
      kind: "withdrawn",
      learner: learner.id,
      madeAt: nextMadeAt(now, later(sent.value.last, lastMadeAt)),
    } as const;
    const { id, bytes } = await packResults(block);
    let left = 0;
    // Before the word is out: a window that is killed between the two would
    // share everything anew by itself, as made after it.
    const { madeAt } = block;
    const stopped = await changeSharing(database, learner.id, {
      part: "nothing",
      lastMadeAt: madeAt,
      wordsMet: [...wordsMet, id],
    });
    if (!stopped.ok) return stopped;
    if (folder !== undefined) {
      const mark = await learnerMark(learner.id);
      const written = await folder.write(withdrawalFileName(id, mark), bytes);
      if (!written.ok) {
        const back = await changeSharing(database, learner.id, { part });
        return back.ok ? written : back;
      }
      for (const file of new Set(blocks.flatMap(filesOf))) {
        const removed = await folder.remove(file);
        if (!removed.ok) left += 1;
      }
    }
    const noted = await noteTakenBack(database, learner.id, { id, block });
    if (!noted.ok) return noted;
    return ok({
      left,
      file: handedOver
        ? await fileOf(block, `${title}.turnwise-results`)
        : undefined,
    });
  });
}

async function noteTakenBack(
  database: TurnwiseDatabase,
  learner: string,
  named: { readonly id: string; readonly block: ResultsBlock },
): Promise<Result<void, StorageError>> {
  const taken = await takeIn(database, named);
  if (!taken.ok) return taken;
  return changeSharing(database, learner, {
    handedOver: false,
    sharedOn: undefined,
  });
}
