/**
 * The arrow that shows a turn on a cube at rest.
 *
 * A ribbon floats just above the surface: it starts on one visible face,
 * bends over the edge and ends on the next, in the direction the layer goes.
 * A turn of the face that looks at the viewer is an arc on that face, because
 * a ribbon on its rim would be hidden or thin.
 */
import { isWholeCubeTurn, type Turn } from "../cube/turns";
import { isFrontmost, type RibbonLine, ribbonLines } from "./arrow-lines";
import type { CubePalette } from "./palette";
import {
  cameraOf,
  type CubeView,
  type Point,
  type Projector,
} from "./projection";
import {
  type PictureShape,
  pathNumber,
  polygonPath,
  roundedPolygonPath,
} from "./shapes";
import { layerRange } from "./slabs";
import { plus, times } from "./vector";

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

/**
 * The measures where a layer is seen edge on, as B and S are from in front:
 * wide enough to be seen, and still within the layer.
 */
function widened(
  measures: ArrowMeasures,
  turn: Turn,
  view: CubeView,
): ArrowMeasures {
  const { axis } = layerRange(turn.layer);
  const towards = cameraOf(view).towards[axis];
  const factor = Math.min(1.5, Math.max(1, 0.9 / Math.sqrt(1 - towards ** 2)));
  // A turn of the face in front is an arc across the view, not a ribbon.
  return factor === 1 || isFrontmost(turn, view)
    ? measures
    : {
        ...measures,
        half: measures.half * factor,
        headHalf: measures.headHalf * Math.min(factor, 1.3),
      };
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
  view: CubeView,
  palette: CubePalette,
  projector: Projector,
): readonly PictureShape[] {
  const { x, y } = projector.project(line.at(line.length * 0.26).point);
  const { inks } = palette;
  const fontSize = pathNumber(
    Math.min(15, Math.max(11, 0.19 * view.pixelsPerCubie)),
  );
  const half = { x: fontSize * 1.75, y: fontSize * 0.8 };
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
        fontSize * 0.6,
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
      fontSize,
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
  const lines = ribbonLines(turn, view, projector);
  const measures = widened(
    arrowMeasures(turn, pixelsPerCubie, print),
    turn,
    view,
  );
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
      ? twiceLabel(first, view, palette, projector)
      : []),
  ];
}
