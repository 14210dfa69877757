/**
 * Where the learner looks from. Looking is never a turn and never a mistake,
 * so it lives apart from the cube: a camera, nothing else.
 *
 * Units: degrees. Yaw is positive with the camera to the right, pitch with
 *        the camera above.
 */

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

/**
 * The camera of a named look.
 *
 * Shape: `side` is +1 where the home is on the right or in front, −1 where it
 *        is on the left, so that the home's side is the one that shows.
 */
export function namedLook(name: NamedLook, side: 1 | -1): Look {
  switch (name) {
    case "front":
      return { yaw: side * YAW, pitch: PITCH };
    case "underneath":
      return { yaw: side * YAW, pitch: -42 };
    case "behind":
      return { yaw: side * YAW - side * 180, pitch: PITCH };
  }
}

/** A look after dragging beside the cube. Units: pixels; half a degree each. */
export function draggedLook(from: Look, dx: number, dy: number): Look {
  const pitch = Math.max(-LIMIT, Math.min(LIMIT, from.pitch + dy / 2));
  return { yaw: from.yaw - dx / 2, pitch };
}
