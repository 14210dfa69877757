/** Several learners with their answers, put into the page's store. */
import type { Page } from "@playwright/test";
import { randomUUID } from "node:crypto";
import type { Review } from "../../core/memory/review";
import { putRows, storedRows } from "./page-store";

/** Somebody of a class, and what they answered. */
export interface StoredMember {
  readonly name: string;
  readonly answers: readonly Review[];
}

/** Stores learners beside the one at the desk, who gets the first one's name and answers, and opens the page again. */
export async function storeClass(
  page: Page,
  members: readonly StoredMember[],
): Promise<void> {
  await storeMembers(page, members);
}

/** The same; who is at the desk keeps their name where the first one has none. */
export async function storeMembers(
  page: Page,
  members: readonly (Pick<StoredMember, "answers"> & Partial<StoredMember>)[],
): Promise<void> {
  const { learners = [] } = await storedRows(page, ["learners"]);
  const desk = String(Reflect.get(Object(learners[0]), "id"));
  const told = members.map((member, i) => ({
    ...member,
    id: i === 0 ? desk : randomUUID(),
    createdAt: 1000 * i,
  }));
  await putRows(page, {
    learners: told.flatMap(({ id, name, createdAt }) =>
      name === undefined ? [] : [{ id, name, createdAt }],
    ),
    reviews: told.flatMap(({ id, answers }) =>
      answers.map((answer) => ({ ...answer, learner: id })),
    ),
  });
  await page.reload();
}
