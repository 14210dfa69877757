/** What is said of a right answer: one sentence, and one that helps on. */
import type { Outcome } from "../../../core/memory/grade";
import type { Review } from "../../../core/memory/review";
import { shownTimes } from "../../components/time-words";

/** A verdict in words. */
export interface VerdictWords {
  /** The one sentence. */
  readonly sentence: string;
  /** What helps on; empty where there is nothing to say. */
  readonly more: string;
}

/** What of a review the sentence is made from. */
export type SaidReview = Pick<
  Review,
  | "asking"
  | "total"
  | "thinking"
  | "turning"
  | "target"
  | "corrections"
  | "hints"
  | "interrupted"
>;

/** What the words about an answer say besides. */
export interface RightAnswer {
  /** What to look at first, a sentence. */
  readonly lookFirst: string;
  /** What the learner usually takes, thinking where that is known, else the whole; absent: not known yet. Units: milliseconds. */
  readonly usual?: number | undefined;
  /** The turn that is left to line everything up, a sentence or two; undefined: none. */
  readonly lastTurn: string | undefined;
}

function seconds(milliseconds: number): string {
  return `${(milliseconds / 1000).toFixed(1)} seconds`;
}

const SAY_IT =
  "Say the way to yourself while you turn it slowly, then without a stop.";

/** A usual time is told only where it is clearly less than what was needed. */
const CLEARLY_LESS = 0.9;

function joined(...sentences: readonly string[]): string {
  return sentences.filter((sentence) => sentence !== "").join(" ");
}

/** A slow answer took longer than this learner usually does, in thinking where that is known. */
function slowWords(
  { thinking, turning, total, target }: SaidReview,
  { lookFirst, usual }: RightAnswer,
): VerdictWords {
  const isTold =
    usual !== undefined && usual < CLEARLY_LESS * (thinking ?? total);
  const usually = isTold ? `You usually take ${seconds(usual)}.` : "";
  if (thinking === undefined || turning === undefined)
    return {
      sentence: `Right, but it took ${seconds(total)}.`,
      more: joined(
        usually === "" ? `The target is ${target} seconds.` : usually,
        "The same case comes back until it goes by itself.",
      ),
    };
  const shown = shownTimes(total, thinking, turning);
  return {
    sentence: `Right, but it took ${seconds(shown.thinking)} to see what it was.`,
    more: joined(
      usually,
      turning * 2 <= target * 1000 ? "Your turning is already quick." : "",
      lookFirst,
    ),
  };
}

/** Turning does not say how well a case is known: it is only told where most of what is over the target went into it. */
function steadyWords({
  thinking,
  turning,
  total,
  target,
}: SaidReview): VerdictWords {
  const isTurningLong =
    thinking !== undefined &&
    turning !== undefined &&
    turning > thinking &&
    total > target * 1000;
  if (!isTurningLong)
    return { sentence: `Right, in ${seconds(total)}.`, more: "" };
  const shown = shownTimes(total, thinking, turning);
  return {
    sentence: `Right, but the turning took ${seconds(shown.turning)}.`,
    more: joined(
      thinking * 2 <= target * 1000 ? "You saw quickly what it was." : "",
      SAY_IT,
    ),
  };
}

/** The words for a right answer. */
export function rightWords(
  review: SaidReview,
  outcome: Outcome,
  about: RightAnswer,
): VerdictWords {
  const { lastTurn } = about;
  const { sentence, more } = measuredWords(review, outcome, about);
  if (lastTurn === undefined) return { sentence, more };
  return { sentence, more: more === "" ? lastTurn : `${lastTurn} ${more}` };
}

function measuredWords(
  review: SaidReview,
  outcome: Outcome,
  about: RightAnswer,
): VerdictWords {
  if (review.asking === "shown")
    return {
      sentence: "That is the way.",
      more: "Now do it yourself; the way stays in sight.",
    };
  if (review.asking === "helped")
    return {
      sentence: "Right, with the way in sight.",
      more: "Next time without it.",
    };
  if (review.interrupted)
    return {
      sentence: "Right.",
      more: "It was interrupted in between, so this time was not measured.",
    };
  if (review.corrections > 0)
    return {
      sentence:
        review.corrections === 1
          ? "Right, after you corrected yourself."
          : `Right, after you corrected yourself ${review.corrections} times.`,
      more: "It comes back a little sooner, until it goes straight.",
    };
  if (review.hints.length > 0)
    return {
      sentence: "Right, with a hint.",
      more: "It comes back a little sooner, to be done without.",
    };
  switch (outcome) {
    case "quick":
      return {
        sentence: `Right, and quick: ${seconds(review.total)}.`,
        more: "",
      };
    case "steady":
      return steadyWords(review);
    case "slow":
    case "missed":
      return slowWords(review, about);
  }
}
