/** What a coach does on the bench, as steps for the browser tests. */
import type { Page } from "@playwright/test";
import { expect } from "./app";

/** The rows of the deck on the bench. */
export const rows = (page: Page) => page.locator("[data-case]");

/** What puts a case of the shelf in. */
export const shelf = (page: Page) =>
  page.getByRole("button", { name: /^Put in: / });

/** The name that the bench gives its deck. */
export const deckName = (page: Page) => page.locator("#deck-name");

/** The deck's cases, as a coach sees them, in order. */
export function titles(page: Page): Promise<string[]> {
  return rows(page).locator(".words").allInnerTexts();
}

/** Opens the bench with a new deck on it. */
export async function newDeck(page: Page): Promise<void> {
  await page.goto("/#/coach");
  await page.getByRole("button", { name: "Other decks" }).click();
  await page.getByRole("button", { name: "New deck" }).click();
  await expect(page.getByText("Nothing in this deck yet")).toBeVisible();
}

/** A deck file as it is handed from one to another. */
export interface HandedOver {
  readonly name: string;
  readonly buffer: Buffer;
  readonly mimeType: string;
}

/** Has the page read a deck file. */
export async function read(
  page: Page,
  file: HandedOver,
  ask: () => Promise<void> = () =>
    page.getByRole("button", { name: "Read a deck file…" }).click(),
): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    ask(),
  ]);
  await chooser.setFiles(file);
}
