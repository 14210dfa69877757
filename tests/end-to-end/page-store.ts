/**
 * The page's store, read and filled from outside.
 *
 * Nothing is touched before the app has made the store and a learner sits in
 * it: whoever opens a database that is not there yet makes an empty one, and
 * the app would find that.
 */
import { expect, type Page } from "@playwright/test";
import { DATABASE_NAME } from "../../renderer/storage/database";

/** Rows by the name of their store. */
export type Rows = Readonly<Record<string, readonly unknown[]>>;

async function untilMade(page: Page): Promise<void> {
  const names = () =>
    page.evaluate(async () =>
      (await indexedDB.databases()).map((database) => database.name),
    );
  await expect.poll(names).toContain(DATABASE_NAME);
  await expect
    .poll(async () => (await rowsNow(page, ["learners"]))["learners"]?.length)
    .toBeGreaterThan(0);
}

function rowsNow(page: Page, stores: readonly string[]): Promise<Rows> {
  return page.evaluate(
    async ({ name, stores }) => {
      const done = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(new Error(request.error?.name));
        });
      const database = await done(indexedDB.open(name));
      try {
        const reading = database.transaction(stores);
        const rows: Record<string, unknown[]> = {};
        for (const store of stores)
          rows[store] = await done<unknown[]>(
            reading.objectStore(store).getAll(),
          );
        return rows;
      } finally {
        database.close();
      }
    },
    { name: DATABASE_NAME, stores: [...stores] },
  );
}

/** Every row of the stores named, as of one moment. */
export async function storedRows(
  page: Page,
  stores: readonly string[],
): Promise<Rows> {
  await untilMade(page);
  return rowsNow(page, stores);
}

/** Puts rows into their stores, all or none, over those with the same key; the page does not hear of it before it is opened again. */
export async function putRows(page: Page, rows: Rows): Promise<void> {
  await untilMade(page);
  await page.evaluate(
    async ({ name, rows }) => {
      const opening = indexedDB.open(name);
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(new Error(opening.error?.name));
      });
      const writing = database.transaction(Object.keys(rows), "readwrite");
      for (const [store, all] of Object.entries(rows))
        for (const row of all) writing.objectStore(store).put(row);
      await new Promise<void>((resolve, reject) => {
        writing.oncomplete = () => resolve();
        writing.onabort = () => reject(new Error(writing.error?.name));
      });
      database.close();
    },
    { name: DATABASE_NAME, rows },
  );
}
