/**
 * The memory of a case: how well it should be known on a day, computed from
 * the log alone.
 *
 * Event-sourced: states are folded from the graded reviews with the scheduling
 * library's memory-state function and our own day numbers, never stored as
 * truth. The library's own reviewing call counts UTC calendar days where its
 * chance counts 24-hour gaps, and replays a million reviews in 8 s; the bench
 * `replay` holds this file and the grading to 1.5 s.
 *
 * A case has one memory per learner, case and hold, and a day counts once:
 * `grader.ts` says which answers count, and as what.
 */
import type { FSRSState } from "ts-fsrs";
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import type { RecallGrade } from "./grade";
import { type GradableReview, type GradedReview, Grader } from "./grader";
import { algorithm, type Algorithm, ratingOf } from "./library-settings";
import { dayAfter } from "./local-day";
import type { LocalDay, Review } from "./review";

/** The number of the library's own weights; those fitted to a learner count on from it. */
export const WEIGHTS_VERSION = 1;

/** The chance of recall at which a case comes back, unless the learner chooses another. */
export const DEFAULT_LEVEL = 0.9;

/** From how many days on a case is said to be kept. */
export const KEPT_DAYS = 14;

/** How far below the learner's level the chance may sink before a case is fading. */
const FADING_MARGIN = 0.1;

/** What the learner and the fit choose. */
export interface ScheduleSettings {
  /** Chance of recall at which a case comes back. Units: 0.7–0.97. */
  readonly level?: number;
  /**
   * The library's 21 weights, fitted to the learner; the default ones where
   * absent. Quick answers count as such only with fitted ones: the default
   * ones come from people who said of themselves how easy it was.
   */
  readonly weights?: readonly number[];
}

/** The memory of one case, as the log says. */
export interface Memory {
  readonly learner: string;
  readonly case: CaseId;
  readonly hold: Hold;
  /** Days until the chance of recall has fallen to 0.9. */
  readonly stability: number;
  /** From 1, easy, to 10. */
  readonly difficulty: number;
  /** The last day that counted. */
  readonly lastDay: LocalDay;
  /** The day on which the chance falls to the learner's level: when it is due. */
  readonly lastsUntil: LocalDay;
  /** Whether the last day that counted was a miss. */
  readonly missedLast: boolean;
  /** How many days have counted. */
  readonly days: number;
}

/** The memory of a case in a word. */
export const MEMORY_STATES = ["new", "settling", "kept", "fading"] as const;

export type MemoryState = (typeof MEMORY_STATES)[number];

/** The key of a memory in `memoriesOf`. */
export function memoryKey(learner: string, id: CaseId, hold: Hold): string {
  return `${learner} ${id} ${hold}`;
}

function algorithmFor(settings: ScheduleSettings): Algorithm {
  return algorithm(settings.level ?? DEFAULT_LEVEL, settings.weights);
}

interface Library {
  readonly library: Algorithm;
  readonly isQuickCounted: boolean;
}

function libraryFor(settings: ScheduleSettings): Library {
  return {
    library: algorithmFor(settings),
    isQuickCounted: settings.weights !== undefined,
  };
}

/** What of a review a memory is kept for, and when. */
type Remembered = Pick<Review, "learner" | "case" | "hold" | "localDay">;

/** A memory while the log is being read. */
interface Tally {
  readonly first: Remembered;
  elapsed: number;
  state: FSRSState;
  day: LocalDay;
  grade: RecallGrade;
  days: number;
}

/** The tally after a day that counts; days come in rising order. */
function tallied(
  settings: Library,
  tally: Tally | undefined,
  review: Remembered,
  grade: RecallGrade,
): Tally {
  const { library, isQuickCounted } = settings;
  const rating = ratingOf(grade, isQuickCounted);
  if (tally === undefined)
    return {
      first: review,
      elapsed: 0,
      state: library.next_state(null, 0, rating),
      day: review.localDay,
      grade,
      days: 1,
    };
  tally.elapsed = review.localDay - tally.day;
  tally.state = library.next_state(tally.state, tally.elapsed, rating);
  tally.day = review.localDay;
  tally.grade = grade;
  tally.days += 1;
  return tally;
}

function memoryFrom(library: Algorithm, tally: Tally): Memory {
  const { stability, difficulty } = tally.state;
  const { learner, case: id, hold } = tally.first;
  return {
    learner,
    case: id,
    hold,
    stability,
    difficulty,
    lastDay: tally.day,
    lastsUntil: dayAfter(
      tally.day,
      library.next_interval(stability, tally.elapsed),
    ),
    missedLast: tally.grade === "missed",
    days: tally.days,
  };
}

/** What of a review its place in the log depends on. */
type Placed = Pick<Review, "id" | "at">;

/** Whether an answer comes before another in the order of replay. */
export function isBefore(a: Placed, b: Placed): boolean {
  return a.at < b.at || (a.at === b.at && a.id < b.id);
}

/**
 * The log in the order of replay, (at, id), each review once: logs from two
 * machines are merged as a union, whatever came first. A log that is in order
 * already is passed through.
 */
export function inReplayOrder<R extends Placed>(
  log: readonly R[],
): readonly R[] {
  const inOrder = log.every((review, i) => {
    const previous = log[i - 1];
    return previous === undefined || isBefore(previous, review);
  });
  if (inOrder) return log;
  const sorted = [...log].sort((a, b) =>
    isBefore(a, b) ? -1 : isBefore(b, a) ? 1 : 0,
  );
  return sorted.filter((review, i) => review.id !== sorted[i - 1]?.id);
}

/** Memories being read, under names that are there already: building a key for each of a million reviews took a third of the replay. */
class Tallies {
  readonly #settings: Library;
  readonly #byLearner = new Map<
    string,
    Readonly<Record<Hold, Map<CaseId, Tally>>>
  >();

  constructor(settings: ScheduleSettings) {
    this.#settings = libraryFor(settings);
  }

  add(review: Remembered, grade: RecallGrade): void {
    let holds = this.#byLearner.get(review.learner);
    if (holds === undefined) {
      holds = { up: new Map(), down: new Map() };
      this.#byLearner.set(review.learner, holds);
    }
    const cases = holds[review.hold];
    const before = cases.get(review.case);
    const after = tallied(this.#settings, before, review, grade);
    if (before === undefined) cases.set(review.case, after);
  }

  memories(): Map<string, Memory> {
    const memories = new Map<string, Memory>();
    for (const holds of this.#byLearner.values())
      for (const cases of [holds.up, holds.down])
        for (const tally of cases.values()) {
          const { learner, case: id, hold } = tally.first;
          memories.set(
            memoryKey(learner, id, hold),
            memoryFrom(this.#settings.library, tally),
          );
        }
    return memories;
  }
}

/** All memories that a log makes, by `memoryKey`. A case without one is new. */
export function memoriesOf(
  log: readonly GradableReview[],
  settings: ScheduleSettings = {},
): Map<string, Memory> {
  const grader = new Grader();
  const tallies = new Tallies(settings);
  for (const review of inReplayOrder(log)) {
    const { recall } = grader.grade(review);
    if (recall !== undefined) tallies.add(review, recall);
  }
  return tallies.memories();
}

/**
 * The memory that graded answers of one learner, case and hold make, or
 * undefined where none of them counts as recall.
 *
 * Shape: in the order of replay.
 */
export function memoryOf(
  answers: readonly GradedReview<Remembered>[],
  settings: ScheduleSettings = {},
): Memory | undefined {
  const library = libraryFor(settings);
  let tally: Tally | undefined;
  for (const { review, recall } of answers)
    if (recall !== undefined) tally = tallied(library, tally, review, recall);
  return tally === undefined ? undefined : memoryFrom(library.library, tally);
}

/**
 * The chance that a case would be known on a day.
 *
 * Units: 0–1. A day before the last one that counted, under a clock set back,
 *        is that day.
 */
export function chanceNow(
  memory: Pick<Memory, "stability" | "lastDay">,
  today: LocalDay,
  settings: ScheduleSettings = {},
): number {
  const days = Math.max(0, today - memory.lastDay);
  return algorithmFor(settings).forgetting_curve(days, memory.stability);
}

/** What a memory needs for the days ahead to be played through. */
export type MemoryAhead = Pick<Memory, "stability" | "difficulty" | "lastDay">;

/** A memory after a day, and when its case comes back. */
export interface DayAfter {
  readonly memory: MemoryAhead;
  readonly due: LocalDay;
}

/** A memory after a case was recalled steadily on a day, and when it comes back then. */
export function recalledOn(
  memory: MemoryAhead,
  day: LocalDay,
  settings: ScheduleSettings = {},
): DayAfter {
  const { library } = libraryFor(settings);
  const elapsed = Math.max(0, day - memory.lastDay);
  const state = library.next_state(memory, elapsed, ratingOf("steady", false));
  return {
    memory: { ...state, lastDay: day },
    due: dayAfter(day, library.next_interval(state.stability, elapsed)),
  };
}

/** The memory of a case that is taught on a day, and when it comes back. */
export function taughtOn(
  day: LocalDay,
  settings: ScheduleSettings = {},
): DayAfter {
  const { library } = libraryFor(settings);
  const state = library.next_state(null, 0, ratingOf("taught", false));
  return {
    memory: { ...state, lastDay: day },
    due: dayAfter(day, library.next_interval(state.stability, 0)),
  };
}

/** For how long a case met on one day only is given time to settle. */
const SETTLING_DAYS = 7;

/**
 * The memory of a case in a word, on a day: new without one. A case just
 * taught sinks low over night, and has not held yet what could fade.
 */
export function memoryState(
  memory:
    | Pick<
        Memory,
        "stability" | "lastDay" | "lastsUntil" | "missedLast" | "days"
      >
    | undefined,
  today: LocalDay,
  settings: ScheduleSettings = {},
): MemoryState {
  if (memory === undefined) return "new";
  const level = settings.level ?? DEFAULT_LEVEL;
  const chance = chanceNow(memory, today, settings);
  const isYoung = memory.days === 1 && today - memory.lastDay <= SETTLING_DAYS;
  const hasSunk = chance < level - FADING_MARGIN;
  if (memory.missedLast || (hasSunk && !isYoung)) return "fading";
  return memory.lastsUntil - memory.lastDay >= KEPT_DAYS ? "kept" : "settling";
}
