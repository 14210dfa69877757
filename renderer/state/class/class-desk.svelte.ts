/** The class as its coach looks at it: who is in it, which cases, in which order. */
import * as v from "valibot";
import {
  casesMet,
  type ClassGrid,
  classGrid,
  type ClassMember,
  stuckFirst,
} from "../../../core/class/class-grid";
import { type Lesson, nextLesson } from "../../../core/class/lesson";
import {
  chosenLesson,
  type LessonCandidate,
  lessonCandidates,
} from "../../../core/class/lesson-choice";
import type { CaseId } from "../../../core/cases/case-ids";
import type { DeckCase } from "../../../core/deck/deck";
import { FIRST_COURSE } from "../../../core/deck/starter-decks";
import type { Learner } from "../../../core/memory/learner";
import type { LocalDay } from "../../../core/memory/review";
import {
  hearOtherWindows,
  tellOtherWindows,
} from "../../platform/other-windows";
import { changeSetting, readSetting } from "../../storage/settings";
import type { LogReader } from "../../workers/class-client";
import type { DeckShelf } from "../decks.svelte";
import type { TurnwiseDatabase } from "../../storage/database";
import type { LearnerState } from "../learner.svelte";
import {
  type ClassFilter,
  eachOnce,
  filteredCases,
  formatClassFilter,
  inDeckOrder,
} from "./class-filter";
import { type Enrolled, readEnrolled } from "./class-log";
import {
  type ClassError,
  type ClassSummaries,
  readSummaries,
} from "./class-summaries";
import { nextMonday } from "./lesson-deck";

/** Under which key the store keeps who is not in the class. */
const CLASS_KEY = "class";

const CHOICES = v.object({
  leftOut: v.fallback(v.array(v.string()), []),
});

function leftOutFrom(stored: unknown): readonly string[] {
  const parsed = v.safeParse(CHOICES, stored ?? {});
  return parsed.success ? parsed.output.leftOut : [];
}

function withChoice(
  leftOut: readonly string[],
  id: string,
  isIn: boolean,
): readonly string[] {
  const others = leftOut.filter((one) => one !== id);
  return isIn ? others : [...others, id];
}

/** Whether the grid has what needs looking at first, or the order of decks and names. */
export const CLASS_ORDERS = ["stuck-first", "as-decks"] as const;

/** One of these orders. */
export type ClassOrder = (typeof CLASS_ORDERS)[number];

/** What the desk needs of the app. */
export interface ClassDeskApp {
  readonly learners: readonly Learner[];
  readonly decks: Pick<DeckShelf, "all">;
  readonly current: Pick<LearnerState, "today">;
  /** The machine's own store: a guest at the desk has another. */
  readonly database: TurnwiseDatabase;
  readonly isGuest: boolean;
}

/** How far along reading is. */
export interface ClassProgress {
  readonly done: number;
  readonly all: number;
}

/** Somebody of the class whose answers could not be read. */
export interface Unreadable {
  readonly name: string;
  readonly error: ClassError;
}

/** The cases that a coach chose instead of the proposal. */
interface LessonChoice {
  /** For which Monday, and of which cases of the class. */
  readonly of: string;
  readonly ids: readonly CaseId[];
}

/** What was chosen last, for as long as the window is open: a coach looks at the sheets, comes back, and finds the lesson as they left it. */
const CHOICES_MADE = new WeakMap<ClassDeskApp, LessonChoice>();

/** The class on the desk. */
export class ClassDesk {
  readonly #app: ClassDeskApp;
  readonly #reader: (() => LogReader) | undefined;
  #read: ClassSummaries | undefined = $state.raw();
  #leftOut: readonly string[] = $state.raw([]);
  /** Everybody who may be in the class, by name; undefined until it is known. */
  enrolled: readonly Enrolled[] | undefined = $state.raw();
  filter: ClassFilter = $state.raw({ kind: "met" });
  order: ClassOrder = $state("stuck-first");
  /** undefined where nothing is being read. */
  progress: ClassProgress | undefined = $state.raw();
  trouble: ClassError | undefined = $state.raw();
  #reading: AbortController | undefined;
  #isResting = false;
  /** Whether a guest has chosen who is in the class: what is stored says nothing then. */
  #isChosenHere = false;

  #members: readonly ClassMember[] = $derived.by(() => {
    const summaries = this.#read?.summaries;
    return (this.enrolled ?? []).flatMap(({ id, name, schedule }) => {
      const summary = summaries?.get(id);
      return summary === undefined || this.#leftOut.includes(id)
        ? []
        : [{ id, name, schedule, summary }];
    });
  });
  #met = $derived(casesMet(this.#members));
  /** The cases of the decks that those of the class practise who are here. */
  #practised = $derived.by(() => {
    const { all } = this.#app.decks;
    const here = (this.enrolled ?? []).filter(
      ({ id, isHere }) => isHere && this.isIn(id),
    );
    const decks = here.flatMap(({ decks: chosen }) =>
      chosen === undefined
        ? FIRST_COURSE
        : chosen.flatMap((id) => all.find((deck) => deck.id === id) ?? []),
    );
    return eachOnce(
      (decks.length === 0 ? FIRST_COURSE : decks).flatMap(({ cases }) => cases),
    );
  });
  #ordered: readonly DeckCase[] = $derived.by(() =>
    eachOnce([
      ...this.#practised,
      ...this.#app.decks.all.flatMap(({ cases }) => cases),
    ]),
  );
  #cases = $derived.by(() =>
    filteredCases(this.filter, this.#met, this.#app.decks.all, this.#ordered),
  );
  #grid: ClassGrid = $derived.by(() =>
    classGrid(this.#members, this.#cases, this.#app.current.today),
  );
  #lessonGrid: ClassGrid = $derived.by(() => {
    if (this.filter.kind !== "met") return this.#grid;
    // What comes next is not met yet, so it is not in the grid.
    const cases = inDeckOrder(
      [...this.#met, ...this.#practised.map((one) => one.case)],
      this.#ordered,
    );
    const { today } = this.#app.current;
    return classGrid(this.#members, cases, today);
  });
  #proposed: Lesson = $derived(nextLesson(this.#lessonGrid));
  #choice: LessonChoice | undefined = $state.raw();
  #choiceKey = $derived.by(() => {
    const monday = nextMonday(this.#app.current.today);
    return `${monday} ${formatClassFilter(this.filter)}`;
  });
  /** undefined: the proposal stands. */
  #chosen = $derived.by(() => {
    const { of, ids } = this.#choice ?? {};
    if (ids === undefined || of !== this.#choiceKey) return undefined;
    const own = this.#proposed.cases.map((one) => one.case);
    return own.length === ids.length && own.every((id) => ids.includes(id))
      ? undefined
      : ids;
  });
  #lesson: Lesson = $derived(
    this.#chosen === undefined
      ? this.#proposed
      : chosenLesson(this.#lessonGrid, this.#proposed, this.#chosen),
  );
  #shown = $derived(
    this.order === "stuck-first" ? stuckFirst(this.#grid) : this.#grid,
  );

  /** Logs are read by a worker, unless a reader is given. */
  constructor(app: ClassDeskApp, reader?: () => LogReader) {
    this.#app = app;
    this.#reader = reader;
    this.#choice = CHOICES_MADE.get(app);
  }

  /** Whether everything there is has been read. */
  get isRead(): boolean {
    return this.#read !== undefined;
  }

  /** Those of the class whose answers could not be read, by name, and why. */
  get unreadable(): readonly Unreadable[] {
    const troubles = this.#read?.unreadable;
    return (this.enrolled ?? []).flatMap(({ id, name }) => {
      const error = troubles?.get(id);
      return error === undefined || !this.isIn(id) ? [] : [{ name, error }];
    });
  }

  /** Those who are in the class, by name; without those who could not be read. */
  get members(): readonly ClassMember[] {
    return this.#members;
  }

  /** Cases that somebody has answered. */
  get met(): ReturnType<typeof casesMet> {
    return this.#met;
  }

  /** The cases of all decks, each as the first deck that is practised wants it. */
  get ordered(): readonly DeckCase[] {
    return this.#ordered;
  }

  /** The lesson as its coach has it. */
  get lesson(): Lesson {
    return this.#lesson;
  }

  /** The lesson as the class's answers propose it, whatever the coach changed. */
  get proposed(): Lesson {
    return this.#proposed;
  }

  get isLessonChanged(): boolean {
    return this.#chosen !== undefined;
  }

  /** What could be put into the lesson, as the rule orders it. */
  get candidates(): readonly LessonCandidate[] {
    return lessonCandidates(this.#lessonGrid, this.#lesson, this.#proposed);
  }

  takeOut(id: CaseId): void {
    this.#choose(this.#lessonIds().filter((one) => one !== id));
  }

  putIn(id: CaseId): void {
    this.#choose([...this.#lessonIds(), id]);
  }

  /** Lets the proposal stand again. */
  propose(): void {
    this.#choose(this.#proposed.cases.map((one) => one.case));
  }

  #lessonIds(): readonly CaseId[] {
    return this.#lesson.cases.map((one) => one.case);
  }

  #choose(ids: readonly CaseId[]): void {
    this.#choice = { of: this.#choiceKey, ids };
    CHOICES_MADE.set(this.#app, this.#choice);
  }

  /** The grid in the order that is chosen. */
  get grid(): ClassGrid {
    return this.#shown;
  }

  isIn(id: string): boolean {
    return !this.#leftOut.includes(id);
  }

  /** Takes somebody into the class or out of it, and remembers it; what a guest chooses is forgotten with the page. */
  async setIn(id: string, isIn: boolean): Promise<void> {
    this.#leftOut = withChoice(this.#leftOut, id, isIn);
    if (this.#app.isGuest) {
      this.#isChosenHere = true;
      return;
    }
    const saved = await changeSetting(
      this.#app.database,
      CLASS_KEY,
      (stored) => ({
        leftOut: withChoice(leftOutFrom(stored), id, isIn),
      }),
    );
    if (saved.ok) tellOtherWindows({ changed: "learner", id });
    else this.trouble = saved.error;
  }

  /** Reads the class, now and whenever another window has changed something. Call it in an effect. */
  follow(): () => void {
    this.readAgain();
    // Learners, decks and answers all stand in the table.
    const deaf = hearOtherWindows(() => {
      if (!this.#isResting) this.readAgain();
    });
    return () => {
      deaf();
      this.#reading?.abort();
    };
  }

  /** Leaves off reading, while somebody else needs the store, until `readAgain`. What was read stays. */
  rest(): void {
    this.#isResting = true;
    this.#reading?.abort();
  }

  /** Reads what may have changed, as when results were taken in. */
  readAgain(): void {
    this.#isResting = false;
    this.#reading?.abort();
    const { signal } = (this.#reading = new AbortController());
    const { learners, current } = this.#app;
    void this.#readAll(learners, current.today, signal).then((error) => {
      if (signal.aborted) return;
      this.progress = undefined;
      this.trouble = error;
    });
  }

  /** Resolves with why it could not be read, or undefined. */
  async #readAll(
    learners: readonly Learner[],
    today: LocalDay,
    signal: AbortSignal,
  ): Promise<ClassError | undefined> {
    const enrolled = await readEnrolled(this.#app.database, learners);
    if (!enrolled.ok) return enrolled.error;
    const summaries = await readSummaries(this.#app.database, enrolled.value, {
      today,
      signal,
      onprogress: (done, all) => {
        if (!signal.aborted) this.progress = { done, all };
      },
      ...(this.#reader !== undefined && { reader: this.#reader() }),
    });
    if (!summaries.ok) return summaries.error;
    // Last, so that nobody's choice is older than what is shown.
    const choices = await readSetting(this.#app.database, CLASS_KEY);
    if (!choices.ok) return choices.error;
    if (signal.aborted) return undefined;
    if (!this.#isChosenHere) this.#leftOut = leftOutFrom(choices.value);
    this.enrolled = enrolled.value;
    this.#read = summaries.value;
    return undefined;
  }
}
