/**
 * The coach's bench: a deck is made, written to a file and read in another
 * profile, by mouse and by keyboard.
 */
import type { Browser, Locator, Page } from "@playwright/test";
import { readFile } from "node:fs/promises";
import { expect, test } from "./app";
import {
  deckName,
  type HandedOver,
  newDeck,
  read,
  rows,
  shelf,
  titles,
} from "./coach-steps";

async function drag(page: Page, from: Locator, to: Locator): Promise<void> {
  await to.scrollIntoViewIfNeeded();
  const start = await from.boundingBox();
  const end = await to.boundingBox();
  if (start === null || end === null) throw new Error("nothing to drag");
  await page.mouse.move(start.x + start.width / 2, start.y + start.height / 2);
  await page.mouse.down();
  await page.mouse.move(end.x + 60, end.y + 4, { steps: 6 });
  await page.mouse.up();
}

/** Presses Tab until something has the focus. */
async function tabTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor();
  for (let i = 0; i < 150; i++) {
    if (await wanted.evaluate((node) => node === document.activeElement))
      return;
    await page.keyboard.press("Tab");
  }
  throw new Error("Tab does not lead there");
}

async function press(page: Page, button: string): Promise<void> {
  await tabTo(
    page,
    page.getByRole("button", { name: button, exact: true }).first(),
  );
  await page.keyboard.press("Enter");
}

/** A window of another person's browser. */
async function secondProfile(browser: Browser, address: string): Promise<Page> {
  const context = await browser.newContext({ baseURL: address });
  const page = await context.newPage();
  await page.goto("/#/coach");
  return page;
}

/** Lets the page write its deck and takes the file. */
async function written(
  page: Page,
  write: () => Promise<void>,
): Promise<HandedOver> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    write(),
  ]);
  return {
    name: download.suggestedFilename(),
    buffer: await readFile(await download.path()),
    mimeType: "application/json",
  };
}

test("by mouse: a deck of ten is made, written to a file and read in a second profile", async ({
  page,
  browser,
  app,
}) => {
  await newDeck(page);
  await page.getByLabel("Name", { exact: true }).fill("Ten for Tuesday");
  await expect(deckName(page)).toHaveText("Ten for Tuesday");
  for (let i = 1; i <= 5; i++) {
    await shelf(page).first().click();
    await expect(rows(page)).toHaveCount(i);
  }
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("First-layer corners");
  const end = page.getByRole("button", { name: "put the next case here" });
  for (let i = 6; i <= 9; i++) {
    await drag(page, shelf(page).nth(1), end);
    await expect(rows(page)).toHaveCount(i);
  }
  // Dropped on the upper edge of the third row, it is the third.
  const dragged = await shelf(page).first().getAttribute("data-shelf-case");
  await drag(page, shelf(page).first(), rows(page).nth(2));
  await expect(rows(page)).toHaveCount(10);
  await expect(rows(page).nth(2)).toHaveAttribute("data-case", `${dragged}`);
  await drag(page, rows(page).nth(4).locator(".handle"), rows(page).first());
  const [first = ""] = await titles(page);
  await expect(page.getByText(/: now first of 10\./)).toBeVisible();

  await rows(page).first().getByRole("link").click();
  const target = page.getByLabel("Target for the whole answer");
  await target.fill("0");
  await target.press("Tab");
  await expect(page.getByText("Between half a second and 600")).toBeVisible();
  await expect(page.getByText("when it is written")).toBeHidden();
  await target.fill("7,5");
  await page.getByLabel("Note for the learner").fill("Look underneath.");
  await page.getByText("How it is asked").click();
  await page.getByText("anywhere", { exact: true }).click();
  await expect(page.getByText("one choice made")).toBeVisible();
  await page.getByText("not marked", { exact: true }).click();
  await expect(page.getByText("2 choices made")).toBeVisible();

  const file = await written(page, () =>
    page.getByRole("button", { name: "Write to a file" }).click(),
  );
  expect(file.name).toBe("Ten for Tuesday.turnwise-deck");
  expect(file.buffer.toString()).toContain(
    '"target": 7.5, "note": "Look underneath.", "home": "anywhere", "marked": false',
  );

  const other = await secondProfile(browser, app.address);
  await other.getByRole("button", { name: "Other decks" }).click();
  await read(other, file);
  const preview = other.getByRole("dialog", { name: /Take in “Ten for/ });
  await expect(preview).toContainText("You do not have this deck yet.");
  await expect(preview).toContainText("First-layer edges, 5:");
  await preview.getByRole("button", { name: "Take it in" }).click();
  await expect(deckName(other)).toHaveText("Ten for Tuesday");
  expect(await titles(other)).toEqual(await titles(page));
  expect((await titles(other))[0]).toBe(first);
  const next = other.getByText("Taken in. Tick it below to have Learner 1");
  await expect(next).toBeVisible();
  await other.getByRole("checkbox", { name: "Ten for Tuesday" }).check();
  await expect(next).toBeHidden();
  await other.reload();
  await expect(rows(other)).toHaveCount(10);
  await other.context().close();
});

test("by keyboard alone: a deck of ten is made, written to a file and read in a second profile", async ({
  page,
  browser,
  app,
}) => {
  await page.goto("/#/coach");
  await press(page, "Other decks");
  await press(page, "New deck");
  // The focus follows the deck, and the place for its first case leads to the shelf.
  await expect(
    page.getByRole("button", { name: "Nothing in this deck yet" }),
  ).toBeFocused();
  await page.keyboard.press("Enter");
  for (let i = 1; i <= 10; i++) {
    await page.keyboard.press("Enter");
    await expect(rows(page)).toHaveCount(i);
  }
  const before = await titles(page);
  await tabTo(page, page.getByLabel("Name", { exact: true }));
  await page.keyboard.press("Control+a");
  await page.keyboard.type("Keys");
  await tabTo(page, rows(page).first().getByRole("link"));
  await page.keyboard.press("Alt+ArrowDown");
  await page.keyboard.press("Alt+ArrowDown");
  await expect(rows(page).nth(2).getByRole("link")).toBeFocused();
  await expect
    .poll(() => titles(page))
    .toEqual([before[1], before[2], before[0], ...before.slice(3)]);
  await page.keyboard.press("Delete");
  await expect(rows(page)).toHaveCount(9);
  await expect(rows(page).nth(2).getByRole("link")).toBeFocused();
  await page.keyboard.press("Control+z");
  await expect(rows(page)).toHaveCount(10);
  await page.keyboard.press("Enter");
  await press(page, "Later");

  const file = await written(page, () => press(page, "Write to a file"));
  expect(file.name).toBe("Keys.turnwise-deck");

  const other = await secondProfile(browser, app.address);
  await press(other, "Other decks");
  await read(other, file, () => press(other, "Read a deck file…"));
  await press(other, "Take it in");
  await expect(deckName(other)).toHaveText("Keys");
  await expect(rows(other).first().getByRole("link")).toBeFocused();
  expect(await titles(other)).toEqual(await titles(page));
  await other.context().close();
});
