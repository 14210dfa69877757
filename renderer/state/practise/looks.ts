/**
 * Where the learner looks from. Looking is never a turn and never a mistake,
 * so it lives apart from the cube: a camera, nothing else.
 *
 * Units: degrees. Yaw is positive with the camera to the right, pitch with
 *        the camera above.
 */
import { caseEntry } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import {
  type CubeView,
  HIGH_VIEW,
  highView,
  USUAL_VIEW,
  usualView,
} from "../../../core/picture/projection";

/** A camera position on the sphere around the cube. */
export interface Look {
  readonly yaw: number;
  readonly pitch: number;
}

/** The looks that a key or a tap takes. */
export type NamedLook = "front" | "underneath" | "behind";

const YAW = 25;
/** Straight from below the front would be upside down; this keeps it in sight. */
const LIMIT = 75;

/** +1 where the home is on the right or in front, −1 where it is on the left. */
export type HomeSide = 1 | -1;

/** Where a position is looked at from, before anybody looks around. */
export interface LookFrom {
  readonly side: HomeSide;
  /** Units: degrees above the middle. */
  readonly pitch: number;
}

/** The look at a cube that asks nothing yet. */
export const USUAL_LOOK: LookFrom = { side: 1, pitch: USUAL_VIEW.pitch };

/** Whether the layer on top is what a case is about: from the second layer on. */
function isAboutTop(position: Position): boolean {
  return caseEntry(position.case).group !== "first-layer";
}

/**
 * The side on which a position's home is seen: a corner's home at the top
 * front right comes to the bottom front left when the cube is turned over. A
 * slot held down is seen at the front right, and the last layer has no side.
 */
export function homeSide(position: Position): HomeSide {
  if (isAboutTop(position)) return 1;
  const isCorner = targetsOf(position).corners.length > 0;
  return position.hold === "down" && isCorner ? -1 : 1;
}

/** Where a position is looked at from: higher where the layer on top is the subject. */
export function lookFrom(position: Position): LookFrom {
  return {
    side: homeSide(position),
    pitch: isAboutTop(position) ? HIGH_VIEW.pitch : USUAL_VIEW.pitch,
  };
}

/** The camera of a named look; the home's side is the one that shows. */
export function namedLook(name: NamedLook, { side, pitch }: LookFrom): Look {
  switch (name) {
    case "front":
      return { yaw: side * YAW, pitch };
    case "underneath":
      return { yaw: side * YAW, pitch: -42 };
    case "behind":
      return { yaw: side * YAW - side * 180, pitch };
  }
}

/** The view of a position where it only lies beside the text. */
export function smallView(
  position: Position,
  pixelsPerCubie: number,
): CubeView {
  const side = homeSide(position) === 1 ? "right" : "left";
  return isAboutTop(position)
    ? highView(pixelsPerCubie, side)
    : usualView(pixelsPerCubie, side);
}

/** A look after dragging beside the cube. Units: pixels; half a degree each. */
export function draggedLook(from: Look, dx: number, dy: number): Look {
  const pitch = Math.max(-LIMIT, Math.min(LIMIT, from.pitch + dy / 2));
  return { yaw: from.yaw - dx / 2, pitch };
}
