/**
 * Every stop of practising in every kind of window: nothing on it keeps anyone
 * out, and nothing reaches beyond the window.
 *
 * One walk through the stops for each window, not a test for each stop: what
 * takes time is getting there.
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { stageOfCase } from "../../core/cases/case-table";
import { holdFor } from "../../core/cases/hold-in-stage";
import { FIRST_COURSE } from "../../core/deck/starter-decks";
import { expect, test } from "./app";
import {
  acknowledged,
  answerOnScreen,
  chooseWay,
  movesOfWay,
  openPractise,
  practiseState,
  pressWay,
} from "./practise-steps";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

const WINDOWS = [
  {
    name: "light and wide",
    use: { colorScheme: "light", viewport: { width: 1280, height: 800 } },
    withAxe: true,
  },
  {
    name: "dark, 360 px and touched",
    use: {
      colorScheme: "dark",
      viewport: { width: 360, height: 740 },
      hasTouch: true,
    },
    withAxe: true,
  },
  {
    // 1280 × 800 at 200% has 640 × 400 CSS pixels; axe has nothing to add.
    name: "zoomed to 200%",
    use: { viewport: { width: 640, height: 400 } },
    withAxe: false,
  },
] as const;

/** Looks at the page as it stands; `stop` names it where something is wrong. */
type Look = (page: Page, stop: string) => Promise<void>;

function lookWith(withAxe: boolean): Look {
  return async (page, stop) => {
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - innerWidth,
    );
    expect.soft(wider, `${stop} is no wider`).toBeLessThanOrEqual(0);
    if (!withAxe) return;
    // In this page's own frame alone: a page of its own to collect what the
    // frames found would take as long as looking.
    const { violations } = await new AxeBuilder({ page })
      .setLegacyMode()
      .analyze();
    const serious = violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
    expect.soft(serious, `${stop}, to axe`).toEqual([]);
  };
}

/** Chooses how to answer, from the switch or, where it is narrow, the menu. */
async function chooseIn(page: Page, name: string): Promise<void> {
  const menu = page.getByRole("combobox", { name: "How to answer" });
  if (await menu.isVisible()) await menu.selectOption({ label: name });
  else await chooseWay(page, name);
}

/** Makes the turns of the walk on the desk until it is over. */
async function walk(page: Page, state: string): Promise<void> {
  await expect(practiseState(page, state)).toBeVisible();
  while (await practiseState(page, state).isVisible())
    await page.getByRole("button", { name: /^Done/ }).click();
}

for (const { name: size, use, withAxe } of WINDOWS)
  test.describe(`in a window ${size}`, () => {
    test.use(use);
    const look = lookWith(withAxe);

    test("questions and answers, on the screen and in writing, keep nobody out and are no wider", async ({
      page,
    }) => {
      await openPractise(page);
      await look(page, "a case that is shown");
      const ways = new Map<string, readonly string[]>();
      await answerOnScreen(page, ways);
      await look(page, "a case that was shown");
      const way = await movesOfWay(page);

      await page.keyboard.press("Enter");
      await expect(practiseState(page, "helped")).toBeVisible();
      await page.keyboard.press("r");
      await page.keyboard.press("?");
      await look(page, "a case with help, a hint and a turn");
      await page.keyboard.press("Backspace");
      await pressWay(page, way);
      await acknowledged(page);
      await look(page, "a right answer");

      await chooseIn(page, "Write it");
      await page.getByRole("button", { name: "Next case" }).click();
      const answer = page.getByLabel("Your answer");
      await look(page, "a question to be answered in writing");
      await answer.fill("F R3");
      await look(page, "an error in a written answer");
      await answer.fill(way.join(" "));
      await answer.press("Enter");
      await acknowledged(page);
      await look(page, "a right answer in writing");

      await chooseIn(page, "On screen");
      await page.getByRole("button", { name: "Next case" }).click();
      const desk = practiseState(page, "shown", "helped", "alone");
      await expect(desk).toBeVisible();
      while (!(await practiseState(page, "alone").isVisible())) {
        await answerOnScreen(page, ways);
        await page.keyboard.press("Enter");
        await expect(desk).toBeVisible();
      }
      const keys = page.getByRole("button", { name: "Keys", exact: true });
      if (await keys.isVisible()) {
        await keys.click();
        await look(page, "all the keys");
        await page.getByRole("button", { name: "Close" }).click();
      }
      for (let hint = 0; hint < 3; hint++)
        await page.getByRole("button", { name: /^Hint/ }).click();
      await page.getByRole("button", { name: /^Look underneath/ }).click();
      await look(page, "a case with all hints, from underneath");
      await page.getByRole("application").focus();
      await page.keyboard.press("r");
      await page.keyboard.press("Enter");
      await acknowledged(page);
      await look(page, "a missed answer");
      await page.getByRole("button", { name: "Show the whole way" }).click();
      await look(page, "the whole way after a miss");
    });

    test("a cube in the hands, from its colours to what it shows, keeps nobody out and is no wider", async ({
      page,
    }) => {
      await openPractise(page);
      await chooseIn(page, "My cube");
      await look(page, "a cube's colours");
      for (const colour of ["white", "green", "red", "blue", "orange"])
        await page.getByRole("button", { name: colour, exact: true }).click();
      await look(page, "five of its colours");
      await page.getByRole("button", { name: "yellow", exact: true }).click();
      await look(page, "what a cube has");

      await page.getByRole("button", { name: /^None of these/ }).click();
      await expect(practiseState(page, "find")).toBeVisible();
      await look(page, "a piece to be found");
      // The first is the piece to bring home itself; the second has to be placed.
      const atHome = page.getByRole("button", { name: /in its home/ });
      await atHome.click();
      await page
        .getByLabel(/Or choose where/)
        .selectOption({ label: "bottom front; white is on the front" });
      await page.getByRole("button", { name: "There it is" }).click();
      await expect(practiseState(page, "bring")).toBeVisible();
      await look(page, "a piece to be brought home");
      await walk(page, "bring");
      for (let piece = 2; piece < 4; piece++) await atHome.click();
      await expect(practiseState(page, "set-up")).toBeVisible();
      await look(page, "a set-up");
      await walk(page, "set-up");
      await look(page, "a way that is shown");
      await walk(page, "shown");
      await acknowledged(page);
      await look(page, "a way that was shown");

      await page.getByRole("button", { name: "Now you" }).click();
      await walk(page, "set-up");
      await page.getByRole("button", { name: /^Hint/ }).click();
      await look(page, "a case to be seen, with help and a hint");
      await page.getByRole("button", { name: /^I see it/ }).click();
      await look(page, "a case that is being turned");
      await page.getByRole("button", { name: /^Done/ }).click();
      await look(page, "what the cube shows");
      await page.getByRole("button", { name: /^Not done/ }).click();
      await acknowledged(page);
      await look(page, "a miss that was reported");
    });

    test("rest, another window at the desk and the end of a round keep nobody out and are no wider", async ({
      context,
      page,
    }) => {
      await page.goto("/#/settings");
      await expect(page.getByText(/^0 answers/)).toBeVisible();
      await storeAnswers(
        page,
        FIRST_COURSE.flatMap((deck) =>
          deck.cases.map(({ case: id }) =>
            answerDaysAgo(id, 0, { hold: holdFor(stageOfCase(id), "up") }),
          ),
        ),
      );
      await page.goto("/#/practise");
      await expect(page.getByText("Nothing is due today.")).toBeVisible();
      await look(page, "a day on which nothing is due");
      const second = await context.newPage();
      await second.goto("/#/practise");
      await expect(practiseState(second, "elsewhere")).toBeVisible();
      await look(second, "practised elsewhere");
      await second.close();

      await page.goto("/#/practise/E1");
      await expect(practiseState(page, "alone")).toBeVisible();
      await page.keyboard.press("r");
      await page.keyboard.press("Enter");
      await acknowledged(page);
      await page.getByRole("button", { name: "Next case" }).click();
      await expect(practiseState(page, "alone", "again")).toBeVisible();
      while (!(await practiseState(page, "summary").isVisible()))
        await page.keyboard.press("Escape");
      await look(page, "the end of a round");
    });
  });
