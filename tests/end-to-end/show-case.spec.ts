/** A case over the whole screen, for a class: by keys, by a presenter's remote, by taps. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { casesOfStage } from "../../core/cases/case-table";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { expect, test } from "./app";

const station = (page: Page, kind: string) =>
  page.locator(`[data-show-station="${kind}"]`);

const turns = (page: Page) => page.locator("ol > li");

/** Units: pixels. */
async function fontSizes(page: Page, selector: string): Promise<number[]> {
  return page
    .locator(selector)
    .evaluateAll((all) =>
      all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize)),
    );
}

test("a case is shown alone, then its set-up, then its way turn by turn, by the space bar", async ({
  page,
}) => {
  await page.goto("/#/cases/C1");
  await page.getByRole("link", { name: "Show it to a class" }).click();
  await expect(station(page, "case")).toBeVisible();
  await expect(page.getByRole("navigation")).toHaveCount(0);
  await expect(
    page.getByRole("heading", {
      name: "Under its home, top colour on the front",
    }),
  ).toBeVisible();

  await page.keyboard.press("Space");
  await expect(station(page, "set-up")).toBeVisible();
  await expect(page.getByText("Start with your cross done")).toBeVisible();
  // The shortest way, F D F', from its end.
  await expect(turns(page).locator(".move")).toHaveText(["F", "D'", "F'"]);

  await page.keyboard.press("Enter");
  await expect(station(page, "way")).toBeVisible();
  await expect(turns(page)).toHaveCount(1);
  await page.keyboard.press("Enter");
  await expect(turns(page)).toHaveCount(2);
  await page.keyboard.press("Backspace");
  await expect(turns(page)).toHaveCount(1);
  await page.getByRole("button", { name: "Show the whole way" }).click();
  await expect(turns(page).locator(".move")).toHaveText(["D'", "R'", "D", "R"]);
});

test("a presenter's remote goes through the deck's order, blanks the screen and leaves to the bench", async ({
  page,
}) => {
  const deck = STARTER_DECKS[1];
  const [first, second] = deck?.cases ?? [];
  const id = deck?.id ?? "";
  await page.goto(`/#/cases/${first?.case ?? ""}/show/${id}`);
  await expect(station(page, "case")).toBeVisible();
  // Two buttons are enough: the set-up, the way turn by turn, the next case.
  const seen: (string | null)[] = [];
  const isSecond = () => page.url().includes(`/cases/${second?.case ?? ""}/`);
  while (!isSecond() && seen.length < 20) {
    seen.push(
      await page
        .locator("[data-show-station]")
        .getAttribute("data-show-station"),
    );
    await page.keyboard.press("PageDown");
  }
  expect(seen.slice(0, 3)).toEqual(["case", "set-up", "way"]);
  expect(isSecond()).toBe(true);
  await expect(station(page, "case")).toBeVisible();
  await page.keyboard.press("PageUp");
  await expect(page).toHaveURL(new RegExp(`/cases/${first?.case ?? ""}/show`));
  await page.keyboard.press("PageUp");
  await expect(page).toHaveURL(new RegExp(`/cases/${first?.case ?? ""}/show`));
  await page.keyboard.press("ArrowRight");
  await expect.poll(isSecond).toBe(true);
  await page.keyboard.press("ArrowLeft");
  await expect.poll(isSecond).toBe(false);

  await page.keyboard.press(".");
  const blank = page.getByRole("button", { name: "Show the case again" });
  await expect(blank).toBeVisible();
  await expect(page.getByRole("heading")).toHaveCount(0);
  // The next press brings the same case back.
  await page.keyboard.press("PageDown");
  await expect(blank).toBeHidden();
  await expect(page).toHaveURL(new RegExp(`/cases/${first?.case ?? ""}/show`));

  await page.keyboard.press("Escape");
  await expect(page).toHaveURL(new RegExp(`#/coach/${id}/`));
  await expect(page.getByRole("navigation").first()).toBeVisible();
});

test("the screen is filled by a press, and leaving gives it back", async ({
  page,
}) => {
  await page.goto("/#/cases/E1/show");
  await page.getByRole("button", { name: "Fill the screen" }).click();
  await expect
    .poll(() => page.evaluate(() => document.fullscreenElement !== null))
    .toBe(true);
  // By the keyboard too, and the next space bar is the class's again.
  await page.keyboard.press("f");
  await expect
    .poll(() => page.evaluate(() => document.fullscreenElement === null))
    .toBe(true);
  await page.getByRole("button", { name: "Fill the screen" }).press("Enter");
  await expect
    .poll(() => page.evaluate(() => document.fullscreenElement !== null))
    .toBe(true);
  await page.keyboard.press("Space");
  await expect(station(page, "set-up")).toBeVisible();
  await page.getByRole("button", { name: "Leave" }).click();
  await expect
    .poll(() => page.evaluate(() => document.fullscreenElement === null))
    .toBe(true);
  await expect(page).toHaveURL(/#\/cases\/E1$/);
});

for (const [width, height] of [
  [1280, 800],
  [1920, 1080],
  [1024, 768],
] as const)
  test(`in a window of ${width} by ${height} all that a class reads is 4.5% of its height, and nothing is cut off`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    // The longest set-ups have the most to show.
    const ids = (["last-layer-placed", "pairs"] as const).map(
      (stage) =>
        casesOfStage(stage).find((one) =>
          one.ways.some(({ turns }) => turns.length > 6),
        )?.id,
    );
    for (const id of ids) {
      await page.goto(`/#/cases/${id ?? ""}/show`);
      await expect(station(page, "case")).toBeVisible();
      const least = 0.045 * height - 0.5;
      for (const size of await fontSizes(page, "h1, .legend p, .legend li"))
        expect(size).toBeGreaterThanOrEqual(least);
      await page.keyboard.press("Space");
      await expect(turns(page)).toHaveCount(6);
      for (const size of await fontSizes(
        page,
        "h1, h2, .told p, .move, .words",
      ))
        expect(size).toBeGreaterThanOrEqual(least);
      const told = page.locator(".told");
      const over = await told.evaluate(
        (el) => el.scrollHeight - el.clientHeight,
      );
      expect(over).toBeLessThanOrEqual(1);
    }
  });

for (const [width, height] of [
  [360, 740],
  [1280, 800],
  [1920, 1080],
] as const)
  test(`in a window of ${width} by ${height} controls take a sixth of it at most, each high enough for a finger, and mirrors are named large`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await page.goto("/#/cases/E5b/show");
    for (const kind of ["case", "set-up", "way"]) {
      await expect(station(page, kind)).toBeVisible();
      const heights = await page
        .locator(".bar, .foot")
        .evaluateAll((all) =>
          all.map((one) => one.getBoundingClientRect().height),
        );
      expect(heights).toHaveLength(2);
      expect(heights.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(
        height / 6,
      );
      const buttons = await page.getByRole("button").evaluateAll((all) =>
        all.map((one) => {
          const area = one.getBoundingClientRect();
          return Math.min(area.width, area.height);
        }),
      );
      expect(Math.min(...buttons)).toBeGreaterThanOrEqual(44);
      // "left", "back" and "bottom", none of them cut off by the room.
      const words = page.locator(".room svg text");
      await expect(words).toHaveCount(3);
      const told = Math.max(20, Math.min(0.045 * height, 0.034 * width));
      const least = kind === "case" ? told : 20;
      for (const size of await fontSizes(page, ".room svg text"))
        expect(size).toBeGreaterThanOrEqual(least - 0.5);
      const room = await page.locator(".room").boundingBox();
      for (const word of await words.all()) {
        const area = await word.boundingBox();
        expect(area?.x).toBeGreaterThanOrEqual(room?.x ?? 0);
        expect((area?.x ?? 0) + (area?.width ?? 0)).toBeLessThanOrEqual(
          (room?.x ?? 0) + (room?.width ?? 0),
        );
      }
      await page.keyboard.press("Space");
    }
  });

test("on a telephone everything is reached by taps, and nothing is wider than the window", async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/#/cases/C1/show");
  await page.getByRole("button", { name: "My class’s colours" }).click();
  await expect(
    page.getByRole("heading", { name: "Under its home, white on the front" }),
  ).toBeVisible();
  await page.getByRole("button", { name: "Show the set-up" }).click();
  await page.getByRole("button", { name: "Solved" }).click();
  await expect(
    page.getByText(
      "Start with a solved cube. Hold it white on top and green in front.",
    ),
  ).toBeVisible();
  await page.getByRole("button", { name: "Next case" }).click();
  await expect(station(page, "case")).toBeVisible();
  const wide = await page.evaluate(
    () => document.documentElement.scrollWidth - innerWidth,
  );
  expect(wide).toBeLessThanOrEqual(0);
});

for (const colorScheme of ["light", "dark"] as const)
  test(`what is shown in ${colorScheme} has no fault that a checker finds`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await page.goto("/#/cases/C1/show");
    for (const kind of ["case", "set-up", "way"]) {
      await expect(station(page, kind)).toBeVisible();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations).toEqual([]);
      await page.keyboard.press("Space");
    }
  });
