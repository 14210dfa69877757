/**
 * The arrow that shows a turn on a cube at rest.
 *
 * A ribbon floats just above the surface: it starts on one visible face,
 * bends over the edge and ends on the next, in the direction the layer goes.
 * A turn of the face that looks at the viewer is an arc on that face, because
 * a ribbon on its rim would be hidden or thin.
 */
import { FACES, type Face } from "../cube/faces";
import { isWholeCubeTurn, type Turn } from "../cube/turns";
import { FACE_FRAMES, HALF_CUBE } from "./cube-layout";
import type { CubePalette } from "./palette";
import type { CubeView, Point, Projector } from "./projection";
import { cameraOf } from "./projection";
import {
  type PictureShape,
  pathNumber,
  polygonPath,
  roundedPolygonPath,
} from "./shapes";
import { layerRange, turnDegrees } from "./slabs";
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

/** Half widths of ribbon and head, and the head's length. Units: cubies. */
interface ArrowMeasures {
  readonly half: number;
  readonly headHalf: number;
  readonly headLength: number;
  /** The head's length where it ends on a side seen at a low angle. */
  readonly longHead: number;
}

function arrowMeasures(
  turn: Turn,
  pixelsPerCubie: number,
  print: boolean,
): ArrowMeasures {
  if (isWholeCubeTurn(turn))
    return { half: 0.42, headHalf: 0.85, headLength: 0.95, longHead: 1.25 };
  if (print)
    return { half: 0.17, headHalf: 0.43, headLength: 0.78, longHead: 1.2 };
  if (pixelsPerCubie < 20)
    return { half: 0.2, headHalf: 0.46, headLength: 0.78, longHead: 1.2 };
  return { half: 0.21, headHalf: 0.47, headLength: 0.78, longHead: 1.2 };
}

/** A line through space with the direction across it at every point. */
interface RibbonLine {
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

function ribbonLines(
  turn: Turn,
  view: CubeView,
  projector: Projector,
): readonly RibbonLine[] {
  const { axis, low, high } = layerRange(turn.layer);
  const spin = times(
    vector(axis === "x" ? 1 : 0, axis === "y" ? 1 : 0, axis === "z" ? 1 : 0),
    Math.sign(turnDegrees(turn)),
  );
  const { towards } = cameraOf(view);
  const facing = (normal: Vector) => dot(normal, towards);
  const own = FACES.find((face) => face === turn.layer);
  const frontmost = FACES.reduce<Face>(
    (best, face) =>
      facing(FACE_FRAMES[face].normal) > facing(FACE_FRAMES[best].normal)
        ? face
        : best,
    "F",
  );
  if (own !== undefined && own === frontmost) {
    const { normal } = FACE_FRAMES[own];
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

// Corners of the ribbon's bend and of arcs, as steps along the line.
const STEP = 0.06;

function ribbonOutline(
  line: RibbonLine,
  measures: ArrowMeasures,
  heads: 1 | 2,
  projector: Projector,
): readonly Point[] {
  const length = line.endsLow ? measures.longHead : measures.headLength;
  const base = line.length - length;
  const place = (along: number, across: number) => {
    const { point, side } = line.at(along);
    return projector.project(plus(point, times(side, across)));
  };
  const edge: { along: number; across: number }[] = [];
  const shaft = (from: number, to: number) => {
    for (let along = from; along < to; along += STEP)
      edge.push({ along, across: measures.half });
    edge.push({ along: to, across: measures.half });
  };
  if (heads === 2) {
    const behind = base - length * 0.8;
    const met = behind + length * (1 - measures.half / measures.headHalf);
    shaft(0, behind);
    edge.push({ along: behind, across: measures.headHalf });
    shaft(met, base);
  } else shaft(0, base);
  edge.push({ along: base, across: measures.headHalf });
  return [
    ...edge.map(({ along, across }) => place(along, across)),
    place(line.length, 0),
    ...edge.reverse().map(({ along, across }) => place(along, -across)),
  ];
}

/** A small label over the ribbon of a half turn. */
function twiceLabel(
  line: RibbonLine,
  palette: CubePalette,
  projector: Projector,
): readonly PictureShape[] {
  const { x, y } = projector.project(line.at(line.length * 0.3).point);
  const { inks } = palette;
  const half = { x: 26, y: 12 };
  const corner = (sx: number, sy: number) => ({
    x: x + sx * half.x,
    y: y + sy * half.y,
  });
  return [
    {
      kind: "path",
      role: "arrow",
      d: roundedPolygonPath(
        [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
        9,
      ),
      fill: inks.arrow,
      stroke: inks.arrowCasing,
      strokeWidth: 2,
    },
    {
      kind: "text",
      role: "word",
      text: "twice",
      matrix: [1, 0, 0, 1, pathNumber(x), pathNumber(y)],
      fontSize: 15,
      weight: 640,
      anchor: "middle",
      fill: inks.onArrow,
    },
  ];
}

/** The arrow for a turn, as seen on the cube before it. */
export function drawArrow(
  turn: Turn,
  view: CubeView,
  projector: Projector,
  palette: CubePalette,
): readonly PictureShape[] {
  const { pixelsPerCubie } = view;
  const print = palette.theme === "print";
  const measures = arrowMeasures(turn, pixelsPerCubie, print);
  const lines = ribbonLines(turn, view, projector);
  const casing = Math.max(2, 0.07 * pixelsPerCubie);
  const outlines = lines.map((line) =>
    polygonPath(
      ribbonOutline(line, measures, turn.quarters === 2 ? 2 : 1, projector),
    ),
  );
  const { inks } = palette;
  const [first] = lines;
  return [
    ...outlines.map((d): PictureShape => ({
      kind: "path",
      role: "arrow",
      d,
      fill: inks.arrowCasing,
      stroke: inks.arrowCasing,
      strokeWidth: pathNumber(casing),
    })),
    ...outlines.map((d): PictureShape => ({
      kind: "path",
      role: "arrow",
      d,
      fill: inks.arrow,
    })),
    ...(turn.quarters === 2 && pixelsPerCubie >= 30 && first !== undefined
      ? twiceLabel(first, palette, projector)
      : []),
  ];
}
