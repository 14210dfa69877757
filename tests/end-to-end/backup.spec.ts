/**
 * Answers are carried from one browser profile to another by a file, and a bad
 * file changes nothing.
 */
import type { Page } from "@playwright/test";
import { readFileSync } from "node:fs";
import { FIRST_COURSE } from "../../core/deck/starter-decks";
import { sampleRun } from "../core/runs/sample-run";
import { expect, test } from "./app";
import { putRows, storedRows } from "./page-store";
import { answerDaysAgo, storeAnswers } from "./stored-answers";
import { storeClass } from "./stored-class";

const ANSWERS = [30, 20, 10, 2].map((days) => answerDaysAgo("E1", days));

async function openSettings(page: Page, says: string): Promise<void> {
  await page.goto("/#/settings");
  await expect(page.getByText(new RegExp(`^${says}`))).toBeVisible();
}

test("a backup made in one profile is restored in another, once, and can be taken back", async ({
  page,
  browser,
  baseURL,
}, info) => {
  await openSettings(page, "0 answers");
  await storeAnswers(page, ANSWERS);
  await expect(
    page.getByText("No backup has been made here yet."),
  ).toBeVisible();
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Back up everything" }).click();
  const path = info.outputPath("everything.turnwise-backup");
  await (await download).saveAs(path);
  expect((await download).suggestedFilename()).toMatch(
    /^Turnwise \d{4}-\d\d-\d\d everything\.turnwise-backup$/,
  );
  await expect(
    page.getByText("Last backup: today; 0 answers since."),
  ).toBeVisible();

  const other = await browser.newContext(
    baseURL === undefined ? {} : { baseURL },
  );
  const there = await other.newPage();
  await openSettings(there, "0 answers");
  const restore = async (): Promise<void> => {
    const chooser = there.waitForEvent("filechooser");
    await there.getByRole("button", { name: "Restore a backup…" }).click();
    await (await chooser).setFiles(path);
  };
  await restore();
  const dialog = there.getByRole("dialog");
  await expect(dialog).toContainText("not here yet, 4 new answers.");
  await dialog.getByRole("button", { name: "Restore" }).click();
  await expect(
    there.getByText("Restored: 1 learner and 4 answers."),
  ).toBeVisible();
  // Whom the first start put at the desk, nobody had sat down as.
  await expect(
    there.getByText("4 answers", { exact: false }).first(),
  ).toBeVisible();

  // A second time there is nothing that is not here already.
  await restore();
  await expect(dialog).toContainText("nothing that is not here already");
  await dialog.getByRole("button", { name: "Close" }).click();

  await there
    .getByRole("button", { name: /Take the restore of today back/ })
    .click();
  await expect(there.getByText("The restore was taken back.")).toBeVisible();
  await expect(there.getByText(/^0 answers/)).toBeVisible();
  await other.close();
});

test("a file that is no backup is refused in a sentence, and nothing is changed", async ({
  page,
}) => {
  await openSettings(page, "0 answers");
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Restore a backup…" }).click();
  await (
    await chooser
  ).setFiles({
    name: "notes.turnwise-backup",
    mimeType: "text/plain",
    buffer: Buffer.from("my cube notes"),
  });
  await expect(page.getByRole("alert")).toContainText(
    "This file is not a backup of Turnwise.",
  );
  await expect(page.getByRole("dialog")).toBeHidden();
});

test("answers and runs are handed over as tables, and a backup is asked for after 200 answers", async ({
  page,
}) => {
  await openSettings(page, "0 answers");
  await storeAnswers(
    page,
    Array.from({ length: 200 }, (_, n) => answerDaysAgo("E1", n / 40)),
  );
  await expect(page.getByText("200 answers").first()).toBeVisible();
  const download = page.waitForEvent("download");
  await page
    .getByRole("group", { name: "Learner 1’s answers as a table" })
    .getByRole("button", { name: "CSV" })
    .click();
  expect((await download).suggestedFilename()).toBe("Turnwise Learner 1.csv");

  // A run as well, once there is one.
  const runs = page.getByRole("group", { name: "Learner 1’s runs as a table" });
  await runs.getByRole("button", { name: "CSV" }).click();
  await expect(page.getByText("has made no whole run yet")).toBeVisible();
  const { learners = [] } = await storedRows(page, ["learners"]);
  const learner = String(Reflect.get(Object(learners[0]), "id"));
  await putRows(page, { runs: [{ ...sampleRun({ learner }) }] });
  const table = page.waitForEvent("download");
  await runs.getByRole("button", { name: "CSV" }).click();
  const file = await table;
  expect(file.suggestedFilename()).toBe("Turnwise Learner 1, runs.csv");
  expect(readFileSync(await file.path(), "utf8")).toMatch(
    /^\uFEFFid,.*\r\nrun-1,.*first-layer.*12345/s,
  );

  await page.goto("/#/coach");
  const practised = page.getByRole("checkbox", { checked: true });
  for (let left = FIRST_COURSE.length; left > 0; left--) {
    await expect(practised).toHaveCount(left);
    await practised.first().click();
  }
  await page.goto("/#/practise");
  await expect(
    page.getByText("There is no backup yet of what you practised."),
  ).toBeVisible();
});

test("a class of forty is restored without going to the end of the list, in the order they came", async ({
  page,
  browser,
  baseURL,
}, info) => {
  const names = Array.from({ length: 40 }, (_, i) => `Learner ${40 - i}`);
  await openSettings(page, "0 answers");
  await storeClass(
    page,
    names.map((name) => ({ name, answers: [answerDaysAgo("E1", 2)] })),
  );
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Back up everything" }).click();
  const path = info.outputPath("class.turnwise-backup");
  await (await download).saveAs(path);

  const other = await browser.newContext({
    ...(baseURL === undefined ? {} : { baseURL }),
    viewport: { width: 360, height: 740 },
  });
  const there = await other.newPage();
  await openSettings(there, "0 answers");
  const chooser = there.waitForEvent("filechooser");
  await there.getByRole("button", { name: "Restore a backup…" }).click();
  await (await chooser).setFiles(path);
  const dialog = there.getByRole("dialog");
  const ticks = dialog.getByRole("checkbox", { name: /^Learner/ });
  await expect(ticks).toHaveCount(40);
  await expect(ticks.last()).not.toBeInViewport();
  const button = dialog.getByRole("button", { name: "Restore" });
  await expect(button).toBeInViewport({ ratio: 1 });
  await button.click();
  await expect(there.getByText(/^Restored: 40 learners/)).toBeVisible();
  // Who came first sits at the desk.
  await expect(
    there.getByRole("button", { name: /^Learner 40 is at the desk/ }),
  ).toBeAttached();
  await other.close();
});
