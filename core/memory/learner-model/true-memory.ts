/**
 * The memory of a made-up learner: what is true of them, so that forecasts can
 * be held against it.
 *
 * On purpose not the scheduler's model, or it would only be tested against
 * itself: chance falls by a power of time with an exponent of the learner's
 * own, strength grows with what had been forgotten, and less the stronger it
 * is; every case has an ease that nobody is told, and every day its mood.
 */

/** How a learner remembers. */
export interface MemoryTraits {
  /** The exponent of forgetting. */
  readonly decay: number;
  /** Days after which a case just taught is known by a chance of 0.9. */
  readonly firstStrength: number;
  /** How far a recall at a chance of 0.9 multiplies a strength of one day, less one. */
  readonly growth: number;
  /** By which power of the strength growth gets less. */
  readonly saturation: number;
  /** Strength after a miss, of a strength of one day. */
  readonly kept: number;
  /** By which power of the strength before more is kept. */
  readonly savings: number;
}

/** The chance at which strength is measured. */
const MEASURED_AT = 0.9;

/** Nothing is forgotten faster than this. Units: days. */
const LEAST_STRENGTH = 0.05;

/**
 * The chance that a case of some strength is known after some days.
 *
 * Units: `strength` in days until the chance is 0.9.
 */
export function trueChance(
  traits: MemoryTraits,
  strength: number,
  days: number,
): number {
  const scale = MEASURED_AT ** (-1 / traits.decay) - 1;
  return (1 + (scale * days) / strength) ** -traits.decay;
}

/** The strength of a case just taught. Units: `ease` in ln, 0 for a middling case. */
export function taughtStrength(traits: MemoryTraits, ease: number): number {
  return Math.max(LEAST_STRENGTH, traits.firstStrength * Math.exp(ease));
}

/** The strength after a case was recalled at a chance: what was nearly forgotten gains most. */
export function strengthAfterRecall(
  traits: MemoryTraits,
  strength: number,
  ease: number,
  chance: number,
): number {
  const forgotten = (1 - chance) / (1 - MEASURED_AT);
  const gain =
    traits.growth *
    Math.exp(ease) *
    strength ** -traits.saturation *
    Math.sqrt(forgotten);
  return strength * (1 + gain);
}

/** The strength after a case was missed and shown again. */
export function strengthAfterMiss(
  traits: MemoryTraits,
  strength: number,
  ease: number,
): number {
  const kept = traits.kept * strength ** traits.savings * Math.exp(ease);
  return Math.max(LEAST_STRENGTH, Math.min(strength, kept));
}
