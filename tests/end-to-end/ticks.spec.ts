/** Ticks come back in: a sheet is made, its code read, and its boxes entered by keyboard alone. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { randomUUID } from "node:crypto";
import { expect, test } from "./app";
import { putRows, storedRows } from "./page-store";

/** Adds somebody beside the learner at the desk, and opens the page again. */
async function addLearner(page: Page, name: string): Promise<void> {
  await putRows(page, {
    learners: [{ id: randomUUID(), name, createdAt: Date.now() }],
  });
  await page.reload();
}

/** Presses keys one after the other, and counts them. */
function keyboardOf(page: Page) {
  let pressed = 0;
  return {
    get pressed() {
      return pressed;
    },
    async type(text: string) {
      for (const sign of text) {
        pressed += 1;
        await page.keyboard.press(sign === " " ? "Space" : sign);
      }
    },
    async press(...names: readonly string[]) {
      for (const name of names) {
        pressed += 1;
        await page.keyboard.press(name);
      }
    },
  };
}

/** Makes a sheet of so many of a deck's cases, and reads the code off its first page. */
async function makeSheet(
  page: Page,
  kind: RegExp,
  cases: number,
): Promise<string> {
  await page.goto("/#/coach/sheets/starter-two-looks");
  await page.getByRole("radio", { name: kind }).check();
  await page.getByText("choose which").click();
  await page.getByRole("button", { name: "None" }).click();
  const boxes = page.locator("details").getByRole("checkbox");
  for (let n = 0; n < cases; n++) await boxes.nth(n).check();
  const code = page.locator("[data-sheet-page] > text", { hasText: /^Code / });
  await code.first().waitFor();
  const [, read = ""] =
    /^Code (\S{4}-\S{4})$/.exec((await code.first().textContent()) ?? "") ?? [];
  return read;
}

/** How many sheets the store has. */
async function sheetsKept(page: Page): Promise<number> {
  return (await storedRows(page, ["sheets"]))["sheets"]?.length ?? 0;
}

/** Prints as a person does; the dialog itself is the system's, and keeps nobody from the next page as long. */
async function print(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  const before = await sheetsKept(page);
  await page.getByRole("button", { name: "Print…" }).click();
  await expect.poll(() => sheetsKept(page)).toBe(before + 1);
}

test("a sheet of 12 cases and 30 ticks goes in by 45 keys, and its answers are said to be on paper", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Coach" }).waitFor();
  await addLearner(page, "Ben");
  const code = await makeSheet(page, /With the ways/, 12);
  // The words under the boxes of the first case, from the left.
  const texts = await page
    .locator("[data-sheet-page]")
    .first()
    .locator("text")
    .allTextContents();
  const done = texts.indexOf("Done on");
  const onPaper = texts.slice(done + 1, done + 8);
  expect(onPaper).toEqual(["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]);
  await print(page);

  await page.goto("/#/coach/ticks");
  await expect(page.getByLabel("Code of the sheet")).toBeFocused();
  await expect(page.getByRole("link", { name: code })).toBeVisible();
  const keyboard = keyboardOf(page);
  await keyboard.type(code.replace("-", "").toLowerCase());
  await keyboard.press("Enter");

  // The week is chosen once for the class: the last whole one.
  const name = page.getByLabel("Whose sheet is it?");
  await expect(name).toBeFocused();
  await keyboard.press("Shift+Tab", "ArrowDown", "Tab");
  await expect(name).toBeFocused();

  const before = keyboard.pressed;
  await keyboard.type("le");
  await keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Learner 1" })).toBeVisible();
  await expect(page.locator('[data-place="0/0"]')).toBeFocused();
  // The columns are those of the paper, in its order, each with its date.
  await expect(page.getByRole("columnheader")).toHaveText([
    "On the sheet",
    ...onPaper.map((day) => new RegExp(`^${day} \\d{1,2} [A-Z][a-z]+$`)),
  ]);
  const rows = ["1234567", "135", "2", "1357", "12", "4567", "1"];
  rows.push("67", "123", "2", "", "15");
  expect(rows.join("")).toHaveLength(30);
  for (const [n, days] of rows.entries()) {
    await keyboard.type(days);
    if (n < rows.length - 1) await keyboard.press("Enter");
  }
  await keyboard.press("Control+Enter");
  await expect(page.getByText("Learner 1: 30 answers kept.")).toBeVisible();
  expect(keyboard.pressed - before).toBe(45);
  await expect(name).toBeFocused();

  // The next child: the sheet and its week stay, and the first box is ready.
  await keyboard.type("b");
  await keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Ben" })).toBeVisible();
  await expect(
    page.getByRole("button", { name: "Learner 1 in" }),
  ).toBeVisible();
  await expect(page.locator('[data-place="0/0"]')).toBeFocused();
  await keyboard.type("tx t");
  await keyboard.press("Enter", "ArrowRight", "x");
  await expect(
    page.getByRole("button", { name: /^1 .*: crossed$/ }),
  ).toHaveCount(1);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations).toEqual([]);
  await keyboard.press("Control+Enter");
  await expect(page.getByText("Ben: 5 answers kept.")).toBeVisible();

  await page.goto("/#/progress");
  await expect(page.getByText("30 answers since")).toBeVisible();
  const last = page.getByRole("region", { name: "What did I answer last?" });
  await expect(last.getByText("On paper")).toHaveCount(12);
  await expect(last.getByText("steady")).toHaveCount(12);
  await last.getByRole("link").first().click();
  await expect(page.getByText("On paper").first()).toBeVisible();
});

test("an entry under the wrong name is taken back and goes to whom it belongs; nothing is entered twice", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Coach" }).waitFor();
  await addLearner(page, "Ben");
  await makeSheet(page, /To answer by hand/, 3);
  await page.getByRole("button", { name: "Enter its ticks" }).click();
  const name = page.getByLabel("Whose sheet is it?");
  await expect(name).toBeFocused();
  const keyboard = keyboardOf(page);
  await keyboard.type("ben");
  await keyboard.press("Enter");
  await expect(page.locator('[data-place="0/0"]')).toBeFocused();
  // A time typed in a box ticks it; what is pasted in is no time until it is one.
  await keyboard.type("4.2");
  await keyboard.press("Enter", "x", "Enter");
  await keyboard.press("1");
  await page.keyboard.insertText("=1+1\tjunk\u202e");
  await keyboard.press("Control+Enter");
  await expect(page.getByRole("alert")).toContainText("Row 3");
  await page.getByRole("textbox", { name: /^3 .*try 1/ }).fill("5,5");
  await page.keyboard.press("Control+Enter");
  await expect(page.getByText("Ben: 3 answers kept.")).toBeVisible();

  await page.getByRole("button", { name: "Take back" }).first().click();
  await page.getByRole("button", { name: "It is another child’s" }).click();
  await expect(name).toBeFocused();
  await keyboard.type("l");
  await keyboard.press("Enter");
  await expect(
    page.getByRole("button", { name: "Keep 3 answers for Learner 1" }),
  ).toBeVisible();
  await page.keyboard.press("Control+Enter");
  await expect(page.getByText("Learner 1: 3 answers kept.")).toBeVisible();

  await page.reload();
  await expect(name).toBeFocused();
  await keyboard.type("l");
  await keyboard.press("Enter");
  await expect(
    page.getByRole("button", { name: /: ticked, already in$/ }),
  ).toHaveCount(2);
  await expect(
    page.getByRole("button", { name: /: crossed, already in$/ }),
  ).toHaveCount(1);
  await page.goto("/#/progress");
  await expect(page.getByText("3 answers today.")).toBeVisible();
});

test("of two children of one name the one whose sheet is not in yet is meant", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Coach" }).waitFor();
  await addLearner(page, "Ben");
  await addLearner(page, "Ben");
  await makeSheet(page, /To answer by hand/, 3);
  await page.getByRole("button", { name: "Enter its ticks" }).click();
  const keyboard = keyboardOf(page);
  const bens = page.getByRole("button", { name: /Ben/, pressed: true });
  for (const other of [0, 1]) {
    await expect(page.getByLabel("Whose sheet is it?")).toBeFocused();
    await keyboard.type("ben");
    await keyboard.press("Enter");
    await expect(page.locator('[data-place="0/0"]')).toBeFocused();
    await expect(bens).toHaveCount(1);
    await expect(bens).not.toContainText("in");
    await keyboard.press("Space", "Control+Enter");
    await expect(
      page.getByRole("button", { name: /Ben/ }).filter({ hasText: "in" }),
    ).toHaveCount(1 + other);
  }
});

test("a code that is mistyped or unknown here says what to do", async ({
  page,
}) => {
  await page.goto("/#/coach/ticks");
  const field = page.getByLabel("Code of the sheet");
  await field.fill("4A7C");
  await page.keyboard.press("Enter");
  await expect(page.getByText("A code has eight signs")).toBeVisible();
  await field.fill("22222223");
  await page.keyboard.press("Enter");
  await expect(page.getByText("one sign is wrong")).toBeVisible();
  await field.fill("22222224");
  await page.keyboard.press("Enter");
  await field.fill("2222-222O");
  await page.keyboard.press("Enter");
  await expect(page.getByText("No code has “O”")).toBeVisible();
  // All twos: the first sign stands for 0, so the sum is 0.
  await field.fill("2222 2222");
  await page.keyboard.press("Enter");
  await expect(page.getByText("was printed on this machine")).toBeVisible();
});

test("the page is called what leads to it", async ({ page }) => {
  for (const from of ["/#/coach", "/#/coach/class"]) {
    await page.goto(from);
    await page.getByRole("link", { name: "Enter ticks" }).click();
    await expect(
      page.getByRole("heading", { level: 1, name: "Enter ticks" }),
    ).toBeVisible();
  }
});
