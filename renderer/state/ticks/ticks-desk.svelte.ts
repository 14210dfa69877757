/**
 * A sheet's ticks being entered, child after child: who is at it, what was
 * typed for each, what is in the log already, and how to take an entry back.
 *
 * Nothing is stored until an entry is kept; then all of it is, at once. It is
 * long, and one class all the same: every box asks who is chosen, which week it
 * is and what the log has, and an entry goes back and forth between what is
 * typed and what is kept.
 */
import { SvelteMap } from "svelte/reactivity";
import { present } from "../../../core/invariant";
import type { Learner } from "../../../core/memory/learner";
import { dayAfter } from "../../../core/memory/local-day";
import type { LocalDay, Review } from "../../../core/memory/review";
import {
  answersOfRow,
  emptyRow,
  type EnteredRow,
  type EnteredRowError,
  type Tick,
} from "../../../core/paper/entered-ticks";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import {
  firstDaysToChoose,
  likelyFirstDay,
} from "../../../core/paper/sheet-days";
import { err, ok, type Result } from "../../../core/result";
import { tellOtherWindows } from "../../platform/other-windows";
import { enterReviews, takeBackReviews } from "../../storage/entered-reviews";
import type { StorageError } from "../../storage/storage-error";
import type { AppState } from "../app-state.svelte";
import { type LearnerState, openLearner } from "../learner.svelte";
import { printedDay } from "../sheets/printed-sheets";
import {
  knownReviews,
  paperReview,
  placeKey,
  type PlacedAnswer,
  type SheetRow,
  sheetRows,
} from "./paper-reviews";
import { SheetChildren } from "./sheet-children.svelte";
import { entryKey, layered, TickDrafts } from "./tick-drafts.svelte";

/** Why an entry was not kept. */
export type KeepError =
  | StorageError
  /** A guest enters nothing into other people's logs. */
  | { readonly code: "guest-at-desk" }
  /** A time of a row, from 0, is none. */
  | (EnteredRowError & { readonly row: number });

/** How far a child's sheet is. */
export type ChildState = "in" | "begun" | "waiting";

/** The child whose sheet is being entered. */
interface Child {
  readonly state: LearnerState;
  /** What their log has of this sheet already, by row and place. */
  readonly known: ReadonlyMap<string, Review>;
}

/** An entry that was kept. */
interface Kept {
  /** The ids of the answers that it added. */
  readonly ids: readonly string[];
  /** What stood in the boxes. */
  readonly rows: readonly EnteredRow[];
  /** Whether it made the child a learner of this machine. */
  readonly wasNewcomer: boolean;
}

/** The entry of one sheet. */
export class TicksDesk {
  readonly #app: AppState;
  readonly sheet: KeptSheet;
  readonly rows: readonly SheetRow[];
  /** When it was printed, on this machine's calendar. */
  readonly printed: LocalDay;
  #firstDay: LocalDay = $state(0 as LocalDay);
  #child: Child | undefined = $state.raw();
  readonly #drafts = new TickDrafts();
  /** What was kept, by `entryKey`, while the window is open. */
  readonly #kept = new SvelteMap<string, Kept>();
  /** What was typed under a wrong name, for whoever is chosen next. */
  #carried: readonly EnteredRow[] | undefined = $state.raw();
  readonly #children: SheetChildren;
  /** Counts choices, so that a slow one does not overtake a later. */
  #choices = 0;

  constructor(app: AppState, sheet: KeptSheet) {
    this.#app = app;
    this.sheet = sheet;
    this.rows = sheetRows(sheet);
    const { settings, today } = app.current;
    this.printed = printedDay(sheet, settings.turnsOverAt);
    this.#firstDay = likelyFirstDay(sheet.kind, this.printed, today);
    this.#children = new SheetChildren(app, sheet, () => this.#firstDay);
  }

  /** Whose sheets may be entered: the learners of this machine, then those whose results were taken in. */
  get children(): readonly Learner[] {
    return this.#children.all;
  }

  /** Reads who shared results with this machine, and whose sheet of the first day is in. */
  readChildren(): Promise<Result<void, StorageError>> {
    return this.#children.read();
  }

  /** Whether a child is known by shared results alone: keeping ticks makes them a learner of this machine. */
  isNewHere(id: string): boolean {
    return this.#children.newcomer(id) !== undefined;
  }

  /** The first day of the sheet: of all children's. */
  get firstDay(): LocalDay {
    return this.#firstDay;
  }

  /**
   * Sets the first day. What was typed for the child on the desk goes along,
   * unless there is something of theirs for that day already; all else stays
   * with the day under which it was typed.
   */
  async setFirstDay(day: LocalDay): Promise<Result<void, StorageError>> {
    const { child } = this;
    if (child !== undefined) {
      const from = this.#key(child.id);
      const to = entryKey(child.id, day);
      const isTaken = this.#drafts.isFilled(to) || this.#kept.has(to);
      if (this.#drafts.isFilled(from) && !isTaken) this.#drafts.move(from, to);
    }
    this.#firstDay = day;
    const { state } = this.#child ?? {};
    if (state !== undefined) await this.#look(state, ++this.#choices);
    return this.#children.readStored();
  }

  /** Whose sheet is being entered. */
  get child(): Learner | undefined {
    return this.#child?.state.learner;
  }

  /** The last day that an answer may be of. */
  get today(): LocalDay {
    return (this.#child?.state ?? this.#app.current).today;
  }

  /** The entry of a child for the first day that is chosen. */
  #key(id: string): string {
    return entryKey(id, this.#firstDay);
  }

  /** How far a child's sheet of this first day is. */
  stateOf(id: string): ChildState {
    const key = this.#key(id);
    if (this.#drafts.isFilled(key)) return "begun";
    return this.#kept.has(key) || this.#children.isStored(id)
      ? "in"
      : "waiting";
  }

  /** How many answers were kept of the child's sheet of this first day; undefined: nothing that can be taken back. */
  keptOf(id: string): number | undefined {
    return this.#kept.get(this.#key(id))?.ids.length;
  }

  /** Whether anything was typed that is not kept. */
  get hasUnkept(): boolean {
    return this.#drafts.hasAny;
  }

  /** Another first day under which something was typed for the child and is not kept. */
  get unkeptDay(): LocalDay | undefined {
    const { child } = this;
    if (child === undefined) return undefined;
    return firstDaysToChoose(this.sheet.kind, this.printed, this.today).find(
      (day) =>
        day !== this.#firstDay &&
        this.#drafts.isFilled(entryKey(child.id, day)),
    );
  }

  /** Takes up a child's sheet. */
  async choose(learner: Learner): Promise<Result<void, StorageError>> {
    const choice = ++this.#choices;
    const { current, database, decks } = this.#app;
    const opened =
      learner.id === current.learner.id
        ? ok(current)
        : await openLearner(database, decks, learner);
    if (!opened.ok) return opened;
    await this.#look(opened.value, choice);
    const carried = this.#carried;
    if (carried !== undefined && this.child?.id === learner.id) {
      this.#carried = undefined;
      this.#drafts.layOver(this.#key(learner.id), carried);
    }
    return ok(undefined);
  }

  /** Whether ticks wait for whoever is chosen next. */
  get isCarrying(): boolean {
    return this.#carried !== undefined;
  }

  /** Takes what was typed off the child, for whoever is chosen next. */
  carry(): void {
    const { child } = this;
    if (child === undefined) return;
    this.#carried = this.#drafts.get(this.#key(child.id));
    this.#drafts.delete(this.#key(child.id));
    this.#child = undefined;
  }

  /** Looks up what a learner's log has of the sheet. */
  async #look(state: LearnerState, choice: number): Promise<void> {
    const known = await knownReviews(
      this.sheet,
      this.#firstDay,
      state.learner.id,
      state.reviews,
    );
    if (choice === this.#choices) this.#child = { state, known };
  }

  /** What stands in the log for a place of the sheet. */
  known(row: number, place: number): Review | undefined {
    return this.#child?.known.get(placeKey(row, place));
  }

  /** What was typed in a row. */
  typed(row: number): EnteredRow {
    const { child } = this;
    const draft = child && this.#drafts.get(this.#key(child.id));
    return draft?.[row] ?? emptyRow(this.sheet.kind);
  }

  #type(row: number, change: (before: EnteredRow) => EnteredRow): void {
    const { child } = this;
    if (child === undefined) return;
    const key = this.#key(child.id);
    const draft =
      this.#drafts.get(key) ?? this.rows.map(() => emptyRow(this.sheet.kind));
    this.#drafts.set(key, draft.with(row, change(this.typed(row))));
  }

  /** Whether a box can be filled in: its day has come, and it is not in the log. */
  canTick(row: number, place: number): boolean {
    const days = this.sheet.kind === "cases" ? place : 0;
    return (
      this.child !== undefined &&
      this.known(row, place) === undefined &&
      dayAfter(this.#firstDay, days) <= this.today
    );
  }

  /** Fills a box in, or empties it. */
  tick(row: number, place: number, tick: Tick | undefined): void {
    if (this.canTick(row, place))
      this.#type(row, (before) => ({
        ...before,
        ticks: before.ticks.with(place, tick),
      }));
  }

  /** Writes a time; one in a row that says nothing yet ticks it. */
  writeTime(row: number, time: number, text: string): void {
    if (!this.canTick(row, 0)) return;
    this.#type(row, ({ ticks, times }) => ({
      ticks:
        text.trim() === "" ? ticks : [ticks[0] ?? "right", ...ticks.slice(1)],
      times: times.with(time, text),
    }));
  }

  /** Forgets what was typed for the child. */
  clear(): void {
    const { child } = this;
    if (child !== undefined) this.#drafts.delete(this.#key(child.id));
  }

  /** What was typed for the child and can be kept: days to come and what is in the log are left out. */
  answers(): Result<readonly PlacedAnswer[], KeepError> {
    const all: PlacedAnswer[] = [];
    for (const [row] of this.rows.entries()) {
      const read = answersOfRow(this.sheet.kind, this.typed(row));
      if (!read.ok) return err({ ...read.error, row });
      for (const answer of read.value) {
        const box = this.sheet.kind === "cases" ? answer.place : 0;
        if (this.canTick(row, box)) all.push({ ...answer, row });
      }
    }
    return ok(all);
  }

  /** Stores what was typed for the child, all of it or nothing. Resolves with how many answers were added. */
  async keep(): Promise<Result<number, KeepError>> {
    if (this.#app.isGuest) return err({ code: "guest-at-desk" });
    const { state } = present(this.#child, "somebody was chosen");
    const answers = this.answers();
    if (!answers.ok) return answers;
    if (answers.value.length === 0) return ok(0);
    const { id } = state.learner;
    const key = this.#key(id);
    const draft = this.#drafts.get(key);
    const context = {
      sheet: this.sheet,
      rows: this.rows,
      firstDay: this.#firstDay,
      learner: id,
      firstColour: state.scheme.U,
      turnsOverAt: state.settings.turnsOverAt,
      weightsVersion: state.weightsVersion,
    };
    const reviews = await Promise.all(
      answers.value.map((answer) => paperReview(answer, context)),
    );
    const newcomer = this.#children.newcomer(id);
    const entered = await enterReviews(
      this.#app.database,
      id,
      reviews,
      newcomer,
    );
    if (!entered.ok) return entered;
    const before = this.#kept.get(key);
    this.#kept.set(key, {
      ids: [...(before?.ids ?? []), ...entered.value],
      rows: layered(draft, before?.rows),
      wasNewcomer: newcomer !== undefined || before?.wasNewcomer === true,
    });
    if (this.#drafts.get(key) === draft) this.#drafts.delete(key);
    if (newcomer !== undefined) await this.#app.readLearnersAgain();
    await this.#readAgain(id);
    return ok(entered.value.length);
  }

  /** Takes all out again that was kept of a child's sheet of this first day since the page was opened; it stands in the boxes as if it had just been typed. */
  async takeBack(learner: Learner): Promise<Result<void, KeepError>> {
    if (this.#app.isGuest) return err({ code: "guest-at-desk" });
    const { id } = learner;
    const key = this.#key(id);
    const kept = this.#kept.get(key);
    if (kept === undefined) return ok(undefined);
    const { ids, wasNewcomer } = kept;
    const taken = await takeBackReviews(
      this.#app.database,
      id,
      ids,
      wasNewcomer,
    );
    if (!taken.ok) return taken;
    if (wasNewcomer) await this.#app.readLearnersAgain();
    this.#kept.delete(key);
    this.#drafts.layUnder(key, kept.rows);
    await this.#readAgain(id);
    return this.#children.readStored();
  }

  /** The log has changed under everybody who shows it. */
  async #readAgain(id: string): Promise<void> {
    const { current } = this.#app;
    tellOtherWindows({ changed: "learner", id });
    if (current.learner.id === id) await current.reload();
    const { state } = this.#child ?? {};
    if (state?.learner.id !== id) return;
    if (state !== current) await state.reload();
    await this.#look(state, ++this.#choices);
  }
}
