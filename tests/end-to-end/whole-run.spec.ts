/** Whole runs, from a solved cube to the number that is shown at home. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, test } from "./app";
import { sampleRun } from "../core/runs/sample-run";
import { putRows, storedRows } from "./page-store";

function at(page: Page, state: string) {
  return page.locator(`[data-run-state="${state}"]`);
}

async function open(page: Page): Promise<void> {
  await page.goto("/#/practise/whole-run");
  await expect(at(page, "choose")).toBeVisible();
}

async function choose(page: Page, name: string): Promise<void> {
  await page.getByRole("radio", { name, exact: true }).check();
}

/** The rows of runs in the page's store. */
async function storedRuns(page: Page) {
  const { runs = [] } = await storedRows(page, ["runs"]);
  return runs as readonly Record<string, unknown>[];
}

test("a cube is mixed turn by turn, run and reported, by keyboard alone, and the number stands there", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.clock.install();
  await open(page);
  await choose(page, "The whole cube");
  await choose(page, "One for each part");
  await page.getByRole("button", { name: /It is solved/ }).focus();
  await page.keyboard.press("Enter");
  // Who has not said so yet tells the colours of their cube.
  for (const colour of ["white", "green", "red", "blue", "orange", "yellow"]) {
    await page.getByRole("button", { name: colour, exact: true }).focus();
    await page.keyboard.press("Enter");
  }
  await expect(at(page, "mixing")).toBeVisible();
  const letters = await page.getByLabel("All turns").locator("span").count();
  expect(letters).toBeGreaterThan(10);

  // A reload comes back to the same turn.
  await page.keyboard.press("Space");
  const sentence = page.locator("p.sentence");
  const second = await sentence.innerText();
  await page.reload();
  await expect(sentence).toHaveText(second);
  for (let turn = 1; turn < letters; turn += 1) {
    await expect(
      page.getByText(`turn ${turn + 1} of ${letters}`),
    ).toBeVisible();
    await page.getByRole("button", { name: /^Done/ }).focus();
    await page.keyboard.press("Space");
  }
  await expect(page.getByText("Does your cube look like this?")).toBeVisible();
  await page.keyboard.press("Space");
  await expect(at(page, "ready")).toBeVisible();

  await page.keyboard.press("Space");
  await expect(at(page, "running")).toBeVisible();
  await expect(page.getByRole("timer")).toHaveCount(0);
  for (const [key, done] of [
    ["Space", "Cross done."],
    ["Enter", "Corners done."],
    ["Space", "Second layer done."],
  ] as const) {
    await page.clock.runFor(20_000);
    await page.keyboard.press(key);
    await expect(page.getByRole("status")).toHaveText(done);
  }
  // The last split slipped, and is tapped again.
  await page.keyboard.press("Backspace");
  await expect(page.getByRole("status")).toHaveText("Corners done.");
  await page.clock.runFor(5000);
  await page.keyboard.press("Space");
  await page.clock.runFor(5000);
  await page.keyboard.press("Space");

  await expect(page.getByText(/Is the whole cube done\?/)).toBeVisible();
  await page.clock.runFor(1000);
  await page.getByRole("button", { name: "Yes, it is done" }).focus();
  await page.keyboard.press("Enter");
  await expect(at(page, "kept")).toBeVisible();
  await expect(page.getByText("That is your first number")).toBeVisible();
  const [run] = await storedRuns(page);
  expect(run).toMatchObject({ kind: "solve", ending: "done", hold: "up" });
  expect(String(run?.["mix"]).split(" ")).toHaveLength(letters);
  expect(run?.["splits"]).toHaveLength(3);
  const shown = await page.locator("h1").innerText();

  await page.keyboard.press("Enter");
  const home = page.getByRole("region", { name: "The number to show at home" });
  await expect(home).toContainText(shown);
  await expect(
    home.getByRole("heading", { name: "The number to show at home" }),
  ).toBeVisible();
  await page.reload();
  await expect(home).toContainText(shown);
});

test("a reload in the middle of a run is told, and counts nothing; a run is struck out and stays in the store", async ({
  page,
}) => {
  await open(page);
  await page.getByRole("button", { name: "I mixed it myself" }).click();
  await page.getByRole("button", { name: /Tap, then begin/ }).click();
  await expect(at(page, "running")).toBeVisible();
  await page.reload();
  await expect(
    page.getByText("The window closed in the middle of a run"),
  ).toBeVisible();
  expect(await storedRuns(page)).toEqual([]);

  await page.getByRole("button", { name: "I mixed it myself" }).click();
  await page.getByRole("button", { name: /Tap, then begin/ }).click();
  const pad = page.getByRole("button", { name: /hands are off the cube/ });
  await expect(async () => {
    await pad.click({ timeout: 1000 });
    await expect(pad).toHaveCount(0, { timeout: 1000 });
  }).toPass();
  await expect(async () => {
    await page
      .getByRole("button", { name: /^No, not yet/ })
      .click({ timeout: 1000 });
    await expect(at(page, "kept")).toBeVisible({ timeout: 1000 });
  }).toPass();
  await expect(page.locator("h1")).toHaveText("not done");
  await page.getByRole("button", { name: /Another run/ }).click();
  await page.getByRole("button", { name: /^Strike out the run/ }).click();
  await page.getByRole("button", { name: "Yes, strike it out" }).click();
  await expect(page.getByText("Your runs will stand here")).toBeVisible();
  const rows = await storedRuns(page);
  expect(rows).toHaveLength(2);
  expect(rows.map((row) => row["strikes"]).filter(Boolean)).toEqual([
    rows.find((row) => row["kind"] !== undefined)?.["id"],
  ]);
});

test("by competition rules 8 and 12 seconds are called out, and looking too long costs 2 seconds", async ({
  page,
}) => {
  await page.clock.install();
  await open(page);
  await choose(page, "The cross");
  await choose(page, "As at a competition");
  await page.getByRole("button", { name: "I mixed it myself" }).click();
  await page.keyboard.press("Space");
  await expect(at(page, "looking")).toBeVisible();
  const said = page.getByRole("status");
  for (const [seconds, words] of [
    [8, "8 seconds gone"],
    [4, "12 seconds gone"],
    [3, "15 seconds: 2 seconds are added"],
    [2, "17 seconds: this run will not count"],
  ] as const) {
    await page.clock.runFor(1000 * seconds);
    await expect(said).toHaveText(words);
  }
  await page.keyboard.press("Escape");
  await expect(at(page, "choose")).toBeVisible();
});

for (const colorScheme of ["light", "dark"] as const)
  test(`the pages of a run hide nothing from a screen reader, ${colorScheme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await open(page);
    const check = async () =>
      expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
    await check();
    await page.getByRole("button", { name: "I mixed it myself" }).click();
    await expect(at(page, "ready")).toBeVisible();
    await check();
    await page.keyboard.press("Space");
    await expect(at(page, "running")).toBeVisible();
    await check();
  });

test("a Progress without answers leads to the runs, and shows those that were made", async ({
  page,
}) => {
  await page.goto("/#/progress");
  await expect(page.getByText("No answers to show yet")).toBeVisible();
  const runs = page.getByRole("region", { name: "Your whole runs" });
  await page.getByRole("link", { name: /^whole runs/ }).click();
  await expect(at(page, "choose")).toBeVisible();
  await page.goto("/#/progress");
  await expect(page.getByRole("link", { name: /^whole runs/ })).toBeVisible();
  await expect(runs).toHaveCount(0);
  const { learners = [] } = await storedRows(page, ["learners"]);
  const learner = String(Reflect.get(Object(learners[0]), "id"));
  await putRows(page, {
    runs: [
      sampleRun({ id: "a", learner }),
      sampleRun({ id: "b", learner, kind: "solve", ending: "not-done" }),
    ],
  });
  await page.reload();
  await expect(runs.getByRole("listitem")).toHaveText([
    "The first layer: 1 run so far, the best 12.34 s.",
    "The whole cube: 1 run, none done yet.",
  ]);
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
});

test("a run after a look at another place counts with those before it, and each kind has its own number", async ({
  page,
}) => {
  await page.clock.install();
  await open(page);
  const run = async (seconds: number) => {
    await page.getByRole("button", { name: "I mixed it myself" }).click();
    await page.clock.runFor(500);
    await page.keyboard.press("Space");
    await page.clock.runFor(seconds * 1000);
    await page.keyboard.press("Space");
    await page.clock.runFor(1000);
    await page.getByRole("button", { name: /^Yes, it is done/ }).click();
    await expect(at(page, "kept")).toBeVisible();
    await page.getByRole("button", { name: /Another run/ }).click();
  };
  const past = page.getByRole("region", { name: "How have my runs gone?" });
  await run(40);
  await expect(past).toContainText("1 run so far");
  await page.goto("/#/progress");
  await expect(past).toHaveCount(0);
  await page.goto("/#/practise/whole-run");
  await run(30);
  await expect(past).toContainText("2 runs so far, the best 30.");
  await choose(page, "The cross");
  await expect(past).toContainText("Your runs will stand here");
});
