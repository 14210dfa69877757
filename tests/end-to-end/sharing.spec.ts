/**
 * Results from learner to coach: two browsers with profiles of their own and
 * one real folder, which both reach through the shell's own code; and a file
 * that goes from hand to hand.
 */
import { type BrowserContext, chromium, type Page } from "@playwright/test";
import { createHash } from "node:crypto";
import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { sharedFolder } from "../../electron/shared-folder";
import { standInDesk } from "../electron/stand-in-desk";
import { chromiumOptions } from "../runner/chromium";
import { expect, test } from "./app";
import { storedRows } from "./page-store";
import { answerOnScreen, openPractise } from "./practise-steps";
import { putShellBehind } from "./shell-behind-page";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

const temporary = (name: string) => mkdtempSync(join(tmpdir(), name));

/** A machine: a browser with a profile of its own, and a shell with a data folder of its own. */
async function machine(
  address: string,
  folder: string,
): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
  const context = await chromium.launchPersistentContext(
    temporary("turnwise-profile-"),
    { ...chromiumOptions(), baseURL: address },
  );
  const { desk } = standInDesk({
    choices: { folder },
    parts: { shared: sharedFolder(temporary("turnwise-shell-")) },
  });
  await putShellBehind(context, desk);
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto("/");
  return { context, page };
}

async function share(page: Page, name: string): Promise<void> {
  await page.goto("/#/settings");
  await page.locator("label", { hasText: "How I answered" }).click();
  const named = page.getByLabel("Name for the class");
  await named.fill(name);
  await page.getByRole("button", { name: "Use this name" }).click();
  await page.getByRole("button", { name: "Choose the shared folder…" }).click();
  await page.getByRole("button", { name: "Share now" }).click();
  await expect(page.getByText(/^Shared with your coach/)).toBeVisible();
}

async function openIntake(page: Page) {
  await page.goto("/#/coach");
  await page.goto("/#/coach/class");
  await page.getByRole("button", { name: "Take results in…" }).click();
  return page.getByRole("dialog");
}

/** What was heard, by learner's name: the ids of their answers. */
async function heard(page: Page): Promise<Record<string, readonly string[]>> {
  const stored = await storedRows(page, ["heard"]);
  const rows = stored["heard"] as readonly {
    readonly kind: string;
    readonly name: string;
    readonly answers: readonly { readonly id: string }[];
  }[];
  const all: Record<string, readonly string[]> = {};
  for (const { kind, name, answers } of rows)
    if (kind === "answers")
      all[name] = [
        ...new Set([...(all[name] ?? []), ...answers.map(({ id }) => id)]),
      ].sort();
  return all;
}

test("two machines that see one folder come to the same results, and what is taken back goes", async ({
  app,
}) => {
  test.setTimeout(120_000);
  const folder = temporary("turnwise-shared-");
  const [mia, coach, other] = [
    await machine(app.address, folder),
    await machine(app.address, folder),
    await machine(app.address, folder),
  ];

  await openPractise(mia.page);
  // The first time is a showing: it goes along, and is no answer.
  const shown = await answerOnScreen(mia.page, new Map());
  const given = answerDaysAgo("E1", 1);
  await storeAnswers(mia.page, [given]);
  const answered = [shown, given.id].sort();
  await share(mia.page, "Mia");
  const [file = ""] = readdirSync(folder);
  const bytes = readFileSync(join(folder, file));
  // Source: Node's own digest and unpacker.
  expect(file).toBe(
    `${createHash("sha256").update(bytes).digest("hex")}.turnwise-results`,
  );
  const text = gunzipSync(bytes).toString();
  for (const id of answered) expect(text).toContain(id);
  expect(text).not.toContain('"position"');

  // Somebody else practises on the coach's machine and shares from there; the
  // folder holds a half, a copy and something foreign as well.
  await storeAnswers(coach.page, [
    answerDaysAgo("E1", 2),
    answerDaysAgo("E2a", 1),
  ]);
  await share(coach.page, "Ben");
  const digest = file.replace(".turnwise-results", "");
  copyFileSync(
    join(folder, file),
    join(folder, `${digest} (conflicted copy 1).turnwise-results`),
  );
  const half = "0".repeat(64);
  writeFileSync(
    join(folder, `${half}.turnwise-results`),
    bytes.subarray(0, bytes.length / 2),
  );
  writeFileSync(join(folder, "holiday.turnwise-results"), "no results");

  const onCoach = await openIntake(coach.page);
  await expect(onCoach).toContainText("Mia: 1 answer.");
  await expect(onCoach).toContainText("2 files could not be read");
  await expect(onCoach).toContainText("It has not arrived whole yet");
  await expect(onCoach).toContainText("This is no file of results");
  await expect(onCoach.getByRole("listitem").last()).toContainText("Mia");

  const onOther = await openIntake(other.page);
  await other.page
    .getByRole("button", { name: "Choose the shared folder…" })
    .click();
  await expect(onOther).toContainText("Ben: 2 answers.");
  await expect(onOther).toContainText("Mia: 1 answer.");
  const everybody = await heard(other.page);
  expect(everybody["Mia"]).toEqual(answered);
  expect(everybody["Ben"]).toHaveLength(2);
  expect(await heard(coach.page)).toEqual({ Mia: answered });

  // A second look brings nothing: what is whole is known by its name.
  await other.page.getByRole("button", { name: "Look again" }).click();
  await expect(onOther).toContainText("2 files could not be read");
  await expect(onOther).not.toContainText("answer.");
  expect(await heard(other.page)).toEqual(everybody);

  // Mia takes it back: from both machines it goes.
  await mia.page.getByRole("button", { name: "Take everything back…" }).click();
  await mia.page.getByRole("button", { name: "Take it back" }).click();
  await expect(
    mia.page.getByText("Everything you shared is taken back"),
  ).toBeVisible();
  expect(readdirSync(folder)).not.toContain(file);
  await coach.page.getByRole("button", { name: "Look again" }).click();
  await expect(onCoach).toContainText("1 person has taken back");
  expect(await heard(coach.page)).toEqual({});
  await other.page.getByRole("button", { name: "Look again" }).click();
  await expect(onOther).toContainText("1 person has taken back");
  expect(Object.keys(await heard(other.page))).toEqual(["Ben"]);

  for (const { context } of [mia, coach, other]) await context.close();
  rmSync(folder, { recursive: true });
});

test("results go from hand to hand as a file; a classmate is renamed, deleted, and let in again", async ({
  page,
  context,
}) => {
  await page.goto("/");
  await storeAnswers(page, [answerDaysAgo("E1", 2), answerDaysAgo("E1", 1)]);
  await page.goto("/#/settings");
  await page.locator("label", { hasText: "Also the turns I made" }).click();
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save my results as a file" }).click();
  const download = await waiting;
  expect(download.suggestedFilename()).toMatch(
    /^Results of Learner 1, \d{4}-\d\d-\d\d\.turnwise-results$/,
  );
  const path = await download.path();
  expect(gunzipSync(readFileSync(path)).toString()).toContain('"position"');
  await expect(page.getByText("is in your downloads")).toBeVisible();

  // The coach's browser.
  const browser = await context.browser()?.newContext();
  const coach = await browser?.newPage();
  if (coach === undefined) throw new Error("there is no second browser");
  await coach.goto(page.url().replace(/#.*/, ""));
  const dialog = await openIntake(coach);
  const chooser = coach.waitForEvent("filechooser");
  await coach.getByRole("button", { name: "Take files in…" }).click();
  await (
    await chooser
  ).setFiles({
    name: download.suggestedFilename(),
    mimeType: "application/octet-stream",
    buffer: readFileSync(path),
  });
  await expect(dialog).toContainText("Learner 1: 2 answers.");

  await dialog.getByRole("button", { name: "Call Learner 1" }).click();
  await dialog.getByRole("textbox").fill("Owl");
  await dialog.getByRole("button", { name: "Use this name" }).click();
  await expect(dialog).toContainText("shares as Learner 1");
  await dialog
    .getByRole("button", { name: "Delete the results of Owl" })
    .click();
  await dialog
    .getByRole("button", { name: "Delete the results", exact: true })
    .click();
  await expect(dialog).toContainText("results of one person were deleted");
  expect(await heard(coach)).toEqual({});
  await dialog.getByRole("button", { name: "Let them come again" }).click();
  await expect(dialog).not.toContainText("were deleted");
  await browser?.close();
});

test("a browser’s folder is used as the desktop app’s is", async ({ page }) => {
  // The browser's own private folder in the place of one that a person chooses.
  await page.addInitScript(() => {
    Object.assign(window, {
      showDirectoryPicker: () => navigator.storage.getDirectory(),
    });
  });
  await page.goto("/");
  await storeAnswers(page, [answerDaysAgo("E1", 2), answerDaysAgo("E1", 1)]);
  await share(page, "Mia");
  await page.reload();
  await page.getByRole("button", { name: "Share now" }).click();
  await expect(page.getByText("Nothing is new since")).toBeVisible();
  const files = () =>
    page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory();
      const names: string[] = [];
      for await (const name of folder.keys()) names.push(name);
      return names;
    });
  const [first] = await files();
  await page.getByRole("button", { name: "Take everything back…" }).click();
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByText("is taken back")).toBeVisible();
  expect(await files()).toHaveLength(1);
  expect(await files()).not.toContain(first);
});
