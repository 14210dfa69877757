/** Who is at the desk: changed by one key, and a guest of whom nothing stays. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, test } from "./app";
import { answerOnScreen, openPractise } from "./practise-steps";

function whoIsHere(page: Page, name: string) {
  return page.getByRole("button", { name: `${name} is at the desk` });
}

async function addLearner(page: Page, name: string): Promise<void> {
  await expect(page.getByRole("button", { name: "at the desk" })).toBeVisible();
  await page.keyboard.press("F2");
  const dialog = page.getByRole("dialog", { name: "Who is at the desk?" });
  await dialog.getByRole("button", { name: "Add a learner" }).click();
  await page.getByLabel("Name of the new learner").fill(name);
  await page.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(whoIsHere(page, name)).toBeVisible();
}

/** Every row that the browser keeps of us, as text. */
function everythingKept(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const request = <T>(asked: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = () => reject(asked.error ?? new Error("not read"));
      });
    const kept: unknown[] = [];
    for (const { name = "" } of await indexedDB.databases()) {
      const database = await request(indexedDB.open(name));
      for (const table of Array.from(database.objectStoreNames))
        kept.push([
          name,
          table,
          await request(
            database.transaction(table).objectStore(table).getAll(),
          ),
        ]);
      database.close();
    }
    return JSON.stringify(kept);
  });
}

test("one key and a digit put somebody else at the desk", async ({ page }) => {
  await page.goto("/");
  await addLearner(page, "Ada");
  await addLearner(page, "Ben");
  await page.keyboard.press("F2");
  const dialog = page.getByRole("dialog", { name: "Who is at the desk?" });
  await expect(dialog.getByRole("button", { name: /^Ben/ })).toBeFocused();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations).toEqual([]);
  await page.keyboard.press("2");
  await expect(dialog).toBeHidden();
  await expect(whoIsHere(page, "Ada")).toBeVisible();

  // By letter and by arrow.
  await page.keyboard.press("F2");
  await page.keyboard.press("b");
  await expect(dialog.getByRole("button", { name: /^Ben/ })).toBeFocused();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  await expect(whoIsHere(page, "Learner 1")).toBeVisible();

  // The key closes the list too, and changes nothing.
  await page.keyboard.press("F2");
  await page.keyboard.press("F2");
  await expect(dialog).toBeHidden();
  await expect(whoIsHere(page, "Learner 1")).toBeVisible();
});

test("a guest practises, and nothing of it is kept", async ({ page }) => {
  await page.goto("/");
  await addLearner(page, "Ada");
  await page.goto("/#/settings");
  const before = await everythingKept(page);
  expect(before).toContain("Ada");

  await page.keyboard.press("F2");
  await page.keyboard.press("0");
  await expect(whoIsHere(page, "Guest")).toBeVisible();
  await expect(page.getByText("A guest is at the desk.")).toBeVisible();
  await openPractise(page);
  await answerOnScreen(page, new Map());
  expect(await everythingKept(page)).toContain("turnwise-guest-");

  // Away from the desk, where Ada would leave word that she practises.
  await page.goto("/#/settings");
  await page.keyboard.press("F2");
  await page.keyboard.press("2");
  await expect(whoIsHere(page, "Ada")).toBeVisible();
  await expect.poll(() => everythingKept(page)).toBe(before);
});

test("a guest looks at decks, prints and opens the class, and changes nothing", async ({
  page,
}) => {
  await page.goto("/");
  await addLearner(page, "Ada");
  // What is computed of the others' answers is not the guest's.
  await page.goto("/#/coach/class");
  await expect(page.getByText("There is nothing to show yet.")).toBeVisible();
  const before = await everythingKept(page);
  await page.keyboard.press("F2");
  await page.keyboard.press("0");
  await expect(whoIsHere(page, "Guest")).toBeVisible();
  await expect(
    page.getByRole("button", { name: "Take results in…" }),
  ).toHaveCount(0);
  await page.getByText("Who is in the class").click();
  await page.getByRole("checkbox", { name: "Ada" }).uncheck();

  await page.goto("/#/coach");
  const why = page.getByText("decks stay as they are");
  await expect(why).toBeVisible();
  await page.getByRole("button", { name: "Copy it to change it" }).click();
  await page
    .getByRole("button", { name: /^Put in: / })
    .first()
    .click();
  await expect(why).toBeVisible();
  await expect(page.getByRole("dialog")).toHaveCount(0);

  await page.goto("/#/coach/sheets");
  await expect(page.locator("[data-sheet]")).toBeVisible();
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await expect(page.getByText("cannot be entered here")).toBeVisible();
  await page.goto("/#/coach/ticks");
  await expect(page.getByText("ticks are entered by somebody")).toBeVisible();

  await page.goto("/#/settings");
  await page.keyboard.press("F2");
  await page.keyboard.press("2");
  await expect(whoIsHere(page, "Ada")).toBeVisible();
  await expect.poll(() => everythingKept(page)).toBe(before);
});

test("the key works before a case that fills the screen, and its keys stay the question's", async ({
  page,
}) => {
  await page.goto("/");
  await addLearner(page, "Ada");
  await page.goto("/#/cases/E1/show");
  const show = page.locator("[data-show-station]");
  await expect(show).toHaveAttribute("data-show-station", "case");
  await page.keyboard.press("F2");
  const dialog = page.getByRole("dialog", { name: "Who is at the desk?" });
  await expect(dialog).toBeVisible();
  await page.keyboard.press("PageDown");
  await page.keyboard.press("Escape");
  await expect(dialog).toBeHidden();
  await expect(page).toHaveURL(/E1\/show$/);
  await page.keyboard.press("F2");
  await page.keyboard.press("1");
  await expect(dialog).toBeHidden();
  await expect(show).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(whoIsHere(page, "Learner 1")).toBeVisible();
});

test("a guest whose window was loaded anew is gone", async ({ page }) => {
  await page.goto("/#/settings");
  await expect(whoIsHere(page, "Learner 1")).toBeVisible();
  await page.keyboard.press("F2");
  await page.keyboard.press("0");
  await expect(whoIsHere(page, "Guest")).toBeVisible();
  await page.reload();
  await expect(whoIsHere(page, "Learner 1")).toBeVisible();
  await expect
    .poll(() => everythingKept(page))
    .not.toContain("turnwise-guest-");
});
