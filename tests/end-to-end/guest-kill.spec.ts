/**
 * A guest leaves nothing even where the browser is killed under them; and a
 * window that starts meanwhile clears away no guest who is still there.
 */
import type { Page } from "@playwright/test";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "./app";
import { watchedBrowser } from "./kill/watched-browser";
import { answerOnScreen } from "./practise-steps";

/** The names of the guests' stores, with how many answers lie in each. */
function guestStores(
  page: Page,
): Promise<readonly (readonly [string, number])[]> {
  return page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(new Error(request.error?.name));
      });
    const stores: [string, number][] = [];
    for (const { name = "" } of await indexedDB.databases()) {
      if (!name.startsWith("turnwise-guest-")) continue;
      const database = await done(indexedDB.open(name));
      const reading = database.transaction("reviews");
      const count = await done(reading.objectStore("reviews").count());
      stores.push([name, count]);
      database.close();
    }
    return stores.sort(([, a], [, b]) => a - b);
  });
}

/** What the browser keeps of us beside databases. */
function keptBeside(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    const kept = [...Object.keys(localStorage), ...(await caches.keys())];
    const files = await navigator.storage.getDirectory();
    for await (const [name] of files.entries()) kept.push(name);
    return kept;
  });
}

async function seatGuest(page: Page): Promise<void> {
  const desk = (name: string) =>
    page.getByRole("button", { name: `${name} is at the desk` });
  await expect(desk("Learner 1")).toBeVisible();
  await page.keyboard.press("F2");
  await page.keyboard.press("0");
  await expect(desk("Guest")).toBeVisible();
}

test("guests of two windows outlast the start of a third, and no kill of the browser", async ({
  app,
}) => {
  test.setTimeout(120_000);
  const ways = new Map<string, readonly string[]>();
  const profile = mkdtempSync(join(tmpdir(), "turnwise-guest-"));
  const first = await watchedBrowser(profile, `${app.address}#/settings`);
  try {
    const one = first.page;
    await seatGuest(one);
    const two = await one.context().newPage();
    await two.goto(`${app.address}#/settings`);
    await seatGuest(two);
    await one.bringToFront();
    await one.getByRole("link", { name: "Practise", exact: true }).click();
    await answerOnScreen(one, ways);

    const three = await one.context().newPage();
    await three.goto(`${app.address}#/settings`);
    await expect(
      three.getByRole("button", { name: "Learner 1 is at the desk" }),
    ).toBeVisible();
    await one.bringToFront();
    await one.keyboard.press("Enter");
    await answerOnScreen(one, ways);
    expect((await guestStores(one)).map(([, answers]) => answers)).toEqual([
      0, 2,
    ]);
    await first.kill();

    const second = await watchedBrowser(profile, `${app.address}#/practise`);
    try {
      const { page } = second;
      await expect(
        page.getByRole("button", { name: "Learner 1 is at the desk" }),
      ).toBeVisible();
      await expect.poll(() => guestStores(page)).toEqual([]);
      expect(await keptBeside(page)).toEqual([]);
    } finally {
      await second.kill();
    }
  } finally {
    await first.kill();
    rmSync(profile, { recursive: true, force: true });
  }
});
