/**
 * From one view to another in a short, even motion, so that looking underneath
 * or behind is seen as walking around the cube and not as another cube.
 */
import type { CubeView } from "../../core/picture/projection";

/** How long a glide takes. Units: milliseconds. */
export const GLIDE_DURATION = 320;

// Dragging changes the view by a few degrees an event and is followed at once.
const LEAST_TURN = 15;

/** The shortest way round from one yaw to another. Units: degrees. */
function turnBetween(from: number, to: number): number {
  const turn = (((to - from) % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}

/** Whether a new view is far enough from the old one to glide there. */
export function isFarView(from: CubeView, to: CubeView): boolean {
  return (
    Math.abs(turnBetween(from.yaw, to.yaw)) >= LEAST_TURN ||
    Math.abs(to.pitch - from.pitch) >= LEAST_TURN
  );
}

/**
 * The view on the way from one to another.
 *
 * Shape: `share` from 0 to 1 of the time; slow at both ends. Size and distance
 *        are those of the view it leads to.
 */
export function viewBetween(
  from: CubeView,
  to: CubeView,
  share: number,
): CubeView {
  if (share >= 1) return to;
  const gone = share * share * (3 - 2 * share);
  return {
    ...to,
    yaw: from.yaw + turnBetween(from.yaw, to.yaw) * gone,
    pitch: from.pitch + (to.pitch - from.pitch) * gone,
  };
}
