/**
 * How long practice takes a learner, from their own times: answering a case,
 * and what lies between two answers, which is reading what happened, and for a
 * cube in the hands setting the next case up.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import { answerTarget } from "./answer-target";
import { RecentValues } from "./baseline";
import type { PlannedCase } from "./plan-candidates";
import {
  type AnswerWay,
  isOnPaper,
  type LocalDay,
  type Review,
} from "./review";

/** What of a review times are read from. */
export type TimedReview = Pick<
  Review,
  | "case"
  | "hold"
  | "at"
  | "localDay"
  | "answerWay"
  | "asking"
  | "interrupted"
  | "verdict"
  | "total"
  | "target"
>;

/** How many of a learner's last answers say how fast they are. */
const RECENT = 50;

/** How many of a case's last answers say how long it takes. */
const RECENT_OF_CASE = 10;

/** So many answers are looked back at: about two months of daily practice. */
const LOOKED_AT = 2000;

/** Between two answers, until it was measured. Units: seconds. Source: our guess; a set-up is about seven turns told one by one. */
const BETWEEN_ANSWERS: Readonly<Record<"my-cube" | "other", number>> = {
  "my-cube": 25,
  other: 6,
};

/** More than this between two answers is a pause. Units: milliseconds. */
const PAUSE = 180_000;

/** An answer that took longer was left lying. Units: milliseconds. */
const LONGEST_ANSWER = 300_000;

/** How often a new case is asked or shown in its first round, and a known one with its share of returns. */
const ASKINGS = { new: 6, known: 1.2 } as const;

/** How long a known case takes to ask, with what lies between answers and its share of returns. Units: seconds, in and out. */
export function secondsToAsk(
  answerSeconds: number,
  between = BETWEEN_ANSWERS.other,
): number {
  return ASKINGS.known * (answerSeconds + between);
}

function countsForTime(review: TimedReview): boolean {
  return (
    review.verdict === "right" &&
    !review.interrupted &&
    review.asking !== "shown" &&
    review.asking !== "helped"
  );
}

/** What lies between each answer and the one before it on the same day. Units: seconds. */
function between(
  reviews: readonly TimedReview[],
  answerWay: AnswerWay,
): RecentValues {
  const gaps = new RecentValues(RECENT);
  reviews.forEach((review, i) => {
    const before = reviews[i - 1];
    if (before === undefined || review.answerWay !== answerWay) return;
    if (before.localDay !== review.localDay || review.interrupted) return;
    // Its instant is the end of its day, whenever it was done.
    if (isOnPaper(before.answerWay)) return;
    const gap = review.at - before.at - review.total;
    if (gap >= 0 && gap < PAUSE) gaps.add(gap / 1000);
  });
  return gaps;
}

/** How long a learner's cases take in one way of answering. Units: seconds. */
export interface TimeNeeded {
  /** The median of a case's last answers; undefined where it was not answered that way. */
  readonly usual: (planned: PlannedCase) => number | undefined;
  /** To ask a case as often as it is planned, with what lies between answers and its share of returns. */
  readonly toAsk: (planned: PlannedCase) => number;
}

/**
 * How long each case takes a learner in a way of answering: its own usual
 * time, else its target times the median share of the targets that their last
 * answers took, at first the whole.
 *
 * Shape: `reviews` one learner's, oldest first.
 */
export function timeNeeded(
  reviews: readonly TimedReview[],
  answerWay: AnswerWay,
): TimeNeeded {
  const recent = reviews.slice(-LOOKED_AT);
  const shares = new RecentValues(RECENT);
  const own: Record<Hold, Map<CaseId, RecentValues>> = {
    up: new Map(),
    down: new Map(),
  };
  for (const review of recent) {
    if (review.answerWay !== answerWay || !countsForTime(review)) continue;
    const seconds = review.total / 1000;
    shares.add(seconds / review.target);
    const times =
      own[review.hold].get(review.case) ?? new RecentValues(RECENT_OF_CASE);
    times.add(seconds);
    own[review.hold].set(review.case, times);
  }
  const share = shares.count === 0 ? 1 : shares.median();
  const gaps = between(recent, answerWay);
  const gap =
    gaps.count === 0
      ? BETWEEN_ANSWERS[answerWay === "my-cube" ? "my-cube" : "other"]
      : gaps.median();
  const usual = ({ case: id, hold }: PlannedCase) =>
    own[hold].get(id)?.median();
  return {
    usual,
    toAsk(planned) {
      const { memory, times } = planned;
      const target = answerTarget(planned.target, answerWay);
      if (memory === "new") return ASKINGS.new * (share * target + gap);
      return times * secondsToAsk(usual(planned) ?? share * target, gap);
    },
  };
}

/**
 * How long a learner has practised on a day what the schedule asked: their
 * answers and what lay between, without pauses. What was asked beyond the
 * schedule takes none of its minutes, and neither does what was done on paper.
 *
 * Shape: `reviews` one learner's, oldest first; those of the day are near the
 * end, for a round of yesterday may go on. Units: seconds.
 */
export function secondsPractised(
  reviews: readonly Pick<
    Review,
    "at" | "localDay" | "total" | "asking" | "answerWay"
  >[],
  day: LocalDay,
): number {
  let spent = 0;
  for (let i = reviews.length - 1; i >= 0; i--) {
    const review = reviews[i];
    if (review === undefined || review.localDay < day - 1) break;
    if (review.localDay !== day || review.asking === "extra") continue;
    if (isOnPaper(review.answerWay)) continue;
    const answer = Math.min(review.total, LONGEST_ANSWER);
    const before = reviews[i - 1];
    const sinceBefore =
      before?.localDay === day && !isOnPaper(before.answerWay)
        ? review.at - before.at
        : Infinity;
    const gap = sinceBefore - review.total;
    spent += answer + (gap >= 0 && gap < PAUSE ? gap : 0);
  }
  return spent / 1000;
}
