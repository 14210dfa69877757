/**
 * A made-up learner lives with the app: days of practice through the real
 * window, by keyboard, under a clock that is moved. At the end of every day
 * the stored log holds each answer as it was given, and, replayed here, it
 * equals what the window shows.
 *
 * Three days in the usual run, thirty in `npm run soak`. Between them the
 * window is closed or left open, a day is skipped, clocks are put forward and
 * the learner flies to Tokyo (in thirty days to New York and home, too).
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gradeLog } from "../../core/memory/grader";
import { WEIGHTS_VERSION } from "../../core/memory/schedule";
import { seedFrom } from "../../core/random-source";
import { FITTING_WORDS } from "../../renderer/state/fit-words";
import { LEARNERS } from "../simulate/learners";
import { IS_SOAK, tellSoak } from "../soak/times";
import { expect, test } from "./app";
import { calendarOf, type PractisedDay } from "./days/calendar";
import { DeskWindow, FRAME } from "./days/desk-window";
import { DOINGS } from "./days/planned-answer";
import { type GivenAnswer, practiseDay } from "./days/practised-day";
import {
  checkCasePages,
  checkKept,
  checkShelves,
  checkToday,
  replayed,
  untilAfter,
} from "./days/shown-states";
import { SimulatedLearner } from "./days/simulated-learner";
import { practiseState } from "./practise-steps";

const SEED = 3;
const DAYS = IS_SOAK ? 30 : 3;
/** A day, as one of the choices on the page. */
const MINUTES = IS_SOAK ? "10" : "5";

test(`after ${DAYS} days through the window the log holds every answer, and replayed equals what is shown @soak`, async ({
  app,
}) => {
  test.setTimeout(IS_SOAK ? 1_800_000 : 180_000);
  const profile = mkdtempSync(join(tmpdir(), "turnwise-days-"));
  const learner = new SimulatedLearner(SEED, LEARNERS["like the defaults"]);
  const calendar = calendarOf(DAYS, (day) =>
    // The third day is skipped by all means.
    day < 4 ? day !== 2 : learner.comes(),
  );
  const given: GivenAnswer[] = [];
  let window: DeskWindow | undefined;
  try {
    for (const day of calendar) {
      if (window === undefined || !day.isLeftOpen) {
        await window?.close();
        const seed = seedFrom(SEED, day.number);
        window = await DeskWindow.open(profile, app.address, day, seed);
      } else await window.pass(day.begins - window.now);
      const desk = window;
      await test.step(`day ${day.number}, seed ${SEED}`, () =>
        liveDay(desk, learner, day, given));
    }
    await window?.close();
    window = undefined;
  } finally {
    // A failed check must not leave a browser behind.
    await window?.abandon();
    rmSync(profile, { recursive: true, force: true });
  }
  const doings = DOINGS.map((doing) => ({
    doing,
    times: given.filter(({ planned }) => planned.doing === doing).length,
  }));
  const told = doings.map(({ doing, times }) => `${doing} ${times}`).join(", ");
  const line = `${given.length} answers on ${DAYS} days, seed ${SEED}: ${told}`;
  console.log(line);
  tellSoak(line);
  // Days on which everything is known would show little.
  const missed = given.filter(({ outcome }) => outcome === "missed");
  expect(missed.length).toBeGreaterThan(DAYS / 3);
  if (IS_SOAK) expect(doings.filter(({ times }) => times === 0)).toEqual([]);
});

/** A day at the desk, with everything that is to hold on it. Adds to `given`. */
async function liveDay(
  window: DeskWindow,
  learner: SimulatedLearner,
  day: PractisedDay,
  given: GivenAnswer[],
): Promise<void> {
  // Over night nothing was answered, and still much has changed.
  if (given.length > 0) {
    await window.go("#/cases");
    const replay = await replayed(window, day.localDay);
    await checkShelves(window, replay);
    await checkCasePages(window, replay, inTurn(day));
  }
  const answers = await sitDown(window, learner, day);
  given.push(...answers);
  await checkLog(window, day, given);
  await checkUntil(window, day, answers);
  await checkShown(window, day);
}

/** A day's practice, from opening Practise until the page says that the day is done. */
async function sitDown(
  window: DeskWindow,
  learner: SimulatedLearner,
  day: PractisedDay,
): Promise<readonly GivenAnswer[]> {
  const { page } = window;
  const isFirst = day.number === 0;
  await window.go("#/practise");
  // Who never answered anything is asked at once, and then told what today brings.
  await expect(practiseState(page, isFirst ? "shown" : "today")).toBeVisible();
  let isAsUsual = !isFirst;
  return practiseDay({
    window,
    learner,
    day,
    ontoday: async () =>
      checkToday(window, await replayed(window, day.localDay)),
    onsummary: async () => {
      // A fit under way may still change what everything is computed with.
      await page.getByText(FITTING_WORDS).waitFor({ state: "hidden" });
      if (isAsUsual) return true;
      isAsUsual = true;
      await window.go("#/progress");
      await window.go("#/practise");
      await chooseMinutes(window);
      return false;
    },
  });
}

/** Chooses how long a day is, where it is told what today brings. */
async function chooseMinutes({ page }: DeskWindow): Promise<void> {
  await expect(practiseState(page, "today")).toBeVisible();
  await page.getByRole("radio", { name: "15", exact: true }).focus();
  const wanted = page.getByRole("radio", { name: MINUTES, exact: true });
  while (!(await wanted.isChecked())) await page.keyboard.press("ArrowLeft");
  await page.getByRole("heading", { level: 1 }).focus();
}

/** A time as it was meant, where it was measured to the frame: a case counts as shown from the frame after it was drawn. */
function asMeant(
  measured: number | undefined,
  meant: number | undefined,
): number | undefined {
  const over = (measured ?? NaN) - (meant ?? NaN);
  return over >= 0 && over <= FRAME ? meant : measured;
}

/** Holds the stored log against what was given: each answer once, as it was meant, on its day. */
async function checkLog(
  window: DeskWindow,
  { localDay }: PractisedDay,
  given: readonly GivenAnswer[],
): Promise<void> {
  const { stored } = await replayed(window, localDay);
  const written = gradeLog(stored.log).map(({ review, outcome }, i) => {
    const meant = given[i]?.planned;
    return {
      id: review.id,
      case: review.case,
      asking: review.asking,
      answerWay: review.answerWay,
      localDay: review.localDay,
      utcOffset: review.utcOffset,
      interrupted: review.interrupted,
      // What is told has none.
      outcome: review.asking === "shown" ? undefined : outcome,
      // A mix-up that a slip of the hand explains as well is taken for a slip,
      // and a turn at random may be the way of some other case.
      takenFor: meant?.takenFor && (review.answeredAs ?? meant.takenFor),
      verdict: review.verdict,
      hints: review.hints,
      corrections: review.corrections,
      slips: review.slips,
      thinking: asMeant(review.thinking, meant?.expected.thinking),
      turning: review.turning,
      total: asMeant(review.total, meant?.expected.total),
    };
  });
  const meant = given.map(({ review, item, day, planned, outcome }) => ({
    id: review,
    case: item.case,
    asking: item.asking,
    answerWay: "on-screen",
    localDay: day.localDay,
    utcOffset: day.utcOffset,
    interrupted: false,
    outcome,
    takenFor: planned.takenFor,
    ...planned.expected,
  }));
  expect(written).toEqual(meant);
}

/** Which of the cases' pages are looked at: in thirty days a fifth of them at a time. */
function inTurn({ number }: PractisedDay): (index: number) => boolean {
  return (index) => !IS_SOAK || (index + number) % 5 === 0;
}

/** Holds everything that is shown against the log replayed. */
async function checkShown(
  window: DeskWindow,
  day: PractisedDay,
): Promise<void> {
  const replay = await replayed(window, day.localDay);
  await checkShelves(window, replay);
  await checkKept(window, replay);
  await checkCasePages(window, replay, inTurn(day));
}

/** Holds what was said after each answer of a day against the log up to it. */
async function checkUntil(
  window: DeskWindow,
  { localDay }: PractisedDay,
  given: readonly GivenAnswer[],
): Promise<void> {
  const replay = await replayed(window, localDay);
  const { log, settings } = replay.stored;
  const version = settings.fit?.weightsVersion ?? WEIGHTS_VERSION;
  // What was said before a fit was taken was said by other weights.
  const said = given.filter(({ review }) =>
    log.some((one) => one.id === review && one.weightsVersion === version),
  );
  expect(
    said.map(({ until }) =>
      until.startsWith("Should last") ? until : undefined,
    ),
  ).toEqual(said.map(({ review }) => untilAfter(replay, review)));
}
