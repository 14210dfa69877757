/** Which is it?, Find it and Where is home?, by key, by tap and without seeing. */
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import type { CaseId } from "../../core/cases/case-ids";
import type { RecognisingWay } from "../../core/memory/review";
import { expect, test } from "./app";
import { acknowledged, openPractise, practiseState } from "./practise-steps";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => [id, nodes.map((node) => node.html)]),
  ).toEqual([]);
  const wider = await page.evaluate(
    () => document.documentElement.scrollWidth - window.innerWidth,
  );
  expect(wider).toBeLessThanOrEqual(0);
}

/** A learner who met these cases is asked about them. */
async function openQuestion(
  page: Page,
  way: RecognisingWay,
  ids: readonly CaseId[],
): Promise<void> {
  await openPractise(page);
  await storeAnswers(
    page,
    ids.map((id) => answerDaysAgo(id, 2)),
  );
  await page.goto(`/#/practise/tell-apart/${way}`);
  await expect(practiseState(page, way)).toBeVisible();
}

function choices(page: Page) {
  return page.locator("section.question").getByRole("group").last();
}

async function namesOfChoices(page: Page): Promise<readonly string[]> {
  const names = await choices(page).getByRole("button").allTextContents();
  return names.map((name) => name.trim().replaceAll(/\s+/g, " "));
}

test("Which is it? is answered by a key, survives a reload, and shows both cases after a miss", async ({
  page,
}) => {
  await openQuestion(page, "which-is-it", ["C1", "C2"]);
  // The question has the focus: it is read out, and the keys act at once.
  await expect(
    page.getByRole("heading", { name: "Which is it?" }),
  ).toBeFocused();
  await expectAccessible(page);
  const names = await namesOfChoices(page);
  const id = await practiseState(page, "which-is-it").getAttribute("data-case");
  await page.reload();
  await expect(practiseState(page, "which-is-it")).toBeVisible();
  expect(await namesOfChoices(page)).toEqual(names);

  const isRight = (name: string) =>
    name.endsWith(id === "C1" ? "white on the front" : "white on the right");
  const right = names.findIndex(isRight);
  const wrong = names.findIndex((name) => !isRight(name));
  await page.keyboard.press(String(wrong + 1));
  const review = await acknowledged(page);
  expect(review).not.toBe("");
  await expect(page.locator("section.answered h1")).toBeFocused();
  await expect(page.locator("section.answered h1")).toContainText(
    "You took it for",
  );
  await expect(
    page.getByRole("heading", { name: "You took it for", exact: true }),
  ).toBeVisible();
  await expect(page.locator("section.answered li svg")).toHaveCount(2);
  await expectAccessible(page);

  // It comes again, and the other one first.
  await page.keyboard.press("Enter");
  await expect(practiseState(page, "which-is-it")).toBeVisible();
  expect(right).toBeGreaterThanOrEqual(0);

  // What was taken for what stands under Progress.
  await page.goto("/#/progress");
  await expect(
    page.getByRole("heading", { name: "What do I mistake for what?" }),
  ).toBeVisible();
  await expect(
    page
      .locator("section")
      .filter({
        has: page.getByRole("heading", { name: "What do I mistake for what?" }),
      })
      .getByText(/white on the (front|right|bottom)/i)
      .first(),
  ).toBeVisible();
});

test("Find it is answered without seeing: the choices say which way their stickers face", async ({
  page,
}) => {
  await openQuestion(page, "find-it", ["E1", "E3"]);
  await expectAccessible(page);
  const asked = await page.locator("section.question h1").innerText();
  const colours = /Find the (\w+) and (\w+) edge/.exec(asked)?.slice(1) ?? [];
  expect(colours).toHaveLength(2);
  const names = await namesOfChoices(page);
  const right = names.findIndex((name) =>
    colours.every((colour) => name.includes(colour)),
  );
  await page.reload();
  await expect(practiseState(page, "find-it")).toBeVisible();
  expect(await namesOfChoices(page)).toEqual(names);
  await page.keyboard.press(String(right + 1));
  await acknowledged(page);
  await expect(page.locator("section.answered h1")).toHaveText(
    `Right, that is the ${colours.join(" and ")} edge.`,
  );
  await expectAccessible(page);
  await page.keyboard.press("Enter");
  await expect(practiseState(page, "find-it")).toBeVisible();
});

test("Where is home? is answered by a tap on the cube", async ({ page }) => {
  // A number is pressed where it was seen: not while the cube glides back.
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openQuestion(page, "where-is-home", ["C1", "C3"]);
  await expectAccessible(page);
  const names = await namesOfChoices(page);
  expect(names).toEqual([
    "1 Top front left",
    "2 Top back left",
    "3 Top front right",
    "4 Top back right",
  ]);
  await page.reload();
  await expect(practiseState(page, "where-is-home")).toBeVisible();
  expect(await namesOfChoices(page)).toEqual(names);
  // Looking is no answer.
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await expect(practiseState(page, "where-is-home")).toBeVisible();
  const number = page
    .locator("section.question svg.cube-view text")
    .filter({ hasText: /^3$/ });
  await number.click({ force: true });
  await acknowledged(page);
  await expect(page.locator("section.answered h1")).toContainText(
    /^(Right, its home is top|That is the home of)/,
  );
  await expectAccessible(page);
});

test("on a dark window of 360 px the questions pass axe, and nothing is cut off", async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await page.setViewportSize({ width: 360, height: 740 });
  await openQuestion(page, "which-is-it", ["E1", "E3", "E2a"]);
  await expectAccessible(page);
  // By tap on a choice.
  await choices(page).getByRole("button").first().click();
  await acknowledged(page);
  await expectAccessible(page);
  for (const way of ["find-it", "where-is-home"] as const) {
    await page.goto(`/#/practise/tell-apart/${way}`);
    await expect(practiseState(page, way)).toBeVisible();
    await expectAccessible(page);
    await choices(page).getByRole("button").first().click();
    await acknowledged(page);
    await expectAccessible(page);
  }
});

test("the questions are reached from the page that says what today brings", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await expect(page.getByRole("heading", { name: "Settings" })).toBeVisible();
  await storeAnswers(page, [answerDaysAgo("C1", 2), answerDaysAgo("C2", 2)]);
  await page.goto("/#/practise");
  const questions = page.getByRole("region", { name: "Tell them apart" });
  await expect(questions.getByRole("link")).toHaveText([
    "Which is it?",
    "Find it",
    "Where is home?",
  ]);
  await questions.getByRole("link", { name: "Find it" }).click();
  await expect(practiseState(page, "find-it")).toBeVisible();
});

test("the end says what was missed and nothing of the schedule, and offers the same again", async ({
  page,
}) => {
  await openQuestion(page, "which-is-it", ["C1", "C2"]);
  const title = { C1: "white on the front", C2: "white on the right" };
  const question = practiseState(page, "which-is-it");
  // C1 is missed each time, for a round: a missed case comes back.
  const summary = page.getByRole("region", { name: "End of the round" });
  for (let asked = 0; asked < 12 && !(await summary.isVisible()); asked++) {
    await expect(question).toBeVisible();
    const id = await question.getAttribute("data-case");
    const names = await namesOfChoices(page);
    const own = title[id === "C1" ? "C1" : "C2"];
    const key = names.findIndex((name) =>
      id === "C1" && asked < 4 ? !name.endsWith(own) : name.endsWith(own),
    );
    await page.keyboard.press(String(key + 1));
    await acknowledged(page);
    await page.keyboard.press("Enter");
    await expect(question.or(summary)).toBeVisible();
  }
  await expect(summary.getByRole("heading", { level: 1 })).toBeFocused();
  const missed = summary.getByRole("region", { name: "Missed" });
  await expect(missed.getByRole("listitem")).toHaveText([/white on the front/]);
  await expect(summary).not.toContainText(/comes back|until|today again/);
  await expectAccessible(page);
  await summary.getByRole("button", { name: "The same again" }).click();
  await expect(question).toBeVisible();
  // The round just begun is not in the way of the day's, which was put aside.
  await openPractise(page);
});

test("who has met nothing yet is told so, and a skipped question is none", async ({
  page,
}) => {
  await page.goto("/#/practise/tell-apart/which-is-it");
  await expect(
    page.getByRole("heading", { name: "There is nothing to tell apart yet." }),
  ).toBeVisible();
  await expectAccessible(page);
  await openQuestion(page, "which-is-it", ["E1", "E3"]);
  const standing = (text: string) =>
    page.getByText(text, { exact: true }).filter({ visible: true });
  await expect(standing("1 of 6")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(standing("2 of 4")).toBeVisible();
});
