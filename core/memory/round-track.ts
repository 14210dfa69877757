/**
 * What a round still has to ask of one case. A round is a handful of tracks;
 * `round-order.ts` says whose turn it is.
 */
import type { PlannedCase } from "./plan-candidates";
import type { Grade } from "./grade";
import type { Asking } from "./review";

/** Why a step is asked. */
export const STEP_KINDS = ["plain", "spaced", "return"] as const;

/**
 * `plain` steps are always asked. A `spaced` repeat is left out where no other
 * case is left to stand before it: it would not be spaced. A `return` brings a
 * missed case back.
 */
export type StepKind = (typeof STEP_KINDS)[number];

/** One asking to come. */
export interface RoundStep {
  readonly asking: Asking;
  readonly kind: StepKind;
  /** How many others should stand between it and the case's last asking; 0: none may. */
  readonly gap: number;
}

/** A case in a round. */
export interface RoundTrack {
  readonly planned: PlannedCase;
  readonly steps: readonly RoundStep[];
  /** How often the case has been asked or skipped. */
  readonly asked: number;
  /** The index, among the round's results, of its last asking. */
  readonly lastAsked?: number;
  /** How often it has come back after a miss. */
  readonly returns: number;
  /** Whether a third asking was added because one of the first two was hesitant. */
  readonly hasThird: boolean;
}

/** How often at most a missed case comes back in a round. */
export const MOST_RETURNS = 3;

/** How many others stand before a missed case comes back. */
export const RETURN_GAP = 3;

/** How a new case is introduced, one asking after the other. */
const INTRODUCTION = [
  "shown",
  "helped",
  "alone",
  "alone",
] as const satisfies readonly Asking[];

/** About how many others stand before each repeat of a new case. */
const SPACED_GAPS = [2, 6] as const;

/** How many others stand between two askings beyond the schedule, as far as there are so many: all of a round's cases come before the first comes again. */
const EXTRA_GAP = 9;

const AT_ONCE = { kind: "plain", gap: 0 } as const;
const THIRD: RoundStep = { asking: "alone", ...AT_ONCE };

function stepsOf(planned: PlannedCase): readonly RoundStep[] {
  const { memory, times, asking = "alone" } = planned;
  // Beyond the schedule nothing is introduced.
  if (memory !== "new" || asking === "extra")
    return Array.from({ length: times }, () => ({
      asking,
      kind: "plain",
      gap: asking === "extra" ? EXTRA_GAP : 1,
    }));
  return [
    ...INTRODUCTION.map((asking) => ({ asking, ...AT_ONCE })),
    ...SPACED_GAPS.map(
      (gap) => ({ asking: "alone", kind: "spaced", gap }) as const,
    ),
  ];
}

/** The track of a case at the start of a round. */
export function beginTrack(planned: PlannedCase): RoundTrack {
  return {
    planned,
    steps: stepsOf(planned),
    asked: 0,
    returns: 0,
    hasThird: false,
  };
}

/** The steps after the first one was missed: the case comes back, and what was massed is left out. */
function stepsAfterMiss(
  track: RoundTrack,
  missed: RoundStep,
  rest: readonly RoundStep[],
): readonly RoundStep[] {
  if (track.returns >= MOST_RETURNS) return [];
  const back = { kind: "return", gap: RETURN_GAP } as const;
  switch (missed.asking) {
    case "helped":
      return [{ asking: "helped", ...back }, ...rest];
    case "extra":
      return [{ asking: "extra", ...back }, ...rest];
    case "shown":
    case "alone":
    case "again":
      return [
        { asking: "again", ...back },
        ...rest.filter((step) => step.gap > 0),
      ];
  }
}

/** The track after its first step was answered as the `index`-th of the round. */
export function trackAfter(
  track: RoundTrack,
  grade: Grade,
  index: number,
): RoundTrack {
  const [step, ...rest] = track.steps;
  const asked = { ...track, asked: track.asked + 1, lastAsked: index };
  if (step === undefined || step.asking === "shown")
    return { ...asked, steps: rest };
  if (grade === "missed")
    return {
      ...asked,
      steps: stepsAfterMiss(track, step, rest),
      returns: Math.min(MOST_RETURNS, track.returns + 1),
    };
  const wantsThird =
    grade === "hesitant" &&
    step.asking === "alone" &&
    step.gap === 0 &&
    !track.hasThird;
  return wantsThird
    ? { ...asked, steps: [THIRD, ...rest], hasThird: true }
    : { ...asked, steps: rest };
}

/**
 * The track after its first step was skipped: a showing is passed over, a
 * question leaves the case alone for this round.
 */
export function trackAfterSkip(track: RoundTrack, index: number): RoundTrack {
  const [step, ...rest] = track.steps;
  const isIntroduction = step?.asking === "shown" || step?.asking === "helped";
  return {
    ...track,
    asked: track.asked + 1,
    lastAsked: index,
    steps: isIntroduction ? rest : [],
  };
}
