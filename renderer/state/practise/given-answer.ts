/** An answer that has been given, and the review it makes. */
import { diagnose, type Diagnosis } from "../../../core/answer/diagnose";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Position } from "../../../core/cases/position";
import type { Measurement } from "../../../core/answer/measure";
import type { Verdict } from "../../../core/answer/judge";
import type { Turn } from "../../../core/cube/turns";
import { answerTarget } from "../../../core/memory/answer-target";
import { GRADING_VERSION } from "../../../core/memory/grade";
import type {
  AnswerWay,
  Hint,
  LocalDay,
  Milliseconds,
  Mistook,
  Review,
} from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { formatPosition } from "./position-of-item";

/** What came of an attempt. */
export interface GivenAnswer {
  readonly verdict: Verdict;
  readonly measured: Measurement;
  /** Help asked for, in order. */
  readonly hints: readonly Hint[];
  /** The turns that stood in the end; none where the app did not see them. */
  readonly turns: readonly Turn[];
  /** Whether the learner said what the cube shows. */
  readonly reported: boolean;
  /** Whether the learner asked to be shown the way. */
  readonly shownTheWay: boolean;
}

/** What of an answer goes into a review. */
export interface ReviewedPart extends Pick<
  GivenAnswer,
  "hints" | "reported" | "shownTheWay"
> {
  readonly verdict: Pick<Verdict, "right">;
  readonly measured: Omit<Measurement, "standing" | "outerBlock" | "execution">;
}

/** What a review says besides the answer itself. */
export interface ReviewContext {
  readonly id: string;
  readonly learner: string;
  readonly item: RoundItem;
  /** The case that was taken for the one shown, where that is known. */
  readonly answeredAs?: CaseId | undefined;
  /** The piece or home that was chosen in the place of the one asked for. */
  readonly mistook?: Mistook | undefined;
  /** What the learner saw. */
  readonly position: Position;
  readonly answerWay: AnswerWay;
  readonly scheme: ColourScheme;
  readonly at: Milliseconds;
  readonly utcOffset: number;
  readonly localDay: LocalDay;
  /** Of the weights that the learner's schedule went by. */
  readonly weightsVersion: number;
}

/** An answer that took so long was left alone in between. Units: milliseconds. */
const LEFT_ALONE = 10 * 60_000;

/**
 * What went wrong in an answer; empty where nothing did, or the app did not
 * see the turns, or the learner gave up to see the way.
 */
export function diagnosisOf(
  given: GivenAnswer,
  position: Position,
  taught: readonly Turn[],
): Diagnosis {
  const isSeen =
    given.turns.length > 0 && !given.shownTheWay && !given.reported;
  return given.verdict.right || !isSeen
    ? {}
    : diagnose(position, given.turns, taught);
}

/** The review of an answer. */
export function reviewOf(given: ReviewedPart, context: ReviewContext): Review {
  const { item, answeredAs, mistook } = context;
  const { measured } = given;
  const isRight = given.verdict.right && !given.shownTheWay;
  return {
    id: context.id,
    learner: context.learner,
    case: item.case,
    hold: item.hold,
    variant: item.variant,
    firstColour: context.scheme.U,
    position: formatPosition(context.position),
    answerWay: context.answerWay,
    asking: item.asking,
    at: context.at,
    utcOffset: context.utcOffset,
    localDay: context.localDay,
    ...(measured.thinking === undefined ? {} : { thinking: measured.thinking }),
    ...(measured.turning === undefined ? {} : { turning: measured.turning }),
    total: measured.total,
    turns: measured.turns,
    verdict: isRight ? "right" : "missed",
    ...(answeredAs === undefined ? {} : { answeredAs }),
    ...(mistook === undefined ? {} : { mistook }),
    corrections: measured.corrections,
    slips: measured.slips,
    hints: given.hints,
    hintTimes: measured.hintTimes,
    looks: measured.looks,
    reported: given.reported,
    interrupted: item.interrupted || measured.total > LEFT_ALONE,
    deck: item.deck,
    target: answerTarget(item.target, context.answerWay),
    gradingVersion: GRADING_VERSION,
    weightsVersion: context.weightsVersion,
  };
}
