/**
 * Whose sheets may be entered on this machine: its learners', and those of
 * whoever shared results with it. And whose are in the store already.
 */
import type { Learner } from "../../../core/memory/learner";
import type { LocalDay } from "../../../core/memory/review";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import { ok, type Result } from "../../../core/result";
import { now } from "../../platform/clock";
import { type Classmate, readClassmates } from "../../storage/classmates";
import type { StorageError } from "../../storage/storage-error";
import type { AppState } from "../app-state.svelte";
import { withNamesApart } from "../class/class-log";
import { whoseIsIn } from "./sheets-in";

/** The learners in their order, then those known by shared results alone, as the coach calls them; no two of one name. */
function sheetChildren(
  learners: readonly Learner[],
  classmates: readonly Classmate[],
): readonly Learner[] {
  const others = classmates
    .filter(({ id }) => learners.every((one) => one.id !== id))
    .map(({ id, name, nickname }) => ({
      id,
      name: nickname ?? name,
      createdAt: now(),
    }));
  const all = [...learners, ...others];
  const apart = new Map(withNamesApart(all).map((one) => [one.id, one]));
  return all.map((one) => apart.get(one.id) ?? one);
}

/** The learner that somebody known by shared results alone becomes, under the name they share under; undefined: they are one already, or unknown. */
function newcomerOf(
  id: string,
  learners: readonly Learner[],
  classmates: readonly Classmate[],
): Learner | undefined {
  if (learners.some((one) => one.id === id)) return undefined;
  const classmate = classmates.find((one) => one.id === id);
  return classmate && { id, name: classmate.name, createdAt: now() };
}

/** Those whose copies of one sheet may be entered. */
export class SheetChildren {
  readonly #app: AppState;
  readonly #sheet: KeptSheet;
  readonly #firstDay: () => LocalDay;
  /** Who shared results with this machine. */
  #classmates: readonly Classmate[] = $state.raw([]);
  /** Ids of those whose sheet of the first day is in the store already. */
  #stored: readonly string[] = $state.raw([]);
  #all: readonly Learner[] = $derived.by(() =>
    sheetChildren(this.#app.learners, this.#classmates),
  );

  /** Shape: `firstDay` gives the first day that is chosen for the sheet. */
  constructor(app: AppState, sheet: KeptSheet, firstDay: () => LocalDay) {
    this.#app = app;
    this.#sheet = sheet;
    this.#firstDay = firstDay;
  }

  /** The learners of this machine, then those whose results were taken in. */
  get all(): readonly Learner[] {
    return this.#all;
  }

  /** The learner of this machine that a child becomes when ticks are kept; undefined: they are one already. */
  newcomer(id: string): Learner | undefined {
    return newcomerOf(id, this.#app.learners, this.#classmates);
  }

  /** Whether a child's sheet of the first day was in the store when it was last looked. */
  isStored(id: string): boolean {
    return this.#stored.includes(id);
  }

  /** Reads who shared results with this machine, and whose sheet is in. */
  async read(): Promise<Result<void, StorageError>> {
    const read = await readClassmates(this.#app.database);
    if (!read.ok) return read;
    this.#classmates = read.value;
    return this.readStored();
  }

  /** Looks whose sheet of the first day is in already. */
  async readStored(): Promise<Result<void, StorageError>> {
    const day = this.#firstDay();
    const stored = await whoseIsIn(
      this.#app.database,
      this.#sheet,
      day,
      this.#all,
    );
    if (!stored.ok) return stored;
    if (day === this.#firstDay()) this.#stored = stored.value;
    return ok(undefined);
  }
}
