/**
 * Twenty printed pages in the real window: what a coach waits for after a
 * choice, and what printing them takes.
 *
 * The sheet is that of the deck with the most cases to keep beside the cube,
 * the heaviest pages there are (up to thirty pictures each). It has more than
 * twenty, and times are per twenty. Set-ups are looked for once for a number;
 * colours and paper are changed without looking again.
 */
import { chromium, type Page } from "@playwright/test";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { startApp } from "../end-to-end/app";
import { readPdf } from "../end-to-end/printed-pdf";
import { chromiumOptions } from "../runner/chromium";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const PAGES = 20;
const ROUNDS = 5;
/** The issue's own: 20 pages in under 3 s. */
const TARGET = 3000;

const DECK = "starter-turning";

async function timed<T>(work: () => Promise<T>): Promise<[number, T]> {
  const began = performance.now();
  const result = await work();
  return [performance.now() - began, result];
}

async function pagesShown(page: Page, height: number): Promise<number> {
  const pages = page.locator(`[data-sheet-page][viewBox$=" ${height}"]`);
  await pages.first().waitFor({ timeout: 180_000 });
  return pages.count();
}

/** Takes another number, and waits for the pages that bear it. */
async function drawAnother(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Draw another" }).click();
  const number = await page.getByLabel("Number of the sheet").inputValue();
  await page
    .locator("[data-sheet-page] > text", { hasText: `sheet ${number},` })
    .first()
    .waitFor({ timeout: 180_000 });
}

/** Measures a sheet's set-ups, its pages on the screen, and its PDF. */
export async function sheetTimes(): Promise<BenchResult[]> {
  const app = await startApp();
  const browser = await chromium.launch(chromiumOptions());
  const found: number[] = [];
  const shown: number[] = [];
  const printed: number[] = [];
  try {
    const page = await browser.newPage({
      viewport: { width: 1280, height: 800 },
    });
    const deck = STARTER_DECKS.find(({ id }) => id === DECK);
    if (deck === undefined) throw new WrongAnswer(`there is no deck ${DECK}`);
    await page.goto(`${app.address}#/coach/sheets/${deck.id}`);
    const paper = (name: string) =>
      page.getByRole("radio", { name, exact: true }).check();
    await paper("A4");
    const count = await pagesShown(page, 297);
    if (count < PAGES)
      throw new WrongAnswer(`${count} pages are fewer than ${PAGES}`);
    for (let n = 0; n < ROUNDS; n++) {
      const [search] = await timed(() => drawAnother(page));
      found.push((search * PAGES) / count);
    }
    for (let n = 0; n < ROUNDS; n++) {
      const isLetter = n % 2 === 0;
      const [drawing, pages] = await timed(async () => {
        await paper(isLetter ? "Letter" : "A4");
        return pagesShown(page, isLetter ? 279.4 : 297);
      });
      const [printing, pdf] = await timed(() =>
        page.pdf({ preferCSSPageSize: true, printBackground: true }),
      );
      const read = await readPdf(pdf);
      if (read.length !== pages)
        throw new WrongAnswer(`${read.length} of ${pages} pages were printed`);
      shown.push((drawing * PAGES) / pages);
      printed.push((printing * PAGES) / pages);
    }
  } finally {
    await browser.close();
    await app.stop();
  }
  const result = (name: string, samples: number[], target?: number) =>
    resultFrom({
      name: `sheets: 20 pages ${name}`,
      unit: "ms",
      better: "lower",
      samples,
      ...(target === undefined ? {} : { target }),
    });
  return [
    result("with other set-ups looked for", found),
    result("laid out and drawn", shown),
    result("printed to a PDF", printed),
    result(
      "laid out, drawn and printed",
      shown.map((time, n) => time + (printed[n] ?? 0)),
      TARGET,
    ),
  ];
}
