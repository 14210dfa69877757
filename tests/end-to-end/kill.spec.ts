/**
 * Acknowledged answers survive the browser being killed, and of the others at
 * most one is lost with each kill.
 *
 * Five kills in the usual run, fifty in `npm run soak`. Half of them strike
 * when a review has just been handed to the store, so that some fall between
 * an answer and its acknowledgement; the others strike at any moment.
 */
import type { Page } from "@playwright/test";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseReview } from "../../core/memory/review-schema";
import { isRoundOver, type Round } from "../../core/memory/round";
import { parseRound } from "../../core/memory/round-schema";
import { randomSource } from "../../core/random-source";
import { expect, test } from "./app";
import {
  type Sightings,
  type WatchedBrowser,
  watchedBrowser,
  type WrittenReview,
} from "./kill/watched-browser";
import { storedRows } from "./page-store";
import { practiseState } from "./practise-steps";

const KILLS = process.env["TURNWISE_SOAK"] === undefined ? 5 : 50;

/** A fifth of the kills must fall between answer and acknowledgement. */
const BETWEEN = Math.ceil(KILLS / 5);

/** Reads every stored review and round row of a page, blocks included. */
async function readStore(page: Page) {
  const {
    reviews: loose = [],
    blocks = [],
    rounds = [],
  } = await storedRows(page, ["reviews", "blocks", "rounds"]);
  const sealed = blocks.flatMap((block) => {
    const reviews: unknown = Reflect.get(Object(block), "reviews");
    return Array.isArray(reviews) ? (reviews as unknown[]) : [];
  });
  return {
    reviews: [...loose, ...sealed].map((review) => ({
      id: String(Reflect.get(Object(review), "id")),
      json: JSON.stringify(review),
    })),
    rounds: rounds.map((round) => JSON.stringify(round)),
  };
}

/** The round in a row of the store. */
function roundIn(row: string): Round {
  const parsed = parseRound(Reflect.get(Object(JSON.parse(row)), "round"));
  if (!parsed.ok) throw new Error(`${parsed.error.field}: ${row}`);
  return parsed.value;
}

/**
 * Whether a round is the step after another: the same round marked, or one
 * answer further; or a new round where the other was over.
 */
function isNextStep(to: Round, from: Round): boolean {
  if (to.id !== from.id) return isRoundOver(from) && to.results.length === 0;
  const begun = to.results.slice(0, from.results.length);
  return (
    JSON.stringify(begun) === JSON.stringify(from.results) &&
    to.results.length <= from.results.length + 1
  );
}

/**
 * Holds what is stored after a kill against what the killed browser had
 * written: one answer at most is missing, the last, and nobody was told of it.
 */
function checkLosses(
  { written, acknowledged }: Sightings,
  stored: readonly WrittenReview[],
): void {
  const ids = new Set(stored.map(({ id }) => id));
  const lost = new Set(
    written.map(({ id }) => id).filter((id) => !ids.has(id)),
  );
  expect(lost.size, "at most one answer is lost in a kill").toBeLessThan(2);
  const last = written.at(-1)?.id;
  for (const id of lost) {
    expect(id, "only the last answer can be lost").toBe(last);
    expect(acknowledged, "no acknowledged answer is lost").not.toContain(id);
  }
}

test(`answers survive ${KILLS} kills of the browser, and the round goes on @soak`, async ({
  app,
}) => {
  test.setTimeout(KILLS * 30_000);
  const profile = mkdtempSync(join(tmpdir(), "turnwise-kill-"));
  const random = randomSource(20261125);
  const written = new Map<string, string>();
  const acknowledged = new Set<string>();
  /** What was there after some kill: it stays through all later ones. */
  const kept = new Set<string>();
  /** The last two writes before a kill: the second may not have completed. */
  let roundsWritten: readonly string[] = [];
  let between = 0;
  /** Rounds found one unheard step further. */
  let steps = 0;
  let running: WatchedBrowser | undefined;
  /** What was seen of the browser that was killed last. */
  let killed: Sightings | undefined;
  /** Takes in what was stored but died on its way out; answers its ids. */
  const hearLate = (reviews: readonly WrittenReview[]): readonly string[] => {
    const unheard = reviews.filter(({ id }) => !written.has(id));
    expect(unheard.length, "at most one unheard answer").toBeLessThan(2);
    for (const { id, json } of unheard) {
      expect(parseReview(JSON.parse(json)).ok, "it is whole").toBe(true);
      written.set(id, json);
    }
    return unheard.map(({ id }) => id);
  };
  try {
    for (let kill = 0; kill < KILLS; kill++) {
      const browser = await watchedBrowser(profile, app.address);
      running = browser;
      const { page, sightings } = browser;
      // Another launch of the same profile must come back to a case by itself.
      await expect(page.locator("[data-practise-state]")).toBeVisible();
      const store = await readStore(page);
      if (killed !== undefined) checkLosses(killed, store.reviews);
      for (const { id } of store.reviews) kept.add(id);
      const unheard = hearLate(store.reviews);
      const [found] = store.rounds;
      const last = roundsWritten.at(-1);
      // Only a round that is over is taken away.
      if (found === undefined)
        expect(last === undefined || isRoundOver(roundIn(last))).toBe(true);
      else {
        const round = roundIn(found);
        // An answer and the round's advance are one: neither is there alone.
        const advanced = round.results.flatMap(({ review }) => review ?? []);
        const stored = store.reviews.map(({ id }) => id);
        expect(stored).toEqual(expect.arrayContaining(advanced));
        expect(advanced).toEqual(expect.arrayContaining([...unheard]));
        // As the last completed transaction left it, or as this window has
        // marked it since.
        const heard = [...roundsWritten, ...sightings.rounds].includes(found);
        if (last !== undefined && !heard) {
          expect(isNextStep(round, roundIn(last)), found).toBe(true);
          steps++;
        }
      }

      const strikesOnWrite = kill % 2 === 0;
      const struck = new Promise<void>((resolve) => {
        if (!strikesOnWrite) return;
        let after = 1 + random.below(3);
        browser.onWritten = () => {
          if (--after === 0) resolve(browser.kill());
        };
      });
      // Enter goes on from everything: it turns what is told, says "I am
      // done" once something is turned, and asks for the next case.
      const pressing = (async () => {
        for (;;) {
          // A turn of one's own would have to be taken back where one is told.
          if (!(await practiseState(page, "shown").isVisible()))
            await page.keyboard.press("u");
          await page.keyboard.press("Enter");
          await page.waitForTimeout(20 + random.below(60));
        }
      })().catch(() => undefined); // ends when the browser is gone
      if (strikesOnWrite) await struck;
      else {
        await page.waitForTimeout(500 + random.below(2500));
        await browser.kill();
      }
      await pressing;

      killed = sightings;
      roundsWritten = sightings.rounds.slice(-2);
      for (const { id, json } of sightings.written) written.set(id, json);
      for (const id of sightings.acknowledged) acknowledged.add(id);
      const answer = sightings.written.at(-1);
      if (answer !== undefined && !sightings.acknowledged.includes(answer.id))
        between++;
      expect(new Set(sightings.durabilities)).toEqual(
        new Set(sightings.durabilities.length === 0 ? [] : ["strict"]),
      );
    }

    const survivor = await watchedBrowser(profile, app.address);
    running = survivor;
    const stored = await readStore(survivor.page);
    await survivor.kill();
    if (killed !== undefined) checkLosses(killed, stored.reviews);
    hearLate(stored.reviews);
    const ids = stored.reviews.map(({ id }) => id);
    expect(new Set(ids).size, "no review is stored twice").toBe(ids.length);
    for (const id of acknowledged)
      expect(ids, "an acknowledged answer is stored").toContain(id);
    expect(ids, "what was stored stays").toEqual(
      expect.arrayContaining([...kept]),
    );
    for (const { id, json } of stored.reviews)
      expect(json, "stored as it was written").toBe(written.get(id));
    expect(acknowledged.size).toBeGreaterThan(KILLS / 2);
    // Nearly always the last word is heard: the strict comparison is the rule.
    expect(steps).toBeLessThanOrEqual(Math.max(1, KILLS / 5));
    expect(
      between,
      "kills between an answer and its acknowledgement",
    ).toBeGreaterThanOrEqual(BETWEEN);
  } finally {
    // A failed check must not leave a browser behind.
    await running?.kill();
    rmSync(profile, { recursive: true, force: true });
  }
});
