/**
 * Everything that practising needs, by keyboard alone: after the first address
 * nothing is clicked and nothing is focused but by keys, and wherever the
 * focus comes to, it can be seen.
 */
import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./app";
import {
  acknowledged,
  movesOfWay,
  practiseState,
  pressWay,
} from "./practise-steps";

/** More stops than any place has. */
const STOPS = 60;

/**
 * Where the focus is and whether that can be seen: an outline of at least
 * 2 px on the element or on the label or line around it, or the four corners
 * of the cube's stage. A place and its heading, to which the page sends the
 * focus for reading on, are no stops: nothing can be pressed there.
 */
function seenFocus(page: Page) {
  return page.evaluate(() => {
    const focused = document.activeElement;
    if (focused === null || focused === document.body)
      return { on: "nothing", visible: false };
    const words = focused.getAttribute("aria-label") ?? focused.textContent;
    const on = `${focused.localName} "${words.trim().slice(0, 40)}"`;
    if (focused.matches("main[tabindex='-1'], h1[tabindex='-1']"))
      return { on, visible: true };
    const label = focused.parentElement;
    const isOutlined = [focused, label, label?.parentElement].some((drawn) => {
      if (!drawn) return false;
      const { outlineStyle, outlineWidth } = getComputedStyle(drawn);
      return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
    });
    const corners = getComputedStyle(focused, "::after").backgroundImage;
    const box = focused.getBoundingClientRect();
    const isInWindow =
      Math.min(box.bottom, innerHeight) > Math.max(box.top, 0) &&
      Math.min(box.right, innerWidth) > Math.max(box.left, 0);
    const isDrawn = isOutlined || corners.includes("gradient");
    return { on, visible: isInWindow && isDrawn };
  });
}

/** Waits for the focus to come to somewhere where it can be seen. */
async function expectFocusSeen(page: Page): Promise<void> {
  await expect.poll(() => seenFocus(page)).toMatchObject({ visible: true });
}

/** Presses Tab until the focus is there. Every stop on the way can be seen. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  for (let stop = 0; stop < STOPS; stop++) {
    if (await target.evaluate((element) => element.matches(":focus"))) {
      await expectFocusSeen(page);
      return;
    }
    await page.keyboard.press("Tab");
    const { on, visible } = await seenFocus(page);
    // After the last stop the browser itself has the focus for one press.
    if (on !== "nothing") expect(visible, on).toBe(true);
  }
  throw new Error(`Tab does not lead to ${target.toString()}`);
}

/** Tab to a button, and a press; the focus is not lost with it. */
async function pressButton(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, page.getByRole("button", { name, exact: true }));
  await page.keyboard.press("Enter");
  await expectFocusSeen(page);
}

/** Tab to the ways of answering, and arrows along them. */
async function chooseWayByKeys(page: Page, name: string): Promise<void> {
  const ways = page.getByRole("group", { name: "How to answer" });
  await tabTo(page, ways.getByRole("radio", { checked: true }));
  await page.keyboard.press("ArrowRight");
  await expect(ways.getByRole("radio", { name })).toBeChecked();
}

/** Tab to the colours, which are one stop, and arrows along them. */
async function chooseColourByKeys(page: Page, name: string): Promise<void> {
  const colours = page.getByRole("toolbar").getByRole("button");
  await tabTo(page, page.getByRole("toolbar").locator("[tabindex='0']"));
  await page.keyboard.press("Home");
  const wanted = page.getByRole("button", { name, exact: true });
  for (let along = 0; along < (await colours.count()); along++) {
    if (await wanted.evaluate((element) => element.matches(":focus"))) break;
    await page.keyboard.press("ArrowRight");
  }
  await expect(wanted).toBeFocused();
  await page.keyboard.press("Enter");
  await expectFocusSeen(page);
}

/** Goes on from an answer to what is asked next. */
async function goOn(page: Page, ...states: readonly string[]): Promise<void> {
  await acknowledged(page);
  await expectFocusSeen(page);
  await page.keyboard.press("Enter");
  await expect(practiseState(page, ...states)).toBeVisible();
  await expectFocusSeen(page);
}

/** Presses the space bar until the walk on the cube in the hands is over. */
async function walk(page: Page, state: string): Promise<void> {
  await expect(practiseState(page, state)).toBeVisible();
  while (await practiseState(page, state).isVisible()) {
    await expectFocusSeen(page);
    await page.keyboard.press("Space");
  }
}

test("by keyboard alone a new case is shown, helped, hinted at, answered alone and skipped", async ({
  page,
}) => {
  await page.goto("/#/practise");
  const desk = practiseState(page, "shown");
  await expect(desk).toBeVisible();
  await expectFocusSeen(page);

  while (await desk.isVisible()) await page.keyboard.press("Enter");
  await acknowledged(page);
  const way = await movesOfWay(page);

  await goOn(page, "helped");
  await pressWay(page, way);
  await goOn(page, "alone");
  await page.keyboard.press("?");
  await expect(page.getByText(/^It is here/)).toBeVisible();
  await expectFocusSeen(page);
  await pressWay(page, way);
  await acknowledged(page);
  await expect(page.locator("section.answered h1")).toContainText("Right");

  await goOn(page, "alone");
  const place = page.locator("main").getByText(/^\d+ of \d+$/);
  await expect(place).toHaveText(/^4 of/);
  await page.keyboard.press("Escape");
  await expect(place).toHaveText(/^5 of/);
  await expectFocusSeen(page);
});

test("by keyboard alone all hints are asked for, and then the way", async ({
  page,
}) => {
  await page.goto("/#/practise");
  await expect(practiseState(page, "shown")).toBeVisible();
  while (await practiseState(page, "shown").isVisible())
    await page.keyboard.press("Enter");
  await goOn(page, "helped");
  for (let hint = 0; hint < 3; hint++) await pressButton(page, /^Hint/);
  await pressButton(page, "Show me (a miss)");
  await acknowledged(page);
});

test("by keyboard alone the way of answering is changed, written in, and the place left and come back to", async ({
  page,
}) => {
  await page.goto("/#/practise");
  await expect(practiseState(page, "shown")).toBeVisible();
  await chooseWayByKeys(page, "My cube");
  await expect(page.getByText("Which colours does")).toBeVisible();
  await chooseWayByKeys(page, "Write it");
  await expect(practiseState(page, "shown")).toBeVisible();
  await pressButton(page, /^Turn it for me/);
  await acknowledged(page);
  const way = await movesOfWay(page);

  await goOn(page, "helped");
  await expect(page.getByLabel("Your answer")).toBeFocused();
  await page.keyboard.type(way.join(" "));
  await page.keyboard.press("Enter");
  await acknowledged(page);
  await expect(page.locator("section.answered h1")).toContainText("Right");
  await goOn(page, "alone");
  await expect(page.getByLabel("Your answer")).toBeFocused();

  const places = page.getByRole("navigation", { name: "Places" });
  await tabTo(page, places.getByRole("link", { name: "Progress" }));
  await page.keyboard.press("Enter");
  await expect(page.getByText("1 answer today")).toBeVisible();
  await expectFocusSeen(page);
  await tabTo(page, places.getByRole("link", { name: "Practise" }));
  await page.keyboard.press("Enter");
  await expect(practiseState(page, "alone")).toBeVisible();
  await expectFocusSeen(page);
});

test("by keyboard alone a cube in the hands is described, set up, timed and reported on", async ({
  page,
}) => {
  await page.goto("/#/practise");
  await expect(practiseState(page, "shown")).toBeVisible();
  await chooseWayByKeys(page, "My cube");
  for (const colour of ["white", "green", "red", "blue", "orange", "yellow"])
    await chooseColourByKeys(page, colour);
  await pressButton(page, /^None of these/);
  await expect(practiseState(page, "find")).toBeVisible();
  await tabTo(page, page.getByLabel(/Or choose where/));
  await page.keyboard.press("ArrowDown");
  await pressButton(page, "There it is");
  await pressButton(page, "The last piece was somewhere else");
  for (let piece = 0; piece < 4; piece++)
    await pressButton(page, "It is in its home already");
  await walk(page, "set-up");
  await walk(page, "shown");
  await goOn(page, "set-up");
  await walk(page, "set-up");
  await expect(practiseState(page, "see")).toBeVisible();
  await pressButton(page, /^I see it/);
  await pressButton(page, "I know it");
  for (const state of ["turning", "report"]) {
    await expect(practiseState(page, state)).toBeVisible();
    await expectFocusSeen(page);
    await page.keyboard.press("Space");
  }
  await acknowledged(page);
  await expect(page.locator("section.answered h1")).toContainText("Right");
});
