import type { Page } from "@playwright/test";
import { expect, test } from "./app";
import {
  acknowledged,
  chooseWay,
  openPractise,
  practiseState,
} from "./practise-steps";

/** Opens My cube for a cube of the usual colours that has what is said. */
async function openMyCube(page: Page, has: RegExp): Promise<void> {
  await openPractise(page);
  await chooseWay(page, "My cube");
  for (const colour of ["white", "green", "red", "blue", "orange", "yellow"])
    await page.getByRole("button", { name: colour, exact: true }).click();
  await page.getByRole("button", { name: has }).click();
}

/** Makes the turns of the walk on the desk until it is over. */
async function walk(page: Page, state: string): Promise<void> {
  await expect(practiseState(page, state)).toBeVisible();
  while (await practiseState(page, state).isVisible())
    await page.getByRole("button", { name: /^Done/ }).click();
}

test("a reload comes back to the turn of the way, to the case that waits to be seen, and asks for the cube after turning", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await openMyCube(page, /white cross is done/);
  await walk(page, "set-up");

  // A new case is walked through: the way stands at its turn.
  await expect(practiseState(page, "shown")).toBeVisible();
  const sentence = await page.locator("p.sentence").innerText();
  await page.reload();
  await expect(practiseState(page, "shown")).toBeVisible();
  await expect(page.locator("p.sentence")).toHaveText(sentence);
  await walk(page, "shown");
  await acknowledged(page);
  await page.getByRole("button", { name: /Next case|Now you/ }).click();

  // The case waits to be seen: no way home is shown.
  await walk(page, "set-up");
  await expect(practiseState(page, "see")).toBeVisible();
  await page.reload();
  await expect(practiseState(page, "see")).toBeVisible();

  // While it is turned nobody sees the cube.
  await page.getByRole("button", { name: /I see it/ }).click();
  await expect(practiseState(page, "turning")).toBeVisible();
  await page.reload();
  await expect(practiseState(page, "has")).toBeVisible();
  await page.getByRole("button", { name: /white cross is done/ }).click();
  await walk(page, "set-up");
  await page.getByRole("button", { name: /I see it/ }).click();
  await page.getByRole("button", { name: /^Done/ }).click();
  await page.getByRole("button", { name: /^Done/ }).first().click();
  await acknowledged(page);
});

test("a cross lost while answering is kept as not done, and the next case begins with finding it", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await openMyCube(page, /white cross is done/);
  await walk(page, "set-up");
  await walk(page, "shown");
  await acknowledged(page);
  await page.getByRole("button", { name: /Next case|Now you/ }).click();
  await walk(page, "set-up");
  await page.getByRole("button", { name: /I see it/ }).click();
  await page.getByRole("button", { name: "I lost my cross" }).click();
  await acknowledged(page);
  await page.getByRole("button", { name: /Next case|Now you/ }).click();
  await expect(practiseState(page, "find")).toBeVisible();

  // Going through the list chooses nothing, and a wrong choice can be undone.
  const asked = await page.getByRole("heading", { level: 1 }).innerText();
  await page.getByLabel(/Or choose where/).selectOption({ index: 1 });
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(asked);
  await page.getByRole("button", { name: "There it is" }).click();
  await expect(page.getByRole("heading", { level: 1 })).not.toHaveText(asked);
  await page
    .getByRole("button", { name: "The last piece was somewhere else" })
    .click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(asked);
});

test("colours told in an order that hardly any cube has are looked at once more", async ({
  page,
}) => {
  await openPractise(page);
  await chooseWay(page, "My cube");
  const tap = async (colours: readonly string[]): Promise<void> => {
    for (const colour of colours)
      await page.getByRole("button", { name: colour, exact: true }).click();
  };
  await tap(["white", "yellow", "red", "blue", "orange", "green"]);
  await expect(
    page.getByRole("heading", {
      name: "Does your cube really look like this?",
    }),
  ).toBeFocused();
  await page.getByRole("button", { name: "Tap them again" }).click();
  await tap(["white", "green", "red", "blue", "orange", "yellow"]);
  await expect(practiseState(page, "has")).toBeVisible();
  await expect(
    page.getByRole("button", { name: /white cross is done/ }),
  ).toBeVisible();
});
