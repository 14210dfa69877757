/** Where a learner loses most in a solve, and a round of it. */
import { areAlike } from "../../../core/cases/alike";
import { planDay } from "../../../core/memory/day-plan";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { answerTarget } from "../../../core/memory/answer-target";
import { arranged } from "../../../core/memory/round-arrangement";
import { chanceNow } from "../../../core/memory/schedule";
import { timeNeeded } from "../../../core/memory/time-needed";
import {
  type WeakSpot,
  weakSpots,
  weakSpotsRound,
} from "../../../core/memory/weak-spots";
import type { LearnerState } from "../learner.svelte";
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

/** The weak spots among the cases of a learner's decks. */
export function weakSpotsOf(learner: LearnerState): WeakSpotsPlan {
  const { reviews, settings, today, schedule } = learner;
  const { answerWay, minutes, level } = settings;
  const times = timeNeeded(reviews, answerWay);
  const inHands = answerTarget(1, answerWay);
  const spots = weakSpots(planDay(dayInput(learner, undefined)), {
    usualSeconds(planned) {
      const usual = times.usual(planned);
      return usual === undefined ? undefined : usual / inHands;
    },
    chance({ case: id, hold }) {
      const memory = learner.memoryOf(id, hold);
      return memory === undefined ? 0 : chanceNow(memory, today, schedule);
    },
    level,
  });
  const asked = weakSpotsRound(spots, {
    minutes,
    secondsToAsk: (planned) => times.toAsk({ ...planned, times: 1 }),
  });
  return {
    spots,
    asked: arranged(asked, areAlike),
    seconds: asked.reduce((sum, planned) => sum + times.toAsk(planned), 0),
  };
}
