/**
 * A coach prepares Monday's lesson: who is stuck, the cases, the sheets. A
 * machine with several learners on it, whose answers lie in the store.
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { Locator } from "@playwright/test";
import type { CaseId } from "../../core/cases/case-ids";
import { caseTitle } from "../../core/cases/case-words";
import { wholeCubeNaming } from "../../core/cases/whole-cube-naming";
import type { Review } from "../../core/memory/review";
import { USUAL_SCHEME } from "../../core/picture/colour-sets";
import { expect, test } from "./app";
import { putRows } from "./page-store";
import { storeClass } from "./stored-class";
import {
  titleOf,
  STUCK_AT,
  TAKEN_FOR,
  missed,
  MAKE,
  GO,
  grid,
  openClass,
} from "./class-steps";

test("one sentence says who is stuck where, and one press makes the lesson’s deck and leads to its sheets", async ({
  page,
}) => {
  await openClass(page);
  await expect(page.getByRole("main")).toContainText(
    `Ben, Cam and Dee are stuck at “${titleOf(STUCK_AT)} (corner)”. Monday’s lesson: this and one more.`,
  );
  await expect(page.getByRole("main")).toContainText(
    "Mia has not practised for 9 days.",
  );
  const lesson = page.getByRole("region", { name: "Monday’s lesson" });
  // Two cases, and a seat for another one.
  await expect(lesson.getByRole("heading", { level: 3 })).toHaveCount(2);
  await expect(lesson).toContainText(
    `Ben and Cam take it for “${titleOf(TAKEN_FOR)}”.`,
  );
  await expect(lesson).toContainText("Dee misses it.");
  await expect(lesson).toContainText("Mixed up with the one before.");

  await lesson
    .getByRole("checkbox", { name: /who practise on this machine practise it/ })
    .check();
  await lesson.getByRole("button", { name: MAKE }).click();
  await page.waitForURL(/#\/coach\/sheets\//);
  await page.locator("[data-sheet-page]").first().waitFor();
  const made = page.url();
  await expect(page.locator("[data-sheet-page]").first()).toContainText(
    "Monday’s lesson,",
  );
  // The same lesson is the same deck, and the card says that it is there.
  await page.goBack();
  await grid(page).waitFor();
  await expect(lesson).toContainText(/Made: “Monday’s lesson, .*”\./);
  await expect(lesson).toContainText(
    "The 5 who practise on this machine practise it.",
  );
  await expect(lesson.getByRole("checkbox")).toHaveCount(0);
  await expect(lesson.getByRole("button", { name: MAKE })).toHaveCount(0);
  await lesson.getByRole("button", { name: GO }).click();
  await page.waitForURL(/#\/coach\/sheets\//);
  expect(page.url()).toBe(made);

  // Whoever sits at this machine has it before their other decks.
  await page.goto("/#/coach");
  const practised = page.getByRole("region", { name: /^What .* practises$/ });
  const first = practised.getByRole("checkbox").first();
  await expect(first).toBeChecked();
  await expect(practised.getByRole("listitem").first()).toContainText(
    "Monday’s lesson,",
  );
});

test("the coach takes a case out and puts another one in, by keys alone, and the sentence stays what the answers say", async ({
  page,
}) => {
  await openClass(page);
  const main = page.getByRole("main");
  const stuck = `Ben, Cam and Dee are stuck at “${titleOf(STUCK_AT)} (corner)”.`;
  const proposal = `${stuck} Monday’s lesson: this and one more.`;
  await expect(main).toContainText(proposal);
  const lesson = page.getByRole("region", { name: "Monday’s lesson" });
  const titles = lesson.getByRole("heading", { level: 3 });
  await lesson
    .getByRole("button", { name: `Take out: ${titleOf(STUCK_AT)}` })
    .focus();
  await page.keyboard.press("Enter");
  await expect(titles).toHaveText([`${titleOf(TAKEN_FOR)} (corner)`]);
  await expect(lesson).toContainText(`Mixed up with “${titleOf(STUCK_AT)}”.`);
  await expect(lesson.getByRole("status")).toContainText(
    `Taken out: ${titleOf(STUCK_AT)}`,
  );
  await expect(main).toContainText(
    "Ben, Cam and Dee are stuck at other cases, and need a moment alone with you.",
  );

  // The focus stands where one goes on.
  await expect(page.locator(":focus")).toHaveText("Put another case in…");
  await page.keyboard.press("Enter");
  const choices = page.getByRole("dialog", { name: "Put a case in" });
  // What helps most comes first, which is what was taken out.
  await expect(choices.getByRole("listitem").first()).toContainText(
    "Ben and Cam take it for",
  );
  const second = choices.getByRole("listitem").nth(1);
  await expect(second).toContainText("Nobody has met it.");
  const chosen = await second.locator("b").innerText();
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  await second.getByRole("button").focus();
  await page.keyboard.press("Enter");
  await expect(choices).toBeHidden();
  await expect(titles).toHaveCount(2);
  await expect(titles.filter({ hasText: chosen })).toHaveCount(1);
  await expect(page.locator(":focus")).toHaveAccessibleName(
    `Take out: ${chosen}`,
  );
  // Who is stuck is as true as before; the proposal is no longer the lesson.
  await expect(main).toContainText(stuck);
  await expect(main).not.toContainText("Monday’s lesson: this");

  await lesson.getByRole("button", { name: MAKE }).click();
  await page.waitForURL(/#\/coach\/sheets\//);
  await expect(page.locator("[data-sheet-page]").first()).toContainText(
    chosen.replace(/ \(.*/, ""),
  );
  await page.goBack();
  await expect(titles.filter({ hasText: chosen })).toHaveCount(1);
  await expect(lesson.getByRole("button", { name: GO })).toBeVisible();
  await lesson.getByRole("button", { name: "As it was proposed" }).click();
  await expect(titles).toHaveText([
    `${titleOf(STUCK_AT)} (corner)`,
    `${titleOf(TAKEN_FOR)} (corner)`,
  ]);
  await expect(main).toContainText(proposal);
  // Of the proposal none is made.
  await expect(lesson.getByRole("button", { name: MAKE })).toBeVisible();
  await expect(lesson).not.toContainText("Made:");
});

test("a case of the lesson is shown to a class, in the lesson’s order once its deck is made, and leaving leads back to the class", async ({
  page,
}) => {
  await openClass(page);
  const lesson = page.getByRole("region", { name: "Monday’s lesson" });
  const show = (id: CaseId) =>
    lesson.getByRole("link", { name: `Show it to a class: ${titleOf(id)}` });
  await show(STUCK_AT).click();
  await page.locator("[data-show-station='case']").waitFor();
  await page.keyboard.press("Escape");
  await grid(page).waitFor();
  await expect(page).toHaveURL(/#\/coach\/class$/);

  await lesson.getByRole("button", { name: MAKE }).click();
  await page.waitForURL(/#\/coach\/sheets\//);
  await page.goBack();
  await show(STUCK_AT).click();
  await expect(page.locator("[data-show-station]")).toContainText(
    /Monday’s lesson, .*, 1 of 2/,
  );
  await page.keyboard.press("ArrowRight");
  await expect(page).toHaveURL(new RegExp(`/cases/${TAKEN_FOR}/show/`));
  await page.getByRole("button", { name: "Leave" }).click();
  await expect(page).toHaveURL(/#\/coach\/class$/);
  await grid(page).waitFor();
});

test("the mirrors of a lesson’s cases keep clear of the number and of the words", async ({
  page,
}) => {
  // A mirror on the left, on the right, on both sides, none.
  const ids: readonly CaseId[] = [
    "E5b",
    "second-layer-edges:FL-F",
    "pairs:UFL-U.BL-B",
    "E1",
  ];
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/");
  await page.locator("[data-case]").waitFor();
  const answers = ids.flatMap((id) => missed(id, [4, 2]));
  await storeClass(page, [{ name: "Ada", answers }]);
  await page.goto("/#/coach/class");
  const entries = page
    .getByRole("region", { name: "Monday’s lesson" })
    .getByRole("listitem")
    .filter({ has: page.getByRole("heading") });
  await expect(entries).toHaveCount(ids.length);
  const gaps = await entries.evaluateAll((all) =>
    all.map((entry) => {
      const area = (selector: string) => {
        const parts = [...entry.querySelectorAll(selector)];
        const areas = parts.map((part) => part.getBoundingClientRect());
        return {
          left: Math.min(...areas.map(({ left }) => left)),
          right: Math.max(...areas.map(({ right }) => right)),
        };
      };
      const drawn = area("svg.cube-view > g");
      const before = drawn.left - area(".number").right;
      return Math.min(before, area(".words").left - drawn.right);
    }),
  );
  for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(8);
});

test("the lesson’s deck and sheets are held as the class holds the cube, and who holds it otherwise is named", async ({
  page,
}) => {
  const down = (answers: readonly Review[]) =>
    answers.map((answer) => ({ ...answer, hold: "down" as const }));
  const stuck = () => missed(STUCK_AT, [4, 2]);
  await page.goto("/");
  await page.locator("[data-case]").waitFor();
  await storeClass(page, [
    { name: "Ada", answers: down(stuck()) },
    { name: "Ben", answers: down(stuck()) },
    { name: "Cam", answers: stuck() },
  ]);
  await page.goto("/#/coach/class");
  await grid(page).waitFor();
  await expect(page.getByRole("main")).toContainText(
    "Cam holds the cube the other way up: this lesson and its sheets have the first layer at the bottom.",
  );
  const title = caseTitle(STUCK_AT, wholeCubeNaming(USUAL_SCHEME, "down"));
  const lesson = page.getByRole("region", { name: "Monday’s lesson" });
  await expect(lesson.getByRole("listitem").first()).toContainText(title);
  // By itself it would be shown as the coach holds it.
  const show = lesson.getByRole("link", { name: /^Show it to a class/ });
  await expect(show).toHaveCount(0);
  await lesson.getByRole("button", { name: MAKE }).click();
  await page.waitForURL(/#\/coach\/sheets\//);
  await expect(page.locator("[data-sheet-page]").first()).toContainText(title);
  await page.goBack();
  await expect(show.first()).toHaveAccessibleName(
    `Show it to a class: ${title} (corner)`,
  );
  expect(title).not.toBe(titleOf(STUCK_AT));
});

test("a class without an answer is told what will stand there", async ({
  page,
}) => {
  await page.goto("/#/coach/class");
  await expect(page.getByRole("main")).toContainText(
    "There is nothing to show yet.",
  );
});

test("what can be pressed at the beginning of a line stands in line with the text, and has a box where text is beside it", async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await openClass(page);
  await putRows(page, {
    classmates: [
      {
        id: "bo",
        shared: {
          name: "Bo of the other machine",
          id: "0".repeat(64),
          madeAt: 1,
          newest: 1,
        },
      },
      { id: "away", leftOut: true },
    ],
  });
  const lesson = page.getByRole("region", { name: "Monday’s lesson" });
  await lesson
    .getByRole("button", { name: /^Take out/ })
    .first()
    .click();
  const again = lesson.getByRole("button", { name: "As it was proposed" });
  const left = async (part: Locator) => (await part.boundingBox())?.x ?? NaN;
  const title = lesson.getByRole("heading", { level: 2 });
  expect(await left(again)).toBeCloseTo(await left(title), 0);
  const box = (part: Locator) =>
    part.evaluate((one) => getComputedStyle(one).borderLeftColor);
  expect(await box(again)).not.toBe("rgba(0, 0, 0, 0)");

  await page.getByRole("button", { name: "Take results in…" }).click();
  const dialog = page.getByRole("dialog");
  const rename = dialog.getByRole("button", { name: /^Call Bo/ });
  // Its words, past its own edge and border.
  const words = await rename.evaluate((one) => {
    const range = document.createRange();
    range.selectNodeContents(one);
    return range.getBoundingClientRect().x;
  });
  const name = dialog.getByText("Bo of the other machine");
  expect(words).toBeCloseTo(await left(name), 0);
  const comeAgain = dialog.getByRole("button", { name: "Let them come again" });
  expect(await box(comeAgain)).not.toBe("rgba(0, 0, 0, 0)");
});

for (const width of [1280, 360])
  test(`it can be used by everybody at ${width} px, and is no wider than the window`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 740 });
    await openClass(page);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes.length}`)).toEqual(
      [],
    );
    const wide = await page.evaluate(
      () => document.documentElement.scrollWidth - innerWidth,
    );
    expect(wide).toBeLessThanOrEqual(0);
  });
