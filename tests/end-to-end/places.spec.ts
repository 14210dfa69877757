/**
 * The places around practising: that everybody can get at them, on every
 * window, by keyboard and by ear, and that what is chosen there holds.
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { FIRST_COURSE } from "../../core/deck/starter-decks";
import { expect, test } from "./app";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

const ANSWERS = [
  ...[20, 12, 2].map((days) => answerDaysAgo("E1", days)),
  answerDaysAgo("C1", 6),
  answerDaysAgo("C1", 1, { verdict: "missed" }),
  answerDaysAgo("C2", 0),
];

interface Place {
  readonly name: string;
  readonly address: string;
  /** What is seen once the place is there. */
  readonly shows: string;
  readonly answers?: typeof ANSWERS;
}

const PLACES: readonly Place[] = [
  {
    name: "the shelf of edges",
    address: "/#/cases/first-layer-edges",
    shows: "How well you know a case",
  },
  {
    name: "the shelf of corners",
    address: "/#/cases/first-layer-corners",
    shows: "How well you know a case",
    answers: ANSWERS,
  },
  {
    name: "a case that was answered",
    address: "/#/cases/C1",
    shows: "Chance you’d know it today",
    answers: ANSWERS,
  },
  {
    name: "a case seen in two mirrors",
    address: "/#/cases/C12",
    shows: "You have not met it yet.",
  },
  {
    name: "two corners in each other's homes",
    address: "/#/cases/S2",
    shows: "Bring one of the two home first",
  },
  {
    name: "the shelf of second-layer edges",
    address: "/#/cases/second-layer-edges",
    shows: "How well you know a case",
  },
  {
    name: "the shelf of pairs",
    address: "/#/cases/pairs",
    shows: "Pieces in other slots",
  },
  {
    name: "the shelf of a step of the last layer",
    address: "/#/cases/last-layer-corners-placed",
    shows: "Three corners go round",
  },
  {
    name: "the shelf of turning the last layer",
    address: "/#/cases/last-layer-turned",
    shows: "OLL 27",
  },
  {
    name: "the shelf of placing the last layer",
    address: "/#/cases/last-layer-placed",
    shows: "PLL T",
  },
  {
    name: "the shelf of 3,915",
    address: "/#/cases/last-layer-whole",
    shows: "OLL 28: two edges up, all corners up",
  },
  {
    name: "a case of the second layer",
    address: "/#/cases/second-layer-edges:DF-F",
    shows: "Comes up twice in 5.",
  },
  {
    name: "a pair",
    address: "/#/cases/pairs:DFR-R.FR-F",
    shows: "Comes up twice in 75.",
  },
  {
    name: "a case of the last layer",
    address: "/#/cases/last-layer-placed:0132-3012",
    shows: "Comes up once in 18.",
  },
  {
    name: "a case whose ways are looked for",
    address: "/#/cases/last-layer-whole:0012-0011-0123-0123",
    shows: "Find a way in one go",
  },
  {
    name: "progress before the first answer",
    address: "/#/progress",
    shows: "No answers to show yet",
  },
  {
    name: "progress",
    address: "/#/progress",
    shows: "6 answers since",
    answers: ANSWERS,
  },
  {
    name: "the coach's bench",
    address: "/#/coach/starter-corners/C3",
    shows: "What Learner 1 practises",
  },
  {
    name: "settings",
    address: "/#/settings",
    shows: "Where your answers are kept",
  },
];

const WINDOWS = [
  { name: "light and wide", colorScheme: "light", width: 1280, height: 800 },
  { name: "dark and 360 px", colorScheme: "dark", width: 360, height: 740 },
] as const;

async function open(page: Page, place: Place): Promise<void> {
  await page.goto(place.address);
  if (place.answers !== undefined) {
    await expect(page.getByRole("main")).not.toBeEmpty();
    await storeAnswers(page, place.answers);
  }
  await expect(page.getByText(place.shows).first()).toBeVisible();
}

/** How far the page reaches beyond the window. Units: pixels. */
function widerThanWindow(page: Page): Promise<number> {
  return page.evaluate(
    () => document.documentElement.scrollWidth - window.innerWidth,
  );
}

for (const { name: size, colorScheme, width, height } of WINDOWS) {
  test.describe(`in a window ${size}`, () => {
    test.use({ colorScheme, viewport: { width, height } });

    for (const place of PLACES) {
      test(`${place.name}: axe finds nothing, and nothing is cut off`, async ({
        page,
      }) => {
        await open(page, place);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(
          violations.map(({ id, nodes }) => [id, nodes.map((n) => n.html)]),
        ).toEqual([]);
        expect(await widerThanWindow(page)).toBeLessThanOrEqual(0);
      });
    }
  });
}

test("at 200% zoom no place is wider than the window", async ({ page }) => {
  // A window of 1280 × 800 zoomed to 200% has 640 × 400 CSS pixels.
  await page.setViewportSize({ width: 640, height: 400 });
  for (const place of PLACES.filter(({ answers }) => answers === undefined)) {
    await open(page, place);
    expect(await widerThanWindow(page), place.name).toBeLessThanOrEqual(0);
  }
});

test("by keyboard alone one gets from place to place and to a case", async ({
  page,
}) => {
  await page.goto("/#/cases");
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to Cases" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toBeFocused();
  expect(new URL(page.url()).hash).toBe("#/cases");

  const coach = page.getByRole("link", { name: "Coach", exact: true });
  await coach.focus();
  await page.keyboard.press("Enter");
  await expect(page).toHaveTitle("Coach · Turnwise");
  await expect(page.getByRole("main")).toBeFocused();
  await expect(coach).toHaveAttribute("aria-current", "page");

  await page.goto("/#/cases/first-layer-corners");
  const first = page.getByRole("link", { name: /white on the front/ }).first();
  await first.focus();
  const outline = await first.evaluate(
    (link) => getComputedStyle(link).outline,
  );
  expect(outline).toContain("2px");
  await page.keyboard.press("Enter");
  await expect(
    page.getByRole("heading", { name: "White on the front", level: 1 }),
  ).toBeVisible();
});

test("on a narrow window a shelf is chosen from a list, and a case put back is where it was", async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/#/cases");
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("last-layer-whole");
  await expect(
    page.getByRole("heading", { name: "Whole last layer in one go (1LLL)" }),
  ).toBeVisible();
  await page.getByRole("button", { name: /^OLL 31:/ }).click();
  const link = page.locator(
    '[data-case="last-layer-whole:0012-0011-0123-0123"]',
  );
  await link.click();
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
  await page.goBack();
  await expect(link).toBeFocused();
  await expect(link).toBeInViewport();
});

test("on a narrow window the current place's name opens the others", async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto("/#/cases");
  const opener = page.getByRole("button", { name: "Cases, other places" });
  await expect(page.getByRole("link", { name: "Settings" })).toBeHidden();
  await opener.press("Enter");
  await expect(opener).toHaveAttribute("aria-expanded", "true");
  await page.keyboard.press("Escape");
  await expect(opener).toBeFocused();
  await expect(page.getByRole("link", { name: "Settings" })).toBeHidden();
  await opener.press("Enter");
  await page.getByRole("link", { name: "Settings" }).click();
  await expect(page).toHaveTitle("Settings · Turnwise");
  await expect(page.getByRole("link", { name: "Coach" })).toBeHidden();
});

test("a cube's own colours are set in six taps and named everywhere", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await page.getByText("My own", { exact: true }).click();
  for (const colour of ["pink", "green", "black", "blue", "brown", "yellow"])
    await page.getByRole("button", { name: colour, exact: true }).click();
  await expect(
    page.getByText("pink on top, green in front, black on the right"),
  ).toBeVisible();
  await page.goto("/#/cases/C1");
  await expect(
    page.getByRole("heading", { name: "Pink on the front" }),
  ).toBeVisible();
  await page.reload();
  await expect(
    page.getByRole("heading", { name: "Pink on the front" }),
  ).toBeVisible();
});

test("with the first layer held down, names, ways and pictures turn over", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await page.getByText("At the bottom", { exact: true }).click();
  await page.goto("/#/cases/C2");
  await expect(
    page.getByText("First-layer corners, white on a side"),
  ).toBeVisible();
  // Source: R' D' R turned over about the front–back axis (the design's
  // architecture: "the ways turned over, not retyped").
  await expect(page.getByText("L' U' L", { exact: true })).toBeVisible();
  await expect(page.getByRole("img").first()).toHaveAccessibleName(
    /yellow on top|white at the bottom/i,
  );
});

test("learners keep their answers apart, and one can be deleted", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await expect(page.getByText(/^0 answers/)).toBeVisible();
  await storeAnswers(page, ANSWERS);
  await expect(page.getByText(/^6 answers/)).toBeVisible();
  await page.getByRole("button", { name: "Add a learner" }).click();
  const name = page.getByRole("textbox", { name: "Name of the new learner" });
  await expect(name).toBeFocused();
  await name.fill("Ada");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("radio", { name: "Ada" })).toBeChecked();
  await expect(page.getByText(/^0 answers/)).toBeVisible();
  await page.getByText("Learner 1", { exact: true }).click();
  await expect(page.getByText(/^6 answers/)).toBeVisible();
  await page.getByRole("button", { name: "Delete Learner 1…" }).click();
  await expect(page.getByRole("dialog")).toContainText(
    "all 6 answers go for good",
  );
  await page.getByRole("button", { name: "Delete for good" }).click();
  await expect(page.getByRole("textbox", { name: "Name" })).toHaveValue("Ada");
  await page.reload();
  await expect(page.getByRole("textbox", { name: "Name" })).toHaveValue("Ada");
  await expect(page.getByText("Learner 1")).toHaveCount(0);
});

test("what a learner practises is chosen on the bench and holds", async ({
  page,
}) => {
  await page.goto("/#/coach");
  await page.getByRole("checkbox", { name: "First-layer edges" }).uncheck();
  const decks = page
    .getByRole("region", { name: "What Learner 1 practises" })
    .getByRole("checkbox");
  await expect(decks.nth(0)).toHaveAccessibleName(/First-layer corners/);
  await page.getByRole("button", { name: "Put The rest" }).click();
  await expect(decks.nth(0)).toHaveAccessibleName(/The rest/);
  await page.reload();
  await expect(decks.nth(0)).toHaveAccessibleName(/The rest/);
  await expect(decks.nth(1)).toHaveAccessibleName(/First-layer corners/);
  // It stands after all that are still practised.
  const edges = decks.nth(FIRST_COURSE.length - 1);
  await expect(edges).toHaveAccessibleName(/First-layer edges/);
  await expect(edges).not.toBeChecked();
  await expect(decks.and(page.locator(":checked"))).toHaveCount(
    FIRST_COURSE.length - 1,
  );
  await expect(decks.nth(FIRST_COURSE.length - 2)).toBeChecked();
});

test("what comes back is also told as a table", async ({ page }) => {
  await page.goto("/#/progress");
  await expect(page.getByText("No answers to show yet")).toBeVisible();
  await storeAnswers(page, ANSWERS);
  const coming = page.getByRole("region", { name: "What comes back when?" });
  await expect(coming.getByRole("img", { name: /\d+/ })).toBeVisible();
  await coming.getByRole("button", { name: "as a table" }).click();
  await expect(
    coming.getByRole("table").getByText("Under its home, white on the front"),
  ).toBeVisible();
});

test("a damaged answer is reported and everything else works", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await expect(page.getByText(/^0 answers/)).toBeVisible();
  const damaged = { ...answerDaysAgo("E1", 1), total: -1 };
  await storeAnswers(page, [answerDaysAgo("E2a", 1), damaged as never]);
  await expect(page.getByText("1 answer could not be read.")).toBeVisible();
  await expect(page.getByText("1 answer,")).toBeVisible();
});
