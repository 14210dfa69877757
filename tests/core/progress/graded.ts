import { gradeOf } from "../../../core/memory/grade";
import type { Review } from "../../../core/memory/review";
import type { GradedAnswer } from "../../../core/progress/answer-log";

/** A case's answers with their grades. */
export function graded(answers: readonly Review[]): readonly GradedAnswer[] {
  return answers.map((answer) => ({ answer, grade: gradeOf(answer) }));
}
