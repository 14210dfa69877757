/** The coach's bench: the way of a case, chosen or typed. */
import { expect, test } from "./app";
import { newDeck, rows } from "./coach-steps";

test("a typed way is taken only when it answers the case", async ({ page }) => {
  await newDeck(page);
  await page
    .getByLabel("Shelf", { exact: true })
    .selectOption("First-layer corners");
  await page
    .getByRole("button", {
      name: "Put in: Under its home, white on the front",
    })
    .click();
  await page.getByLabel("Another way").check();
  const way = page.getByLabel("Its turns, lined up");
  const tryIt = page.getByRole("button", { name: "Try it" });
  await way.fill("R' D' R");
  await tryIt.click();
  await expect(page.getByRole("alert")).toContainText(
    "does not answer the case",
  );
  await way.fill("R' D# R");
  await tryIt.click();
  await expect(page.getByRole("alert")).toContainText("at letter 5");
  await expect(page.getByRole("button", { name: "Undo: case" })).toBeVisible();
  // Source: the shortest way of the case in the table of the design's first-layer.md.
  await way.fill("F D F'");
  await tryIt.click();
  await expect(page.getByText(/It answered all \d+ positions/)).toBeVisible();
  await expect(rows(page).first()).toContainText("F D F'");
});

test("a hand is asked for only where the two make the way differently", async ({
  page,
}) => {
  await newDeck(page);
  const listed = page.getByRole("radio", { name: /\d turns?$/ }).first();
  // Source: the ways of E3 and E1 in the table of the design's first-layer.md.
  await page.locator('[data-shelf-case="E3"]').click();
  await listed.check();
  await expect(page.getByText("Made with")).toBeVisible();
  await page.locator('[data-shelf-case="E1"]').click();
  await expect(listed).not.toBeChecked();
  await listed.check();
  await expect(page.getByRole("button", { name: "Undo: way" })).toBeVisible();
  await expect(page.getByText("Made with")).toBeHidden();
});

test("a way that was typed is played again where the deck asks the case otherwise", async ({
  page,
}) => {
  await newDeck(page);
  await page.locator('[data-shelf-case="E2a"]').click();
  await page.getByText("How it is asked").click();
  await page.getByText("none", { exact: true }).click();
  await page.getByLabel("Another way").check();
  const way = page.getByLabel("Its turns, lined up");
  const tryIt = page.getByRole("button", { name: "Try it" });
  // Source: F' R brings E2a home and takes along what is on the right.
  await way.fill("F' R");
  await tryIt.click();
  const success = page.getByText(/It answered all \d+ positions/);
  await expect(success).toBeVisible();
  await way.fill("F R");
  await tryIt.click();
  await expect(page.getByRole("alert")).toContainText(
    "The deck still has: F' R.",
  );
  await expect(success).toBeHidden();
  await page.getByText("as many as can be", { exact: true }).click();
  await expect(
    page.getByText("This way no longer answers the case"),
  ).toBeVisible();
  await page.getByText("none", { exact: true }).click();
  await expect(
    page.getByText("This way no longer answers the case"),
  ).toBeHidden();
});
