/**
 * What a whole answer to a computed case should take on a real cube.
 *
 * Where the design gives a norm for the stage, it is that norm; for the steps
 * of a beginner's last layer, whose ways are long, seconds a turn and the
 * thinking of a last-layer case.
 */
import { type CaseTargets, targets } from "./case-entry";
import type { LastLayerStage } from "./last-layer-stages";
import type { SlotStage } from "./stage";

/** A pair, 15 / 8 / 4 s. A second-layer edge is as long: eight turns. Source: `first-layer.md`, common practice. */
const SLOT = targets(15, 8, 4);

/** Thinking 3 / 1.5 / 0.8 s and turning 5 / 3 / 2 s. Source: `first-layer.md`, common practice. */
const LAST_LAYER = targets(8, 4.5, 3);

/** A dozen turns at 1.2 / 0.5 / 0.25 s each, and 3 / 1.5 / 0.8 s of thinking. Source: as above. */
const BEGINNERS_STEP = targets(18, 8, 4);

/** Corner by corner takes some thirty turns; reckoned as above. */
const CORNER_BY_CORNER = targets(40, 16, 8);

/** Targets of a stage's cases. Units: seconds. */
export function targetsOfStage(stage: SlotStage | LastLayerStage): CaseTargets {
  switch (stage) {
    case "second-layer-edges":
    case "pairs":
      return SLOT;
    case "last-layer-edges-turned":
    case "last-layer-edges-placed":
    case "last-layer-corners-placed":
      return BEGINNERS_STEP;
    case "last-layer-corners-turned-last":
      return CORNER_BY_CORNER;
    case "last-layer-corners-turned":
    case "last-layer-corners-placed-first":
    case "last-layer-edges-placed-last":
    case "last-layer-turned":
    case "last-layer-placed":
    case "last-layer-corners":
    case "last-layer-but-edges-turned":
    case "last-layer-whole":
      return LAST_LAYER;
  }
}
