/** The cameras that see a place's big cube. */
import type { CubeView } from "../../../core/picture/projection";
import { USUAL_VIEW } from "../../../core/picture/projection";
import type { LookAround } from "../../state/practise/look-around.svelte";
import type { Look } from "../../state/practise/looks";
import type { StageSize } from "./stage-size.svelte";

/** Seen over an edge the cube is taller: so much smaller it keeps within its frame. */
const OVER_AN_EDGE = 0.88;

/** The camera of a look on a stage. */
export function stageView(
  look: Look,
  { pixelsPerCubie }: Pick<StageSize, "pixelsPerCubie">,
): CubeView {
  return { ...look, distance: USUAL_VIEW.distance, pixelsPerCubie };
}

/** The camera of somebody who looks around on a stage; read it in markup or `$derived`. */
export function viewAround(
  { look, name }: Pick<LookAround, "look" | "name">,
  { pixelsPerCubie }: Pick<StageSize, "pixelsPerCubie">,
): CubeView {
  return stageView(look, {
    pixelsPerCubie: pixelsPerCubie * (name === "front" ? 1 : OVER_AN_EDGE),
  });
}
