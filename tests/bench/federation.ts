/**
 * What a new block of results costs where many are there already: read from a
 * file, held against its digest, taken in by one strict transaction, in the
 * real window. The price must not depend on what is there.
 *
 * The store is filled with rows as the app writes them, of 2,000 learners. A
 * block's time is that of fifty new files less that of one, over 49: what the
 * dialog costs by itself is not counted.
 */
import { chromium, type Page } from "@playwright/test";
import type { Milliseconds, Review } from "../../core/memory/review";
import type { AnswersBlock } from "../../core/sharing/results-block";
import { answerLineOf } from "../../core/sharing/shared-answer";
import { DATABASE_NAME } from "../../renderer/storage/database";
import { packResults } from "../../renderer/storage/results-files";
import { startApp } from "../end-to-end/app";
import { sampleReview } from "../renderer/storage/sample-review";
import { chromiumOptions } from "../runner/chromium";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const LEARNERS = 2000;
const THERE = [0, 1000, 2000, 20_000];
const FILES = 50;
const TIMES = 5;
/** Answers in a block: a day's round. */
const ANSWERS = 20;
/** A class of 40 looked at once a day is then taken in within a second. */
const TARGET = 25;

const hex = (n: number, digits: number) => n.toString(16).padStart(digits, "0");

function learnerId(n: number): string {
  return `00000000-0000-4000-8000-${hex(n, 12)}`;
}

function answers(begin: string): readonly Review[] {
  return Array.from({ length: ANSWERS }, (_, i) =>
    sampleReview({ id: `${begin}-${hex(i, 4)}` }),
  );
}

function blockOf(learner: number, madeAt: number): AnswersBlock {
  return {
    kind: "answers",
    learner: learnerId(learner % LEARNERS),
    name: `Learner ${learner % LEARNERS}`,
    madeAt: madeAt as Milliseconds,
    answers: answers(`${learner} ${madeAt}`).map((review) =>
      answerLineOf(review, "answers"),
    ),
  };
}

/** Puts rows into the store until so many blocks are there. */
async function fill(page: Page, from: number, to: number): Promise<void> {
  const STEP = 500;
  for (let begin = from; begin < to; begin += STEP) {
    const rows = Array.from({ length: Math.min(STEP, to - begin) }, (_, i) => ({
      id: hex(begin + i, 64),
      ...blockOf(begin + i, begin + i + 1),
    }));
    await page.evaluate(
      async ({ name, rows }) => {
        const opening = indexedDB.open(name);
        await new Promise((resolve) => (opening.onsuccess = resolve));
        const database = opening.result;
        const writing = database.transaction(
          ["heard", "classmates"],
          "readwrite",
        );
        for (const row of rows) {
          writing.objectStore("heard").put(row);
          const { id, madeAt, name } = row;
          writing.objectStore("classmates").put({
            id: row.learner,
            shared: { id, madeAt, name, newest: 1 },
          });
        }
        await new Promise((resolve) => (writing.oncomplete = resolve));
        database.close();
      },
      { name: DATABASE_NAME, rows },
    );
  }
}

let made = 1_000_000;

/** Takes new files in through the page, and says how long it took. Units: milliseconds. */
async function timeOf(page: Page, count: number): Promise<number> {
  const files = [];
  for (let i = 0; i < count; i += 1) {
    made += 1;
    const { id, bytes } = await packResults(blockOf(made, made));
    files.push({
      name: `${id}.turnwise-results`,
      mimeType: "application/octet-stream",
      buffer: Buffer.from(bytes),
    });
  }
  const dialog = page.getByRole("dialog");
  const choosing = page.waitForEvent("filechooser");
  await dialog.getByRole("button", { name: "Take files in…" }).click();
  const chooser = await choosing;
  const begin = performance.now();
  await chooser.setFiles(files);
  const told = dialog.getByRole("status");
  await told.waitFor();
  const time = performance.now() - begin;
  const words = await told.innerText();
  if (!words.includes(`${ANSWERS} answers.`) || words.includes("not be read"))
    throw new WrongAnswer(words);
  return time;
}

async function samplesWith(page: Page): Promise<readonly number[]> {
  await page.reload();
  await page.getByRole("button", { name: "Take results in…" }).click();
  await timeOf(page, FILES);
  const samples: number[] = [];
  for (let i = 0; i < TIMES; i += 1) {
    const one = await timeOf(page, 1);
    const many = await timeOf(page, FILES);
    samples.push((many - one) / (FILES - 1));
  }
  return samples;
}

/** Takes blocks in where 0, 1,000, 2,000 and 20,000 are there. */
export async function federation(): Promise<readonly BenchResult[]> {
  const app = await startApp();
  const browser = await chromium.launch(chromiumOptions());
  try {
    const page = await browser.newPage({ baseURL: app.address });
    await page.goto("/#/coach/class");
    await page.getByRole("button", { name: "Take results in…" }).waitFor();
    const results: BenchResult[] = [];
    let filled = 0;
    for (const there of THERE) {
      await fill(page, filled, there);
      filled = there;
      results.push(
        resultFrom({
          name: `federation: a new block beside ${there.toLocaleString("en")}`,
          unit: "ms",
          better: "lower",
          samples: await samplesWith(page),
          target: TARGET,
        }),
      );
    }
    return results;
  } finally {
    await browser.close();
    await app.stop();
  }
}
