/**
 * The app's whole state in this window: the database, the learners, the one
 * at the desk, and where the window is. Made once, handed down by context.
 */
import { createContext } from "svelte";
import { present } from "../../core/invariant";
import { type Learner, tagOf, TAGS } from "../../core/memory/learner";
import { err, ok, type Result } from "../../core/result";
import { now } from "../platform/clock";
import { hearOtherWindows, tellOtherWindows } from "../platform/other-windows";
import { freshId } from "../platform/random";
import { forgetInWindow } from "../platform/window-memory";
import type { DamagedRow } from "../storage/damaged-row";
import {
  type DatabaseEvents,
  openDatabase,
  type TurnwiseDatabase,
} from "../storage/database";
import {
  deleteLearner,
  hasRunsOrResults,
  readLearners,
  saveLearner,
  learnerSettingsKey,
} from "../storage/learners";
import {
  clearGuestStores,
  type GuestStore,
  openGuestStore,
} from "../storage/guest-store";
import { takePracticeLock } from "../storage/locks";
import { askToPersist, type Persistence } from "../storage/persistence";
import { readSetting, saveSetting } from "../storage/settings";
import type { StorageError } from "../storage/storage-error";
import { BackupDesk } from "./backup-desk.svelte";
import { DesktopDesk } from "./desktop-desk.svelte";
import { DeckBench } from "./deck-bench.svelte";
import { DeckShelf } from "./decks.svelte";
import { FitDesk } from "./fit-desk.svelte";
import { type LearnerState, openLearner } from "./learner.svelte";
import { RouteState } from "./route.svelte";

/** Under which key the store keeps who is at the desk. */
const CURRENT_KEY = "current-learner";

/** Why a learner was not deleted. */
export type DeleteLearnerError =
  StorageError | { readonly code: "practising-elsewhere" };

/** Everything a place may ask for. */
export class AppState {
  readonly database: TurnwiseDatabase;
  readonly route = new RouteState();
  readonly decks: DeckShelf;
  readonly backups: BackupDesk;
  readonly desktop: DesktopDesk;
  readonly fits = new FitDesk();
  /** Kept with the app, so that undo outlives a look at another place. */
  readonly bench: DeckBench;
  #learners: readonly Learner[] = $state.raw([]);
  #current: LearnerState | undefined = $state.raw();
  #guest: GuestStore | undefined = $state.raw();
  /** Counts who was asked to sit down: of two asked at once the later one does. */
  #asked = 0;
  /** Learners that could not be read; kept as they are. */
  readonly damaged: readonly DamagedRow[];
  /** Whether the browser promised to keep the data; undefined until it answered. */
  persistence: Persistence | undefined = $state.raw();

  constructor(
    database: TurnwiseDatabase,
    decks: DeckShelf,
    learners: readonly Learner[],
    current: LearnerState,
    damaged: readonly DamagedRow[],
  ) {
    this.database = database;
    this.decks = decks;
    this.backups = new BackupDesk(database);
    this.desktop = new DesktopDesk(this.backups);
    this.bench = new DeckBench(decks);
    this.#learners = learners;
    this.#current = current;
    this.damaged = damaged;
  }

  /** The learners on this machine, oldest first. */
  get learners(): readonly Learner[] {
    return this.#learners;
  }

  /** Who is at the desk. */
  get current(): LearnerState {
    return present(this.#current, "somebody is always at the desk");
  }

  /** Whether a guest is at the desk: somebody of whom nothing is kept. */
  get isGuest(): boolean {
    return this.#guest !== undefined;
  }

  /** Asks the browser to keep the data for good, and notes its answer. */
  async askToPersist(): Promise<void> {
    this.persistence = await askToPersist();
  }

  /** Follows what other windows change in the store. Returns how to stop. */
  followOtherWindows(): () => void {
    return hearOtherWindows((news) => {
      if (news.changed === "learners") void this.#readLearners();
      else if (news.changed === "decks") void this.decks.reload();
      else if (news.id === this.current.learner.id) void this.current.reload();
    });
  }

  /** Reads everything again, after a restore or one taken back; the other windows hear of it. */
  async reload(): Promise<Result<void, StorageError>> {
    const decks = await this.decks.reload();
    if (!decks.ok) return decks;
    const learners = await this.#readLearners();
    if (!learners.ok) return learners;
    const current = await this.current.reload();
    tellOtherWindows({ changed: "decks" });
    tellOtherWindows({ changed: "learners" });
    for (const { id } of this.#learners)
      tellOtherWindows({ changed: "learner", id });
    return current;
  }

  /**
   * Gives the desk to the first of these learners where nobody has sat down at
   * it yet: somebody new is put there by the first start, and goes again.
   * Whoever gave an answer or made a run, readable or not, did sit down.
   */
  async giveDeskTo(
    ids: readonly string[],
  ): Promise<Result<void, StorageError>> {
    if (this.isGuest) return ok(undefined);
    const { learner, reviews, damaged } = this.current;
    const next = ids.find((id) => id !== learner.id && this.#isHere(id));
    if (next === undefined || reviews.length + damaged.length > 0)
      return ok(undefined);
    const kept = await hasRunsOrResults(this.database, learner.id);
    if (!kept.ok || kept.value) return kept.ok ? ok(undefined) : kept;
    const key = learnerSettingsKey(learner.id);
    const chosen = await readSetting(this.database, key);
    if (!chosen.ok) return chosen;
    const switched = await this.switchTo(next);
    if (!switched.ok || chosen.value !== undefined) return switched;
    const deleted = await deleteLearner(this.database, learner.id);
    if (!deleted.ok) return deleted;
    this.#learners = this.#learners.filter(({ id }) => id !== learner.id);
    tellOtherWindows({ changed: "learners" });
    return deleted;
  }

  #isHere(id: string): boolean {
    return this.#learners.some((learner) => learner.id === id);
  }

  /** Puts another learner at the desk. */
  async switchTo(id: string): Promise<Result<void, StorageError>> {
    const asked = (this.#asked += 1);
    const learner = this.#learners.find((known) => known.id === id);
    if (learner === undefined || id === this.current.learner.id)
      return ok(undefined);
    const opened = await openLearner(this.database, this.decks, learner);
    if (!opened.ok) return opened;
    if (asked !== this.#asked) return ok(undefined);
    const left = await this.#seat(opened.value, undefined);
    const saved = await saveSetting(this.database, CURRENT_KEY, id);
    return left.ok ? saved : left;
  }

  /** Puts a guest at the desk: whatever they do goes with them. */
  async seatGuest(): Promise<Result<void, StorageError>> {
    const asked = (this.#asked += 1);
    if (this.isGuest) return ok(undefined);
    const guest: Learner = { id: freshId(), name: "Guest", createdAt: now() };
    const store = await openGuestStore(guest.id);
    if (!store.ok) return store;
    const { database, leave } = store.value;
    // Their own table of learners: an answer is kept only of somebody who is there.
    const saved = await saveLearner(database, guest);
    const opened = saved.ok
      ? await openLearner(database, this.decks, guest)
      : saved;
    if (opened.ok && asked === this.#asked)
      return this.#seat(opened.value, store.value);
    const left = await leave();
    return opened.ok ? left : opened;
  }

  /** Somebody sits down; a guest who was there is gone with everything. */
  async #seat(
    learner: LearnerState,
    guest: GuestStore | undefined,
  ): Promise<Result<void, StorageError>> {
    const gone = this.#guest;
    const { id } = this.current.learner;
    this.#guest = guest;
    this.#current = learner;
    this.decks.isGuests = guest !== undefined;
    // What was said there was said to whoever has left.
    this.bench.trouble = undefined;
    if (gone === undefined) return ok(undefined);
    const left = await gone.leave();
    // By now the page they were at is gone, and remembers nothing more.
    forgetInWindow(id);
    return left;
  }

  /** Adds a learner and puts them at the desk. */
  async addLearner(name: string): Promise<Result<void, StorageError>> {
    const taken = this.#learners.map(tagOf);
    const tag = TAGS.find((one) => !taken.includes(one));
    const learner: Learner = {
      id: freshId(),
      name,
      createdAt: now(),
      // The ninth has one by chance, as the first has.
      ...(tag === undefined ? {} : { tag }),
    };
    const saved = await saveLearner(this.database, learner);
    if (!saved.ok) return saved;
    this.#learners = [...this.#learners, learner];
    tellOtherWindows({ changed: "learners" });
    return this.switchTo(learner.id);
  }

  /** Gives the learner at the desk another name or colour; a guest has neither. */
  async rename(
    change: Partial<Pick<Learner, "name" | "tag">>,
  ): Promise<Result<void, StorageError>> {
    if (this.isGuest) return ok(undefined);
    const renamed: Learner = { ...this.current.learner, ...change };
    const saved = await saveLearner(this.database, renamed);
    if (!saved.ok) return saved;
    this.current.learner = renamed;
    this.#learners = this.#learners.map((learner) =>
      learner.id === renamed.id ? renamed : learner,
    );
    tellOtherWindows({ changed: "learners" });
    return ok(undefined);
  }

  /**
   * Deletes the learner at the desk with all their answers; the first of the
   * others, or a new one, takes the place. Refused while another window
   * practises as them.
   */
  async deleteCurrent(): Promise<Result<void, DeleteLearnerError>> {
    if (this.isGuest) return this.#seatSomebody();
    const { id } = this.current.learner;
    const lock = await takePracticeLock(this.database, id, now());
    if (!lock.ok) return lock;
    if (!lock.value.held) return err({ code: "practising-elsewhere" });
    const deleted = await deleteLearner(this.database, id);
    await lock.value.release();
    if (!deleted.ok) return deleted;
    this.#learners = this.#learners.filter((learner) => learner.id !== id);
    const seated = await this.#seatSomebody();
    // Last, so that no other window finds the table empty and fills it as well.
    tellOtherWindows({ changed: "learners" });
    return seated;
  }

  /** The first of the learners, or a new one, takes the place of one who is gone. */
  #seatSomebody(): Promise<Result<void, StorageError>> {
    const next = this.#learners[0];
    return next === undefined
      ? this.addLearner(FIRST_NAME)
      : this.switchTo(next.id);
  }

  /** Reads the learners again where one came or went otherwise than here; the other windows hear of it. */
  async readLearnersAgain(): Promise<Result<void, StorageError>> {
    const read = await this.#readLearners();
    tellOtherWindows({ changed: "learners" });
    return read;
  }

  async #readLearners(): Promise<Result<void, StorageError>> {
    const read = await readLearners(this.database, firstLearner());
    if (!read.ok) return read;
    this.#learners = read.value.learners;
    if (this.isGuest) return ok(undefined);
    const { id } = this.current.learner;
    const own = this.#learners.find((learner) => learner.id === id);
    if (own === undefined) return this.#seatSomebody();
    this.current.learner = own;
    return ok(undefined);
  }
}

/** What the first learner is called until they say otherwise. */
const FIRST_NAME = "Learner 1";

function firstLearner(): Learner {
  return { id: freshId(), name: FIRST_NAME, createdAt: now() };
}

/** Opens the store and whoever was last at the desk; on a first start, somebody new. */
export async function openApp(
  events: DatabaseEvents = {},
): Promise<Result<AppState, StorageError>> {
  const opened = await openDatabase(events);
  if (!opened.ok) return opened;
  const database = opened.value;
  // Nobody waits for it; what cannot be deleted now is tried at the next start.
  void clearGuestStores();
  const stored = await readLearners(database, firstLearner());
  if (!stored.ok) return stored;
  let { learners } = stored.value;
  if (learners.length === 0) {
    // Every stored learner is damaged: they stay as they are, and somebody new begins.
    const learner = firstLearner();
    const saved = await saveLearner(database, learner);
    if (!saved.ok) return saved;
    learners = [learner];
  }
  const last = await readSetting(database, CURRENT_KEY);
  if (!last.ok) return last;
  const learner = present(
    learners.find(({ id }) => id === last.value) ?? learners[0],
    "there is somebody",
  );
  const decks = new DeckShelf(database);
  const read = await decks.reload();
  if (!read.ok) return read;
  const current = await openLearner(database, decks, learner);
  if (!current.ok) return current;
  const { damaged } = stored.value;
  return ok(new AppState(database, decks, learners, current.value, damaged));
}

/** The app's state, as `App` sets it and places read it. */
export const [getAppState, setAppState] = createContext<AppState>();
