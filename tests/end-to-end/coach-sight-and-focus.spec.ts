/** The coach's bench: what one is at stays in sight, and keeps the focus. */
import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "./app";
import { newDeck, shelf } from "./coach-steps";

test("a case that is put in is looked at, its row in sight and the focus on the shelf", async ({
  page,
}) => {
  await newDeck(page);
  for (let i = 1; i <= 12; i++) {
    const next = await shelf(page).nth(1).getAttribute("data-shelf-case");
    const added = await shelf(page).first().getAttribute("data-shelf-case");
    await shelf(page).first().click();
    const row = page.locator(`[data-case="${added}"]`);
    await expect(row.getByRole("link")).toHaveAttribute("aria-current", "true");
    await expect(page.locator(`[data-shelf-case="${next}"]`)).toBeFocused();
    const [bottom, end] = await Promise.all([
      row.evaluate((node) => node.getBoundingClientRect().bottom),
      page
        .locator(".bench .end")
        .evaluate((node) => node.getBoundingClientRect().top),
    ]);
    expect(bottom).toBeLessThanOrEqual(end + 1);
  }
  expect(await page.evaluate(() => scrollY)).toBe(0);
});

test("on a window of 1280 by 800 the bench ends before the fold", async ({
  page,
}) => {
  await page.goto("/#/coach/starter-rest");
  const { y } = (await page.locator(".bench .whole").boundingBox()) ?? {};
  expect(y).toBeLessThanOrEqual(742);
});

test("the focus stays with what one is at, whatever moves under it", async ({
  page,
}) => {
  await page.goto("/#/coach/starter-edges");
  const rest = page.getByRole("checkbox", { name: "The rest of the first" });
  await rest.focus();
  for (const isTicked of [false, true]) {
    await page.keyboard.press("Space");
    await expect(rest).toBeChecked({ checked: isTicked });
    await expect(rest).toBeFocused();
  }
  const earlier = page.getByRole("button", { name: "Put First-layer corners" });
  await earlier.focus();
  await page.keyboard.press("Enter");
  await expect(earlier).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(earlier).toBeHidden();
  await expect(
    page.getByRole("checkbox", { name: "First-layer corners" }),
  ).toBeFocused();

  await newDeck(page);
  await shelf(page).first().click();
  await shelf(page).first().click();
  const button = (name: string) =>
    page.getByRole("button", { name, exact: true });
  await button("Earlier").focus();
  await page.keyboard.press("Enter");
  await expect(button("Later")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(button("Earlier")).toBeFocused();
});

test("on a dark window of 360 px, a deck of one's own passes axe and nothing is cut off", async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await page.setViewportSize({ width: 360, height: 740 });
  await newDeck(page);
  await page
    .getByLabel("Name", { exact: true })
    .fill("Donaudampfschifffahrtsgesellschaftskapitaen, first corners");
  await shelf(page).first().click();
  await page.getByLabel("Another way").check();
  await page.getByText("How it is asked").click();
  await page.getByLabel("For a class").check();
  const check = async () => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations).toEqual([]);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - window.innerWidth,
    );
    expect(wider).toBeLessThanOrEqual(0);
  };
  await check();
  await page.getByRole("button", { name: "Delete…" }).click();
  await check();
});
