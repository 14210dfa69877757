/**
 * A store of shape 1 is brought up to date while a window still has it open
 * that never heard of shape 2.
 */
import type { Page } from "@playwright/test";
import { expect, test } from "./app";

// The browser asks for the icon of a page that names none.
test.use({ expectedErrors: [/404/] });

/** What a window of version 1 holds open; it lets go where it is told to, as ours do. */
function openShapeOne(page: Page, letsGo: boolean): Promise<void> {
  return page.evaluate(
    (closes) =>
      new Promise<void>((resolve, reject) => {
        // Dexie's version 1 in the browser's own numbering.
        const opening = indexedDB.open("turnwise", 10);
        opening.onupgradeneeded = () => {
          const database = opening.result;
          for (const [name, keyPath] of [
            ["learners", "id"],
            ["decks", "id"],
            ["rounds", "id"],
            ["settings", "key"],
            ["reviews", "id"],
            ["blocks", ["learner", "number"]],
            ["cache", ["learner", "name"]],
          ] as const) {
            const store = database.createObjectStore(name, {
              keyPath: typeof keyPath === "string" ? keyPath : [...keyPath],
            });
            if (name === "rounds") store.createIndex("learner", "learner");
            if (name !== "reviews") continue;
            store.createIndex("[learner+at]", ["learner", "at"]);
            const byCase = ["learner", "case", "at"];
            store.createIndex("[learner+case+at]", byCase);
          }
          opening.transaction?.objectStore("learners").put({
            id: "3d2f7f7e-1f8e-4b8a-9a34-6b1f3a1f9c55",
            name: "Ada",
            createdAt: 1,
          });
        };
        opening.onsuccess = () => {
          const database = opening.result;
          database.onversionchange = () => {
            if (closes) database.close();
          };
          resolve();
        };
        opening.onerror = () => reject(new Error(opening.error?.name));
      }),
    letsGo,
  );
}

/** A page of the same origin that is not the app. */
async function oldWindow(page: Page, letsGo: boolean): Promise<Page> {
  const old = await page.context().newPage();
  await old.goto("/licences.txt");
  await openShapeOne(old, letsGo);
  return old;
}

const ada = (page: Page) =>
  page.getByRole("button", { name: "Ada is at the desk" });

test("a window that lets go is not waited for, and what was in the store is there", async ({
  page,
}) => {
  await oldWindow(page, true);
  await page.goto("/#/settings");
  await expect(ada(page)).toBeVisible();
});

test("a window that holds on is named, by every window that waits, and nothing is lost when it goes", async ({
  page,
}) => {
  const old = await oldWindow(page, false);
  await page.goto("/#/settings");
  const waits = /another window/i;
  await expect(page.getByText(waits)).toBeVisible();
  const third = await page.context().newPage();
  await third.goto("/#/settings");
  await expect(third.getByText(waits)).toBeVisible();
  await old.close();
  await expect(ada(page)).toBeVisible();
  await expect(ada(third)).toBeVisible();
});
