/** Answers that are the right turns, cut short or begun in the wrong place. */
import { afterFreeQuarters } from "../cases/case-goal";
import { FREE_LAYER } from "../cases/stage";
import { compose } from "../cube/cubies";
import type { Quarters } from "../cube/turns";
import { bodyLine, sharedSteps, turnOfStep } from "./body-line";
import type { Explanation } from "./explanation";
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
 * The answer is the beginning of a known way; of several the one with the
 * least left. A turn of the free layer at its end is lining up for what comes,
 * well or not.
 */
export function stoppedEarly(given: GivenLine): Explanation | undefined {
  const { line, turns } = given;
  const last = line.length > 1 ? line.at(-1) : undefined;
  const turned = last?.face === FREE_LAYER ? last.quarters : 0;
  const begun = turned === 0 ? line : line.slice(0, -1);
  const [nearest] = given.rightLines
    .filter(
      (way) =>
        way.steps.length > begun.length &&
        sharedSteps(begun, way.line) === begun.length,
    )
    .toSorted((a, b) => a.steps.length - b.steps.length);
  if (nearest === undefined || line.length === 0) return undefined;
  const [next, ...later] = nearest.steps.slice(begun.length);
  const isFree = next?.face === FREE_LAYER;
  const left = (((isFree ? next.quarters : 0) - turned + 4) % 4) as
    0 | Quarters;
  const hold = given.holdAfter(turns.length);
  return {
    kind: "stopped-early",
    missing: [
      ...(left === 0 ? [] : [{ face: FREE_LAYER, quarters: left } as const]),
      ...(next === undefined || isFree ? [] : [next]),
      ...later,
    ].map((step) => turnOfStep(hold, step)),
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
