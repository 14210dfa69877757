/**
 * The made-up learners. `likeDefaults` is tuned so that the library's own
 * weights foretell them without a lasting bias (3 points too high in the first
 * month, within 1 point from then on); the others are that learner shifted.
 */
import type { LearnerTraits } from "../../core/memory/learner-model/synthetic-learner";

const LIKE_DEFAULTS: LearnerTraits = {
  decay: 0.2,
  firstStrength: 0.3,
  growth: 1,
  saturation: 0.2,
  kept: 0.6,
  savings: 0.35,
  easeSpread: 0.25,
  fluctuation: 0.15,
  telling: 0.25,
  skipsDays: 0.12,
};

/** Each kind of learner by its name. */
export const LEARNERS = {
  "like the defaults": LIKE_DEFAULTS,
  "like the defaults, times say nothing": { ...LIKE_DEFAULTS, telling: 0 },
  "forgets faster": {
    ...LIKE_DEFAULTS,
    firstStrength: 0.15,
    growth: 0.45,
    decay: 0.3,
  },
  "remembers longer": {
    ...LIKE_DEFAULTS,
    firstStrength: 1.5,
    growth: 4,
  },
  "remembers longer, times say nothing": {
    ...LIKE_DEFAULTS,
    firstStrength: 1.5,
    growth: 4,
    telling: 0,
  },
} as const satisfies Readonly<Record<string, LearnerTraits>>;

/** The name of a kind of learner. */
export type LearnerKind = keyof typeof LEARNERS;
