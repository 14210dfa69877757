/** The coach's bench: what changes a deck, and what takes the change back. */
import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "./app";
import { deckName, newDeck, rows, shelf, titles } from "./coach-steps";

test("undo and redo take back and make again, and outlive a look at another place", async ({
  page,
}) => {
  await newDeck(page);
  await shelf(page).first().click();
  await shelf(page).first().click();
  await rows(page).first().getByRole("link").click();
  await page.getByRole("button", { name: "Take out" }).click();
  await expect(rows(page)).toHaveCount(1);
  await page.getByRole("link", { name: "Cases" }).click();
  await page.goBack();
  await page
    .getByRole("button", { name: "Undo: case taken out", exact: true })
    .click();
  await expect(rows(page)).toHaveCount(2);
  await page.keyboard.press("Control+z");
  await expect(rows(page)).toHaveCount(1);
  await page.keyboard.press("Control+Shift+Z");
  await expect(rows(page)).toHaveCount(2);

  // In a text, the keys are the text's.
  const name = page.getByLabel("Name", { exact: true });
  await name.fill("");
  await expect(page.getByText("has nothing in it")).toBeVisible();
  await expect(deckName(page)).toHaveText("New deck");
  await page.keyboard.press("Control+z");
  await expect(rows(page)).toHaveCount(2);
  await name.fill("Mondays");
  await page.getByRole("button", { name: "Undo: name" }).click();
  await expect(name).toHaveValue("New deck");
});

test("a starter deck is copied before it is changed", async ({ page }) => {
  await page.goto("/#/coach/starter-corners");
  await page.getByLabel("Another way").click();
  const offer = page.getByRole("dialog", { name: "Copy this deck" });
  await offer.getByRole("button", { name: "Leave it" }).click();
  await expect(page.getByLabel("Another way")).not.toBeChecked();
  await rows(page).first().getByRole("link").focus();
  await page.keyboard.press("Alt+ArrowDown");
  const before = await titles(page);
  await offer.getByRole("button", { name: "Copy it" }).click();
  await expect(deckName(page)).toHaveText("First-layer corners, copy");
  expect(await titles(page)).toEqual([
    before[1],
    before[0],
    ...before.slice(2),
  ]);
  await page.getByRole("button", { name: "Delete…" }).click();
  const question = page.getByRole("dialog", { name: "Delete “First-layer" });
  await expect(question).toContainText("answers stay");
  await expect(question.getByRole("button", { name: "Keep it" })).toBeFocused();
  await question.getByRole("button", { name: "Delete the deck" }).click();
  await expect(deckName(page)).toHaveText("First-layer edges");
  await page.getByRole("button", { name: "Other decks" }).click();
  await expect(page.getByRole("list", { name: "Decks" })).not.toContainText(
    "copy",
  );
});

test("a whole shelf is put in at once, and taken back at once", async ({
  page,
}) => {
  await newDeck(page);
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("last-layer-placed");
  await page.getByRole("button", { name: "Put all 21 in" }).click();
  await expect(rows(page)).toHaveCount(21);
  await expect(page.getByText("21 cases put in, 21 in all.")).toBeVisible();
  await expect(
    page.getByText("Every case of this shelf is in the deck."),
  ).toBeVisible();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(rows(page)).toHaveCount(0);
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("last-layer-turned");
  // A family at a time, then the order of stages is asked for two stages.
  await page.getByRole("button", { name: "Put all 8 in" }).first().click();
  await expect(rows(page)).toHaveCount(8);
  await page.getByLabel("Shelf", { exact: true }).selectOption("pairs");
  await shelf(page).first().click();
  await expect(rows(page)).toHaveCount(9);
  await expect(
    page.getByRole("radio", { name: "pairs (F2L) first" }),
  ).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});
