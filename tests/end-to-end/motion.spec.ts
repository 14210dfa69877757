/** That a turn is seen on its way, and by whom it is not. */
import type { Page } from "@playwright/test";
import { expect, test } from "./app";
import { acknowledged, openPractise, practiseState } from "./practise-steps";

/** Longer than the longest turn takes. Units: milliseconds. */
const WATCHED = 450;

/** Presses a key and counts the pictures of the cube that are drawn from then on. */
async function picturesAfter(page: Page, key: string): Promise<number> {
  const cube = page.getByRole("application").locator("svg").first();
  const watch = await cube.evaluateHandle((svg, duration) => {
    const seen = new Set([svg.innerHTML]);
    let pressedAt = Infinity;
    const note = ({ timeStamp }: Event) => (pressedAt = timeStamp);
    addEventListener("keydown", note, { capture: true });
    const count = new Promise<number>((resolve) => {
      const frame = (at: number): void => {
        seen.add(svg.innerHTML);
        if (at > pressedAt + duration) resolve(seen.size - 1);
        else requestAnimationFrame(frame);
      };
      requestAnimationFrame(frame);
    });
    return { count };
  }, WATCHED);
  await page.keyboard.press(key);
  return watch.evaluate(({ count }) => count);
}

for (const [reducedMotion, claim] of [
  ["reduce", "shows its end at once"],
  ["no-preference", "is seen on its way"],
] as const)
  test.describe(`where the system asks for motion: ${reducedMotion}`, () => {
    test.use({ contextOptions: { reducedMotion } });

    test(`a turn ${claim}`, async ({ page }) => {
      await openPractise(page);
      await page.keyboard.press("Enter");
      await acknowledged(page);
      await page.keyboard.press("Enter");
      await expect(practiseState(page, "helped")).toBeVisible();
      const pictures = await picturesAfter(page, "r");
      if (reducedMotion === "reduce") expect(pictures).toBe(1);
      else expect(pictures).toBeGreaterThan(3);
    });
  });
