/**
 * How long the class page takes to open in the real window: 40 learners by
 * 200 cases, each case answered 40 times by each in two years, 320,000 answers
 * in the store as sealing leaves them. Warm is what a coach waits for: every
 * summary is kept. Cold reads, grades and sums up every log; one changed reads
 * that of one learner who has answered since.
 *
 * The time runs in the page, from the change of the address to the frame after
 * the whole table is in it; the app has started before.
 */
import { chromium, type Page } from "@playwright/test";
import { casesOfStage } from "../../core/cases/case-table";
import { holdFor } from "../../core/cases/hold-in-stage";
import { STAGES } from "../../core/cases/stage";
import { GRADING_VERSION } from "../../core/memory/grade";
import type { Review } from "../../core/memory/review";
import { WEIGHTS_VERSION } from "../../core/memory/schedule";
import { DATABASE_NAME } from "../../renderer/storage/database";
import { BLOCK_SIZE } from "../../renderer/storage/sealing";
import { startApp } from "../end-to-end/app";
import { chromiumOptions } from "../runner/chromium";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const LEARNERS = 40;
const CASES = 200;
/** At most so many of one stage, so that there are some of many. */
const OF_A_STAGE = 40;
const ANSWERS_A_CASE = 40;
const DAYS = 730;
const TIMES = 5;
/** The issue's own: 40 learners, 200 cases and 2 years in under 2 s. */
const TARGET = 2000;

/** Cases from the first edge on. */
const ASKED = STAGES.flatMap((stage) =>
  casesOfStage(stage)
    .slice(0, OF_A_STAGE)
    .map(({ id }) => ({ case: id, hold: holdFor(stage, "up") })),
).slice(0, CASES);

type Template = Omit<
  Review,
  "id" | "learner" | "case" | "hold" | "at" | "localDay" | "verdict"
>;

/** What every answer has; the sizes are those of a real one. */
const TEMPLATE = {
  variant: { home: 0, placed: [1, 2, 3], turnedAway: 0, seenFrom: 0 },
  firstColour: "white",
  position: "?".repeat(54),
  answerWay: "on-screen",
  asking: "alone",
  utcOffset: 0,
  thinking: 2000,
  turning: 3000,
  total: 5000,
  turns: Array.from({ length: 7 }, (_, i) => ({
    turn: "R'",
    at: 2000 + 400 * i,
  })),
  corrections: 0,
  slips: 0,
  hints: [],
  reported: false,
  interrupted: false,
  deck: "starter-edges",
  target: 8,
  gradingVersion: GRADING_VERSION,
  weightsVersion: WEIGHTS_VERSION,
} as unknown as Template;

interface Filling {
  readonly name: string;
  readonly asked: typeof ASKED;
  readonly template: Template;
  readonly learners: number;
  readonly answersACase: number;
  readonly days: number;
  readonly blockSize: number;
}

/** Runs in the page: fills the store, learner by learner. */
async function fill({
  name,
  asked,
  template,
  learners,
  answersACase,
  days,
  blockSize,
}: Filling): Promise<void> {
  const done = <T>(request: IDBRequest<T>) =>
    new Promise<T>((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(new Error(request.error?.name));
    });
  const database = await done(indexedDB.open(name));
  const DAY = 86_400_000;
  const start = Math.floor(Date.now() / DAY) - days;
  // A generator that is good enough to spread misses (Park and Miller).
  let state = 20_261_126;
  const below = (n: number) => (state = (state * 48_271) % 2_147_483_647) % n;
  for (let n = 0; n < learners; n++) {
    const writing = database.transaction(
      ["learners", "reviews", "blocks"],
      "readwrite",
    );
    const people = writing.objectStore("learners");
    const [desk] = await done(people.getAllKeys());
    const learner =
      n === 0 && typeof desk === "string" ? desk : crypto.randomUUID();
    people.put({ id: learner, name: `Learner ${n + 1}`, createdAt: n });
    const log: object[] = [];
    for (let round = 0; round < answersACase; round++)
      asked.forEach((one, i) => {
        // The newest today, so that nobody is away.
        const day =
          start +
          days -
          Math.floor(((answersACase - 1 - round) * days) / answersACase);
        log.push({
          ...template,
          ...one,
          id: crypto.randomUUID(),
          learner,
          at: day * DAY + 4 * 3_600_000 + 1000 * i,
          localDay: day,
          verdict: below(10) === 0 ? "missed" : "right",
        });
      });
    const sealed = Math.floor(log.length / blockSize) - 1;
    for (let number = 0; number < sealed; number++)
      writing.objectStore("blocks").put({
        learner,
        number,
        reviews: log.slice(number * blockSize, (number + 1) * blockSize),
      });
    for (const row of log.slice(sealed * blockSize))
      writing.objectStore("reviews").put(row);
    await new Promise((resolve, reject) => {
      writing.oncomplete = resolve;
      writing.onerror = () => reject(new Error(writing.error?.name));
    });
  }
  database.close();
}

/** Runs in the page: goes to the class and resolves with how long its whole table took. Units: milliseconds. */
function openClass(cells: number): Promise<number> {
  return new Promise((resolve) => {
    const began = performance.now();
    const look = (): void => {
      if (document.querySelectorAll('[role="grid"] td').length < cells)
        requestAnimationFrame(look);
      else
        requestAnimationFrame(() => {
          resolve(performance.now() - began);
        });
    };
    location.hash = "#/coach/class";
    look();
  });
}

/** Starts the app anew and opens the class. */
async function opened(page: Page, address: string): Promise<number> {
  await page.goto(`${address}#/practise`);
  await page.reload();
  await page.locator("[data-case], main h1, main h2").first().waitFor();
  // Whatever the start still does in the background is not the class's.
  await page.waitForTimeout(1500);
  const time = await page.evaluate(openClass, LEARNERS * CASES);
  const stuck = await page.locator('[role="grid"] td.stuck').count();
  if (stuck === 0) throw new WrongAnswer("nobody is stuck");
  return time;
}

/** Runs in the page: one learner answers once more. */
async function answerOnce({
  name,
  template,
}: Pick<Filling, "name" | "template">): Promise<void> {
  const done = <T>(request: IDBRequest<T>) =>
    new Promise<T>((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(new Error(request.error?.name));
    });
  const database = await done(indexedDB.open(name));
  const writing = database.transaction(["learners", "reviews"], "readwrite");
  const [learner] = await done(writing.objectStore("learners").getAllKeys());
  const at = Date.now();
  writing.objectStore("reviews").put({
    ...template,
    case: "E1",
    hold: "up",
    id: crypto.randomUUID(),
    learner,
    at,
    localDay: Math.floor(at / 86_400_000),
    verdict: "right",
  });
  await new Promise((resolve) => {
    writing.oncomplete = resolve;
  });
  database.close();
}

/** Measures the class page, cold once, after one learner's answer once, and warm. */
export async function classTimes(): Promise<BenchResult[]> {
  if (ASKED.length !== CASES) throw new WrongAnswer("there are not 200 cases");
  const app = await startApp();
  const browser = await chromium.launch(chromiumOptions());
  try {
    const page = await browser.newPage({
      viewport: { width: 1280, height: 800 },
    });
    page.setDefaultTimeout(180_000);
    await page.goto(app.address);
    await page.locator("[data-case]").waitFor();
    await page.evaluate(fill, {
      name: DATABASE_NAME,
      asked: ASKED,
      template: TEMPLATE,
      learners: LEARNERS,
      answersACase: ANSWERS_A_CASE,
      days: DAYS,
      blockSize: BLOCK_SIZE,
    });
    const cold = await opened(page, app.address);
    const warm: number[] = [];
    for (let n = 0; n < TIMES; n++) warm.push(await opened(page, app.address));
    await page.evaluate(answerOnce, {
      name: DATABASE_NAME,
      template: TEMPLATE,
    });
    const changed = await opened(page, app.address);
    const form = { unit: "ms", better: "lower" } as const;
    return [
      resultFrom({
        ...form,
        name: "class: 40 learners by 200 cases, summaries kept",
        samples: warm,
        target: TARGET,
      }),
      resultFrom({
        ...form,
        name: "class: after one learner has answered",
        samples: [changed],
      }),
      resultFrom({
        ...form,
        name: "class: 320,000 answers, cold",
        samples: [cold],
      }),
    ];
  } finally {
    await browser.close();
    await app.stop();
  }
}
