/**
 * Where an item of a round becomes an attempt: on the screen, in writing or on
 * the cube in the learner's hands. What is asked is settled here; what becomes
 * of it is the round's.
 */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { Hint } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import type { LearnerState } from "../learner.svelte";
import type { Attempt } from "./answered-case.svelte";
import { CaseAttempt } from "./case-attempt.svelte";
import { answerWayOf, isMarked } from "./deck-choices";
import { taughtTurns } from "./deck-way";
import type { StoredWalk } from "./desk-schema";
import type { GivenAnswer } from "./given-answer";
import { MyCubeAttempt } from "./my-cube-attempt.svelte";
import type { SetUpFinder } from "./my-cube-stage";
import { positionOfItem } from "./position-of-item";

/** What practising needs from outside. */
export interface PractiseNeeds {
  readonly learner: LearnerState;
  readonly findSetUp: SetUpFinder;
  /** Whether nothing should move just now. */
  readonly still: () => boolean;
}

/** How an attempt finds the desk. */
export interface AttemptSetting {
  /** The same position once more, outside the round. */
  readonly isRetry: boolean;
  /** What is known of the cube in the learner's hands; undefined: nothing. */
  readonly ownCube: PartlyKnownCubies | undefined;
  /** Whether nothing marks the piece and its home, as in a check; absent: as the learner chose. */
  readonly isPlain?: boolean;
  /** A walk on that cube that was under way when the window closed. */
  readonly walk: StoredWalk | undefined;
}

/** Who hears what happens in an attempt. */
export interface AttemptListener {
  /** More help was asked for; everything so far. */
  readonly onhinted: (hints: readonly Hint[]) => void;
  /** The case is set up on the learner's cube: what is shown now has been shown. */
  readonly onset: () => void;
  /** A turn was made, or something said, that must survive a reload. */
  readonly onmoved: () => void;
  readonly onended: (attempt: Attempt, given: GivenAnswer) => void;
}

/** The attempt at an item, answered as its deck and the learner's settings have it. */
export function attemptOfItem(
  item: RoundItem,
  { learner, still, findSetUp }: PractiseNeeds,
  { isRetry, ownCube, isPlain = false, walk }: AttemptSetting,
  { onhinted, onset, onmoved, onended }: AttemptListener,
): Attempt {
  const position = positionOfItem(item);
  const start = {
    // Nobody is shown again, or helped, what they try once more.
    item: isRetry ? { ...item, asking: "alone" as const, hints: [] } : item,
    position,
    way: taughtTurns(position, {
      way: learner.deckCase(item)?.way,
      choice: learner.wayChoice,
    }),
    isMarked: !isPlain && isMarked(item, learner.settings),
    isRetry,
    onhinted,
    onended: (given: GivenAnswer) => onended(attempt, given),
  };
  const answerWay = answerWayOf(item, learner.settings);
  const attempt: Attempt =
    answerWay === "my-cube"
      ? new MyCubeAttempt({
          ...start,
          wayChoice: learner.wayChoice,
          ownCube,
          walk,
          findSetUp,
          onset,
          onmoved,
        })
      : new CaseAttempt({ ...start, answerWay, still });
  return attempt;
}
