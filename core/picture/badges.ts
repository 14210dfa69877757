/**
 * Numbers on the places of a cube to choose from. A badge stands upright on
 * the sticker of its place that is seen best, rather directly than in a
 * mirror, and leaves the sticker's rim free: its colour is part of the
 * question.
 */
import { type FaceletTarget, targetHolds } from "./facelet-square";
import type { Mirror } from "./mirror-glass";
import type { CubePalette } from "./palette";
import type { Point } from "./projection";
import {
  type PathShape,
  type PictureShape,
  pathNumber,
  type TextShape,
} from "./shapes";

/** A place with its number. */
export interface Badge {
  readonly text: string;
  /** The facelets of its place, as the viewer has them. */
  readonly facelets: readonly number[];
  /** To choose; or, after the answer, the right one and the one that was taken for it. */
  readonly kind: "choice" | "right" | "mistaken";
}

/** A facelet that is seen, directly or in a mirror. */
interface SeenFacelet extends FaceletTarget {
  readonly mirror?: Mirror;
}

/** Units: cubies, and pixels at least. */
const RADIUS = 0.27;
const LEAST_RADIUS = 10;

/** So much larger a sticker in a mirror must be than one seen directly: on the slivers of the far side no badge has room. */
const DIRECT = 1.5;

/** How large a target is on the paper. Source: the shoelace formula. */
function areaOf({ corners }: SeenFacelet): number {
  const doubled = corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return Math.abs(doubled) / 2;
}

function middleOf({ corners }: SeenFacelet): Point {
  const sum = corners.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }));
  return { x: sum.x / corners.length, y: sum.y / corners.length };
}

/** Whether nothing lies over the inner part of a target, where a badge is: the cube stands before its mirrors. Shape: `targets` in paint order. */
function isFree(target: SeenFacelet, targets: readonly SeenFacelet[]): boolean {
  const middle = middleOf(target);
  return target.corners.every((corner) => {
    const point = {
      x: (corner.x + middle.x) / 2,
      y: (corner.y + middle.y) / 2,
    };
    return targets.findLast((one) => targetHolds(one, point)) === target;
  });
}

/** Where a place is seen best; undefined where it is not seen at all. */
function bestSeen(
  facelets: readonly number[],
  targets: readonly SeenFacelet[],
): SeenFacelet | undefined {
  const own = targets.filter(({ facelet }) => facelets.includes(facelet));
  const free = own.filter((target) => isFree(target, targets));
  const worth = (target: SeenFacelet) =>
    areaOf(target) * (target.mirror === undefined ? DIRECT : 1);
  return (free.length > 0 ? free : own).toSorted(
    (a, b) => worth(b) - worth(a),
  )[0];
}

function badgeShapes(
  { text, kind }: Badge,
  { x, y }: Point,
  facelet: number,
  { inks }: CubePalette,
  pixelsPerCubie: number,
): readonly PictureShape[] {
  const radius = Math.max(LEAST_RADIUS, RADIUS * pixelsPerCubie);
  const r = pathNumber(radius);
  const d = `M${pathNumber(x - radius)} ${pathNumber(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  const { fill, ink } = {
    choice: { fill: inks.outlineCasing, ink: inks.outline },
    right: { fill: inks.arrow, ink: inks.onArrow },
    mistaken: { fill: inks.outline, ink: inks.outlineCasing },
  }[kind];
  const width = Math.max(1.6, 0.036 * pixelsPerCubie);
  const disc: PathShape = {
    kind: "path",
    role: "badge",
    d,
    fill,
    stroke: ink,
    strokeWidth: pathNumber(width),
    // Told apart by its line as well, not by its colour alone.
    ...(kind === "mistaken" ? { dashes: [3, 2.5] } : {}),
    facelet,
  };
  const number: TextShape = {
    kind: "text",
    role: "badge",
    text,
    matrix: [1, 0, 0, 1, pathNumber(x), pathNumber(y)],
    fontSize: pathNumber(1.25 * radius),
    weight: 700,
    anchor: "middle",
    fill: ink,
    facelet,
  };
  return [disc, number];
}

/** The badges of a picture, on top of everything else; none for a place that is not seen. */
export function drawBadges(
  badges: readonly Badge[],
  targets: readonly SeenFacelet[],
  palette: CubePalette,
  pixelsPerCubie: number,
): readonly PictureShape[] {
  return badges.flatMap((badge) => {
    const seen = bestSeen(badge.facelets, targets);
    return seen === undefined
      ? []
      : badgeShapes(
          badge,
          middleOf(seen),
          seen.facelet,
          palette,
          pixelsPerCubie,
        );
  });
}
