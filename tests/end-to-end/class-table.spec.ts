/** Everybody, case by case: the table of the class, by keys, narrowed, and on paper. */
import type { Review } from "../../core/memory/review";
import { expect, test } from "./app";
import { readPdf, seePdf } from "./printed-pdf";
import { storeClass } from "./stored-class";
import {
  titleOf,
  STUCK_AT,
  missed,
  CLASS,
  grid,
  openClass,
} from "./class-steps";

test("the table is walked through by arrows, and a cell opens the learner’s last answers", async ({
  page,
}) => {
  await openClass(page);
  const table = grid(page);
  await expect(table.getByRole("columnheader")).toHaveCount(4);
  await expect(table.getByRole("rowheader")).toHaveCount(5);
  // The worst first: case and learners.
  await expect(table.getByRole("columnheader").nth(1)).toContainText(
    titleOf(STUCK_AT),
  );
  await expect(table.getByRole("columnheader").nth(1)).toHaveAccessibleName(
    `${titleOf(STUCK_AT)} (corner), 3 stuck`,
  );
  await expect(table.getByRole("columnheader").nth(2)).toHaveAccessibleName(
    `${titleOf("E1")} (edge)`,
  );
  const cells = table.getByRole("gridcell");
  await cells.first().focus();
  expect(await table.locator("[tabindex='0']").count()).toBe(1);
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowLeft");
  const focused = page.locator(":focus");
  await expect(focused).toHaveAccessibleName(
    "fading, stuck: missed on 2 of the last 2 days it was asked",
  );
  expect(await table.locator("[tabindex='0']").count()).toBe(1);
  await page.keyboard.press("Enter");
  const answers = page.getByRole("dialog", { name: "Dee" });
  await expect(answers.getByRole("listitem")).toHaveCount(2);
  await expect(answers).toContainText("Stuck: missed on 2 of the last 2 days");
  await page.keyboard.press("Escape");
  await expect(answers).toBeHidden();
  await expect(focused).toHaveRole("gridcell");
});

test("the table is narrowed to a deck, sorted by deck and name, and a learner is left out for good", async ({
  page,
}) => {
  await openClass(page);
  const table = grid(page);
  await page.getByText("By deck and name").click();
  await expect(table.getByRole("rowheader").first()).toContainText("Ada");
  await page
    .getByLabel("Cases")
    .selectOption({ label: "Deck: First-layer edges" });
  await expect(table.getByRole("columnheader")).toHaveCount(12);
  await expect(page.getByRole("main")).toContainText("Nobody is stuck.");
  await page.getByText("Who is in the class").click();
  await page.getByRole("checkbox", { name: /^Mia/ }).uncheck();
  await expect(table.getByRole("rowheader")).toHaveCount(4);
  await page.reload();
  await expect(table.getByRole("rowheader")).toHaveCount(4);
  await expect(page.getByRole("main")).not.toContainText("Mia has not");
});

test("of one learner the table bears the name and counts nobody, and on a telephone the marks that are explained keep their size", async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/");
  await page.locator("[data-case]").waitFor();
  await storeClass(page, [{ name: "Ben", answers: missed(STUCK_AT, [4, 2]) }]);
  await page.goto("/#/coach/class");
  const table = page.getByRole("grid", { name: "Ben, case by case" });
  await expect(
    page.getByRole("heading", { name: "Ben, case by case" }),
  ).toBeVisible();
  await expect(table.getByRole("rowheader")).toContainText("stuck at 1");
  await expect(table.getByRole("columnheader").nth(1)).toHaveAccessibleName(
    `${titleOf(STUCK_AT)} (corner)`,
  );
  await expect(table).not.toContainText("how many");
  const widths = await page
    .getByRole("list", { name: "What the marks mean" })
    .locator("svg")
    .evaluateAll((all) =>
      all.map((one) => [
        one.getBoundingClientRect().width,
        Number(one.getAttribute("width")),
      ]),
    );
  expect(widths.length).toBeGreaterThan(4);
  for (const [drawn, wanted] of widths) expect(drawn).toBe(wanted);
});

test("it is printed landscape in greys, its head on every page", async ({
  page,
  context,
}) => {
  await page.goto("/");
  await page.locator("[data-case]").waitFor();
  const many = Array.from({ length: 40 }, (_, i) => ({
    name: `Learner ${i + 1}`,
    answers: CLASS[i % CLASS.length]?.answers.map((answer) => ({
      ...answer,
      id: crypto.randomUUID(),
    })) as readonly Review[],
  }));
  await storeClass(page, many);
  await page.goto("/#/coach/class");
  await grid(page).waitFor();
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const read = await readPdf(pdf);
  expect(read.length).toBeGreaterThan(1);
  const seen = await seePdf(context, pdf);
  for (const [n, own] of read.entries()) {
    expect(own.width).toBeGreaterThan(own.height);
    // Nothing of the window around it, and no colour.
    expect(own.text).not.toContain("Back to the bench");
    expect(seen[n]?.colour).toBeLessThan(0.001);
    expect(seen[n]?.right).toBeLessThan(own.width - 10);
  }
  // The first column's number and count, on every page that has a learner.
  for (const own of read)
    if (/Learner \d/.test(own.text)) expect(own.text).toMatch(/\b1 24\b/);
  const text = read.map((own) => own.text).join(" ");
  expect(text).toContain("24 of the 32 who practised are stuck at");
  for (const { name } of many) expect(text).toContain(name);
  expect(text).toContain(`1 ${titleOf(STUCK_AT)}`);
  // What is on the screen is as it was.
  await expect(page.locator("[data-sheet]")).toHaveCount(0);
});
