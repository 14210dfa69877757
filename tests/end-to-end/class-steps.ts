/** A made-up class in the page's store, opened. */
import type { Page } from "@playwright/test";
import type { CaseId } from "../../core/cases/case-ids";
import { caseTitle } from "../../core/cases/case-words";
import { wholeCubeNaming } from "../../core/cases/whole-cube-naming";
import type { Review } from "../../core/memory/review";
import { USUAL_SCHEME } from "../../core/picture/colour-sets";
import { answerDaysAgo } from "./stored-answers";
import { storeClass, type StoredMember } from "./stored-class";

const NAMING = wholeCubeNaming(USUAL_SCHEME, "up");
/** A case's name as the page says it. */
export const titleOf = (id: CaseId) => caseTitle(id, NAMING);

/** What three of the class miss. */
export const STUCK_AT: CaseId = "C1";
/** What two of them take it for. */
export const TAKEN_FOR: CaseId = "C2";

const right = (id: CaseId, ...days: readonly number[]) =>
  days.map((ago) => answerDaysAgo(id, ago));
/** Missed answers to a case, so many days before now. */
export const missed = (
  id: CaseId,
  days: readonly number[],
  told: Partial<Review> = {},
) => days.map((ago) => answerDaysAgo(id, ago, { verdict: "missed", ...told }));

/** Five children; Mia has not practised for nine days. */
export const CLASS: readonly StoredMember[] = [
  { name: "Ada", answers: right("E1", 5, 1) },
  {
    name: "Ben",
    answers: [
      ...right("E1", 5, 1),
      ...missed(STUCK_AT, [4, 2], { answeredAs: TAKEN_FOR }),
    ],
  },
  {
    name: "Cam",
    answers: [...missed(STUCK_AT, [4, 2], { answeredAs: TAKEN_FOR })],
  },
  { name: "Dee", answers: [...missed(STUCK_AT, [5, 1]), ...right("E3", 3)] },
  { name: "Mia", answers: missed("E1", [12, 9]) },
];

/** The button that makes the lesson's deck, */
export const MAKE = "Make this Monday’s deck and sheets";
/** and what stands on it once there is one. */
export const GO = "Go to its sheets";

/** The table of the class. */
export const grid = (page: Page) =>
  page.getByRole("grid", { name: "Everybody, case by case" });

/** Opens the page of that class, as a coach comes to it. */
export async function openClass(page: Page): Promise<void> {
  await page.goto("/");
  await page.locator("[data-case]").waitFor();
  await storeClass(page, CLASS);
  await page.goto("/#/coach");
  await page.getByRole("link", { name: /The class: who is stuck/ }).click();
  await grid(page).waitFor();
}
