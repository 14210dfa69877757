import { gradeLog } from "../../../core/memory/grader";
import type { Review } from "../../../core/memory/review";
import type { GradedAnswer } from "../../../core/progress/answer-log";

/** A case's answers with what they were worth, in the order they are given in. */
export function graded(answers: readonly Review[]): readonly GradedAnswer[] {
  return gradeLog(answers).map(({ review, ...worth }) => ({
    answer: review,
    graded: worth,
  }));
}
