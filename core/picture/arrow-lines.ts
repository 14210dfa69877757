/** The lines through space that the ribbons of a turn's arrow follow. */
import { FACES, type Face } from "../cube/faces";
import { isWholeCubeTurn, type Turn } from "../cube/turns";
import { FACE_FRAMES, HALF_CUBE } from "./cube-layout";
import { cameraOf, type CubeView, type Projector } from "./projection";
import { layerRange, type SlabAxis, turnDegrees } from "./slabs";
import {
  cross,
  dot,
  onPlane,
  plus,
  times,
  type Vector,
  vector,
} from "./vector";

const LIFT = 0.09;
const BEND = 0.38;
const REACH = HALF_CUBE + LIFT;
const TAIL = 1.2;
const TIP = 1.27;

/** A line through space with the direction across it at every point. */
export interface RibbonLine {
  readonly length: number;
  readonly at: (along: number) => {
    readonly point: Vector;
    readonly side: Vector;
  };
  /** Whether it ends on a surface seen at a low angle. */
  readonly endsLow: boolean;
}

/** Over the edge from the face with normal `from` to the one with `to`. */
function overEdge(
  from: Vector,
  to: Vector,
  side: Vector,
  offset: number,
  endsLow: boolean,
): RibbonLine {
  const first = TAIL + REACH - BEND;
  const arc = (BEND * Math.PI) / 2;
  const last = REACH - BEND + TIP;
  const shift = times(side, offset);
  const place = (along: number): Vector => {
    if (along < first) return onPlane(shift, from, REACH, to, along - TAIL);
    if (along < first + arc) {
      const angle = (along - first) / BEND;
      return onPlane(
        shift,
        from,
        REACH - BEND + BEND * Math.cos(angle),
        to,
        REACH - BEND + BEND * Math.sin(angle),
      );
    }
    return onPlane(
      shift,
      to,
      REACH,
      from,
      REACH - BEND - (along - first - arc),
    );
  };
  return {
    length: first + arc + last,
    at: (along) => ({ point: place(along), side }),
    endsLow,
  };
}

/** Straight across one face, where no neighbour of it is seen. */
function acrossFace(
  normal: Vector,
  direction: Vector,
  side: Vector,
  offset: number,
): RibbonLine {
  const base = plus(times(normal, REACH), times(side, offset));
  return {
    length: TAIL + TIP,
    at: (along) => ({
      point: plus(base, times(direction, along - TAIL)),
      side,
    }),
    endsLow: false,
  };
}

const ARC_DEGREES = 290;

/** An arc of radius 1 on a face, clockwise or not as seen from outside. */
function aroundFace(normal: Vector, clockwise: boolean): RibbonLine {
  const up = Math.abs(normal.y) > 0.5 ? vector(0, 0, -1) : vector(0, 1, 0);
  const right = cross(up, normal);
  const start = ((clockwise ? 1 : -1) * -ARC_DEGREES * Math.PI) / 360;
  const length = (ARC_DEGREES * Math.PI) / 180;
  return {
    length,
    at: (along) => {
      const angle = start + (clockwise ? along : -along);
      const side = onPlane(
        vector(0, 0, 0),
        up,
        Math.cos(angle),
        right,
        Math.sin(angle),
      );
      return { point: plus(times(normal, REACH), side), side };
    },
    endsLow: false,
  };
}

function vectorAlong(axis: SlabAxis): Vector {
  return vector(
    axis === "x" ? 1 : 0,
    axis === "y" ? 1 : 0,
    axis === "z" ? 1 : 0,
  );
}

/** Whether a turn is of the face that looks at the viewer most. */
export function isFrontmost(turn: Turn, view: CubeView): boolean {
  const { towards } = cameraOf(view);
  const facing = (face: Face) => dot(FACE_FRAMES[face].normal, towards);
  const frontmost = FACES.reduce((best, face) =>
    facing(face) > facing(best) ? face : best,
  );
  return turn.layer === frontmost;
}

/** The lines a turn's ribbons follow: one for a layer, two for a wide turn. */
export function ribbonLines(
  turn: Turn,
  view: CubeView,
  projector: Projector,
): readonly RibbonLine[] {
  const { axis, low, high } = layerRange(turn.layer);
  const spin = times(vectorAlong(axis), Math.sign(turnDegrees(turn)));
  const { towards } = cameraOf(view);
  const facing = (normal: Vector) => dot(normal, towards);
  if (isFrontmost(turn, view)) {
    const normal = times(vectorAlong(axis), low > 0 ? 1 : -1);
    return [aroundFace(normal, dot(spin, normal) < 0)];
  }
  const around = FACES.map((face) => FACE_FRAMES[face].normal).filter(
    (normal) =>
      dot(normal, spin) === 0 &&
      projector.facesViewer(times(normal, HALF_CUBE), normal),
  );
  const from = around.find((normal) =>
    around.some((other) => dot(other, cross(spin, normal)) > 0.5),
  );
  const side = vector(Math.abs(spin.x), Math.abs(spin.y), Math.abs(spin.z));
  const offsets = isWholeCubeTurn(turn)
    ? [0]
    : Array.from({ length: Math.round(high - low) }, (_, i) => low + 0.5 + i);
  if (from === undefined) {
    const only = around.reduce<Vector | undefined>(
      (best, normal) =>
        best === undefined || facing(normal) > facing(best) ? normal : best,
      undefined,
    );
    return only === undefined
      ? []
      : offsets.map((offset) =>
          acrossFace(only, cross(spin, only), side, offset),
        );
  }
  const to = cross(spin, from);
  return offsets.map((offset) =>
    overEdge(from, to, side, offset, facing(to) < 0.6),
  );
}
