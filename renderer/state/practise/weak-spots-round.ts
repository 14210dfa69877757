/** Where a learner loses most in a solve, and a round of it. */
import { planDay } from "../../../core/memory/day-plan";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { answerTarget } from "../../../core/memory/answer-target";
import { arranged } from "../../../core/memory/round-arrangement";
import { chanceNow } from "../../../core/memory/schedule";
import { secondsPractised } from "../../../core/memory/time-needed";
import {
  type WeakSpot,
  weakSpots,
  weakSpotsRound,
} from "../../../core/memory/weak-spots";
import type { LearnerState } from "../learner.svelte";
import { alikeFor } from "./alike-for";
import { askingTimes } from "./asking-times";
import { dayInput } from "./day-input";

/** What a learner is slow at or unsure of, and what of it fits their minutes. */
export interface WeakSpotsPlan {
  /** The most costly first; empty where nothing is lost. */
  readonly spots: readonly WeakSpot[];
  /** What a round asks, in its order. */
  readonly asked: readonly PlannedCase[];
  /** How long that takes. Units: seconds. */
  readonly seconds: number;
}

/** A round has so many minutes at least, however little is left of the day's. */
const LEAST_MINUTES = 5;

/** The weak spots among the cases of a learner's decks, and of them what fits the rest of their minutes. */
export function weakSpotsOf(learner: LearnerState): WeakSpotsPlan {
  const { reviews, settings, today, schedule } = learner;
  const timesOf = askingTimes(learner);
  const spots = weakSpots(planDay(dayInput(learner, undefined)), {
    usualSeconds(planned) {
      const { way, times } = timesOf(planned);
      const usual = times.usual(planned);
      return usual === undefined ? undefined : usual / answerTarget(1, way);
    },
    chance({ case: id, hold }) {
      const memory = learner.memoryOf(id, hold);
      return memory === undefined ? 0 : chanceNow(memory, today, schedule);
    },
    level: settings.level,
  });
  const left = settings.minutes - secondsPractised(reviews, today) / 60;
  const secondsToAsk = (planned: PlannedCase) =>
    timesOf(planned).times.toAsk({ ...planned, times: 1 });
  const asked = weakSpotsRound(spots, {
    minutes: Math.max(LEAST_MINUTES, left),
    secondsToAsk,
  });
  return {
    spots,
    asked: arranged(asked, alikeFor(learner)),
    seconds: asked.reduce(
      (sum, planned) => sum + planned.times * secondsToAsk(planned),
      0,
    ),
  };
}
