/**
 * Sharing as a page shows it: the folder, what the learner at the desk shares,
 * and what a look came to. Made by the page that needs it; what lasts is in
 * the store.
 */
import { ok, type Result } from "../../../core/result";
import type { SharedPart } from "../../../core/sharing/shared-answer";
import { dateOf, now } from "../../platform/clock";
import { safeFileName } from "../../platform/files";
import {
  allowFolder,
  chooseFolder,
  type FolderError,
  type KnownFolder,
  knownFolder,
  leaveFolder,
  type ResultsFolder,
} from "../../platform/results-folder";
import type { TurnwiseDatabase } from "../../storage/database";
import {
  changeSharing,
  readSent,
  readSharing,
  type SharingSettings,
} from "../../storage/sent-blocks";
import { readSetting, saveSetting } from "../../storage/settings";
import type { StorageError } from "../../storage/storage-error";
import type { LearnerState } from "../learner.svelte";
import { type Intake, lookThroughFolder, takeFiles } from "./intake";
import {
  filesToHandOver,
  type ResultsFile,
  type Sent,
  type Sharer,
  shareNow,
  takeBack,
  type TakenBack,
} from "./share";
import type { SharingError } from "./sharing-error";

/** Under which key the store keeps the browser's handle of the folder. */
const FOLDER_KEY = "shared-folder";

/** The folder that was chosen on this machine before. */
export async function folderChosenBefore(
  database: TurnwiseDatabase,
): Promise<Result<KnownFolder, FolderError | StorageError>> {
  const kept = await readSetting(database, FOLDER_KEY);
  return kept.ok ? knownFolder(kept.value) : kept;
}

/** Whose answers are shared now. */
export function sharerOf(learner: LearnerState): Sharer {
  return {
    database: learner.database,
    learner: learner.learner,
    reviews: learner.reviews,
    now: now(),
    today: learner.today,
  };
}

/** The sharing of one machine, as a page sees it. */
export class SharingDesk {
  readonly #database: TurnwiseDatabase;
  #folder: KnownFolder = $state.raw({ kind: "none" });
  #settings: SharingSettings = $state.raw({ part: "nothing" });
  #sent = $state(0);
  /** How far a look has come, where one is under way. */
  progress: { readonly done: number; readonly of: number } | undefined =
    $state.raw();

  constructor(database: TurnwiseDatabase) {
    this.#database = database;
  }

  /** The shared folder, as it stands. */
  get folder(): KnownFolder {
    return this.#folder;
  }

  /** What the learner shares. */
  get settings(): SharingSettings {
    return this.#settings;
  }

  /** How many answers of the learner this machine has sent and not taken back. */
  get sent(): number {
    return this.#sent;
  }

  get #ready(): ResultsFolder | undefined {
    return this.#folder.kind === "ready" ? this.#folder.folder : undefined;
  }

  /** Looks at how the folder stands. */
  async lookAtFolder(): Promise<Result<void, SharingError>> {
    const known = await folderChosenBefore(this.#database);
    if (!known.ok) return known;
    this.#folder = known.value;
    return ok(undefined);
  }

  /** Looks at what a learner shares. */
  async lookAtLearner(learner: string): Promise<Result<void, SharingError>> {
    const settings = await readSharing(this.#database, learner);
    if (!settings.ok) return settings;
    const sent = await readSent(this.#database, learner);
    if (!sent.ok) return sent;
    this.#settings = settings.value;
    this.#sent = sent.value.answers;
    return ok(undefined);
  }

  /** Lets the person choose the folder. */
  async chooseFolder(): Promise<Result<void, SharingError>> {
    const chosen = await chooseFolder();
    if (!chosen.ok) return chosen;
    if (chosen.value === undefined) return ok(undefined);
    const { folder, kept } = chosen.value;
    if (kept !== undefined) {
      const saved = await saveSetting(this.#database, FOLDER_KEY, kept);
      if (!saved.ok) return saved;
    }
    this.#folder = { kind: "ready", folder };
    return ok(undefined);
  }

  /** Asks the browser for the folder once more, by a press. */
  async allowFolder(): Promise<Result<void, SharingError>> {
    if (this.#folder.kind !== "asks") return ok(undefined);
    const allowed = await allowFolder(this.#folder.handle);
    if (!allowed.ok) return allowed;
    this.#folder = { kind: "ready", folder: allowed.value };
    return ok(undefined);
  }

  /** Forgets the folder; what is in it stays there. */
  async leaveFolder(): Promise<Result<void, SharingError>> {
    const left = await leaveFolder();
    if (!left.ok) return left;
    const saved = await saveSetting(this.#database, FOLDER_KEY, undefined);
    if (!saved.ok) return saved;
    this.#folder = { kind: "none" };
    return ok(undefined);
  }

  /** Changes what a learner shares, or under which name. */
  async change(
    learner: string,
    patch: { readonly part?: SharedPart; readonly name?: string | undefined },
  ): Promise<Result<void, SharingError>> {
    const changed = await changeSharing(this.#database, learner, {
      ...patch,
      ...(patch.part !== undefined && { stoppedElsewhere: undefined }),
    });
    return changed.ok ? this.lookAtLearner(learner) : changed;
  }

  /** Lays into the folder what is new. */
  async share(learner: LearnerState): Promise<Result<Sent, SharingError>> {
    const folder = this.#ready;
    if (folder === undefined)
      return { ok: false, error: { code: "no-folder" } };
    const sent = await shareNow(sharerOf(learner), folder);
    const looked = await this.lookAtLearner(learner.learner.id);
    return sent.ok && !looked.ok ? looked : sent;
  }

  /** Everything that is shared, as files. */
  files(
    learner: LearnerState,
  ): Promise<Result<readonly ResultsFile[], SharingError>> {
    const { name = learner.learner.name } = this.#settings;
    const title = safeFileName(`Results of ${name}, ${dateOf(now())}`, "");
    return filesToHandOver(sharerOf(learner), title);
  }

  /** Takes everything back that the learner shared. */
  async takeBack(
    learner: LearnerState,
  ): Promise<Result<TakenBack, SharingError>> {
    const { name = learner.learner.name } = this.#settings;
    const title = safeFileName(`${name} takes back, ${dateOf(now())}`, "");
    const taken = await takeBack(sharerOf(learner), this.#ready, title);
    const looked = await this.lookAtLearner(learner.learner.id);
    return taken.ok && !looked.ok ? looked : taken;
  }

  /** Looks through the folder for results that are new here. */
  async look(): Promise<Result<Intake, SharingError>> {
    const folder = this.#ready;
    if (folder === undefined)
      return { ok: false, error: { code: "no-folder" } };
    const came = await lookThroughFolder(this.#database, folder, (done, of) => {
      this.progress = { done, of };
    });
    this.progress = undefined;
    return came;
  }

  /** Takes in files that somebody chose. */
  async take(files: readonly File[]): Promise<Result<Intake, SharingError>> {
    const came = await takeFiles(this.#database, files, (done, of) => {
      this.progress = { done, of };
    });
    this.progress = undefined;
    return came;
  }
}
