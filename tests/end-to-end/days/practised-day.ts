/** A day at the desk: every item of every round answered by keyboard, until the minutes are over or nothing is left. */
import type { Page } from "@playwright/test";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { invariant } from "../../../core/invariant";
import { OUTCOMES, type Outcome } from "../../../core/memory/grade";
import type { RoundItem } from "../../../core/memory/round";
import { positionOfItem } from "../../../renderer/state/practise/position-of-item";
import { expect } from "../app";
import { practiseState } from "../practise-steps";
import type { PractisedDay } from "./calendar";
import type { DeskWindow } from "./desk-window";
import { type PlannedAnswer, type Press, SHOW_ME } from "./planned-answer";
import type { SimulatedLearner } from "./simulated-learner";
import { storedItem } from "./stored-log";

const ASKED = ["shown", "helped", "alone", "again", "extra"] as const;

/** An answer that was given, with what was shown of it. */
export interface GivenAnswer {
  readonly day: PractisedDay;
  /** The id of its review, as the page showed it when it was stored. */
  readonly review: string;
  readonly item: RoundItem;
  readonly planned: PlannedAnswer;
  /** The outcome that was shown; undefined for what was told. */
  readonly outcome: Outcome | undefined;
  /** Until when the page said that the case should last. */
  readonly until: string;
}

async function press(window: DeskWindow, { key, wait }: Press): Promise<void> {
  const { page } = window;
  await window.pass(wait);
  if (key === SHOW_ME)
    await page.getByRole("button", { name: SHOW_ME }).press("Enter");
  else await page.keyboard.press(key);
}

/** Answers what is asked, and reads what came of it. */
async function answer(
  window: DeskWindow,
  learner: SimulatedLearner,
  day: PractisedDay,
): Promise<GivenAnswer> {
  const { page } = window;
  const item = await storedItem(page);
  const desk = practiseState(page, item.asking);
  expect(await desk.getAttribute("data-case")).toBe(item.case);
  const position = positionOfItem(item);
  const way = turnsForPosition(position);
  const planned = learner.answer(item, position, way, day.number);
  await window.frame();
  for (const one of planned.presses) await press(window, one);
  const said = await whatWasSaid(page);
  await window.pass(learner.readsFor());
  if (planned.expected.verdict === "missed") {
    // Enter offers the same position once more, and that is not counted.
    await page.keyboard.press("Enter");
    await practiseState(page, "alone").waitFor();
    await window.frame();
    for (const one of learner.retry(position, way)) await press(window, one);
    await page.getByText(/tried again, not counted/).waitFor();
    await window.pass(learner.readsFor());
  }
  await page.keyboard.press("Enter");
  await practiseState(page, ...ASKED, "summary", "today").waitFor();
  return { day, item, planned, ...said };
}

/** What the page says of an answer, once it is stored. */
async function whatWasSaid(
  page: Page,
): Promise<Pick<GivenAnswer, "review" | "outcome" | "until">> {
  const answered = page.locator("section.answered[data-review-id]");
  await answered.waitFor();
  const { review, word, until } = await answered.evaluate((section) => ({
    review: section.getAttribute("data-review-id") ?? "",
    word: section.querySelector(".outcome")?.textContent.trim(),
    until: section.querySelector(".until .line")?.textContent ?? "",
  }));
  const outcome = OUTCOMES.find((one) => one === word);
  invariant(outcome === word, `${word} is an outcome`);
  return { review, outcome, until };
}

/** Where a learner is between answers. */
async function stateOf({ page }: DeskWindow): Promise<string> {
  const desk = practiseState(page, ...ASKED, "summary", "today");
  await desk.waitFor();
  return (await desk.getAttribute("data-practise-state")) ?? "";
}

/** What is done on a day. */
export interface DayAtDesk {
  readonly window: DeskWindow;
  readonly learner: SimulatedLearner;
  readonly day: PractisedDay;
  /** Called on every page that says what today brings. */
  readonly ontoday: () => Promise<void>;
  /** Called on every summary; answers whether the learner stays on it. */
  readonly onsummary: () => Promise<boolean>;
}

/** Practises until the day is done; the page says then that it is. */
export async function practiseDay({
  window,
  learner,
  day,
  ontoday,
  onsummary,
}: DayAtDesk): Promise<readonly GivenAnswer[]> {
  const { page } = window;
  const given: GivenAnswer[] = [];
  for (;;) {
    const state = await stateOf(window);
    if (state === "today") {
      await ontoday();
      const begin = page.getByRole("button", { name: "Begin" });
      if (!(await begin.isVisible())) return given;
      await page.keyboard.press("Enter");
      await practiseState(page, ...ASKED).waitFor();
    } else if (state === "summary") {
      if (!(await onsummary())) continue;
      await window.pass(learner.readsFor());
      await page.keyboard.press("Enter");
      await practiseState(page, ...ASKED, "today").waitFor();
    } else given.push(await answer(window, learner, day));
  }
}
