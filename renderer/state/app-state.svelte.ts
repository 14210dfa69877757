/**
 * The app's whole state in this window: the database, the learners, the one
 * at the desk, and where the window is. Made once, handed down by context.
 */
import { createContext } from "svelte";
import { present } from "../../core/invariant";
import { err, ok, type Result } from "../../core/result";
import { now } from "../platform/clock";
import { freshId } from "../platform/random";
import type { DamagedRow } from "../storage/damaged-row";
import {
  type DatabaseEvents,
  openDatabase,
  type TurnwiseDatabase,
} from "../storage/database";
import {
  deleteLearner,
  type Learner,
  readLearners,
  saveLearner,
} from "../storage/learners";
import { takePracticeLock } from "../storage/locks";
import { askToPersist, type Persistence } from "../storage/persistence";
import { readSetting, saveSetting } from "../storage/settings";
import type { StorageError } from "../storage/storage-error";
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
  #learners: readonly Learner[] = $state.raw([]);
  #current: LearnerState | undefined = $state.raw();
  /** Learners that could not be read; kept as they are. */
  readonly damaged: readonly DamagedRow[];
  /** Whether the browser promised to keep the data; undefined until it answered. */
  persistence: Persistence | undefined = $state.raw();

  constructor(
    database: TurnwiseDatabase,
    learners: readonly Learner[],
    current: LearnerState,
    damaged: readonly DamagedRow[],
  ) {
    this.database = database;
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

  /** Asks the browser to keep the data for good, and notes its answer. */
  async askToPersist(): Promise<void> {
    this.persistence = await askToPersist();
  }

  /** Puts another learner at the desk. */
  async switchTo(id: string): Promise<Result<void, StorageError>> {
    const learner = this.#learners.find((known) => known.id === id);
    if (learner === undefined || id === this.current.learner.id)
      return ok(undefined);
    const opened = await openLearner(this.database, learner);
    if (!opened.ok) return opened;
    this.#current = opened.value;
    return saveSetting(this.database, CURRENT_KEY, id);
  }

  /** Adds a learner and puts them at the desk. */
  async addLearner(name: string): Promise<Result<void, StorageError>> {
    const learner: Learner = { id: freshId(), name, createdAt: now() };
    const saved = await saveLearner(this.database, learner);
    if (!saved.ok) return saved;
    this.#learners = [...this.#learners, learner];
    return this.switchTo(learner.id);
  }

  /** Gives the learner at the desk another name. */
  async rename(name: string): Promise<Result<void, StorageError>> {
    const renamed: Learner = { ...this.current.learner, name };
    const saved = await saveLearner(this.database, renamed);
    if (!saved.ok) return saved;
    this.current.learner = renamed;
    this.#learners = this.#learners.map((learner) =>
      learner.id === renamed.id ? renamed : learner,
    );
    return ok(undefined);
  }

  /**
   * Deletes the learner at the desk with all their answers; the first of the
   * others, or a new one, takes the place. Refused while another window
   * practises as them.
   */
  async deleteCurrent(): Promise<Result<void, DeleteLearnerError>> {
    const { id } = this.current.learner;
    const lock = await takePracticeLock(this.database, id, now());
    if (!lock.ok) return lock;
    if (!lock.value.held) return err({ code: "practising-elsewhere" });
    const deleted = await deleteLearner(this.database, id);
    await lock.value.release();
    if (!deleted.ok) return deleted;
    const others = this.#learners.filter((learner) => learner.id !== id);
    this.#learners = others;
    const next = others[0];
    return next === undefined
      ? this.addLearner(FIRST_NAME)
      : this.switchTo(next.id);
  }
}

/** What the first learner is called until they say otherwise. */
const FIRST_NAME = "Learner 1";

/** Opens the store and whoever was last at the desk; on a first start, somebody new. */
export async function openApp(
  events: DatabaseEvents = {},
): Promise<Result<AppState, StorageError>> {
  const opened = await openDatabase(events);
  if (!opened.ok) return opened;
  const database = opened.value;
  const stored = await readLearners(database, {
    id: freshId(),
    name: FIRST_NAME,
    createdAt: now(),
  });
  if (!stored.ok) return stored;
  const last = await readSetting(database, CURRENT_KEY);
  if (!last.ok) return last;
  const { learners, damaged } = stored.value;
  const learner = learners.find(({ id }) => id === last.value) ?? learners[0];
  // Only where every stored learner is damaged: their answers stay, and somebody new begins.
  if (learner === undefined) return openFor(database, [], damaged);
  return openFor(database, learners, damaged, learner);
}

async function openFor(
  database: TurnwiseDatabase,
  known: readonly Learner[],
  damaged: readonly DamagedRow[],
  chosen?: Learner,
): Promise<Result<AppState, StorageError>> {
  let learner = chosen;
  let learners = known;
  if (learner === undefined) {
    learner = { id: freshId(), name: FIRST_NAME, createdAt: now() };
    const saved = await saveLearner(database, learner);
    if (!saved.ok) return saved;
    learners = [...known, learner];
  }
  const current = await openLearner(database, learner);
  if (!current.ok) return current;
  return ok(new AppState(database, learners, current.value, damaged));
}

/** The app's state, as `App` sets it and places read it. */
export const [getAppState, setAppState] = createContext<AppState>();
