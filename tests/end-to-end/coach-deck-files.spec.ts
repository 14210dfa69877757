/** The coach's bench: what is asked and said before a deck file changes anything. */
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { expect, test } from "./app";
import { deckName, type HandedOver, read, rows } from "./coach-steps";

function deckFile(text: string): HandedOver {
  return {
    name: "handed-over.turnwise-deck",
    buffer: Buffer.from(text),
    mimeType: "application/json",
  };
}

test("a refused file says where and what to do, and changes nothing", async ({
  page,
}) => {
  await page.goto("/#/coach");
  await page.getByRole("button", { name: "Other decks" }).click();
  await read(
    page,
    deckFile(
      '{\n  "turnwise": "deck", "version": 1, "name": "Slip",\n  "cases": [{ "case": "C1", "targett": 9 }]\n}',
    ),
  );
  const refusal = page.getByRole("dialog", { name: "This file was not read" });
  await expect(refusal).toContainText("Line 3, letter 40");
  await expect(refusal).toContainText("Turnwise knows no “targett”.");
  await expect(refusal).toContainText("Nothing was changed.");
  await refusal.getByRole("button", { name: "Back" }).click();

  // The same way for a file that is dropped on the window.
  await page.evaluate(() => {
    const dropped = new DataTransfer();
    dropped.items.add(new File(["<html>"], "page.html"));
    const drop = { dataTransfer: dropped, bubbles: true, cancelable: true };
    document.body.dispatchEvent(new DragEvent("drop", drop));
  });
  await expect(refusal).toContainText("page.html");
  await expect(refusal).toContainText("This file is not from Turnwise.");
  await refusal.getByRole("button", { name: "Back" }).click();
  await expect(
    page.getByRole("list", { name: "Decks" }).getByRole("listitem"),
  ).toHaveCount(STARTER_DECKS.length);
});

test("a file with a known id revises its deck, after a preview that can be left", async ({
  page,
}) => {
  const text = (name: string, cases: string) =>
    `{ "turnwise": "deck", "version": 1, "id": "0b1e5d0e-7c3d-4c7e-9c3b-2f6b1d1a0001", "name": "${name}", "cases": [${cases}] }`;
  await page.goto("/#/coach");
  const others = page.getByRole("button", { name: "Other decks" });
  await others.click();
  await read(page, deckFile(text("Mine", '{"case": "C1"}, {"case": "C2"}')));
  await page.getByRole("button", { name: "Take it in" }).click();
  await expect(deckName(page)).toHaveText("Mine");

  const revised = deckFile(
    text("Yours", '{"case": "C2"}, {"case": "E1"}, {"case": "Z9"}'),
  );
  await others.click();
  await read(page, revised);
  const preview = page.getByRole("dialog", { name: "Change “Mine”?" });
  await expect(preview).toContainText("It is now called “Yours”");
  await expect(preview).toContainText("Taken out: Under its home");
  await expect(preview).toContainText("Put in: Under its home");
  await expect(preview).toContainText("belongs to the case");
  await preview.getByRole("button", { name: "Leave it" }).click();
  await expect(deckName(page)).toHaveText("Mine");

  await read(page, revised);
  const change = preview.getByRole("button", { name: "Change my deck" });
  await expect(preview).toContainText("does not know one of its cases: “Z9”");
  await expect(change).toBeDisabled();
  await preview.getByLabel("Leave it out").check();
  await change.click();
  await expect(deckName(page)).toHaveText("Yours");
  await expect(rows(page)).toHaveCount(2);
  await page
    .getByRole("button", { name: "Undo: what the file changed" })
    .click();
  await expect(deckName(page)).toHaveText("Mine");
});
