import type { Milliseconds, Review } from "../../../core/memory/review";
import type {
  AnswersBlock,
  NamedBlock,
  WithdrawnBlock,
} from "../../../core/sharing/results-block";
import { answerLineOf } from "../../../core/sharing/shared-answer";
import { ANN } from "../backup/sample-backup";

/** A block of Ann's, changed where a test says so. */
export function answersBlock(
  madeAt: number,
  reviews: readonly Review[],
  told: Partial<AnswersBlock> & { readonly part?: "answers" | "turns" } = {},
): AnswersBlock {
  const { part = "answers", ...others } = told;
  return {
    kind: "answers",
    learner: ANN.id,
    name: "Ann",
    madeAt: madeAt as Milliseconds,
    answers: reviews.map((review) => answerLineOf(review, part)),
    ...others,
  };
}

/** Ann takes back what she shared until then. */
export function withdrawnBlock(
  madeAt: number,
  told: Partial<WithdrawnBlock> = {},
): WithdrawnBlock {
  return {
    kind: "withdrawn",
    learner: ANN.id,
    madeAt: madeAt as Milliseconds,
    ...told,
  };
}

/** A block under an id made from a number. */
export function named(number: number, block: NamedBlock["block"]): NamedBlock {
  return { id: number.toString(16).padStart(64, "0"), block };
}
