/** The solver's worker, started by the real page under the real policy. */
import { expect, test } from "./app";
import { chooseWay, openPractise, practiseState } from "./practise-steps";

test("the worker that finds set-ups starts under the content policy, works, and cannot eval", async ({
  page,
}) => {
  await openPractise(page);
  const started = page.waitForEvent("worker");
  await chooseWay(page, "My cube");
  for (const colour of ["white", "green", "red", "blue", "orange", "yellow"])
    await page.getByRole("button", { name: colour, exact: true }).click();
  await page.getByRole("button", { name: /white cross is done/ }).click();
  const worker = await started;
  expect(worker.url()).toMatch(/\/assets\/solver-worker-[\w-]+\.js$/);
  await expect(practiseState(page, "set-up")).toBeVisible();

  // In a callback of the worker's own: what the test tool evaluates itself is
  // let through by the browser.
  const outcome = await worker.evaluate(
    () =>
      new Promise<string>((resolve) => {
        setTimeout(() => {
          try {
            resolve(`ran: ${String((0, eval)("1 + 1"))}`);
          } catch (error) {
            resolve(error instanceof Error ? error.name : "refused");
          }
        }, 0);
      }),
  );
  expect(outcome).toBe("EvalError");
});

test("a second worker of the same script finds ways, and a search is given up at once", async ({
  page,
}) => {
  // A case of fourteen turns, the longest of placing all: looking for its
  // shortest way goes on until it is given up.
  await page.goto("/#/cases/last-layer-whole:0000-0000-0321-0132");
  await page.getByRole("button", { name: "Find a way in one go" }).click();
  await expect(
    page.getByRole("progressbar", { name: "Looking for ways" }),
  ).toBeVisible();
  await expect(
    page.getByText(/^A way in one go, found at once/).first(),
  ).toBeVisible({ timeout: 60_000 });
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(
    page.getByRole("button", { name: "Look for the shortest ways" }),
  ).toBeVisible();
  expect(page.workers().length).toBeGreaterThanOrEqual(2);

  // Three edges go round, in nine turns: `last-layer.json` of the check values.
  await page.goto("/#/cases/last-layer-whole:0000-0000-0123-0231");
  await page.getByRole("button", { name: "Find a way in one go" }).click();
  await expect(page.getByText(/^The fewest turns/).first()).toBeVisible({
    timeout: 60_000,
  });
});
