/** What came of a check, on one page. */
import type { CaseId } from "../../../core/cases/case-ids";
import type { Hold } from "../../../core/cases/variant";
import type { Outcome } from "../../../core/memory/grade";
import type { GradedReview } from "../../../core/memory/grader";
import { type Check, itemOf } from "./stored-check";

/** What came of one case. */
export interface CheckRow {
  readonly id: string;
  readonly case: CaseId;
  readonly hold: Hold;
  /** Undefined: it was left out. */
  readonly outcome: Outcome | undefined;
  /** Units: milliseconds; undefined where it was left out, or the answer was interrupted. */
  readonly total: number | undefined;
  /** Units: seconds. */
  readonly target: number;
  readonly wasInterrupted: boolean;
  /** What went wrong, in a sentence; undefined: nothing, or it is not known. */
  readonly said: string | undefined;
}

/** A check's rows, in the order in which they were asked. */
export interface CheckResult {
  readonly rows: readonly CheckRow[];
  readonly right: number;
  /** How many were answered. */
  readonly answered: number;
}

/** What came of a check. Shape: `answers` is the learner's log with what each was worth. */
export function checkResult(
  check: Check,
  answers: readonly GradedReview[],
): CheckResult {
  const rows = check.rounds.map((round): CheckRow => {
    const item = itemOf(round);
    const answer = answers.find(({ review }) => review.id === round.id);
    const { review } = answer ?? {};
    return {
      id: round.id,
      case: item.case,
      hold: item.hold,
      outcome: answer?.outcome,
      total: review?.interrupted === false ? review.total : undefined,
      target: review?.target ?? item.target,
      wasInterrupted: review?.interrupted === true,
      said: check.said[round.id],
    };
  });
  const answered = rows.filter(({ outcome }) => outcome !== undefined);
  return {
    rows,
    right: answered.filter(({ outcome }) => outcome !== "missed").length,
    answered: answered.length,
  };
}

/** "4 of 5 right." */
export function resultInWords({ right, answered, rows }: CheckResult): string {
  const left = rows.length - answered;
  const rest =
    left === 0
      ? ""
      : left === 1
        ? " One was left out."
        : ` ${left} were left out.`;
  return answered === 0
    ? `None was answered.${rest}`
    : `${right} of ${answered} right.${rest}`;
}

/**
 * What came of one case, in a phrase. A page that shows a time beside its
 * target says slow by that target, and not by what the learner usually takes.
 */
export function rowInWords({
  outcome,
  said,
  wasInterrupted,
  total,
  target,
}: CheckRow): string {
  if (outcome === undefined) return "Left out.";
  if (outcome === "missed") return said ?? "Not right.";
  if (wasInterrupted) return "Right, after a break.";
  return total !== undefined && total > 1000 * target
    ? "Right, but slow."
    : "Right.";
}
