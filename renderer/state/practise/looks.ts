/**
 * Where the learner looks from. Looking is never a turn and never a mistake,
 * so it lives apart from the cube: a camera, nothing else.
 *
 * Units: degrees. Yaw is positive with the camera to the right, pitch with
 *        the camera above.
 */
import { targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import { type CubeView, usualView } from "../../../core/picture/projection";

/** A camera position on the sphere around the cube. */
export interface Look {
  readonly yaw: number;
  readonly pitch: number;
}

/** The looks that a key or a tap takes. */
export type NamedLook = "front" | "underneath" | "behind";

const PITCH = 25;
const YAW = 25;
/** Straight from below the front would be upside down; this keeps it in sight. */
const LIMIT = 75;

/** +1 where the home is on the right or in front, −1 where it is on the left. */
export type HomeSide = 1 | -1;

/**
 * The side on which a position's home is seen: a corner's home at the top
 * front right comes to the bottom front left when the cube is turned over.
 */
export function homeSide(position: Position): HomeSide {
  const isCorner = targetsOf(position).corners.length > 0;
  return position.hold === "down" && isCorner ? -1 : 1;
}

/** The camera of a named look; the home's side is the one that shows. */
export function namedLook(name: NamedLook, side: HomeSide): Look {
  switch (name) {
    case "front":
      return { yaw: side * YAW, pitch: PITCH };
    case "underneath":
      return { yaw: side * YAW, pitch: -42 };
    case "behind":
      return { yaw: side * YAW - side * 180, pitch: PITCH };
  }
}

/** The usual view of a position where it only lies beside the text. */
export function smallView(
  position: Position,
  pixelsPerCubie: number,
): CubeView {
  const side = homeSide(position) === 1 ? "right" : "left";
  return usualView(pixelsPerCubie, side);
}

/** A look after dragging beside the cube. Units: pixels; half a degree each. */
export function draggedLook(from: Look, dx: number, dy: number): Look {
  const pitch = Math.max(-LIMIT, Math.min(LIMIT, from.pitch + dy / 2));
  return { yaw: from.yaw - dx / 2, pitch };
}
