/** Answers that are the right turns, cut short or begun in the wrong place. */
import { afterFreeQuarters } from "../cases/case-goal";
import { FREE_LAYER } from "../cases/stage";
import { compose } from "../cube/cubies";
import { bodyLine, sharedSteps, stepsLeft, turnOfStep } from "./body-line";
import { departure } from "./departure";
import type { Explanation } from "./explanation";
import { slipBetween } from "./explain-one-turn";
import { sideTaken } from "./explain-whole-way";
import type { GivenLine } from "./given-line";
import { lineKey, splitLine } from "./known-ways";

/**
 * The answer is most of a known way. Where it is the whole way of another case
 * as well, only of the way that is taught: all ways that begin with the same
 * turns again and again begin with somebody else's.
 */
export function stoppedNearTheEnd(given: GivenLine): Explanation | undefined {
  const { taught, entry, readings } = given;
  const stopped = stoppedEarly(given);
  if (stopped?.kind !== "stopped-early") return undefined;
  if (stopped.missing.length > given.line.length) return undefined;
  const isOther = readings.some(
    ({ way, steps }) => steps === 0 && way.id !== entry.id,
  );
  const isOfTaught =
    sharedSteps(given.line, bodyLine(given.hold, taught)) === given.line.length;
  return isOther && !isOfTaught ? undefined : stopped;
}

/**
 * The answer is the beginning of a known way, as that is made; of several the
 * one with the least left. A layer that was turned otherwise than the way
 * turns it is no beginning, however much of the way could still follow.
 */
export function stoppedEarly(given: GivenLine): Explanation | undefined {
  const { line, turns } = given;
  if (line.length === 0) return undefined;
  const [nearest] = given.rightLines
    .flatMap(({ steps }) => {
      const left = stepsLeft(line, steps);
      return left === undefined || left.length === 0 ? [] : [left];
    })
    .toSorted((a, b) => a.length - b.length);
  if (nearest === undefined) return undefined;
  const hold = given.holdAfter(turns.length);
  return {
    kind: "stopped-early",
    missing: nearest.map((step) => turnOfStep(hold, step)),
  };
}

/**
 * The answer is the beginning of a known way but for its last turn, which went
 * the other way round, not far enough or too far. It is told along the way
 * that the answer is said to have left, and only of turns that show a way:
 * before the first that commits, any turn could have been the last.
 */
export function stoppedAfterSlip(given: GivenLine): Explanation | undefined {
  const { line, turns } = given;
  const left = departure(given, given.rightLines);
  if (left?.played === undefined || left.wanted === undefined) return undefined;
  const way = given.rightLines.find((one) => one.turns === left.way);
  const made = line.at(-1);
  if (way === undefined || made === undefined) return undefined;
  const place = sharedSteps(line, way.line);
  const wanted = way.steps[place];
  if (place !== line.length - 1 || wanted?.face !== made.face) return undefined;
  const hasCommitted = line
    .slice(0, place)
    .some(({ face }) => face !== FREE_LAYER);
  // All of the way but one turn is another explanation's.
  const later = way.steps.slice(place + 1);
  if (!hasCommitted || later.length === 0) return undefined;
  const hold = given.holdAfter(turns.length);
  const wrong =
    made.madeBy.length === 1 ? { made: left.played, wanted: left.wanted } : {};
  return {
    kind: "stopped-early",
    missing: later.map((step) => turnOfStep(hold, step)),
    wrong: { slip: slipBetween(wanted, made), index: left.index, ...wrong },
  };
}

/**
 * The answer would be right had the free layer been turned first. Of a single
 * turn that is believed only where a known way is that turn: after some turn
 * of the layer many a turn is right. In the last layer a way made for another
 * side is the same as one not lined up; which it was, its turns say.
 */
export function linedUpWrongly(given: GivenLine): Explanation | undefined {
  const off = ([1, 2, 3] as const).find((quarters) =>
    given.isRight(
      compose(afterFreeQuarters(given.start, quarters), given.effect),
    ),
  );
  if (off === undefined || sideTaken(given) !== undefined) return undefined;
  if (given.committing < 2) {
    const core = lineKey(given.split.core);
    const isKnown = given.rightLines.some(
      ({ line }) => lineKey(splitLine(line).core) === core,
    );
    if (!isKnown) return undefined;
  }
  return {
    kind: "lined-up-wrongly",
    off,
    wanted: turnOfStep(given.hold, { face: FREE_LAYER, quarters: off }),
  };
}
