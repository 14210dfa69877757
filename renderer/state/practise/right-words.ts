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
  /** The turn that is left to line everything up, a sentence or two; undefined: none. */
  readonly lastTurn: string | undefined;
}

function seconds(milliseconds: number): string {
  return `${(milliseconds / 1000).toFixed(1)} seconds`;
}

function slowWords(review: SaidReview, lookFirst: string): VerdictWords {
  const { thinking, turning, total, target } = review;
  if (thinking === undefined || turning === undefined)
    return {
      sentence: `Right, but it took ${seconds(total)}.`,
      more: `The target is ${target} seconds. The same case comes back until it goes by itself.`,
    };
  const shown = shownTimes(total, thinking, turning);
  if (thinking >= turning)
    return {
      sentence: `Right, but it took ${seconds(shown.thinking)} to see what it was.`,
      more:
        turning * 2 <= target * 1000
          ? `Your turning is already quick. ${lookFirst}`
          : lookFirst,
    };
  return {
    sentence: `Right, but the turning took ${seconds(shown.turning)}.`,
    more:
      thinking * 2 <= target * 1000
        ? "You saw quickly what it was. Say the way to yourself while you turn it slowly, then without a stop."
        : "Say the way to yourself while you turn it slowly, then without a stop.",
  };
}

/** The words for a right answer. */
export function rightWords(
  review: SaidReview,
  outcome: Outcome,
  { lookFirst, lastTurn }: RightAnswer,
): VerdictWords {
  const { sentence, more } = measuredWords(review, outcome, lookFirst);
  if (lastTurn === undefined) return { sentence, more };
  return { sentence, more: more === "" ? lastTurn : `${lastTurn} ${more}` };
}

function measuredWords(
  review: SaidReview,
  outcome: Outcome,
  lookFirst: string,
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
      return { sentence: `Right, in ${seconds(review.total)}.`, more: "" };
    case "slow":
    case "missed":
      return slowWords(review, lookFirst);
  }
}
