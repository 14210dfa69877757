/** The arrows on a plan: which pieces change places. */
import { faceletPlace } from "./cube-layout";
import type { CubePalette } from "./palette";
import type { Point, Projector } from "./projection";
import { type PictureShape, pathNumber, polygonPath } from "./shapes";
import { vector } from "./vector";

/**
 * From one place to another.
 *
 * Shape: facelets on the top, as the viewer has them. Two arrows there and
 *        back are drawn as one with two heads.
 */
export interface PlanArrow {
  readonly from: number;
  readonly to: number;
}

// Edges' arrows keep to the middle and corners' to the rim, so that the one
// that ends on an edge does not touch the one that passes it from corner to
// corner. Units: cubies from the middle of the top.
const EDGE_REACH = 0.9;
const CORNER_REACH = 1.16;

// How far a head and a tail stay from that point, so that in a round the one
// does not sit on the other. Units: cubies.
const HEAD_SHORT = 0.06;
const TAIL_SHORT = 0.2;

// Half widths of shaft and head, and the head's length. Units: cubies.
const HALF = 0.07;
const HEAD_HALF = 0.22;
const HEAD_LENGTH = 0.34;

function anchorOf(facelet: number, projector: Projector): Point {
  const { cubie, centre } = faceletPlace(facelet);
  const isCorner = cubie.x !== 0 && cubie.z !== 0;
  const reach = isCorner ? CORNER_REACH : EDGE_REACH;
  return projector.project(vector(cubie.x * reach, centre.y, cubie.z * reach));
}

function arrowOutline(
  from: Point,
  to: Point,
  heads: 1 | 2,
  pixelsPerCubie: number,
): readonly Point[] {
  const distance = Math.hypot(to.x - from.x, to.y - from.y);
  const along = {
    x: (to.x - from.x) / distance,
    y: (to.y - from.y) / distance,
  };
  // Units: pixels along the arrow and to its left.
  const at = (far: number, aside: number): Point => ({
    x: from.x + along.x * far - along.y * aside,
    y: from.y + along.y * far + along.x * aside,
  });
  const half = HALF * pixelsPerCubie;
  const headHalf = HEAD_HALF * pixelsPerCubie;
  const headLength = HEAD_LENGTH * pixelsPerCubie;
  const short = HEAD_SHORT * pixelsPerCubie;
  const tip = distance - short;
  const neck = tip - headLength;
  const tail = short + headLength;
  const side = (sign: 1 | -1): readonly Point[] => [
    ...(heads === 2
      ? [at(tail, sign * headHalf), at(tail, sign * half)]
      : [at(TAIL_SHORT * pixelsPerCubie, sign * half)]),
    at(neck, sign * half),
    at(neck, sign * headHalf),
  ];
  return [
    ...(heads === 2 ? [at(short, 0)] : []),
    ...side(1),
    at(tip, 0),
    ...side(-1).toReversed(),
  ];
}

/** An arrow as it is drawn and said. */
export interface PlanArrowDrawn extends PlanArrow {
  /** Whether the two places change their pieces. */
  readonly isExchange: boolean;
}

/** The arrows with those that go there and back as one. */
export function joinedArrows(
  arrows: readonly PlanArrow[],
): readonly PlanArrowDrawn[] {
  const backOf = (one: PlanArrow) =>
    arrows.findIndex((other) => one.from === other.to && one.to === other.from);
  return arrows.flatMap((arrow, i) => {
    const back = backOf(arrow);
    return back >= 0 && back < i ? [] : [{ ...arrow, isExchange: back >= 0 }];
  });
}

/** Arrows in paint order: all casings first, so that crossing arrows join. */
export function drawPlanArrows(
  arrows: readonly PlanArrow[],
  projector: Projector,
  pixelsPerCubie: number,
  palette: CubePalette,
): readonly PictureShape[] {
  const outlines = joinedArrows(arrows).map(({ from, to, isExchange }) =>
    polygonPath(
      arrowOutline(
        anchorOf(from, projector),
        anchorOf(to, projector),
        isExchange ? 2 : 1,
        pixelsPerCubie,
      ),
    ),
  );
  const { arrow, arrowCasing } = palette.inks;
  return [
    ...outlines.map((d): PictureShape => ({
      kind: "path",
      role: "arrow",
      d,
      fill: arrowCasing,
      stroke: arrowCasing,
      strokeWidth: pathNumber(Math.max(1.5, 0.08 * pixelsPerCubie)),
    })),
    ...outlines.map((d): PictureShape => ({
      kind: "path",
      role: "arrow",
      d,
      fill: arrow,
    })),
  ];
}
