/**
 * The log's answers graded one after the other. A grader remembers what
 * grading needs of the answers before, some hundred numbers for each case, so
 * that an answer just given is graded without reading the log again.
 *
 * What counts as recall:
 * - The first answer of the learner's day that was asked alone and turned, for
 *   each learner, case and hold. What was chosen or asked beyond the schedule
 *   is none. Repeats are made from what is still warm.
 * - What was chosen is right or missed; no time says how surely.
 * - What was written on paper counts for memory like what was turned, and for
 *   no baseline: its times are not ours.
 * - A case shown on the day it was first asked alone is `taught`; answered
 *   unaided it begins as steady, since no time of its own is known.
 * - A clock set back, or a zone change that lands on an earlier day, counts as
 *   the day already reached.
 *
 * Only first answers of a day enter the baseline, for the same reason: with
 * repeats in it every first answer would seem slow.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import { expectedTime, noTimes, RecentValues, winsorised } from "./baseline";
import {
  type Grade,
  type GradedAnswer,
  gradeOf,
  isAway,
  type Outcome,
  outcomeByFacts,
  outcomeByTime,
  outcomeOnPaper,
  type RecallGrade,
} from "./grade";
import {
  type AnswerWay,
  isOnPaper,
  isRecognising,
  type LocalDay,
  type Review,
} from "./review";

/** What of an answer its grade depends on, besides the answers before. */
export interface GradedFacts extends Pick<
  Review,
  | "case"
  | "hold"
  | "localDay"
  | "answerWay"
  | "asking"
  | "interrupted"
  | "verdict"
  | "corrections"
  | "hints"
  | "total"
  | "target"
> {
  /** Absent: all answers that the grader is given are one learner's. */
  readonly learner?: string;
  /** Units: milliseconds. */
  readonly thinking?: number | undefined;
  readonly untimed?: true | undefined;
}

/** What of a review grading a log reads. */
export type GradableReview = GradedFacts &
  Pick<Review, "id" | "learner" | "at">;

/** The share of a target that is for thinking. Source: `first-layer.md`, common practice: 3 of 8, 1.5 of 4.5 and 0.8 of 3 s. */
export const THINKING_SHARE = 1 / 3;

/** How many answers a learner's offset from the targets is the median of. */
const OFFSET_OVER = 50;

/** Times of one kind: a learner's, in one way of answering, thinking or whole. */
interface Track {
  /** How far above the targets this learner's times lie. Units: ln. */
  readonly offset: RecentValues;
  readonly cases: Map<CaseId, CaseTimes>;
}

interface CaseTimes {
  readonly times: RecentValues;
  /** Whether the last time said that the learner was away. */
  wasAway: boolean;
}

/** What is remembered of a case under a hold. */
interface Met {
  /** The last day with an answer asked alone. */
  lastDay: LocalDay | undefined;
  /** The last day on which the case was shown, or asked with its way in sight. */
  taughtDay: LocalDay | undefined;
}

interface LearnerRecord {
  readonly thinking: Map<AnswerWay, Track>;
  readonly whole: Map<AnswerWay, Track>;
  readonly met: Readonly<Record<Hold, Map<CaseId, Met>>>;
}

/** An answer with what grading makes of it. */
export interface GradedReview<R = Review> extends GradedAnswer {
  readonly review: R;
}

/** A learner's usual time for a case in one way of answering. */
export interface UsualTime {
  /** Units: milliseconds. */
  readonly time: number;
  /** Whether it is the thinking; the whole answer where thinking is not known. */
  readonly isThinking: boolean;
  /** How many clean first answers of a day it is from, at most ten. */
  readonly from: number;
}

function noTrack(): Track {
  return { offset: new RecentValues(OFFSET_OVER), cases: new Map() };
}

function trackOf(tracks: Map<AnswerWay, Track>, way: AnswerWay): Track {
  const known = tracks.get(way);
  if (known !== undefined) return known;
  const track = noTrack();
  tracks.set(way, track);
  return track;
}

function copyTracks(tracks: Map<AnswerWay, Track>): Map<AnswerWay, Track> {
  return new Map(
    Array.from(tracks, ([way, { offset, cases }]) => [
      way,
      {
        offset: offset.copy(),
        cases: new Map(
          Array.from(cases, ([id, { times, wasAway }]) => [
            id,
            { times: times.copy(), wasAway },
          ]),
        ),
      },
    ]),
  );
}

function copyMet(met: ReadonlyMap<CaseId, Met>): Map<CaseId, Met> {
  return new Map(Array.from(met, ([id, one]) => [id, { ...one }]));
}

/** Grades a log's reviews in the order of replay. */
export class Grader {
  readonly #learners = new Map<string, LearnerRecord>();
  // A log is mostly one learner's: the last one found is looked at first.
  #lastLearner: string | undefined;
  #lastRecord: LearnerRecord | undefined;

  /** What the next review is worth; it is remembered. */
  grade(review: GradedFacts): GradedAnswer {
    const record = this.#recordOf(review.learner ?? "");
    const met = metOf(record, review);
    const grade = gradeOf(review);
    if (review.asking === "shown" || review.asking === "helped") {
      if (met.taughtDay === undefined || review.localDay > met.taughtDay)
        met.taughtDay = review.localDay;
      return GRADED[outcomeByFacts(grade)];
    }
    // A look around the cube takes longer than the target of turns knows.
    if (isRecognising(review.answerWay)) return GRADED[outcomeByFacts(grade)];
    const { lastDay } = met;
    const isFirstOfDay =
      review.asking === "alone" &&
      (lastDay === undefined || review.localDay > lastDay);
    if (!isFirstOfDay)
      return GRADED[timedOutcome(record, review, grade, false)];
    met.lastDay = review.localDay;
    if (lastDay !== undefined) {
      const outcome = timedOutcome(record, review, grade, true);
      return RECALLED[outcome];
    }
    if (met.taughtDay !== undefined && review.localDay <= met.taughtDay)
      return TAUGHT[outcomeByFacts(grade)];
    timedOutcome(record, review, grade, true);
    return RECALLED[outcomeByFacts(grade)];
  }

  /** A learner's usual time for a case; undefined without a clean answer. */
  usualTime(
    learner: string,
    id: CaseId,
    way: AnswerWay,
  ): UsualTime | undefined {
    const record = this.#learners.get(learner);
    for (const isThinking of [true, false]) {
      const tracks = isThinking ? record?.thinking : record?.whole;
      const times = tracks?.get(way)?.cases.get(id)?.times;
      if (times !== undefined && times.count > 0)
        return {
          time: Math.exp(times.median()),
          isThinking,
          from: times.count,
        };
    }
    return undefined;
  }

  /** A grader that has seen the same, to be taken further apart. */
  copy(): Grader {
    const copy = new Grader();
    for (const [learner, { thinking, whole, met }] of this.#learners)
      copy.#learners.set(learner, {
        thinking: copyTracks(thinking),
        whole: copyTracks(whole),
        met: { up: copyMet(met.up), down: copyMet(met.down) },
      });
    return copy;
  }

  #recordOf(learner: string): LearnerRecord {
    if (learner === this.#lastLearner && this.#lastRecord !== undefined)
      return this.#lastRecord;
    const known = this.#learners.get(learner);
    const record = known ?? {
      thinking: new Map(),
      whole: new Map(),
      met: { up: new Map(), down: new Map() },
    };
    if (known === undefined) this.#learners.set(learner, record);
    this.#lastLearner = learner;
    this.#lastRecord = record;
    return record;
  }
}

function metOf(record: LearnerRecord, review: GradedFacts): Met {
  const cases = record.met[review.hold];
  const known = cases.get(review.case);
  if (known !== undefined) return known;
  const met: Met = { lastDay: undefined, taughtDay: undefined };
  cases.set(review.case, met);
  return met;
}

/** The outcome of an answer asked alone or again; its time is remembered where it is to be and may be. */
function timedOutcome(
  record: LearnerRecord,
  review: GradedFacts,
  grade: Grade,
  isRemembered: boolean,
): Outcome {
  if (grade !== "clean" || review.interrupted) return outcomeByFacts(grade);
  const { thinking, total, target, answerWay } = review;
  if (isOnPaper(answerWay)) return outcomeOnPaper(review);
  const isThinking = thinking !== undefined;
  const track = trackOf(isThinking ? record.thinking : record.whole, answerWay);
  const own = track.cases.get(review.case);
  const wanted = target * 1000 * (isThinking ? THINKING_SHARE : 1);
  // A time of 0 ms, from a clock that is coarse, still has a logarithm.
  const time = Math.log(Math.max(1, thinking ?? total));
  const asked = Math.log(wanted);
  const expected = expectedTime(own?.times, asked + track.offset.median());
  const z = (time - expected.centre) / expected.spread;
  // Who is away twice running was not: this case takes that long.
  const isSlowCase = own?.wasAway === true && isAway(z);
  if (isRemembered) {
    // All times move the offset, or who begins far above the targets would be
    // away for ever; of fifty the median bears a few real absences.
    track.offset.add(time - asked);
    const kept = own ?? { times: noTimes(), wasAway: false };
    if (own === undefined) track.cases.set(review.case, kept);
    kept.wasAway = isAway(z);
    if (isSlowCase) kept.times.add(time);
    else if (!isAway(z)) kept.times.add(winsorised(time, expected));
  }
  return isSlowCase ? "slow" : outcomeByTime(z);
}

// Made once: a million answers are a million objects otherwise.
function gradedTable(
  recallOf: (outcome: Outcome) => RecallGrade | undefined,
): Readonly<Record<Outcome, GradedAnswer>> {
  const graded = (outcome: Outcome): GradedAnswer => {
    const recall = recallOf(outcome);
    return recall === undefined ? { outcome } : { outcome, recall };
  };
  return {
    quick: graded("quick"),
    steady: graded("steady"),
    slow: graded("slow"),
    missed: graded("missed"),
  };
}

const GRADED = gradedTable(() => undefined);
const RECALLED = gradedTable((outcome) => outcome);
const TAUGHT = gradedTable(() => "taught");

/**
 * Every answer with what it was worth. A log may hold several learners.
 *
 * Shape: `log` in the order of replay (`inReplayOrder`); the result as long.
 */
export function gradeLog<R extends GradableReview>(
  log: readonly R[],
  grader = new Grader(),
): readonly GradedReview<R>[] {
  return log.map((review) => ({ review, ...grader.grade(review) }));
}
