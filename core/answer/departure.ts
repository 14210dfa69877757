/** Where an answer left the way. */
import { waysOf } from "../cases/case-table";
import { type Position, startOf } from "../cases/position";
import { FREE_LAYER } from "../cases/stage";
import { HANDS } from "../cases/way";
import { wayForPosition } from "../cases/way-for-position";
import { holdAfterTurn } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { type BodyStep, bodyLine, sharedSteps, turnOfStep } from "./body-line";

/** Where an answer and a way part. */
export interface Departure {
  /** The index of the first turn off the way; the number of turns where the answer stopped short. */
  readonly index: number;
  /** What was turned there; absent: nothing more. */
  readonly played?: Turn;
  /** What the way turns there, as the learner then held the cube; absent: the way was over. */
  readonly wanted?: Turn;
  /** The way that was being followed: the deck's, or another of the case's that the answer kept to for longer. */
  readonly way: readonly Turn[];
}

/** The first-taught ways of the position's case, either hand; none for two corners. */
function ownWays(position: Position): readonly (readonly Turn[])[] {
  return HANDS.flatMap((hand) => waysOf(position.case, position.hold, hand))
    .filter(({ school }) => school === "first")
    .map((way) => wayForPosition(position, way));
}

/** Where an answer leaves the way, or another way of the case that it keeps to for longer; undefined where it does not. */
export function departure(
  position: Position,
  turns: readonly Turn[],
  way: readonly Turn[],
): Departure | undefined {
  const { hold } = startOf(position);
  const played = bodyLine(hold, turns);
  let followed = way;
  let line = bodyLine(hold, way);
  let shared = sharedSteps(played, line);
  for (const other of ownWays(position)) {
    const otherLine = bodyLine(hold, other);
    const otherShared = sharedSteps(played, otherLine);
    // Lining up alone shows no way: it is the same for all of them.
    const isFollowed = played
      .slice(0, otherShared)
      .some(({ face }) => face !== FREE_LAYER);
    if (otherShared > shared && isFollowed)
      [followed, line, shared] = [other, otherLine, otherShared];
  }
  const made = played[shared];
  const wanted = line[shared];
  if (made === undefined && wanted === undefined) return undefined;
  const index = made?.madeBy[0] ?? turns.length;
  const holdThen = holdAfter(hold, turns.slice(0, index));
  return {
    index,
    ...(made === undefined ? {} : { played: asMade(made, turns, holdThen) }),
    ...(wanted === undefined ? {} : { wanted: turnOfStep(holdThen, wanted) }),
    way: followed,
  };
}

function holdAfter(hold: Rotation, turns: readonly Turn[]): Rotation {
  return turns.reduce(holdAfterTurn, hold);
}

/** A step as the learner made it: the very turn where there was only one. */
function asMade(step: BodyStep, turns: readonly Turn[], hold: Rotation): Turn {
  const [only, ...more] = step.madeBy;
  const turn = only === undefined ? undefined : turns[only];
  return turn === undefined || more.length > 0 ? turnOfStep(hold, step) : turn;
}
