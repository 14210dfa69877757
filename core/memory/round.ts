/**
 * A round of practice as a pure state machine. A round is plain JSON: it is
 * stored after every answer, in one transaction with the review, so that it
 * survives a crash at the exact position.
 */
import type { CaseId } from "../cases/case-ids";
import type { Hold, Variant } from "../cases/variant";
import type { AskingChoice } from "../deck/deck";
import { present } from "../invariant";
import { randomSource, seedFrom } from "../random-source";
import type { PlannedCase } from "./plan-candidates";
import { type Graded, gradeOf, type Outcome } from "./grade";
import type { Asking, Hint, LocalDay, RecognisingWay, Review } from "./review";
import { nextTrack, withoutUnspaced } from "./round-order";
import {
  beginTrack,
  type RoundTrack,
  trackAfter,
  trackAfterSkip,
} from "./round-track";
import {
  drawVariant,
  homeOfAsking,
  homesInOrder,
  isBare,
  type Opening,
  openingOf,
} from "./variant-opening";

/** One asking: everything the window needs to show it. */
export interface RoundItem {
  readonly case: CaseId;
  readonly hold: Hold;
  readonly deck: string;
  /** Units: seconds. */
  readonly target: number;
  readonly asking: Asking;
  readonly variant: Variant;
  readonly opening: Opening;
  /** Whether pieces that do not matter are bare plastic. */
  readonly bare: boolean;
  /** How the deck wants it asked; absent: as its opening says. */
  readonly choice?: AskingChoice;
  /** Absent: turned, as the learner chose and the deck allows. */
  readonly answerWay?: RecognisingWay;
  /** For drawing the random position. Units: a 32-bit integer. */
  readonly seed: number;
  /** What was drawn: 54 facelets in the body frame, `?` where unknown. Absent: not shown yet. */
  readonly position?: string;
  /** Whether the window closed or reloaded after the item was shown. */
  readonly interrupted: boolean;
  /** Help asked for since it was first shown; absent: none. */
  readonly hints?: readonly Hint[];
  /** Index of its case in the round. */
  readonly track: number;
}

/** What became of one asking. */
export interface RoundResult {
  readonly case: CaseId;
  readonly asking: Asking;
  readonly outcome: Outcome | "shown" | "skipped";
  /** The id of its review; absent for what was skipped. */
  readonly review?: string;
}

/** A round between two askings. */
interface RoundSoFar {
  readonly id: string;
  readonly learner: string;
  /** The day it began, and to which all its answers belong. */
  readonly day: LocalDay;
  readonly seed: number;
  readonly startedAt: number;
  /** When it last went on. */
  readonly touchedAt: number;
  readonly tracks: readonly RoundTrack[];
  readonly results: readonly RoundResult[];
}

/** A round, under way or over. */
export interface Round extends RoundSoFar {
  /** Absent: the round is over. */
  readonly current?: RoundItem;
}

/** What a round is started with. */
export interface RoundStart {
  /** A random UUID. */
  readonly id: string;
  readonly learner: string;
  readonly day: LocalDay;
  /** Units: any 32-bit integer, from a source of real chance. */
  readonly seed: number;
  /** Units: milliseconds since the Unix epoch. */
  readonly now: number;
}

/** What of a review moves a round on. */
export type AnsweredReview = Graded & Pick<Review, "id" | "at">;

function itemOf(round: RoundSoFar, index: number): RoundItem {
  const track = present(round.tracks[index], "the order picks a track");
  const { planned, asked } = track;
  const { memory } = planned;
  const step = present(track.steps[0], "a track whose turn it is has a step");
  const homes = homesInOrder(
    randomSource(seedFrom(round.seed, 2 * index)),
    memory,
  );
  const seed = seedFrom(round.seed, 2 * round.results.length + 1);
  const opening = openingOf(memory);
  return {
    case: planned.case,
    hold: planned.hold,
    deck: planned.deck,
    target: planned.target,
    asking: step.asking,
    variant: drawVariant(
      randomSource(seedFrom(seed, 0)),
      planned.case,
      opening,
      homeOfAsking(homes, asked),
      planned.choice,
    ),
    opening,
    // What shows its stickers would be what is to be found.
    bare: isBare(memory) && planned.answerWay !== "find-it",
    ...(planned.choice === undefined ? {} : { choice: planned.choice }),
    ...(planned.answerWay === undefined
      ? {}
      : { answerWay: planned.answerWay }),
    seed,
    interrupted: false,
    track: index,
  };
}

/** The round with the item whose turn it is, or over. */
function withNextItem(round: RoundSoFar, lastTrack: number | undefined): Round {
  const tracks = withoutUnspaced(round.tracks, lastTrack);
  const settled = { ...round, tracks };
  const next = nextTrack(tracks, round.results.length, lastTrack);
  return next === undefined
    ? settled
    : { ...settled, current: itemOf(settled, next) };
}

/** A round of planned cases; over at once where there are none. */
export function startRound(
  planned: readonly PlannedCase[],
  { id, learner, day, seed, now }: RoundStart,
): Round {
  const round = {
    id,
    learner,
    day,
    seed,
    startedAt: now,
    touchedAt: now,
    tracks: planned.map(beginTrack),
    results: [],
  };
  return withNextItem(round, undefined);
}

/** What is asked now, or undefined when the round is over. */
export function currentItem(round: Round): RoundItem | undefined {
  return round.current;
}

/** Whether everything has been asked. */
export function isRoundOver(round: Round): boolean {
  return round.current === undefined;
}

/** The round with the exact position that its current item shows, so that it comes back after a crash. */
export function withPosition(round: Round, position: string): Round {
  return round.current === undefined
    ? round
    : { ...round, current: { ...round.current, position } };
}

/** The round with the help that was asked for on its current item: it counts however the item ends. */
export function withHints(round: Round, hints: readonly Hint[]): Round {
  return round.current === undefined
    ? round
    : { ...round, current: { ...round.current, hints } };
}

function afterCurrent(
  round: Round,
  now: number,
  result: Pick<RoundResult, "outcome" | "review">,
  next: (track: RoundTrack, index: number) => RoundTrack,
): Round {
  const { current: item, ...soFar } = round;
  if (item === undefined) return round;
  const moved = {
    ...soFar,
    touchedAt: now,
    tracks: round.tracks.map((track, i) =>
      i === item.track ? next(track, round.results.length) : track,
    ),
    results: [
      ...round.results,
      { case: item.case, asking: item.asking, ...result },
    ],
  };
  return withNextItem(moved, item.track);
}

/**
 * The round after its current item was answered. A showing cannot be missed.
 *
 * Shape: `outcome` is what the learner's grader makes of the review.
 */
export function answerItem(
  round: Round,
  review: AnsweredReview,
  outcome: Outcome,
): Round {
  const isShown = round.current?.asking === "shown";
  return afterCurrent(
    round,
    review.at,
    { outcome: isShown ? "shown" : outcome, review: review.id },
    (track, index) => trackAfter(track, gradeOf(review), index),
  );
}

/**
 * The round after its current item was skipped: nothing is recorded. A showing
 * is passed over; a question leaves its case alone for this round.
 */
export function skipItem(round: Round, now: number): Round {
  return afterCurrent(round, now, { outcome: "skipped" }, trackAfterSkip);
}

/** A round taken up again: an item that had been shown counts as interrupted. */
export function resumeRound(round: Round): Round {
  return round.current?.position === undefined
    ? round
    : { ...round, current: { ...round.current, interrupted: true } };
}

/** How long a round may lie open beyond its day. Units: milliseconds. */
const OPEN_BEYOND_DAY = 6 * 3_600_000;

/**
 * Whether a stored round can go on: on its own day, and for six hours after it
 * last went on when the day turned over meanwhile. Later its answers would be
 * counted for a day long past.
 */
export function canResume(round: Round, today: LocalDay, now: number): boolean {
  if (isRoundOver(round)) return false;
  return today === round.day || now - round.touchedAt < OPEN_BEYOND_DAY;
}

/** A round as its row of marks: what is done, and how many askings are to come, the current one included. */
export interface RoundMarks {
  readonly done: readonly RoundResult["outcome"][];
  readonly toCome: number;
}

/** The marks of a round. Misses add to what is to come. */
export function roundMarks(round: Round): RoundMarks {
  return {
    done: round.results.map(({ outcome }) => outcome),
    toCome: round.tracks.reduce((sum, { steps }) => sum + steps.length, 0),
  };
}
