/** Members of a class for tests, from answers that a test makes. */
import type { ClassMember } from "../../../core/class/class-grid";
import { memberSummary } from "../../../core/class/member-summary";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Review } from "../../../core/memory/review";
import { packLog, unpacked } from "../../../core/progress/packed-log";
import { ms, sampleReview } from "../memory/sample-review";

/** The day on which tests look at the class. */
export const TODAY = 20_000;

/** An answer asked alone, some days before the test's day. */
export function ago(
  days: number,
  id: CaseId,
  changes: Partial<Review> = {},
): Review {
  return sampleReview(TODAY - days, { case: id, ...changes });
}

/** A miss, some days before the test's day. */
export function missedAgo(
  days: number,
  id: CaseId,
  answeredAs?: CaseId,
): Review {
  return ago(days, id, {
    verdict: "missed",
    ...(answeredAs === undefined ? {} : { answeredAs }),
  });
}

/** Right answers that took so many seconds, on the days before. */
export function slowAnswers(
  id: CaseId,
  seconds: number,
  count: number,
): readonly Review[] {
  return Array.from({ length: count }, (_, i) =>
    ago(count - i, id, { total: ms(1000 * seconds) }),
  );
}

/** What answers in the order of replay say of their learner. */
export const summaryOf = (answers: readonly Review[]) =>
  memberSummary(unpacked(packLog(answers)));

/** A member with these answers, in the order of replay. */
export function member(
  name: string,
  ...answers: readonly Review[]
): ClassMember {
  const summary = summaryOf(answers);
  return { id: name.toLowerCase(), name, summary, schedule: {} };
}
