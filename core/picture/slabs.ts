/**
 * The cube cut by a partly turned layer, and the order in which its parts are
 * painted.
 *
 * Every layer is a slab between two planes across one axis, so the cube falls
 * into at most three convex slabs that stay apart by those planes however far
 * the layer is turned. Painting the slabs from the far side of the cuts to the
 * near side, and in each slab only the faces that look at the viewer, is then
 * exact: no depth sorting of single polygons, which is wrong for long faces
 * that overlap in a cycle.
 */
import type { Turn, TurnLayer } from "../cube/turns";
import { HALF_CUBE } from "./cube-layout";
import type { Projector } from "./projection";
import { turned, type Vector } from "./vector";

/** One of the cube's axes: x to the right, y up, z to the front. */
export type SlabAxis = "x" | "y" | "z";

/** What a layer takes with it, and which way a clockwise turn goes. */
interface LayerRange {
  readonly axis: SlabAxis;
  /** From and to along the axis, in cubies. */
  readonly low: number;
  readonly high: number;
  /** Sign of the right-handed angle of a clockwise quarter turn. */
  readonly sense: 1 | -1;
}

// Clockwise seen from the right, the top or the front is the negative sense
// about x, y and z. WCA 12a1, 12a2, 12a4; M, E, S turn with L, D, F.
const LAYER_RANGES: Readonly<Record<TurnLayer, LayerRange>> = {
  R: { axis: "x", low: 0.5, high: 1.5, sense: -1 },
  L: { axis: "x", low: -1.5, high: -0.5, sense: 1 },
  U: { axis: "y", low: 0.5, high: 1.5, sense: -1 },
  D: { axis: "y", low: -1.5, high: -0.5, sense: 1 },
  F: { axis: "z", low: 0.5, high: 1.5, sense: -1 },
  B: { axis: "z", low: -1.5, high: -0.5, sense: 1 },
  Rw: { axis: "x", low: -0.5, high: 1.5, sense: -1 },
  Lw: { axis: "x", low: -1.5, high: 0.5, sense: 1 },
  Uw: { axis: "y", low: -0.5, high: 1.5, sense: -1 },
  Dw: { axis: "y", low: -1.5, high: 0.5, sense: 1 },
  Fw: { axis: "z", low: -0.5, high: 1.5, sense: -1 },
  Bw: { axis: "z", low: -1.5, high: 0.5, sense: 1 },
  M: { axis: "x", low: -0.5, high: 0.5, sense: 1 },
  E: { axis: "y", low: -0.5, high: 0.5, sense: 1 },
  S: { axis: "z", low: -0.5, high: 0.5, sense: -1 },
  x: { axis: "x", low: -1.5, high: 1.5, sense: -1 },
  y: { axis: "y", low: -1.5, high: 1.5, sense: -1 },
  z: { axis: "z", low: -1.5, high: 1.5, sense: -1 },
};

/** Where a layer lies and which way it turns. */
export function layerRange(layer: TurnLayer): LayerRange {
  return LAYER_RANGES[layer];
}

/**
 * How far a turn turns.
 *
 * Units: degrees, right-handed about the layer's axis; a half turn goes the
 *        clockwise way round.
 */
export function turnDegrees(turn: Turn): number {
  const quarters = turn.quarters === 3 ? -1 : turn.quarters;
  return LAYER_RANGES[turn.layer].sense * 90 * quarters;
}

/** A part of the cube between two planes, turned about its axis. */
export interface Slab {
  readonly axis: SlabAxis;
  readonly low: number;
  readonly high: number;
  /** Right-handed about the axis. */
  readonly degrees: number;
}

/** The cube in one piece. */
export const WHOLE_CUBE: Slab = {
  axis: "y",
  low: -HALF_CUBE,
  high: HALF_CUBE,
  degrees: 0,
};

/** A layer on its way: the turn, and how much of it is done (0–1). */
export interface Turning {
  readonly turn: Turn;
  readonly progress: number;
}

/** A point or direction of the cube, moved along with its slab. */
export function inSlab(slab: Slab, point: Vector): Vector {
  return turned(point, slab.axis, slab.degrees);
}

/** Whether a slab holds a cubie (given by its place before the turn). */
export function slabHolds(slab: Slab, cubie: Vector): boolean {
  const along = cubie[slab.axis];
  return along > slab.low && along < slab.high;
}

function slabsOf({ turn, progress }: Turning): readonly Slab[] {
  const { axis, low, high } = LAYER_RANGES[turn.layer];
  const slabs: Slab[] = [];
  if (low > -HALF_CUBE)
    slabs.push({ axis, low: -HALF_CUBE, high: low, degrees: 0 });
  slabs.push({ axis, low, high, degrees: turnDegrees(turn) * progress });
  if (high < HALF_CUBE)
    slabs.push({ axis, low: high, high: HALF_CUBE, degrees: 0 });
  return slabs;
}

/** The cube's slabs, furthest from the eye across the cuts first. */
export function slabsInPaintOrder(
  turning: Turning | undefined,
  projector: Projector,
): readonly Slab[] {
  if (turning === undefined || turning.progress === 0) return [WHOLE_CUBE];
  const slabs = slabsOf(turning);
  const eye = projector.eyeAlong(slabs[0]?.axis ?? "y");
  const away = (slab: Slab) =>
    slab.low > eye ? slab.low - eye : Math.max(0, eye - slab.high);
  return [...slabs].sort((a, b) => away(b) - away(a));
}
