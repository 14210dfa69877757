/** Where an answer left the ways that are known. */
import { FREE_LAYER } from "../cases/stage";
import { holdAfterTurn } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { type BodyStep, sharedSteps, stepsLeft, turnOfStep } from "./body-line";
import type { RightLine } from "./right-lines";

/** Where an answer and a way part. */
export interface Departure {
  /** The index of the first turn off the way; the number of turns where the answer stopped short. */
  readonly index: number;
  /** What was turned there; absent: nothing more. */
  readonly played?: Turn;
  /** What the way turns there, as the learner then held the cube; absent: the way was over. */
  readonly wanted?: Turn;
  /** The way that was being followed: the taught one, or another that the answer kept to for longer. */
  readonly way: readonly Turn[];
}

/** An answer as far as its turns go. */
interface Played {
  readonly hold: Rotation;
  readonly turns: readonly Turn[];
  readonly line: readonly BodyStep[];
}

/** Where an answer leaves one way; undefined where it does not. */
export function departureFrom(
  { hold, turns, line }: Played,
  way: RightLine,
): Departure | undefined {
  const shared = sharedSteps(line, way.line);
  const [next] = stepsLeft(line, way.line) ?? [];
  // So far as it was a beginning, nothing was turned off the way.
  const made = next === undefined ? line[shared] : undefined;
  const wanted = next ?? way.line[shared];
  if (made === undefined && wanted === undefined) return undefined;
  const index = made?.madeBy[0] ?? turns.length;
  const holdThen = turns.slice(0, index).reduce(holdAfterTurn, hold);
  return {
    index,
    ...(made === undefined ? {} : { played: asMade(made, turns, holdThen) }),
    ...(wanted === undefined ? {} : { wanted: turnOfStep(holdThen, wanted) }),
    way: way.turns,
  };
}

/**
 * Where an answer leaves the last of the known ways that it kept to; undefined
 * where it is one of them, or none is known.
 *
 * Shape: `ways` has the taught one first.
 */
export function departure(
  answer: Played,
  ways: readonly RightLine[],
): Departure | undefined {
  let [followed] = ways;
  if (followed === undefined) return undefined;
  let most = sharedSteps(answer.line, followed.line);
  for (const other of ways) {
    const shared = sharedSteps(answer.line, other.line);
    // Lining up alone shows no way: it is the same for all of them.
    const isFollowed = answer.line
      .slice(0, shared)
      .some(({ face }) => face !== FREE_LAYER);
    if (shared > most && isFollowed) [followed, most] = [other, shared];
  }
  return departureFrom(answer, followed);
}

/** A step as the learner made it: the very turn where there was only one. */
function asMade(step: BodyStep, turns: readonly Turn[], hold: Rotation): Turn {
  const [only, ...more] = step.madeBy;
  const turn = only === undefined ? undefined : turns[only];
  return turn === undefined || more.length > 0 ? turnOfStep(hold, step) : turn;
}
