/**
 * Backups: making one, remembering when, restoring one, and taking that back
 * until the next round.
 */
import * as v from "valibot";
import type { BackupContents } from "../../core/backup/backup-reader";
import { shouldRemind } from "../../core/backup/reminder";
import { err, ok, type Result } from "../../core/result";
import { dateOf, now } from "../platform/clock";
import { countAnswers } from "../storage/answer-count";
import type { TurnwiseDatabase } from "../storage/database";
import {
  type LastRestore,
  undoableRestore,
  undoRestore,
  type UndoRestoreError,
} from "../storage/last-restore";
import { takePracticeLock } from "../storage/locks";
import {
  previewRestore,
  restore,
  type RestoreChoice,
  type Restored,
} from "../storage/restore";
import type { RestorePlan } from "../storage/restore-plan";
import { readSetting, saveSetting } from "../storage/settings";
import type { StorageError } from "../storage/storage-error";
import { writeBackup } from "../storage/write-backup";

/** Under which key the store keeps when everything was last backed up. */
const LAST_BACKUP_KEY = "last-backup";

const LAST_BACKUP = v.object({
  /** UTC. Units: milliseconds. */
  at: v.pipe(v.number(), v.finite()),
  /** How many answers and showings it held. */
  answers: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** How many of them were showings; a version before they were told apart does not say. */
  shown: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0))),
  /** How many whole runs; a version before there were any does not say. */
  runs: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0)), 0),
});

/** The last backup of everything. */
export type LastBackup = Readonly<v.InferOutput<typeof LAST_BACKUP>>;

function backupFileName(date: string, whose: string): string {
  return `Turnwise ${date} ${whose}.turnwise-backup`;
}

/** Why nothing was restored, or nothing taken back. */
export type RestoreError =
  | UndoRestoreError
  /** Another window practises as one of those learners. */
  | { readonly code: "practising-elsewhere" };

/** What came of restoring. It outlives the page that began it: another learner may sit at the desk after it. */
export type RestoreOutcome =
  | { readonly kind: "restored"; readonly restored: Restored }
  | { readonly kind: "taken-back" };

/** A backup as a file to hand over. */
export interface BackupFile {
  readonly name: string;
  readonly file: Blob;
  /** Damaged rows that were too large for it; they stay in the store. */
  readonly cut: number;
  /** Whether results of others were too many for it; the newest are in it. */
  readonly leavesOut: boolean;
}

/** The backups of this machine, as Settings and the reminder see them. */
export class BackupDesk {
  readonly #database: TurnwiseDatabase;
  #last: LastBackup | undefined = $state.raw();
  #answers = $state(0);
  #reviews = $state(0);
  #runs = $state(0);
  #first: number | undefined = $state();
  #undoable: LastRestore | undefined = $state.raw();
  #outcome: RestoreOutcome | undefined = $state.raw();

  constructor(database: TurnwiseDatabase) {
    this.#database = database;
  }

  /** Undefined: none that is known of. */
  get last(): LastBackup | undefined {
    return this.#last;
  }

  /** Answers and showings of everybody on this machine: what a backup carries. */
  get reviews(): number {
    return this.#reviews;
  }

  /** Answers since then, by anybody on this machine; showings as well where it is not known how many were in that backup. */
  get answersSince(): number {
    const { answers = 0, shown } = this.#last ?? { shown: 0 };
    return Math.max(
      0,
      shown === undefined
        ? this.#reviews - answers
        : this.#answers - (answers - shown),
    );
  }

  /** Whole runs of everybody on this machine. */
  get runs(): number {
    return this.#runs;
  }

  /** Runs since then, by anybody on this machine. */
  get runsSince(): number {
    return Math.max(0, this.#runs - (this.#last?.runs ?? 0));
  }

  /** Whether nobody has kept anything here. */
  get isEmpty(): boolean {
    return this.#reviews + this.#runs === 0;
  }

  /** Whether it is time for a backup. */
  get isDue(): boolean {
    const since = this.#last?.at ?? this.#first;
    return (
      since !== undefined &&
      shouldRemind({
        since,
        keptSince: this.answersSince + this.runsSince,
        now: now(),
      })
    );
  }

  /** What the last restore in this window came to, until something else is done. */
  get outcome(): RestoreOutcome | undefined {
    return this.#outcome;
  }

  /** Something else is being done. */
  clearOutcome(): void {
    this.#outcome = undefined;
  }

  /** The restore that can still be taken back. */
  get undoable(): LastRestore | undefined {
    return this.#undoable;
  }

  /** Looks at how things stand; again whenever answers may have been given. */
  async look(): Promise<Result<void, StorageError>> {
    const stored = await readSetting(this.#database, LAST_BACKUP_KEY);
    if (!stored.ok) return stored;
    const counted = await countAnswers(this.#database);
    if (!counted.ok) return counted;
    const undoable = await undoableRestore(this.#database);
    if (!undoable.ok) return undoable;
    const last = v.safeParse(LAST_BACKUP, stored.value);
    this.#last = last.success ? last.output : undefined;
    this.#answers = counted.value.answers;
    this.#reviews = counted.value.reviews;
    this.#runs = counted.value.runs;
    this.#first = counted.value.first;
    this.#undoable = undoable.value;
    return ok(undefined);
  }

  /** Makes a backup of everything, or of one learner with all decks. */
  async make(learner?: {
    readonly id: string;
    readonly name: string;
  }): Promise<Result<BackupFile, StorageError>> {
    const madeAt = now();
    const written = await writeBackup(this.#database, {
      madeAt,
      ...(learner === undefined ? {} : { learner: learner.id }),
    });
    if (!written.ok) return written;
    const { file, cut, leavesOut } = written.value;
    const whose = learner?.name ?? "everything";
    const name = backupFileName(dateOf(madeAt), whose);
    return ok({ name, file, cut, leavesOut });
  }

  /** The file of a backup of everything was handed over: the reminder counts from it. */
  async handedOver(): Promise<Result<void, StorageError>> {
    const counted = await countAnswers(this.#database);
    if (!counted.ok) return counted;
    const { answers, reviews, runs } = counted.value;
    const shown = reviews - answers;
    const last: LastBackup = { at: now(), answers: reviews, shown, runs };
    const saved = await saveSetting(this.#database, LAST_BACKUP_KEY, last);
    return saved.ok ? this.look() : saved;
  }

  /** What restoring a backup would do here. Nothing is changed by asking. */
  preview(
    contents: BackupContents,
  ): Promise<Result<RestorePlan, StorageError>> {
    return previewRestore(this.#database, contents);
  }

  /** Restores what was chosen: all of it, or nothing. Nobody may be practising as those learners meanwhile. */
  async restore(
    contents: BackupContents,
    choice: Omit<RestoreChoice, "now">,
  ): Promise<Result<Restored, RestoreError>> {
    const restored = await this.#whileNobodyPractises(choice.learners, () =>
      restore(this.#database, contents, { ...choice, now: now() }),
    );
    if (restored.ok)
      this.#outcome = { kind: "restored", restored: restored.value };
    await this.look();
    return restored;
  }

  /** Takes the last restore back: the store is as it was before. */
  async takeBack(): Promise<Result<void, RestoreError>> {
    const learners = this.#undoable?.learners.map(({ id }) => id) ?? [];
    const undone = await this.#whileNobodyPractises(learners, () =>
      undoRestore(this.#database),
    );
    if (undone.ok) this.#outcome = { kind: "taken-back" };
    await this.look();
    return undone;
  }

  async #whileNobodyPractises<T, E>(
    learners: readonly string[],
    run: () => Promise<Result<T, E>>,
  ): Promise<Result<T, E | RestoreError>> {
    const releases: (() => Promise<void>)[] = [];
    try {
      for (const id of learners) {
        const lock = await takePracticeLock(this.#database, id, now());
        if (!lock.ok) return lock;
        if (!lock.value.held) return err({ code: "practising-elsewhere" });
        releases.push(lock.value.release);
      }
      return await run();
    } finally {
      for (const release of releases) await release();
    }
  }
}
