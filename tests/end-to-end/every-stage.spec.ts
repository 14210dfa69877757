import { expect, test } from "./app";
import { caseAnsweredBy } from "./listed-cases";
import {
  acknowledged,
  chooseWay,
  practiseState,
  pressWay,
} from "./practise-steps";

// Sources: check-values, sequences.json (the eight turns, common practice) and
// last-layer.json (OLL 27, PLL Aa); a pair's three turns and the six of the
// first step are common practice. Each is checked by the app's own judge.
const ASKED = [
  {
    ...caseAnsweredBy("second-layer-edges", "U R U' R' U' F' U F"),
    prompt: "Bring the green and red edge home.",
  },
  {
    ...caseAnsweredBy("pairs", "U R U' R'"),
    prompt: "Bring the white, green and red corner and its edge home.",
  },
  {
    ...caseAnsweredBy("last-layer-edges-turned", "F R U R' U' F'"),
    prompt: "Turn the top edges so that yellow faces up.",
  },
  {
    ...caseAnsweredBy("last-layer-turned", "R U R' U R U2 R'"),
    prompt: "Make the whole top yellow in one go.",
  },
  {
    ...caseAnsweredBy("last-layer-placed", "R' F R' B2 R F' R' B2 R2"),
    prompt:
      "Bring all top edges and corners home in one go, with yellow still facing up.",
  },
];

for (const { id, moves, prompt } of ASKED)
  test(`${id} is answered by keys, and in writing`, async ({ page }) => {
    await page.goto(`/#/practise/${id}`);
    await expect(practiseState(page, "shown")).toBeVisible();
    await expect(page.getByRole("heading", { name: prompt })).toBeVisible();
    await page.locator("[aria-roledescription=cube]").focus();
    await pressWay(page, moves);
    await acknowledged(page);
    await expect(page.locator("section.answered h1")).toHaveText(
      "That is the way.",
    );

    await page.getByRole("button", { name: /Now you/ }).click();
    await expect(practiseState(page, "helped")).toBeVisible();
    // Hints follow each other, whatever the stage has to point at.
    for (let n = 0; n < 2; n++) await page.keyboard.press("?");
    await expect(page.locator(".help [aria-live] p")).toHaveCount(2);
    await page.locator("[aria-roledescription=cube]").focus();
    await pressWay(page, moves);
    await acknowledged(page);
    await expect(page.locator("section.answered h1")).toContainText("Right");
    if (id.startsWith("last-layer"))
      await expect(page.locator("section.answered figure svg")).toBeVisible();

    await page.getByRole("button", { name: /Next case/ }).click();
    await expect(practiseState(page, "alone", "again")).toBeVisible();
    await chooseWay(page, "Write it");
    const answer = page.getByLabel("Your answer");
    await expect(answer).toBeVisible();
    await answer.fill(moves.join(" "));
    await answer.press("Enter");
    await acknowledged(page);
    await expect(page.locator("section.answered h1")).toContainText("Right");
    // The listed turns leave the top turned: that is right, and said.
    if (id.startsWith("last-layer-placed"))
      await expect(
        page.getByText(/One more turn lines everything up\. Turn the top/),
      ).toBeVisible();
  });
