/**
 * A made-up learner's months under some way of choosing what to ask: the log
 * it makes, with the truth beside every answer, and the time it takes.
 */
import { FIRST_LAYER_IDS, type CaseId } from "../../core/cases/case-ids";
import { casesOfStage } from "../../core/cases/case-table";
import { present } from "../../core/invariant";
import { dayNumber } from "../../core/memory/local-day";
import type { GradableReview } from "../../core/memory/grader";
import {
  type LearnerTraits,
  type SyntheticAnswer,
  SyntheticLearner,
} from "../../core/memory/learner-model/synthetic-learner";
import type { Milliseconds, Review } from "../../core/memory/review";
import { randomSource, seedFrom } from "../../core/random-source";

/** The cases that are learnt, in their order: the first layer's, then pairs. */
export const SIMULATED_CASES: readonly CaseId[] = [
  ...FIRST_LAYER_IDS,
  ...casesOfStage("pairs").map(({ id }) => id),
].slice(0, 60);

/** What of a review the simulation makes. */
export type SimulatedReview = GradableReview &
  Pick<Review, "turning" | "turns">;

/** An answer with its truth. */
export interface LivedAnswer {
  readonly review: SimulatedReview;
  /** Index of the case. */
  readonly id: number;
  readonly day: number;
  /** What the chance truly was, the day's mood apart; 1 for a showing. */
  readonly chance: number;
  readonly isRecalled: boolean;
}

/** How a day's cases are chosen. */
export interface Chooser {
  /** The cases to be asked on a day, of those met, the most pressing first. */
  dueOn(day: number): readonly number[];
  /** Told of every answer, showings too. */
  hear(answer: LivedAnswer): void;
  /** Before a day begins. */
  begin?(day: number): void;
}

/** How long a life is, and how it is filled. */
export interface LifeDesign {
  readonly days: number;
  readonly cases: number;
  readonly newADay: number;
  /** How many cases are asked a day at most. */
  readonly mostADay: number;
}

/** What is measured on one day. */
export interface LivedDay {
  readonly day: number;
  readonly minutes: number;
  /** The mean true chance over all cases met, before the day's answers; undefined without any. */
  readonly known: number | undefined;
}

/** A life with what it came to. */
export interface Life {
  readonly answers: readonly LivedAnswer[];
  readonly days: readonly LivedDay[];
}

/** Reading what happened and setting up the next, as the app estimates it. Units: seconds. */
const BETWEEN = 6;
/** Being shown a way, and doing it three times. Units: seconds. */
const SHOWING = 60;
/** After a miss: looking at the way, and the case once more. Units: seconds. */
const RETURN = 25;

const DAY = 86_400_000;
const NINE = 9 * 3_600_000;
const TARGET = 10;
/** A holiday of two weeks begins about here. */
const HOLIDAY = { from: 100, over: 60, days: 14 };

/** Lives some months. Shape: the same seed is the same learner, whoever chooses. */
export function liveWith(
  chooser: Chooser,
  traits: LearnerTraits,
  seed: number,
  design: LifeDesign,
): Life {
  const learner = new SyntheticLearner(
    randomSource(seedFrom(seed, 0)),
    traits,
    design.cases,
  );
  const calendar = randomSource(seedFrom(seed, 1));
  const holiday = HOLIDAY.from + calendar.below(HOLIDAY.over);
  const answers: LivedAnswer[] = [];
  const days: LivedDay[] = [];
  let met = 0;
  for (let day = 0; day < design.days; day++) {
    const known = Array.from({ length: met }, (_, id) =>
      learner.chanceOf(id, day),
    );
    const isAway =
      calendar.below(1000) < traits.skipsDays * 1000 ||
      (day >= holiday && day < holiday + HOLIDAY.days);
    let seconds = 0;
    const say = (answer: LivedAnswer) => {
      answers.push(answer);
      chooser.hear(answer);
    };
    if (!isAway) {
      chooser.begin?.(day);
      for (const id of chooser.dueOn(day).slice(0, design.mostADay)) {
        const chance = learner.chanceOf(id, day);
        const given = present(learner.ask(id, day), "it was taught");
        say(livedAnswer(id, day, answers.length, given, chance));
        seconds += (given.thinking + given.turning) / 1000 + BETWEEN;
        if (!given.isRecalled) seconds += RETURN;
      }
      for (let n = 0; n < design.newADay && met < design.cases; n++, met++) {
        learner.teach(met, day);
        say(showing(met, day, answers.length));
        say(firstAnswer(met, day, answers.length));
        seconds += SHOWING;
      }
    }
    days.push({
      day,
      minutes: seconds / 60,
      known:
        known.length === 0
          ? undefined
          : known.reduce((sum, chance) => sum + chance, 0) / known.length,
    });
  }
  return { answers, days };
}

function reviewOf(
  id: number,
  day: number,
  n: number,
  changes: Partial<SimulatedReview>,
): SimulatedReview {
  return {
    id: `answer-${String(n).padStart(6, "0")}`,
    learner: "synthetic",
    case: present(SIMULATED_CASES[id], "there are as many cases"),
    hold: "up",
    at: (day * DAY + NINE + n) as Milliseconds,
    localDay: dayNumber(day),
    answerWay: "on-screen",
    asking: "alone",
    interrupted: false,
    verdict: "right",
    corrections: 0,
    hints: [],
    total: 5000 as Milliseconds,
    target: TARGET,
    turns: [],
    ...changes,
  };
}

const ms = (value: number) => Math.round(value) as Milliseconds;

function livedAnswer(
  id: number,
  day: number,
  n: number,
  given: SyntheticAnswer,
  chance: number,
): LivedAnswer {
  const each = given.turning / given.turns;
  return {
    review: reviewOf(id, day, n, {
      verdict: given.isRecalled ? "right" : "missed",
      thinking: ms(given.thinking),
      turning: ms(given.turning),
      total: ms(given.thinking + given.turning),
      turns: Array.from({ length: given.turns }, (_, i) => ({
        turn: "R",
        at: ms(given.thinking + each * i),
      })),
      corrections: given.corrections,
      hints: given.isHinted ? ["piece"] : [],
    }),
    id,
    day,
    chance,
    isRecalled: given.isRecalled,
  };
}

function showing(id: number, day: number, n: number): LivedAnswer {
  const review = reviewOf(id, day, n, { asking: "shown" });
  return { review, id, day, chance: 1, isRecalled: true };
}

function firstAnswer(id: number, day: number, n: number): LivedAnswer {
  const review = reviewOf(id, day, n, {});
  return { review, id, day, chance: 1, isRecalled: true };
}
