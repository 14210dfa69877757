/** The worker that fits weights, started by the real page under the real policy. */
import type { Page } from "@playwright/test";
import { FIRST_LAYER_IDS } from "../../core/cases/case-ids";
import { fitWeights, LEAST_ANSWERS } from "../../core/memory/fit";
import { gradeLog } from "../../core/memory/grader";
import { dayAfter, localDay } from "../../core/memory/local-day";
import { recalledDays } from "../../core/memory/recalls";
import type { Milliseconds, Review } from "../../core/memory/review";
import { WEIGHTS_VERSION } from "../../core/memory/schedule";
import { storedFit } from "../../renderer/state/fit-desk.svelte";
import { fitWords } from "../../renderer/state/fit-words";
import { sampleReview } from "../renderer/storage/sample-review";
import { ours } from "../simulate/choosers";
import { FULL } from "../simulate/experiments";
import { LEARNERS } from "../simulate/learners";
import { liveWith } from "../simulate/life";
import { loadTrainer } from "../simulate/node-trainer";
import { expect, test } from "./app";
import { acknowledged, practiseState } from "./practise-steps";
import { answerDaysAgo, storeAnswers } from "./stored-answers";

const DAY = 86_400_000;

const forgetting = (page: Page) =>
  page.getByRole("region", { name: "How you forget" });

/** So many answers that a fit learns from, to twenty cases, every third day until today. */
function answersToLearnFrom(count: number): readonly Review[] {
  const cases = FIRST_LAYER_IDS.slice(0, 20);
  const days = Math.ceil(count / cases.length) + 1;
  return Array.from({ length: days }, (_, day) =>
    cases.map((id, n) =>
      // Every seventh is missed, by no rule that a memory could have.
      answerDaysAgo(id, 3 * (days - day), {
        verdict: (5 * day + n) % 7 === 0 ? "missed" : "right",
      }),
    ),
  )
    .flat()
    .slice(0, count + cases.length);
}

test("a learner with enough answers is learnt from in a worker, which loads nothing before, and told what came of it", async ({
  page,
}) => {
  const code: string[] = [];
  page.on("request", (request) => {
    if (request.url().includes(".wasm")) code.push(request.url());
  });
  await page.goto("/#/settings");
  const section = forgetting(page);
  await expect(section).toContainText(`needs ${LEAST_ANSWERS} answers`);
  await storeAnswers(page, answersToLearnFrom(LEAST_ANSWERS - 1));
  await expect(section).toContainText(`So far there are ${LEAST_ANSWERS - 1}`);
  expect(code).toEqual([]);

  const started = page.waitForEvent("worker");
  await storeAnswers(page, [answerDaysAgo("E1", 1)]);
  const worker = await started;
  expect(worker.url()).toMatch(/\/assets\/fit-worker-[\w-]+\.js$/);
  // Whether its weights were better or not: it has tried, under the policy.
  await expect(section).toContainText(/of your answers/, { timeout: 30_000 });
  await expect(section.getByRole("alert")).toHaveCount(0);
  expect(code).toHaveLength(1);
});

test("a learner unlike most gets weights of their own, the same as Node fits", async ({
  page,
}) => {
  const { answers } = liveWith(ours({}), LEARNERS["remembers longer"], 3, {
    ...FULL.life,
    days: 200,
  });
  const start = localDay(Date.now() - 200 * DAY, 0);
  const log = answers.map(({ review: { thinking, untimed, ...review } }) =>
    sampleReview({
      ...review,
      ...(thinking === undefined ? {} : { thinking: thinking as Milliseconds }),
      ...(untimed === undefined ? {} : { untimed }),
      localDay: dayAfter(start, review.localDay),
      at: (start * DAY + review.at) as Milliseconds,
    }),
  );
  const outcome = fitWeights(
    recalledDays(gradeLog(log)),
    undefined,
    await loadTrainer(),
  );
  expect(outcome.kind).toBe("fitted");
  const fit = storedFit(undefined, outcome, WEIGHTS_VERSION);

  await page.goto("/#/settings");
  await storeAnswers(page, log);
  await expect(forgetting(page)).toContainText(fitWords(fit, 0), {
    timeout: 30_000,
  });
});

test("at the end of a round a learner is told that there are enough answers now", async ({
  page,
}) => {
  await page.goto("/#/settings");
  await storeAnswers(page, answersToLearnFrom(LEAST_ANSWERS - 1));
  await page.goto("/#/practise/E1");
  const end = page.getByRole("region", { name: "End of the round" });
  const asked = practiseState(page, "alone", "again");
  // Always missed: the case comes back three times, and then the round is over.
  while (!(await end.isVisible())) {
    await page.getByRole("application", { name: "The cube" }).press("u");
    await page.getByRole("button", { name: "I am done" }).click();
    await acknowledged(page);
    await page.getByRole("button", { name: "Next case" }).click();
    await expect(asked.or(end)).toBeVisible();
  }
  await expect(end).toContainText(`from ${LEAST_ANSWERS} of your answers`, {
    timeout: 30_000,
  });
});
