/**
 * Progress with the log of somebody who has practised for two months: that
 * every question is answered, as a picture and as a table, for everybody and
 * on every window.
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../core/cases/case-ids";
import type { Milliseconds, Review } from "../../core/memory/review";
import { randomSource } from "../../core/random-source";
import { expect, test } from "./app";
import { storedRows } from "./page-store";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

const QUESTIONS = [
  "What comes back when?",
  "Which cases are slow?",
  "What do I mistake for what?",
  "Can I trust the forecast?",
  "Am I getting faster?",
  "What have I kept?",
] as const;

/** Sixty days: every third day each of eight cases, faster and surer by and by. */
function twoMonths(): readonly Review[] {
  const random = randomSource(60);
  const cases = [
    ...FIRST_LAYER_EDGE_IDS.slice(0, 4),
    ...FIRST_LAYER_CORNER_IDS.slice(0, 4),
  ];
  return Array.from({ length: 20 }, (_, n) => n).flatMap((n) =>
    cases.map((id, i) => {
      const thinking = (5000 - 180 * n + random.below(600)) as Milliseconds;
      const turning = (2500 + random.below(500)) as Milliseconds;
      const isMissed = random.below(10) === 0;
      return answerDaysAgo(id, 60 - 3 * n - (i % 2), {
        thinking,
        turning,
        total: (thinking + turning) as Milliseconds,
        verdict: isMissed ? "missed" : "right",
        ...(isMissed && id !== "C2" ? { answeredAs: "C2" } : {}),
      });
    }),
  );
}

async function open(page: Page): Promise<void> {
  await page.goto("/#/progress");
  await expect(page.getByText("No answers to show yet")).toBeVisible();
  await storeAnswers(page, twoMonths());
  await expect(page.getByText("160 answers since")).toBeVisible();
}

async function axeFinds(page: Page) {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => [id, nodes.map((n) => n.html)]);
}

const WINDOWS = [
  { name: "light and wide", colorScheme: "light", width: 1280, height: 800 },
  { name: "dark and 360 px", colorScheme: "dark", width: 360, height: 740 },
] as const;

for (const { name, colorScheme, width, height } of WINDOWS) {
  test.describe(`in a window ${name}`, () => {
    test.use({ colorScheme, viewport: { width, height } });

    test("every question has a picture, and by keyboard a table with the same", async ({
      page,
    }) => {
      await open(page);
      for (const question of QUESTIONS) {
        const region = page.getByRole("region", { name: question });
        await expect(region.getByRole("img").first()).toBeVisible();
      }
      expect(await axeFinds(page)).toEqual([]);
      for (const question of QUESTIONS) {
        const region = page.getByRole("region", { name: question });
        await region.getByRole("button", { name: "as a table" }).focus();
        await page.keyboard.press("Enter");
        await expect(region.getByRole("row").nth(1)).toBeVisible();
        const opener = region.getByRole("button", { name: "as a picture" });
        await expect(opener).toBeFocused();
      }
      expect(await axeFinds(page)).toEqual([]);
      const cutOff = await page.evaluate(() =>
        [...document.querySelectorAll("main *")]
          .filter(
            (element) =>
              element.getBoundingClientRect().right > window.innerWidth,
          )
          .map((element) => element.outerHTML),
      );
      expect(cutOff).toEqual([]);
    });
  });
}

test("Progress, Settings and the class say the same number of answers, and a showing is none", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await expect(page.getByText(/^0 answers/)).toBeVisible();
  await storeAnswers(page, [
    answerDaysAgo("E1", 0, { asking: "shown" }),
    answerDaysAgo("E1", 0, { asking: "helped" }),
  ]);
  await expect(page.getByText(/^1 answer,/)).toBeVisible();
  await expect(page.getByText("No backup has been made")).toBeVisible();
  await page.getByRole("button", { name: "Delete Learner 1…" }).click();
  await expect(page.getByRole("dialog")).toContainText("their one answer");
  await page.goto("/#/progress");
  await expect(page.getByText("1 answer today.")).toBeVisible();
  await page.goto("/#/coach/class");
  await expect(page.getByText("1 learner, 1 answer")).toBeVisible();
});

test("a case is chosen to see whether it is getting faster", async ({
  page,
}) => {
  await open(page);
  const region = page.getByRole("region", { name: "Am I getting faster?" });
  await expect(region).toContainText(/Yes: a usual answer took .* target now/);
  await region.getByRole("combobox").selectOption({
    label: "Under its home, white on the front (First-layer corners)",
  });
  await expect(region).toContainText("Average of the last 5");
  await region.getByRole("button", { name: "as a table" }).click();
  await expect(region.getByRole("combobox")).toHaveValue("C1 up");
});

test("what was computed is kept, and is computed anew after an answer", async ({
  page,
}) => {
  await open(page);
  const kept = async () => {
    const { cache = [] } = await storedRows(page, ["cache"]);
    return cache.map((row) => String(Reflect.get(Object(row), "key")));
  };
  await expect.poll(async () => (await kept()).length).toBe(1);
  const [first] = await kept();
  expect(first).toContain("160-");
  let workers = 0;
  page.on("worker", () => (workers += 1));
  await page.reload();
  await expect(page.getByText("160 answers since")).toBeVisible();
  expect(workers).toBe(0);
  await storeAnswers(page, [answerDaysAgo("C9", 0)]);
  await expect(page.getByText("161 answers since")).toBeVisible();
  expect(workers).toBe(1);
  await expect.poll(async () => (await kept())[0]).toContain("161-");
});
