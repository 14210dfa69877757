/** Several learners with their answers, put into the page's store. */
import type { Page } from "@playwright/test";
import type { Review } from "../../core/memory/review";
import { DATABASE_NAME } from "../../renderer/storage/database";

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
  await page.evaluate(
    async ({ name, members }) => {
      const done = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(new Error(request.error?.name));
        });
      const database = await done(indexedDB.open(name));
      const writing = database.transaction(
        ["learners", "reviews"],
        "readwrite",
      );
      const learners = writing.objectStore("learners");
      const [desk] = await done(learners.getAllKeys());
      members.forEach((member, i) => {
        const id =
          i === 0 && typeof desk === "string" ? desk : crypto.randomUUID();
        if (member.name !== undefined)
          learners.put({ id, name: member.name, createdAt: 1000 * i });
        for (const answer of member.answers)
          writing.objectStore("reviews").put({ ...answer, learner: id });
      });
      await new Promise((resolve) => {
        writing.oncomplete = resolve;
      });
      database.close();
    },
    { name: DATABASE_NAME, members },
  );
  await page.reload();
}
