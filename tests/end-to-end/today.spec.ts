/** Today: what it says to somebody who comes back, and that a round is cut from it. */
import { expect, test } from "./app";
import { FIRST_LAYER_IDS } from "../../core/cases/case-ids";
import { practiseState } from "./practise-steps";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

test("by keyboard: who comes back after a fortnight is told what fits, chooses the minutes and begins", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await expect(page.getByText(/^0 answers/)).toBeVisible();
  // Every case of the first layer once, two weeks ago.
  await storeAnswers(
    page,
    FIRST_LAYER_IDS.map((id) => answerDaysAgo(id, 14)),
  );
  await page.goto("/#/practise");
  await expect(practiseState(page, "today")).toBeVisible();
  const title = page.getByRole("heading", { level: 1 });
  await expect(title).toContainText(/^Today: \d+ cases, about \d+ minutes\.$/);
  await expect(title).toBeFocused();
  await expect(
    page.getByText(/It is 14 days since you last practised/),
  ).toBeVisible();

  // From the buttons on to the minutes, and down to the fewest.
  await page.getByRole("radio", { name: "15", exact: true }).focus();
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("ArrowLeft");
  await expect(
    page.getByRole("radio", { name: "5", exact: true }),
  ).toBeChecked();
  await expect(
    page.getByText(/more are due and wait until tomorrow/),
  ).toBeVisible();
  await expect(page.getByText(/nothing waits any more from/)).toBeVisible();

  await page.keyboard.press("Enter");
  await expect(practiseState(page, "alone")).toBeVisible();
  // A reload goes on with the round, and does not ask again whether to begin.
  await page.reload();
  await expect(practiseState(page, "alone")).toBeVisible();
});

test("the minutes of the day are one choice, in Settings and under today's plan", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await page
    .getByLabel("Minutes to practise a day")
    .selectOption({ label: "30" });
  await storeAnswers(page, [answerDaysAgo("E1", 14)]);
  await page.goto("/#/practise");
  await expect(
    page.getByRole("radio", { name: "30", exact: true }),
  ).toBeChecked();
  // From half an hour on hands and wrists are thought of.
  await expect(page.getByText(/strains hands and wrists/)).toBeVisible();
});
