/** Answers put into the page's store, as if they had been given on days before. */
import type { Page } from "@playwright/test";
import type { CaseId } from "../../core/cases/case-ids";
import { localDay } from "../../core/memory/local-day";
import type { Milliseconds, Review } from "../../core/memory/review";
import { sampleReview } from "../renderer/storage/sample-review";
import { storeMembers } from "./stored-class";

const DAY = 86_400_000;

/** A right answer to a case, so many days before now. */
export function answerDaysAgo(
  id: CaseId,
  days: number,
  told: Partial<Review> = {},
): Review {
  const at = (Date.now() - days * DAY) as Milliseconds;
  return sampleReview({ case: id, at, localDay: localDay(at, 0), ...told });
}

/** Stores answers for the learner at the desk, and opens the page again. */
export async function storeAnswers(
  page: Page,
  answers: readonly Review[],
): Promise<void> {
  await storeMembers(page, [{ answers }]);
}
