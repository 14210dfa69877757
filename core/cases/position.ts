import type { PartlyKnownCubies } from "../cube/cubies";
import type { HeldCube } from "../cube/held-cube";
import type { CaseId } from "./case-ids";
import { caseEntry } from "./case-table";
import { holdInStage } from "./hold-in-stage";
import type { Hold, Variant } from "./variant";

/** One concrete cube that shows a case. */
export interface Position<State extends PartlyKnownCubies = PartlyKnownCubies> {
  readonly case: CaseId;
  readonly hold: Hold;
  readonly variant: Variant;
  /** The pieces, in the body frame: the first layer is body face U. */
  readonly cubies: State;
}

/** The cube as the learner is given it. */
export function startOf<State extends PartlyKnownCubies>(
  position: Position<State>,
): HeldCube<State> {
  return {
    cubies: position.cubies,
    hold: holdInStage(
      caseEntry(position.case).stage,
      position.variant,
      position.hold,
    ),
  };
}
