/** A question that was answered by choosing, while the learner looks at what came of it. */
import { nameOfPiece } from "../../../core/answer/recognising-question";
import type { CaseId } from "../../../core/cases/case-ids";
import { present } from "../../../core/invariant";
import type { Outcome } from "../../../core/memory/grade";
import type {
  LocalDay,
  Milliseconds,
  Mistook,
  Review,
} from "../../../core/memory/review";
import type { StorageError } from "../../storage/storage-error";
import type { LearnerState } from "../learner.svelte";
import type { ChoiceAttempt, Chosen } from "./choice-attempt.svelte";
import { reviewNow } from "./review-now";

/** What was chosen, and whether it is stored. */
export class AnsweredChoice {
  readonly attempt: ChoiceAttempt;
  /** The index of the choice. */
  readonly choice: number;
  readonly review: Review;
  readonly outcome: Outcome;
  /** The review's id, once it is stored for good. */
  acknowledged: string | undefined = $state();
  /** Why it could not be stored. */
  trouble: StorageError | undefined = $state.raw();

  constructor(
    attempt: ChoiceAttempt,
    choice: number,
    { review, outcome }: { review: Review; outcome: Outcome },
  ) {
    this.attempt = attempt;
    this.choice = choice;
    this.review = review;
    this.outcome = outcome;
  }

  get isRight(): boolean {
    return this.choice === this.attempt.question.right;
  }
}

/** What was chosen in the place of the right one: a case, or a piece or home. */
interface Taken {
  readonly answeredAs?: CaseId | undefined;
  readonly mistook?: Mistook | undefined;
}

function takenFor({ question }: ChoiceAttempt, choice: number): Taken {
  if (choice === question.right) return {};
  if (question.way === "which-is-it")
    return { answeredAs: question.choices[choice] };
  const chosen = present(question.choices[choice], "a choice is one");
  return {
    mistook: { piece: nameOfPiece(question.piece), for: nameOfPiece(chosen) },
  };
}

/** A choice made now, counted for `localDay`. Nothing is stored yet. */
export function answeredChoice(
  attempt: ChoiceAttempt,
  { choice, total, looks }: Chosen,
  learner: LearnerState,
  localDay: LocalDay,
): AnsweredChoice {
  const { item, position, question } = attempt;
  const reviewed = reviewNow(
    {
      verdict: { right: choice === question.right },
      measured: {
        total: total as Milliseconds,
        turns: [],
        corrections: 0,
        slips: 0,
        looks,
        hintTimes: [],
      },
      hints: [],
      reported: false,
      shownTheWay: false,
    },
    {
      item,
      position,
      answerWay: question.way,
      ...takenFor(attempt, choice),
    },
    learner,
    localDay,
  );
  return new AnsweredChoice(attempt, choice, reviewed);
}
