/**
 * The coach's bench: decks are made, changed, undone, written to a file and
 * read in another profile, by mouse and by keyboard.
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, Locator, Page } from "@playwright/test";
import { readFile } from "node:fs/promises";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { expect, test } from "./app";

const rows = (page: Page) => page.locator("[data-case]");
const shelf = (page: Page) => page.getByRole("button", { name: /^Put in: / });
const deckName = (page: Page) => page.locator("#deck-name");

/** The deck's cases, as a coach sees them, in order. */
function titles(page: Page): Promise<string[]> {
  return rows(page).locator(".words").allInnerTexts();
}

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

interface HandedOver {
  readonly name: string;
  readonly buffer: Buffer;
  readonly mimeType: string;
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

function deckFile(text: string): HandedOver {
  return {
    name: "handed-over.turnwise-deck",
    buffer: Buffer.from(text),
    mimeType: "application/json",
  };
}

async function read(
  page: Page,
  file: HandedOver,
  ask: () => Promise<void> = () =>
    page.getByRole("button", { name: "Read a deck file…" }).click(),
): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    ask(),
  ]);
  await chooser.setFiles(file);
}

async function newDeck(page: Page): Promise<void> {
  await page.goto("/#/coach");
  await page.getByRole("button", { name: "Other decks" }).click();
  await page.getByRole("button", { name: "New deck" }).click();
  await expect(page.getByText("Nothing in this deck yet")).toBeVisible();
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
    page.getByRole("button", { name: "Write to a file" }).first().click(),
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

test("undo and redo take back and make again, and outlive a look at another place", async ({
  page,
}) => {
  await newDeck(page);
  await shelf(page).first().click();
  await shelf(page).first().click();
  await rows(page).first().getByRole("link").click();
  await page.getByRole("button", { name: "Take out" }).click();
  await expect(rows(page)).toHaveCount(1);
  await page.getByRole("link", { name: "Cases" }).click();
  await page.goBack();
  await page
    .getByRole("button", { name: "Undo: case taken out", exact: true })
    .click();
  await expect(rows(page)).toHaveCount(2);
  await page.keyboard.press("Control+z");
  await expect(rows(page)).toHaveCount(1);
  await page.keyboard.press("Control+Shift+Z");
  await expect(rows(page)).toHaveCount(2);

  // In a text, the keys are the text's.
  const name = page.getByLabel("Name", { exact: true });
  await name.fill("");
  await expect(page.getByText("has nothing in it")).toBeVisible();
  await expect(deckName(page)).toHaveText("New deck");
  await page.keyboard.press("Control+z");
  await expect(rows(page)).toHaveCount(2);
  await name.fill("Mondays");
  await page.getByRole("button", { name: "Undo: name" }).click();
  await expect(name).toHaveValue("New deck");
});

test("a typed way is taken only when it answers the case", async ({ page }) => {
  await newDeck(page);
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("First-layer corners");
  await page
    .getByRole("button", {
      name: "Put in: Under its home, white on the front",
    })
    .click();
  await page.getByLabel("Another way").check();
  const way = page.getByLabel("Its turns, lined up");
  const tryIt = page.getByRole("button", { name: "Try it" });
  await way.fill("R' D' R");
  await tryIt.click();
  await expect(page.getByRole("alert")).toContainText(
    "does not answer the case",
  );
  await way.fill("R' D# R");
  await tryIt.click();
  await expect(page.getByRole("alert")).toContainText("at letter 5");
  await expect(page.getByRole("button", { name: "Undo: case" })).toBeVisible();
  // Source: the shortest way of the case in the table of the design's first-layer.md.
  await way.fill("F D F'");
  await tryIt.click();
  await expect(page.getByText(/It answered all \d+ positions/)).toBeVisible();
  await expect(rows(page).first()).toContainText("F D F'");
});

test("a hand is asked for only where the two make the way differently", async ({
  page,
}) => {
  await newDeck(page);
  const listed = page.getByRole("radio", { name: /\d turns?$/ }).first();
  // Source: the ways of E3 and E1 in the table of the design's first-layer.md.
  await page.locator('[data-shelf-case="E3"]').click();
  await listed.check();
  await expect(page.getByText("Made with")).toBeVisible();
  await page.locator('[data-shelf-case="E1"]').click();
  await expect(listed).not.toBeChecked();
  await listed.check();
  await expect(page.getByRole("button", { name: "Undo: way" })).toBeVisible();
  await expect(page.getByText("Made with")).toBeHidden();
});

test("a way that was typed is played again where the deck asks the case otherwise", async ({
  page,
}) => {
  await newDeck(page);
  await page.locator('[data-shelf-case="E2a"]').click();
  await page.getByText("How it is asked").click();
  await page.getByText("none", { exact: true }).click();
  await page.getByLabel("Another way").check();
  const way = page.getByLabel("Its turns, lined up");
  const tryIt = page.getByRole("button", { name: "Try it" });
  // Source: F' R brings E2a home and takes along what is on the right.
  await way.fill("F' R");
  await tryIt.click();
  const success = page.getByText(/It answered all \d+ positions/);
  await expect(success).toBeVisible();
  await way.fill("F R");
  await tryIt.click();
  await expect(page.getByRole("alert")).toContainText(
    "The deck still has: F' R.",
  );
  await expect(success).toBeHidden();
  await page.getByText("as many as can be", { exact: true }).click();
  await expect(
    page.getByText("This way no longer answers the case"),
  ).toBeVisible();
  await page.getByText("none", { exact: true }).click();
  await expect(
    page.getByText("This way no longer answers the case"),
  ).toBeHidden();
});

test("a case that is put in is looked at, its row in sight and the focus on the shelf", async ({
  page,
}) => {
  await newDeck(page);
  for (let i = 1; i <= 12; i++) {
    const next = await shelf(page).nth(1).getAttribute("data-shelf-case");
    const added = await shelf(page).first().getAttribute("data-shelf-case");
    await shelf(page).first().click();
    const row = page.locator(`[data-case="${added}"]`);
    await expect(row.getByRole("link")).toHaveAttribute("aria-current", "true");
    await expect(page.locator(`[data-shelf-case="${next}"]`)).toBeFocused();
    const [bottom, end] = await Promise.all([
      row.evaluate((node) => node.getBoundingClientRect().bottom),
      page
        .locator(".bench .end")
        .evaluate((node) => node.getBoundingClientRect().top),
    ]);
    expect(bottom).toBeLessThanOrEqual(end + 1);
  }
  expect(await page.evaluate(() => scrollY)).toBe(0);
});

test("on a window of 1280 by 800 the bench ends before the fold", async ({
  page,
}) => {
  await page.goto("/#/coach/starter-rest");
  const { y } = (await page.locator(".bench .whole").boundingBox()) ?? {};
  expect(y).toBeLessThanOrEqual(742);
});

test("the focus stays with what one is at, whatever moves under it", async ({
  page,
}) => {
  await page.goto("/#/coach/starter-edges");
  const rest = page.getByRole("checkbox", { name: "The rest of the first" });
  await rest.focus();
  for (const isTicked of [false, true]) {
    await page.keyboard.press("Space");
    await expect(rest).toBeChecked({ checked: isTicked });
    await expect(rest).toBeFocused();
  }
  const earlier = page.getByRole("button", { name: "Put First-layer corners" });
  await earlier.focus();
  await page.keyboard.press("Enter");
  await expect(earlier).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(earlier).toBeHidden();
  await expect(
    page.getByRole("checkbox", { name: "First-layer corners" }),
  ).toBeFocused();

  await newDeck(page);
  await shelf(page).first().click();
  await shelf(page).first().click();
  const button = (name: string) =>
    page.getByRole("button", { name, exact: true });
  await button("Earlier").focus();
  await page.keyboard.press("Enter");
  await expect(button("Later")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(button("Earlier")).toBeFocused();
});

test("a starter deck is copied before it is changed", async ({ page }) => {
  await page.goto("/#/coach/starter-corners");
  await page.getByLabel("Another way").click();
  const offer = page.getByRole("dialog", { name: "Copy this deck" });
  await offer.getByRole("button", { name: "Leave it" }).click();
  await expect(page.getByLabel("Another way")).not.toBeChecked();
  await rows(page).first().getByRole("link").focus();
  await page.keyboard.press("Alt+ArrowDown");
  const before = await titles(page);
  await offer.getByRole("button", { name: "Copy it" }).click();
  await expect(deckName(page)).toHaveText("First-layer corners, copy");
  expect(await titles(page)).toEqual([
    before[1],
    before[0],
    ...before.slice(2),
  ]);
  await page.getByRole("button", { name: "Delete…" }).click();
  const question = page.getByRole("dialog", { name: "Delete “First-layer" });
  await expect(question).toContainText("answers stay");
  await expect(question.getByRole("button", { name: "Keep it" })).toBeFocused();
  await question.getByRole("button", { name: "Delete the deck" }).click();
  await expect(deckName(page)).toHaveText("First-layer edges");
  await page.getByRole("button", { name: "Other decks" }).click();
  await expect(page.getByRole("list", { name: "Decks" })).not.toContainText(
    "copy",
  );
});

test("a refused file says where and what to do, and changes nothing", async ({
  page,
}) => {
  await page.goto("/#/coach");
  await page.getByRole("button", { name: "Other decks" }).click();
  await read(
    page,
    deckFile(
      '{\n  "turnwise": "deck", "version": 1, "name": "Slip",\n  "cases": [{ "case": "C1", "targett": 9 }]\n}',
    ),
  );
  const refusal = page.getByRole("dialog", { name: "This file was not read" });
  await expect(refusal).toContainText("Line 3, letter 40");
  await expect(refusal).toContainText("Turnwise knows no “targett”.");
  await expect(refusal).toContainText("Nothing was changed.");
  await refusal.getByRole("button", { name: "Back" }).click();

  // The same way for a file that is dropped on the window.
  await page.evaluate(() => {
    const dropped = new DataTransfer();
    dropped.items.add(new File(["<html>"], "page.html"));
    const drop = { dataTransfer: dropped, bubbles: true, cancelable: true };
    document.body.dispatchEvent(new DragEvent("drop", drop));
  });
  await expect(refusal).toContainText("page.html");
  await expect(refusal).toContainText("This file is not from Turnwise.");
  await refusal.getByRole("button", { name: "Back" }).click();
  await expect(
    page.getByRole("list", { name: "Decks" }).getByRole("listitem"),
  ).toHaveCount(STARTER_DECKS.length);
});

test("a file with a known id revises its deck, after a preview that can be left", async ({
  page,
}) => {
  const text = (name: string, cases: string) =>
    `{ "turnwise": "deck", "version": 1, "id": "0b1e5d0e-7c3d-4c7e-9c3b-2f6b1d1a0001", "name": "${name}", "cases": [${cases}] }`;
  await page.goto("/#/coach");
  const others = page.getByRole("button", { name: "Other decks" });
  await others.click();
  await read(page, deckFile(text("Mine", '{"case": "C1"}, {"case": "C2"}')));
  await page.getByRole("button", { name: "Take it in" }).click();
  await expect(deckName(page)).toHaveText("Mine");

  const revised = deckFile(
    text("Yours", '{"case": "C2"}, {"case": "E1"}, {"case": "Z9"}'),
  );
  await others.click();
  await read(page, revised);
  const preview = page.getByRole("dialog", { name: "Change “Mine”?" });
  await expect(preview).toContainText("It is now called “Yours”");
  await expect(preview).toContainText("Taken out: Under its home");
  await expect(preview).toContainText("Put in: Under its home");
  await expect(preview).toContainText("belongs to the case");
  await preview.getByRole("button", { name: "Leave it" }).click();
  await expect(deckName(page)).toHaveText("Mine");

  await read(page, revised);
  const change = preview.getByRole("button", { name: "Change my deck" });
  await expect(preview).toContainText("does not know one of its cases: “Z9”");
  await expect(change).toBeDisabled();
  await preview.getByLabel("Leave it out").check();
  await change.click();
  await expect(deckName(page)).toHaveText("Yours");
  await expect(rows(page)).toHaveCount(2);
  await page
    .getByRole("button", { name: "Undo: what the file changed" })
    .click();
  await expect(deckName(page)).toHaveText("Mine");
});

test("on a dark window of 360 px, a deck of one's own passes axe and nothing is cut off", async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await page.setViewportSize({ width: 360, height: 740 });
  await newDeck(page);
  await page
    .getByLabel("Name", { exact: true })
    .fill("Donaudampfschifffahrtsgesellschaftskapitaen, first corners");
  await shelf(page).first().click();
  await page.getByLabel("Another way").check();
  await page.getByText("How it is asked").click();
  await page.getByLabel("For a class").check();
  const check = async () => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations).toEqual([]);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - window.innerWidth,
    );
    expect(wider).toBeLessThanOrEqual(0);
  };
  await check();
  await page.getByRole("button", { name: "Delete…" }).click();
  await check();
});

test("a whole shelf is put in at once, and taken back at once", async ({
  page,
}) => {
  await newDeck(page);
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("last-layer-placed");
  await page.getByRole("button", { name: "Put all 21 in" }).click();
  await expect(rows(page)).toHaveCount(21);
  await expect(page.getByText("21 cases put in, 21 in all.")).toBeVisible();
  await expect(
    page.getByText("Every case of this shelf is in the deck."),
  ).toBeVisible();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(rows(page)).toHaveCount(0);
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("last-layer-turned");
  // A family at a time, then the order of stages is asked for two stages.
  await page.getByRole("button", { name: "Put all 8 in" }).first().click();
  await expect(rows(page)).toHaveCount(8);
  await page.getByLabel("Shelf", { exact: true }).selectOption("pairs");
  await shelf(page).first().click();
  await expect(rows(page)).toHaveCount(9);
  await expect(
    page.getByRole("radio", { name: "pairs (F2L) first" }),
  ).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});
