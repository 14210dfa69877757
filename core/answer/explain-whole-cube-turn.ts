/**
 * Turns that take the middles along: a wide layer or a slice for a face, the
 * cube turned over too little, too far or the wrong way. One such slip changes how
 * everything after it is held, so the way is played anew for each.
 */
import { FACES } from "../cube/faces";
import {
  isFaceTurn,
  isWholeCubeTurn,
  type Turn,
  type TurnLayer,
} from "../cube/turns";
import { bodyLine, sharedSteps } from "./body-line";
import type { Explanation, WrongTurn } from "./explanation";
import type { GivenLine } from "./given-line";
import { lineKey, splitLine } from "./known-ways";
import type { RightLine } from "./right-lines";

interface Change {
  readonly slip: WrongTurn["slip"];
  /** What is turned instead; absent: nothing. */
  readonly made?: Turn;
}

const WIDE = /^[URFDLB]w$/;

function changesOf(turn: Turn): readonly Change[] {
  const withLayer = (layer: TurnLayer): Change => ({
    slip: "another-layer",
    made: { layer, quarters: turn.quarters },
  });
  const further: readonly Change[] = ([1, 2, 3] as const)
    .filter((quarters) => quarters !== turn.quarters)
    .map((quarters) => ({
      slip: quarters + turn.quarters === 4 ? "reversed" : "amount",
      made: { layer: turn.layer, quarters },
    }));
  if (isFaceTurn(turn)) return [withLayer(`${turn.layer}w`)];
  const missing: Change = { slip: "missing" };
  if (isWholeCubeTurn(turn)) return [...further, missing];
  const faceTurns = FACES.flatMap((layer) =>
    ([1, 2, 3] as const).map((quarters): Change => ({
      slip: "another-layer",
      made: { layer, quarters },
    })),
  );
  if (!WIDE.test(turn.layer)) return [...further, missing, ...faceTurns];
  // A wide layer is named after its face.
  const face = turn.layer.slice(0, 1) as TurnLayer;
  return [...further, missing, withLayer(face), ...faceTurns];
}

/** How many steps a changed turn is from where the lines part: joined with those before it a little later, or with the middles a little sooner. */
const STEPS_APART = 3;

/** The turns of a way near which an answer leaves it. */
function turnsNear(given: GivenLine, way: RightLine): readonly number[] {
  const parted = sharedSteps(given.line, way.line);
  return way.turns.flatMap((_, index) => {
    const before = way.line.filter(({ madeBy }) =>
      madeBy.every((turn) => turn < index),
    ).length;
    return Math.abs(before - parted) <= STEPS_APART ? [index] : [];
  });
}

/** One turn of a known way that went wrong and took the middles along, or should have. */
export function wholeCubeTurnOfWay(given: GivenLine): Explanation | undefined {
  const { lead, core } = given.split;
  const played = lineKey(core);
  for (const way of given.rightLines) {
    const { turns } = way;
    for (const index of turnsNear(given, way)) {
      const wanted = turns[index];
      if (wanted === undefined) continue;
      for (const { slip, made } of changesOf(wanted)) {
        const changed = splitLine(
          bodyLine(given.hold, [
            ...turns.slice(0, index),
            ...(made === undefined ? [] : [made]),
            ...turns.slice(index + 1),
          ]),
        );
        if (changed.lead === lead && lineKey(changed.core) === played)
          return {
            kind: "one-turn",
            evidence: "from-known-way",
            right: turns,
            slip,
            index,
            ...(made === undefined ? {} : { made }),
            wanted,
          };
      }
    }
  }
  return undefined;
}
