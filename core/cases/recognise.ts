/** Which case a cube shows, in any stage. */
import { isFullyKnown, type PartlyKnownCubies } from "../cube/cubies";
import { conjugate } from "../cube/symmetries";
import { present } from "../invariant";
import type { CaseId } from "./case-ids";
import type { LastLayerCase } from "./last-layer-cases";
import {
  LOOK_PARTS,
  lookIn,
  partTurnedAfter,
  partTurnedBefore,
} from "./last-layer-look";
import { recogniseFirstLayer } from "./recognise-first-layer";
import { recogniseLastLayer } from "./recognise-last-layer";
import { recogniseSlot } from "./recognise-slot";
import {
  homeAfter,
  isLastLayerStage,
  isSlotStage,
  rotationToHome,
  type Stage,
} from "./stage";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** A case, and how far the free layer is turned away from lined up. */
export interface Recognition {
  readonly case: CaseId;
  readonly turnedAway: 0 | 1 | 2 | 3;
}

/**
 * The case that a home shows in a stage; in the last layer, whose cases have
 * no home, the case as it is seen with that side in front.
 *
 * In the first layer and in slots the piece alone is judged: whether the stage
 * is reached is `stageShown`'s to say. Undefined where nothing is left to do,
 * where a piece that matters is not known, or where the last layer is not
 * reached.
 *
 * Shape: `state` is in the body frame, fully or partly known; the last layer
 *        is recognised only where all is known.
 */
export function recognise(
  state: PartlyKnownCubies,
  stage: Stage,
  home: HomeIndex,
): Recognition | undefined {
  if (isSlotStage(stage)) {
    const shown = recogniseSlot(state, stage, home);
    return shown && { case: shown.case.id, turnedAway: shown.turnedAway };
  }
  if (!isLastLayerStage(stage)) return recogniseFirstLayer(state, stage, home);
  if (!isFullyKnown(state)) return undefined;
  const shown = recogniseLastLayer(state, stage);
  if (shown === undefined || shown === "answered") return undefined;
  const seen = conjugate(state, rotationToHome(homeAfter(0, -home)));
  return { case: shown.id, turnedAway: quartersFromLinedUp(shown, seen) };
}

function applied(times: number, step: (text: string) => string, text: string) {
  let result = text;
  for (let i = 0; i < times; i++) result = step(result);
  return result;
}

/**
 * How far a state's last layer is turned on from a look that the case's ways
 * begin from: the one that names it, or the same after turns of the layer
 * before it, for which the same turns are right.
 */
function quartersFromLinedUp(
  { lookAt }: LastLayerCase,
  state: PartlyKnownCubies,
): 0 | 1 | 2 | 3 {
  const look = lookIn(state);
  const named = lookAt(0);
  const parts = LOOK_PARTS.filter((part) => named[part] !== undefined);
  const quarters = HOME_INDICES.find((after) =>
    HOME_INDICES.some((before) =>
      parts.every((part) => {
        const turned = applied(after, partTurnedAfter, named[part] ?? "");
        return (
          applied(before, (text) => partTurnedBefore(part, text), turned) ===
          look[part]
        );
      }),
    ),
  );
  return present(quarters, "a case's looks are one another turned");
}
