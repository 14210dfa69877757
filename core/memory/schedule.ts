/**
 * The memory of a case: how well it should be known on a day, computed from
 * the log alone.
 *
 * Event-sourced: states are folded from the reviews with the scheduling
 * library's memory-state function and our own day numbers, never stored as
 * truth. The library's own reviewing call counts UTC calendar days where its
 * chance counts 24-hour gaps, and replays a million reviews in 8 s; this file
 * takes 1.3 to 2.1 s of processor time (Node 20, two busy cores).
 *
 * What counts as recall, and how often:
 * - A case has one memory per learner, case and hold.
 * - An answer counts when it was asked alone and not interrupted. Answers that
 *   were shown, helped, or asked again after a miss say little about recall.
 * - A day counts once. Its grade is that of the first answer that counts, or
 *   "missed" when any later one that day was missed: a miss while the case is
 *   still warm says more than a right answer before it. More right answers on
 *   one day change nothing.
 * - A clock set back, or a zone change that lands on an earlier day, counts as
 *   the day already reached.
 */
import type { FSRSState } from "ts-fsrs";
import type { CaseId } from "../cases/case-ids";
import { type Hold, HOLDS } from "../cases/variant";
import { type Grade, gradeOf } from "./grade";
import { algorithm, type Algorithm, RATING } from "./library-settings";
import { dayAfter } from "./local-day";
import type { LocalDay, Review } from "./review";

/** The version of the weights below; stored with every review. */
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
  /** The library's 21 weights; the default ones where absent. */
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

/** What of a review the schedule reads. */
export type ScheduledReview = Pick<
  Review,
  | "id"
  | "learner"
  | "case"
  | "hold"
  | "at"
  | "localDay"
  | "asking"
  | "interrupted"
  | "verdict"
  | "corrections"
  | "hints"
>;

/** The key of a memory in `memoriesOf`. */
export function memoryKey(learner: string, id: CaseId, hold: Hold): string {
  return `${learner} ${id} ${hold}`;
}

function algorithmFor(settings: ScheduleSettings): Algorithm {
  return algorithm(settings.level ?? DEFAULT_LEVEL, settings.weights);
}

/** A memory while the log is being read; `before` is the state the last day began with. */
interface Tally {
  readonly first: ScheduledReview;
  before: FSRSState | null;
  elapsed: number;
  state: FSRSState;
  day: LocalDay;
  grade: Grade;
  days: number;
}

function countsAsRecall(review: ScheduledReview): boolean {
  return review.asking === "alone" && !review.interrupted;
}

function beginTally(library: Algorithm, review: ScheduledReview): Tally {
  const grade = gradeOf(review);
  return {
    first: review,
    before: null,
    elapsed: 0,
    state: library.next_state(null, 0, RATING[grade]),
    day: review.localDay,
    grade,
    days: 1,
  };
}

function addToTally(
  library: Algorithm,
  tally: Tally,
  review: ScheduledReview,
): void {
  const grade = gradeOf(review);
  if (review.localDay > tally.day) {
    tally.before = tally.state;
    tally.elapsed = review.localDay - tally.day;
    tally.day = review.localDay;
    tally.days += 1;
  } else if (grade !== "missed" || tally.grade === "missed") {
    return;
  }
  tally.grade = grade;
  tally.state = library.next_state(tally.before, tally.elapsed, RATING[grade]);
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

function isBefore(a: ScheduledReview, b: ScheduledReview): boolean {
  return a.at < b.at || (a.at === b.at && a.id < b.id);
}

/**
 * The log in the order of replay, (at, id), each review once: logs from two
 * machines are merged as a union, whatever came first. A log that is in order
 * already is passed through.
 */
export function inReplayOrder<R extends ScheduledReview>(
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

function tallyOf(
  library: Algorithm,
  reviews: readonly ScheduledReview[],
): Tally | undefined {
  let tally: Tally | undefined;
  for (const review of inReplayOrder(reviews)) {
    if (tally === undefined) tally = beginTally(library, review);
    else addToTally(library, tally, review);
  }
  return tally;
}

/** The reviews that count as recall, by learner, hold and case. */
function recallsByMemory(
  log: readonly ScheduledReview[],
): ReadonlyMap<string, readonly ScheduledReview[]> {
  // Maps of short names that are there already: building and hashing a key for
  // each of a million reviews took a third of the replay.
  const byLearner = new Map<
    string,
    Record<Hold, Map<CaseId, ScheduledReview[]>>
  >();
  for (const review of log) {
    if (!countsAsRecall(review)) continue;
    let holds = byLearner.get(review.learner);
    if (holds === undefined) {
      holds = { up: new Map(), down: new Map() };
      byLearner.set(review.learner, holds);
    }
    const cases = holds[review.hold];
    const recalls = cases.get(review.case);
    if (recalls === undefined) cases.set(review.case, [review]);
    else recalls.push(review);
  }
  const byKey = new Map<string, readonly ScheduledReview[]>();
  for (const [learner, holds] of byLearner)
    for (const hold of HOLDS)
      for (const [id, recalls] of holds[hold])
        byKey.set(memoryKey(learner, id, hold), recalls);
  return byKey;
}

/** All memories that a log makes, by `memoryKey`. A case without one is new. */
export function memoriesOf(
  log: readonly ScheduledReview[],
  settings: ScheduleSettings = {},
): Map<string, Memory> {
  const library = algorithmFor(settings);
  const memories = new Map<string, Memory>();
  for (const [key, recalls] of recallsByMemory(log)) {
    const tally = tallyOf(library, recalls);
    if (tally !== undefined) memories.set(key, memoryFrom(library, tally));
  }
  return memories;
}

/**
 * The memory that the reviews of one learner, case and hold make, or undefined
 * where none of them counts as recall.
 */
export function memoryOf(
  reviews: readonly ScheduledReview[],
  settings: ScheduleSettings = {},
): Memory | undefined {
  for (const memory of memoriesOf(reviews, settings).values()) return memory;
  return undefined;
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

/** The memory of a case in a word, on a day: new without one. */
export function memoryState(
  memory:
    | Pick<Memory, "stability" | "lastDay" | "lastsUntil" | "missedLast">
    | undefined,
  today: LocalDay,
  settings: ScheduleSettings = {},
): MemoryState {
  if (memory === undefined) return "new";
  const level = settings.level ?? DEFAULT_LEVEL;
  const chance = chanceNow(memory, today, settings);
  if (memory.missedLast || chance < level - FADING_MARGIN) return "fading";
  return memory.lastsUntil - memory.lastDay >= KEPT_DAYS ? "kept" : "settling";
}
