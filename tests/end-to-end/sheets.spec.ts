/**
 * Sheets on paper: what Chromium prints of them is read and looked at. A PDF
 * by `page.pdf` is made by what prints; a printer's own driver is not tried.
 */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { caseTitle } from "../../core/cases/case-words";
import { wholeCubeNaming } from "../../core/cases/whole-cube-naming";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { MARGIN, PAPERS, type PaperName } from "../../core/paper/paper-size";
import { textWidth } from "../../core/paper/text-width";
import { USUAL_SCHEME } from "../../core/picture/colour-sets";
import { expect, test } from "./app";
import { readPdf, seePdf } from "./printed-pdf";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

const KINDS = {
  cases: /With the ways/,
  practice: /To answer by hand/,
  overview: /At a glance/,
} as const;

const pages = (page: Page) => page.locator("[data-sheet-page]");

async function choose(page: Page, name: string | RegExp): Promise<void> {
  const exact = typeof name === "string";
  await page.getByRole("radio", { name, exact }).check();
}

/** Opens the sheets of a deck on a paper, and waits for the pages of a kind. */
async function open(
  page: Page,
  kind: keyof typeof KINDS,
  paper: PaperName = "a4",
  deck = 1,
): Promise<void> {
  const id = STARTER_DECKS[deck]?.id ?? "";
  await page.goto(`/#/coach/sheets/${id}`);
  await choose(page, paper === "a4" ? "A4" : "Letter");
  await choose(page, KINDS[kind]);
  await pages(page).first().waitFor();
}

function printed(page: Page): Promise<Buffer> {
  // What the styles say is what is printed, as by the desktop app.
  return page.pdf({ preferCSSPageSize: true, printBackground: true });
}

test("the labels of the choices look alike", async ({ page }) => {
  await open(page, "practice");
  const looks = await Promise.all(
    ["Deck", "Positions", "Number of the sheet"].map((text) =>
      page
        .locator("label", { hasText: new RegExp(`^${text}$`) })
        .evaluate((label) => {
          const { fontSize, fontWeight, color } = getComputedStyle(label);
          return [fontSize, fontWeight, color];
        }),
    ),
  );
  expect(looks[1]).toEqual(looks[0]);
  expect(looks[2]).toEqual(looks[0]);
});

for (const paper of ["a4", "letter"] as const)
  test(`on ${paper} every page of every kind is printed once, at its size, within its margins, with its text`, async ({
    page,
    context,
  }) => {
    for (const kind of ["cases", "practice", "overview"] as const) {
      await open(page, kind, paper);
      const shown = await pages(page).count();
      const pdf = await printed(page);
      const read = await readPdf(pdf);
      expect(read).toHaveLength(shown);
      const seen = await seePdf(context, pdf);
      const { width, height } = PAPERS[paper];
      for (const [n, own] of read.entries()) {
        expect(own.width).toBeCloseTo(width, 0);
        expect(own.height).toBeCloseTo(height, 0);
        expect(own.text).toMatch(
          new RegExp(`Turnwise, sheet \\d+, page ${n + 1} of ${shown}`),
        );
        // Nothing of the window around it.
        expect(own.text).not.toContain("Back to the bench");
        expect(own.text).not.toContain("Progress");
        const { ink, left, top, right, bottom } = seen[n] ?? {};
        expect(ink).toBeGreaterThan(0.01);
        expect(left).toBeGreaterThan(MARGIN.side - 1);
        expect(top).toBeGreaterThan(MARGIN.top - 1);
        expect(right).toBeLessThan(width - MARGIN.side + 1);
        expect(bottom).toBeLessThan(height - MARGIN.bottom + 1);
      }
    }
  });

test("a case sheet's names and ways can be selected in the PDF, in the deck's order", async ({
  page,
}) => {
  await open(page, "cases");
  const text = (await readPdf(await printed(page)))
    .map((own) => own.text)
    .join(" ");
  const naming = wholeCubeNaming(USUAL_SCHEME, "up");
  const titles = (STARTER_DECKS[1]?.cases ?? []).map((one) =>
    caseTitle(one.case, naming),
  );
  const places = titles.map((title) => text.indexOf(title));
  expect(titles.length).toBeGreaterThan(3);
  expect(places).not.toContain(-1);
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(text).toContain("Set-up");
  expect(text).toContain("D' R' D R");
  for (const day of ["Mon", "Wed", "Sun"]) expect(text).toContain(day);
});

test("greys have no colour on paper, and the cube's own colours do", async ({
  page,
  context,
}) => {
  await open(page, "overview");
  const [grey] = await seePdf(context, await printed(page));
  expect(grey?.colour).toBe(0);
  await choose(page, "the cube’s own");
  const [own] = await seePdf(context, await printed(page));
  expect(own?.colour).toBeGreaterThan(0.005);
});

test("text is as wide on the page as it was measured without a screen, and stays on the page", async ({
  page,
}) => {
  for (const kind of ["cases", "practice"] as const) {
    await open(page, kind);
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    const texts = await pages(page)
      .locator("> text")
      .evaluateAll((all) =>
        all.map((node) => {
          const text = node as SVGTextElement;
          const box = text.getBBox();
          return {
            said: text.textContent,
            size: Number(text.getAttribute("font-size")),
            weight: Number(text.getAttribute("font-weight")),
            width: text.getComputedTextLength(),
            right: box.x + box.width,
            left: box.x,
          };
        }),
      );
    expect(texts.length).toBeGreaterThan(50);
    for (const { said, size, weight, width, left, right } of texts) {
      const measured = textWidth(said, size, weight === 640 ? 640 : 400);
      // Never wider than it was given room for (0.2 mm is a hair), and not
      // much narrower: pairs such as L' are kerned by a tenth.
      expect(width, said).toBeLessThan(measured + 0.2);
      expect(width, said).toBeGreaterThan(0.88 * measured);
      expect(left, said).toBeGreaterThan(MARGIN.side - 0.5);
      expect(right, said).toBeLessThan(PAPERS.a4.width - MARGIN.side + 0.5);
    }
  }
});

test("the number on a sheet makes the same sheet again", async ({ page }) => {
  await open(page, "practice", "a4", 0);
  const number = page.getByLabel("Number of the sheet");
  const textNow = async () => (await readPdf(await printed(page)))[0]?.text;
  const write = async (text: string) => {
    await number.fill(text);
    await number.blur();
    await page
      .locator("[data-sheet-page] > text", { hasText: `sheet ${text},` })
      .first()
      .waitFor();
  };
  await write("48213");
  const first = await textNow();
  await write("7");
  expect(await textNow()).not.toBe(first);
  await write("48213");
  expect(await textNow()).toBe(first);
  await number.fill("0");
  await number.blur();
  await expect(page.getByText("Write a whole number from 1")).toBeVisible();
});

test("the bench leads to its deck's sheets by keyboard, and nothing there is in anybody's way", async ({
  page,
}) => {
  const id = STARTER_DECKS[1]?.id ?? "";
  await page.goto(`/#/coach/${id}`);
  await page.getByRole("link", { name: "Sheets" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Sheets" })).toBeVisible();
  await expect(page.getByLabel("Deck", { exact: true })).toHaveValue(id);
  await pages(page).first().waitFor();
  const { violations } = await new AxeBuilder({ page })
    // A page is white in the dark as well; its small type is for paper.
    .exclude("[data-sheet]")
    .analyze();
  expect(violations).toEqual([]);
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute("data-printed", "");
  });
  await page.getByRole("button", { name: "Print…" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("body")).toHaveAttribute("data-printed");
});

test("who has not answered is told that there is nothing to certify, and no page is shown", async ({
  page,
}) => {
  await open(page, "overview");
  await choose(page, /Certificate/);
  await expect(page.getByText("there is nothing to certify")).toBeVisible();
  await expect(pages(page)).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Print…" })).toBeDisabled();
});

test("a certificate says what the log holds, on one page", async ({
  page,
  context,
}) => {
  await page.goto("/#/coach");
  await page.getByRole("heading", { name: "This deck" }).waitFor();
  const [first, second] = STARTER_DECKS[0]?.cases ?? [];
  if (first === undefined || second === undefined) throw new Error("no cases");
  await storeAnswers(page, [
    ...[60, 50, 30, 1].map((days) => answerDaysAgo(first.case, days)),
    answerDaysAgo(second.case, 1),
  ]);
  await page.goto(`/#/coach/sheets/${STARTER_DECKS[0]?.id ?? ""}`);
  await choose(page, /Certificate/);
  await pages(page).first().waitFor();
  const pdf = await printed(page);
  const read = await readPdf(pdf);
  expect(read).toHaveLength(1);
  const [{ text } = { text: "" }] = read;
  expect(text).toContain("knows 1 of the 11 cases of First-layer edges");
  expect(text).toContain("5 answers given");
  expect(text).toContain("4 days of practice");
  expect(text).toContain("2.0 s usual time to think");
  const [seen] = await seePdf(context, pdf);
  expect(seen?.ink).toBeGreaterThan(0.01);
});
