/** A check: five cases of a deck without help, a reload in the middle, one page with the result, printed. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { caseTitle } from "../../core/cases/case-words";
import { turnsForPosition } from "../../core/cases/way-for-position";
import { wholeCubeNaming } from "../../core/cases/whole-cube-naming";
import { parseFacelets } from "../../core/cube/validity";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import type { Round } from "../../core/memory/round";
import { parseRound } from "../../core/memory/round-schema";
import { formatTurn } from "../../core/notation/format";
import { USUAL_SCHEME } from "../../core/picture/colour-sets";
import { expect, test } from "./app";
import { storedRows } from "./page-store";
import { pressWay } from "./practise-steps";
import { readPdf } from "./printed-pdf";

const DECK = STARTER_DECKS[0];
const ADDRESS = `/#/coach/check/${DECK?.id ?? ""}`;

const state = (page: Page, kind: string) =>
  page.locator(`[data-check-state="${kind}"]`);

/** Where the check stands: under the cube, or in the bar where that is narrow. */
const asked = (page: Page, n: number) =>
  page.getByText(`${n} of 5`).filter({ visible: true }).first();

/** The check's rounds as they are stored. */
async function rounds(page: Page): Promise<readonly Round[]> {
  const stored = await storedRows(page, ["settings"]);
  const rows = stored["settings"] as readonly {
    readonly key: string;
    readonly value: { readonly rounds?: readonly unknown[] };
  }[];
  const check = rows.find(({ key }) => key.startsWith("check:"));
  return (check?.value.rounds ?? []).flatMap((row) => {
    const round = parseRound(row);
    return round.ok ? [round.value] : [];
  });
}

/** Answers the n-th case rightly, on the screen. */
async function answer(page: Page, n: number): Promise<void> {
  const item = (await rounds(page))[n]?.current;
  const read = parseFacelets(item?.position ?? "");
  if (item === undefined || !read.ok) throw new Error("nothing is asked");
  const { cubies } = read.value;
  const { case: id, hold, variant } = item;
  const turns = turnsForPosition({ case: id, hold, variant, cubies });
  await pressWay(page, turns.map(formatTurn));
}

async function begin(page: Page): Promise<void> {
  await page.goto(ADDRESS);
  await page.getByRole("button", { name: "Begin the check" }).click();
  await expect(asked(page, 1)).toBeVisible();
}

test("five cases are asked without help or verdict, a reload keeps what was answered, and one page says what came of them", async ({
  page,
}) => {
  await page.goto(`/#/coach/${DECK?.id ?? ""}`);
  await page.getByRole("link", { name: "Check" }).click();
  await page.getByRole("button", { name: "Begin the check" }).click();
  await expect(asked(page, 1)).toBeVisible();
  await expect(page.getByRole("button", { name: "Hint" })).toHaveCount(0);
  await page.keyboard.press("?");
  await expect(page.getByText("Show me")).toHaveCount(0);

  await answer(page, 0);
  await expect(asked(page, 2)).toBeVisible();
  await expect(page.locator("section.answered")).toHaveCount(0);
  await page.getByRole("button", { name: "I don’t know this one" }).click();
  await expect(asked(page, 3)).toBeVisible();
  const before = (await rounds(page)).map(({ id }) => id);

  await page.reload();
  await expect(asked(page, 3)).toBeVisible();
  expect((await rounds(page)).map(({ id }) => id)).toEqual(before);
  for (const n of [2, 3, 4]) {
    await expect(asked(page, n + 1)).toBeVisible();
    await answer(page, n);
  }

  await expect(state(page, "result")).toBeVisible();
  await expect(page.getByText("4 of 5 right.")).toBeVisible();
  const rows = page.locator("tbody tr");
  await expect(rows).toHaveCount(5);
  await expect(rows.nth(1)).toContainText("Not known.");
  await expect(rows.nth(2)).toContainText("Right, after a break.");
  await expect(rows.nth(0)).toContainText(/Right(, but slow)?\./);

  // The page is still there tomorrow morning's reload away.
  await page.reload();
  await expect(page.getByText("4 of 5 right.")).toBeVisible();
});

test("what came of a check is printed on one page, with the name, the day, every case, and nothing of the window", async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await begin(page);
  for (const n of [1, 2, 3, 4, 5]) {
    await expect(asked(page, n)).toBeVisible();
    await page.getByRole("button", { name: "I don’t know this one" }).click();
  }
  await expect(state(page, "result")).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations).toEqual([]);

  const pages = await readPdf(await page.pdf({ printBackground: true }));
  expect(pages).toHaveLength(1);
  const text = (pages[0]?.text ?? "").replace(/\s+/g, " ");
  expect(text).toContain(`Check: ${DECK?.name ?? ""}`);
  expect(text).toContain("Learner 1");
  expect(text).toMatch(/\d{1,2} [A-Z][a-z]+ \d{4}/);
  expect(text).toContain("0 of 5 right.");
  for (const { current } of await rounds(page)) {
    const naming = wholeCubeNaming(USUAL_SCHEME, "up");
    expect(text).toContain(caseTitle(current?.case ?? "E1", naming));
  }
  expect(text).not.toContain("Another check");
  expect(text).not.toContain("Progress");
});

test("on a telephone a check is answered by taps, and its page is no wider than the window", async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await begin(page);
  for (const n of [1, 2, 3, 4, 5]) {
    await expect(asked(page, n)).toBeVisible();
    await page.getByRole("button", { name: "I don’t know this one" }).click();
  }
  await expect(state(page, "result")).toBeVisible();
  const wide = await page.evaluate(
    () => document.documentElement.scrollWidth - innerWidth,
  );
  expect(wide).toBeLessThanOrEqual(0);
});
