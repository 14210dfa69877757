/**
 * From space to the paper.
 *
 * A picture's origin is the cube's own centre, so that a picture is placed by
 * the cube and not by whatever stands beside it. Perspective is kept mild (19
 * cubies away): faces stay nearly parallelograms and one face is clearly in
 * front.
 */
import { cross, dot, minus, times, type Vector, vector } from "./vector";

/** A point on the paper. Units: pixels, x right, y down, from the cube's centre. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** From where the cube is seen, and how large. */
export interface CubeView {
  /** Degrees the camera stands to the right of the front. */
  readonly yaw: number;
  /** Degrees the camera stands above the middle. */
  readonly pitch: number;
  /** Cubies from the cube's centre to the camera. */
  readonly distance: number;
  /** Pixels one cubie's edge takes at the depth of the cube's centre. */
  readonly pixelsPerCubie: number;
}

/** The usual view: camera 25° to the right and 25° above, 19 cubies away. */
export const USUAL_VIEW = { yaw: 25, pitch: 25, distance: 19 } as const;

/** The usual view at a size; `left` for homes on the left, seen from there. */
export function usualView(
  pixelsPerCubie: number,
  side: "left" | "right" = "right",
): CubeView {
  return {
    ...USUAL_VIEW,
    yaw: side === "right" ? USUAL_VIEW.yaw : -USUAL_VIEW.yaw,
    pixelsPerCubie,
  };
}

/**
 * The view for stages in which the layer on top is the subject: higher, so
 * that the top is seen well, and with the front still clearly in front.
 */
export const HIGH_VIEW = { ...USUAL_VIEW, pitch: 34 } as const;

/** The high view at a size; `left` for homes on the left, seen from there. */
export function highView(
  pixelsPerCubie: number,
  side: "left" | "right" = "right",
): CubeView {
  return { ...usualView(pixelsPerCubie, side), pitch: HIGH_VIEW.pitch };
}

/** A way to put points of space on the paper, and to tell what faces it. */
export interface Projector {
  readonly project: (point: Vector) => Point;
  /** Whether a surface through `point` shows its outer side. */
  readonly facesViewer: (point: Vector, normal: Vector) => boolean;
  /**
   * Where the eye stands along an axis, for the order of slabs; very far
   * out when it looks along parallel rays.
   */
  readonly eyeAlong: (axis: "x" | "y" | "z") => number;
}

/** The directions of a camera. Shape: unit vectors, right-handed. */
export interface Camera {
  readonly right: Vector;
  readonly up: Vector;
  /** From the cube's centre to the camera. */
  readonly towards: Vector;
}

/** The camera of a view. */
export function cameraOf(view: Pick<CubeView, "yaw" | "pitch">): Camera {
  const yaw = (view.yaw * Math.PI) / 180;
  const pitch = (view.pitch * Math.PI) / 180;
  const towards = vector(
    Math.sin(yaw) * Math.cos(pitch),
    Math.sin(pitch),
    Math.cos(yaw) * Math.cos(pitch),
  );
  const right = vector(Math.cos(yaw), 0, -Math.sin(yaw));
  return { right, up: cross(towards, right), towards };
}

/** The projector of a view: central perspective. */
export function perspective(view: CubeView): Projector {
  const camera = cameraOf(view);
  const eye = times(camera.towards, view.distance);
  const scale = view.pixelsPerCubie * view.distance;
  return {
    project: (point) => {
      const size = scale / (view.distance - dot(point, camera.towards));
      return {
        x: dot(point, camera.right) * size,
        y: -dot(point, camera.up) * size,
      };
    },
    facesViewer: (point, normal) => dot(normal, minus(eye, point)) > 1e-9,
    eyeAlong: (axis) => eye[axis],
  };
}
