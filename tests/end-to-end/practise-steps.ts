/** What a learner does in Practise, as steps for the browser tests. */
import { expect, type Page } from "@playwright/test";

/** The state the place says it is in. */
export function practiseState(page: Page, ...states: readonly string[]) {
  return page.locator(
    states.map((state) => `[data-practise-state="${state}"]`).join(", "),
  );
}

const ASKED = ["shown", "helped", "alone", "again"] as const;

/** The written way of the case on the desk, as the page's own list shows it after an answer. */
export async function movesOfWay(page: Page): Promise<readonly string[]> {
  return page.locator("section.answered ol .move").allInnerTexts();
}

/** Opens Practise and waits for the first case. */
export async function openPractise(page: Page): Promise<void> {
  await page.goto("/#/practise");
  await expect(practiseState(page, ...ASKED)).toBeVisible();
}

/** Chooses how to answer. */
export async function chooseWay(page: Page, name: string): Promise<void> {
  await page
    .locator("label:visible", { hasText: name })
    .filter({ has: page.locator("input[type=radio]") })
    .click();
}

/** Waits until the answer on the desk is stored, and returns its review's id. */
export async function acknowledged(page: Page): Promise<string> {
  const section = page.locator("section.answered[data-review-id]");
  await expect(section).toBeVisible();
  return (await section.getAttribute("data-review-id")) ?? "";
}

/** Presses the keys of a way on the focused cube. */
export async function pressWay(
  page: Page,
  moves: readonly string[],
): Promise<void> {
  for (const move of moves) {
    const letter = move.charAt(0).toLowerCase();
    const key = move.endsWith("'") ? `Shift+${letter.toUpperCase()}` : letter;
    await page.keyboard.press(key);
    if (move.endsWith("2")) await page.keyboard.press(key);
  }
}

/**
 * Answers whatever is asked on the screen rightly, and goes on. A case that is
 * shown or helped says its way; the ways met there are remembered by case.
 */
export async function answerOnScreen(
  page: Page,
  ways: Map<string, readonly string[]>,
): Promise<string> {
  const desk = practiseState(page, ...ASKED);
  await expect(desk).toBeVisible();
  const state = (await desk.getAttribute("data-practise-state")) ?? "";
  const id = (await desk.getAttribute("data-case")) ?? "";
  if (state === "shown") {
    const told = page.getByRole("button", { name: "Turn it for me" });
    while (await told.isVisible()) await told.click();
  } else await pressWay(page, ways.get(id) ?? []);
  const review = await acknowledged(page);
  ways.set(id, await movesOfWay(page));
  return review;
}
