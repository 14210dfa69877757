/** Which cases a learner has taken for one another lately. */
import type { CaseId } from "../cases/case-ids";
import type { Review } from "./review";

/** So many answers are looked back at: what was confused long before is told apart by now. */
const LOOKED_AT = 1000;

/** Whether a learner took one of two cases for the other. Shape: `reviews` oldest first. */
export function confusedPairs(
  reviews: readonly Pick<Review, "case" | "answeredAs">[],
): (a: CaseId, b: CaseId) => boolean {
  const pairs = new Set<string>();
  for (const { case: id, answeredAs } of reviews.slice(-LOOKED_AT))
    if (answeredAs !== undefined) {
      pairs.add(`${id} ${answeredAs}`);
      pairs.add(`${answeredAs} ${id}`);
    }
  return (a, b) => pairs.has(`${a} ${b}`);
}
