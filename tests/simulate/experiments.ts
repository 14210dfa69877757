/** What is asked of the simulation, experiment by experiment. */
import { present } from "../../core/invariant";
import {
  fitWeights,
  type FitOutcome,
  type Trainer,
} from "../../core/memory/fit";
import { gradeLog } from "../../core/memory/grader";
import {
  forecastsOf,
  recalledDays,
  type RecalledDay,
} from "../../core/memory/recalls";
import type { ScheduleSettings } from "../../core/memory/schedule";
import { seedFrom } from "../../core/random-source";
import { everyDay, fixedIntervals, ours } from "./choosers";
import {
  type Figure,
  figureOver,
  gainOf,
  type Score,
  scoreOf,
  tested,
  type TestedForecast,
} from "./forecast-score";
import { LEARNERS, type LearnerKind } from "./learners";
import {
  type Chooser,
  type Life,
  type LifeDesign,
  liveWith,
  type SimulatedReview,
} from "./life";

/** How much is simulated. */
export interface Design {
  readonly life: LifeDesign;
  readonly learners: number;
  readonly seed: number;
}

/** Issue 5: 240 days, 60 cases, 24 learners. */
export const FULL: Design = {
  life: { days: 240, cases: 60, newADay: 2, mostADay: 200 },
  learners: 24,
  seed: 20_261,
};

/** The seed of each learner. */
export function seedsOf({ learners, seed }: Design): readonly number[] {
  return Array.from({ length: learners }, (_, n) => seedFrom(seed, n));
}

function livesOf(
  kind: LearnerKind,
  design: Design,
  chooser: () => Chooser,
): readonly Life[] {
  return seedsOf(design).map((seed) =>
    liveWith(chooser(), LEARNERS[kind], seed, design.life),
  );
}

/** The days of a life that counted, so many answers from its beginning. */
function daysOf(
  { answers }: Pick<Life, "answers">,
  count = answers.length,
): readonly RecalledDay<SimulatedReview>[] {
  return recalledDays(
    gradeLog(answers.slice(0, count).map(({ review }) => review)),
  );
}

/** Forecasts from some answer of the log on, under some settings. */
function forecastsFrom(
  life: Life,
  settings: ScheduleSettings,
  from: number,
): readonly TestedForecast[] {
  const later = life.answers.slice(from);
  const truths = new Map(
    later.map(({ review, chance }) => [review.id, chance]),
  );
  return tested(forecastsOf(daysOf(life), settings), truths);
}

/** Where in the log so many answers, first ones of a case apart, have been given; undefined where there are fewer. */
function placeAfter(life: Life, answers: number): number | undefined {
  const later = daysOf(life).filter(({ before }) => before !== undefined);
  const last = later[answers - 1];
  if (last === undefined) return undefined;
  return life.answers.findIndex(({ review }) => review === last.review) + 1;
}

/** What a fit after so many answers does for the forecasts of all that come after. */
export interface FitResult {
  readonly kind: LearnerKind;
  readonly after: number;
  /** How many learners ever gave so many answers and as many as 50 after. */
  readonly learners: number;
  /** How many fits passed the gate. */
  readonly installed: number;
  readonly before: Score;
  /** With the weights that are used after the gate. */
  readonly gated: Score;
  readonly gain: Figure;
  /** The gain had every fit been installed. */
  readonly gainUngated: Figure;
  /** The gain of the learner who gains least. */
  readonly worst: number;
}

/** Fits each learner after so many answers and looks at the rest of the log, whose times are the same whatever is foretold. */
export function fitAfter(
  kind: LearnerKind,
  design: Design,
  train: Trainer,
  amounts: readonly number[],
): readonly FitResult[] {
  const lives = livesOf(kind, design, () => ours({}));
  return amounts.flatMap((after) => {
    const learners = lives.flatMap((life) => {
      const place = placeAfter(life, after);
      if (place === undefined) return [];
      const before = forecastsFrom(life, {}, place);
      if (before.length < 50) return [];
      // The trained weights are wanted even where the gate keeps the old ones.
      let trained: readonly number[] = [];
      const outcome = fitWeights(
        daysOf(life, place),
        undefined,
        (items) => {
          trained = Array.from(train(items));
          return trained;
        },
        0,
      );
      return [
        {
          before,
          gated: forecastsFrom(life, settingsAfter(outcome), place),
          ungated: forecastsFrom(life, { weights: trained }, place),
          isInstalled: outcome.kind === "fitted",
        },
      ];
    });
    if (learners.length < 2) return [];
    const before = learners.map((one) => one.before);
    const gated = learners.map((one) => one.gated);
    return [
      {
        kind,
        after,
        learners: learners.length,
        installed: learners.filter(({ isInstalled }) => isInstalled).length,
        before: scoreOf(before),
        gated: scoreOf(gated),
        gain: gainOf(before, gated),
        gainUngated: gainOf(
          before,
          learners.map((one) => one.ungated),
        ),
        worst: Math.min(
          ...learners.map((one) => gainOf([one.before], [one.gated]).value),
        ),
      },
    ];
  });
}

/** The settings after a fit. */
export function settingsAfter(outcome: FitOutcome): ScheduleSettings {
  return outcome.kind === "too-few" || outcome.weights === undefined
    ? {}
    : { weights: outcome.weights };
}

/** The time it takes to hold what is known, and how well it is. */
export interface HoldingResult {
  readonly kind: LearnerKind;
  readonly chooser: string;
  readonly minutesAWeek: Figure;
  /** Mean true chance over all cases and days. */
  readonly known: Figure;
}

/** From when on all cases have been met. Units: days. */
const HOLDING_FROM = 60;

/** How often our scheduler tries to fit. Units: days. */
const REFIT_EVERY = 30;

function refitting(train: Trainer) {
  let weights: readonly number[] | undefined;
  return (day: number, log: readonly SimulatedReview[]) => {
    if (day === 0 || day % REFIT_EVERY !== 0) return undefined;
    const outcome = fitWeights(recalledDays(gradeLog(log)), weights, train);
    if (outcome.kind !== "fitted") return undefined;
    weights = outcome.weights;
    return weights;
  };
}

function heldBy(
  kind: LearnerKind,
  design: Design,
  name: string,
  chooser: () => Chooser,
): HoldingResult {
  const weeks = livesOf(kind, design, chooser).map(({ days }) => {
    const late = days.filter(({ day }) => day >= HOLDING_FROM);
    const mean = (of: (day: (typeof late)[number]) => number) =>
      late.reduce((sum, day) => sum + of(day), 0) / late.length;
    return {
      minutes: 7 * mean(({ minutes }) => minutes),
      known: mean(({ known }) => present(known, "cases have been met")),
    };
  });
  const over = (key: "minutes" | "known") =>
    figureOver(
      weeks,
      (drawn) => drawn.reduce((sum, week) => sum + week[key], 0) / drawn.length,
    );
  return {
    kind,
    chooser: name,
    minutesAWeek: over("minutes"),
    known: over("known"),
  };
}

const OURS = "ours at";

/** What holding the cases costs by our scheduler at some levels, by fixed intervals, and by asking everything every day. */
export function holding(
  kind: LearnerKind,
  design: Design,
  train: Trainer,
  levels: readonly number[],
): readonly HoldingResult[] {
  return [
    ...levels.map((level) =>
      heldBy(kind, design, `${OURS} ${level}`, () =>
        ours({ level }, refitting(train)),
      ),
    ),
    heldBy(kind, design, "1-3-7-16-35 days", fixedIntervals),
    heldBy(kind, design, "every day", everyDay),
  ];
}

/** What our scheduler needs to hold so much, between the levels that hold less and more. Units: minutes a week; undefined where none of the levels does. */
export function minutesToHold(
  results: readonly HoldingResult[],
  known: number,
): number | undefined {
  const own = results
    .filter(({ chooser }) => chooser.startsWith(OURS))
    .toSorted((a, b) => a.known.value - b.known.value);
  const above = own.findIndex((one) => one.known.value >= known);
  const [low, high] = [own[above - 1], own[above]];
  if (high === undefined) return undefined;
  if (low === undefined) return high.minutesAWeek.value;
  const share =
    (known - low.known.value) / (high.known.value - low.known.value);
  const [from, to] = [low.minutesAWeek.value, high.minutesAWeek.value];
  return from + share * (to - from);
}
