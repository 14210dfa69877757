/** A learner who is stuck shows their cube, by the keyboard alone, and is led until it is solved. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, test } from "./app";

/**
 * A mixed cube, side by side in the order in which they are asked for, each
 * as it faces the learner: 1 white, 2 red, 3 green, 4 yellow, 5 orange, 6 blue.
 * Drawn at random; the app itself says whether it can be a cube.
 */
const CUBE = [
  "234131546", // front: green
  "661226533", // right: red
  "633566461", // back: blue
  "254255633", // left: orange
  "125411312", // top: white
  "124445245", // bottom: yellow
];

const COLOURS = ["white", "green", "red", "blue", "orange", "yellow"];

async function nothingIsWrong(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => [id, nodes.map((n) => n.html)]),
  ).toEqual([]);
  const tooWide = await page.evaluate(
    () => document.documentElement.scrollWidth - innerWidth,
  );
  expect(tooWide).toBeLessThanOrEqual(0);
}

/** Moves the focus on until something of this name has it, and presses Enter. */
async function press(page: Page, name: RegExp): Promise<void> {
  const control = page.getByRole("button", { name }).first();
  await expect(control).toBeVisible();
  for (let n = 0; n < 90; n++) {
    if (await control.evaluate((one) => one === document.activeElement)) break;
    await page.keyboard.press("Tab");
  }
  await expect(control).toBeFocused();
  await page.keyboard.press("Enter");
}

/** Comes from the practising to the page, and taps the colours of a usual cube. */
async function tellColours(page: Page, what: RegExp): Promise<void> {
  await press(page, what);
  for (const colour of COLOURS)
    await page.getByRole("button", { name: colour, exact: true }).click();
}

test("a whole cube is entered by the keyboard, its stage is told, and it is solved step by step", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.goto("/#/practise");
  await page.getByRole("link", { name: "Stuck? Show my cube" }).click();
  await expect(page).toHaveURL(/#\/practise\/show-my-cube$/);
  await expect(
    page.getByRole("heading", { name: "Stuck? Show your cube." }),
  ).toBeFocused();
  await nothingIsWrong(page);
  await tellColours(page, /The whole cube/);

  await page.getByRole("button", { name: "Front, top left: empty" }).focus();
  for (const [n, side] of CUBE.entries()) {
    for (const [k, key] of [...side].entries()) {
      if (k === 4) continue;
      const cursor = page.locator("[data-facelet]:focus");
      const before = await cursor.getAttribute("data-facelet");
      await page.keyboard.press(key);
      if (k < 8)
        await expect(cursor).not.toHaveAttribute("data-facelet", before ?? "");
    }
    if (n === CUBE.length - 1) continue;
    const at = await page
      .locator("[data-facelet]:focus")
      .getAttribute("data-facelet");
    await page.keyboard.press("PageDown");
    await expect(page.locator("[data-facelet]:focus")).not.toHaveAttribute(
      "data-facelet",
      at ?? "",
    );
  }
  await nothingIsWrong(page);
  await press(page, /Go on with this cube/);

  await expect(
    page.getByRole("heading", { name: "The white edges come first." }),
  ).toBeFocused();
  await expect(page.getByText("one of four home")).toBeVisible();
  await expect(
    page.getByRole("list", { name: "Cases shown now" }).getByRole("listitem"),
  ).toHaveCount(3);
  await nothingIsWrong(page);
  await press(page, /Show me the first step/);

  // Step by step with Enter alone: the heading has the focus each time.
  const heading = page.getByRole("heading", { level: 1 });
  await expect(heading).toBeFocused();
  await expect(
    page.getByText(/^Hold your cube with white on top/),
  ).toBeVisible();
  await nothingIsWrong(page);
  await page.keyboard.press("Enter");
  await expect(page.getByText(/^Step 2 of/).first()).toBeVisible();
  const second = await heading.innerText();

  // A look at another place loses nothing.
  await page.getByRole("link", { name: "Cases", exact: true }).click();
  await expect(page).toHaveURL(/#\/cases/);
  await page.goto("/#/practise/show-my-cube");
  await expect(heading).toHaveText(second);
  await press(page, /^Step before/);
  await expect(page.getByText(/^Step 1 of/).first()).toBeVisible();

  const solved = page.getByRole("heading", { name: "Your cube is solved." });
  const marks = page.locator("[data-show-state]");
  for (let n = 2; !(await solved.isVisible()); n++) {
    expect(n).toBeLessThan(20);
    await expect(heading).toBeFocused();
    await page.keyboard.press("Enter");
    await expect(
      solved.or(page.getByText(RegExp(`^Step ${n} of`)).first()),
    ).toBeVisible();
  }
  await expect(marks).toHaveAttribute("data-show-state", "solved");
  await nothingIsWrong(page);
});

test.describe("in a narrow window", () => {
  test.use({ viewport: { width: 360, height: 740 } });

  test("one piece is told by its place, and shown the way home", async ({
    page,
  }) => {
    await page.goto("/#/practise/show-my-cube");
    await tellColours(page, /One piece/);
    await expect(
      page.getByRole("heading", { name: "Which piece is to come home?" }),
    ).toBeVisible();
    await nothingIsWrong(page);
    await page.locator("label", { hasText: "Second layer" }).click();
    await expect(page.getByText(/The white layer is done\./)).toBeVisible();
    await press(page, /The green and red edge/);
    await expect(
      page.getByRole("heading", { name: "Where is the green and red edge?" }),
    ).toBeVisible();
    await nothingIsWrong(page);
    await page
      .getByLabel(/Or choose where its green sticker is/)
      .selectOption("top back; green is on top");
    await press(page, /There it is/);

    await expect(
      page.getByRole("heading", { name: "Bring the green and red edge home." }),
    ).toBeFocused();
    await expect(
      page.getByRole("link", { name: "Above the front, green on top" }),
    ).toHaveAttribute("href", /#\/cases\/second-layer-edges:/);
    await expect(page.getByText("Lined up, your cube shows")).toBeVisible();
    // Lining up and the way's own beginning are one turn of the top.
    await expect(
      page.getByText("Top to the right; the edge goes to the top left."),
    ).toBeVisible();
    await expect(
      page.getByRole("heading", { name: "The way", exact: true }),
    ).toBeVisible();
    await nothingIsWrong(page);
    await press(page, /^Done, another piece/);
    await expect(
      page.getByRole("heading", { name: "Which piece is to come home?" }),
    ).toBeVisible();
  });
});
