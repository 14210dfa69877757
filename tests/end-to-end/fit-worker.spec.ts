/** The worker that fits weights, started by the real page under the real policy. */
import { FIRST_LAYER_IDS } from "../../core/cases/case-ids";
import { LEAST_ANSWERS } from "../../core/memory/fit";
import { expect, test } from "./app";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

test("a learner with enough answers is learnt from in a worker, and told what came of it", async ({
  page,
}) => {
  await page.goto("/#/settings");
  const section = page.getByRole("region", { name: "How you forget" });
  await expect(section).toContainText(`answered ${LEAST_ANSWERS} times`);

  const cases = FIRST_LAYER_IDS.slice(0, 20);
  const days = Math.ceil(LEAST_ANSWERS / cases.length) + 1;
  const answers = Array.from({ length: days }, (_, day) =>
    cases.map((id, n) =>
      // Every seventh is missed, by no rule that a memory could have.
      answerDaysAgo(id, 3 * (days - day), {
        verdict: (5 * day + n) % 7 === 0 ? "missed" : "right",
      }),
    ),
  ).flat();
  const started = page.waitForEvent("worker");
  await storeAnswers(page, answers);
  const worker = await started;
  expect(worker.url()).toMatch(/\/assets\/fit-worker-[\w-]+\.js$/);
  // Whether its weights were better or not: it has tried, under the policy.
  await expect(section).toContainText(/of your answers/, { timeout: 30_000 });
  await expect(section.getByRole("alert")).toHaveCount(0);
});
