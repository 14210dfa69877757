/**
 * The one picture of a cube: state, view and a partly turned layer become
 * shapes to paint. It serves the big cube, thumbnails and printed sheets.
 *
 * Plain vectors instead of a graphics library: they print, they scale, they
 * need no graphics card, and a test can ask what is where. The big picture
 * with two mirrors and 200 shapes takes about 1 ms (median of 1,000 on one busy
 * core), so it is simply computed anew for every animation frame.
 */
import type { Face } from "../cube/faces";
import type { Turn } from "../cube/turns";
import { drawArrow } from "./arrow";
import { type Badge, drawBadges } from "./badges";
import { drawSlab } from "./body";
import { HALF_CUBE } from "./cube-layout";
import type { DrawingContext } from "./drawing-context";
import { drawingStyle } from "./drawing-style";
import type { FaceletTarget } from "./facelet-square";
import { drawMarks, drawMarksOverArrow, type Marks } from "./marks";
import { type Mirror, MIRRORS } from "./mirror-glass";
import { drawMirror, type MirrorDrawing } from "./mirrors";
import type { CubePalette } from "./palette";
import {
  type CubeView,
  perspective,
  type Point,
  type Projector,
} from "./projection";
import {
  type PictureGradient,
  type PictureShape,
  pathNumber,
  polygonPath,
} from "./shapes";
import { inSlab, slabsInPaintOrder, type Turning, WHOLE_CUBE } from "./slabs";
import { vector } from "./vector";

/** Which mirrors stand around the cube. */
export type MirrorChoice = Readonly<Partial<Record<Mirror, boolean>>>;

/** What a picture shows. */
export interface CubePictureInput {
  /**
   * The face whose centre's colour each sticker carries; undefined for bare
   * plastic.
   *
   * Shape: 54 facelets as the viewer has them (9 × face + 3 × row + column,
   *        faces U R F D L B), *before* a turn that is under way.
   */
  readonly stickers: readonly (Face | undefined)[];
  readonly view: CubeView;
  /** Facelets of each piece to bring home: outlined. */
  readonly pieces?: readonly (readonly number[])[] | undefined;
  /** Facelets of the pieces' homes: a soft mark; none where a piece is in its own. */
  readonly home?: readonly number[] | undefined;
  /** Stickers that carry a ring. */
  readonly rings?: readonly number[] | undefined;
  /** Where a sticker was taken to be: a dashed square. */
  readonly mistaken?: readonly number[] | undefined;
  /** Places with a number, to choose from. */
  readonly badges?: readonly Badge[] | undefined;
  readonly turning?: Turning | undefined;
  /** A turn to show by an arrow; the picture shows the cube before it. */
  readonly arrow?: Turn | undefined;
  readonly mirrors?: MirrorChoice | undefined;
  /** How large the names beside mirrors are, which then count to what the picture takes up; absent: small, for who sits before the screen. Units: pixels. */
  readonly mirrorWords?: number | undefined;
  /** 0–1, for mirrors that come and go; 1 if absent. */
  readonly mirrorOpacity?: number | undefined;
  readonly palette: CubePalette;
}

/** Shapes that are painted, faded and clipped together. */
export interface PictureLayer {
  readonly name: string;
  /** 0–1. */
  readonly opacity: number;
  /** A path that the layer is kept within. */
  readonly clip?: string;
  readonly shapes: readonly PictureShape[];
}

/** A rectangle. Units: pixels from the cube's centre, y down. */
export interface PictureBounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A facelet that can be pointed at, directly or in a mirror. */
export interface PictureTarget extends FaceletTarget {
  readonly mirror?: Mirror;
}

/** A finished picture. Its origin is the cube's own centre. */
export interface CubePicture {
  /** In paint order. */
  readonly layers: readonly PictureLayer[];
  readonly gradients: readonly PictureGradient[];
  /** In paint order: the last one that holds a point is the one seen there. */
  readonly targets: readonly PictureTarget[];
  /** What the cube at rest and its mirrors take up, whatever is turning. */
  readonly bounds: PictureBounds;
}

/** The homes that no piece is in: a piece that lies wholly in them is in its own. */
function emptyHomes(
  home: readonly number[],
  pieces: readonly (readonly number[])[],
): readonly number[] {
  const filled = pieces.filter((piece) =>
    piece.every((facelet) => home.includes(facelet)),
  );
  return home.filter(
    (facelet) => !filled.some((piece) => piece.includes(facelet)),
  );
}

function shadowUnder(context: DrawingContext): PictureShape | undefined {
  const { projector, palette, pixelsPerCubie } = context;
  if (palette.inks.shadow === 0) return undefined;
  const corner = (x: number, z: number): Point => {
    const point = projector.project(vector(x * 1.55 + 0.16, -1.52, z * 1.55));
    return { x: point.x, y: point.y + 0.3 * pixelsPerCubie };
  };
  return {
    kind: "path",
    role: "shadow",
    d: polygonPath([
      corner(-1, -1),
      corner(1, -1),
      corner(1, 1),
      corner(-1, 1),
    ]),
    fill: palette.inks.shadowColour,
    fillOpacity: palette.inks.shadow,
    blur: pathNumber(0.18 * pixelsPerCubie),
  };
}

function boundsOf(
  projector: Projector,
  mirrors: readonly MirrorDrawing[],
  pixelsPerCubie: number,
): PictureBounds {
  const points: Point[] = mirrors.flatMap((mirror) => mirror.corners);
  for (const x of [-HALF_CUBE, HALF_CUBE])
    for (const y of [-HALF_CUBE, HALF_CUBE])
      for (const z of [-HALF_CUBE, HALF_CUBE])
        points.push(projector.project(inSlab(WHOLE_CUBE, vector(x, y, z))));
  const margin = 0.14 * pixelsPerCubie + 1;
  return {
    left: Math.min(...points.map((point) => point.x)) - margin,
    top: Math.min(...points.map((point) => point.y)) - margin,
    right: Math.max(...points.map((point) => point.x)) + margin,
    bottom: Math.max(...points.map((point) => point.y)) + margin,
  };
}

/** A share that falls from 1 to 0 as a value goes from `full` to `gone`. */
function fade(value: number, full: number, gone: number): number {
  return Math.min(1, Math.max(0, (value - gone) / (full - gone)));
}

/**
 * How strongly a mirror is shown from a view.
 *
 * Mirrors are placed for somebody in front and above; as the view leaves that
 * place to look underneath or behind, they fade and give way to the real
 * side.
 */
function mirrorStrength(mirror: Mirror, view: CubeView): number {
  const above = fade(view.pitch, 18, 8) * fade(-view.pitch, -50, -65);
  const aside = fade(-Math.abs(view.yaw), -32, -45);
  switch (mirror) {
    case "left":
      return above * aside * fade(view.yaw, 15, 5);
    case "right":
      return above * aside * fade(-view.yaw, 15, 5);
    case "floor":
    case "back":
      return above * aside;
  }
}

/** The picture of a cube. */
export function cubePicture(input: CubePictureInput): CubePicture {
  const { view, palette, stickers, turning } = input;
  const { pixelsPerCubie } = view;
  const projector = perspective(view);
  const context: DrawingContext = {
    projector,
    palette,
    style: drawingStyle(pixelsPerCubie, palette.theme),
    pixelsPerCubie,
    stickers,
    reflected: false,
  };
  const pieces = input.pieces ?? [];
  const marks: Marks = {
    pieces,
    home: emptyHomes(input.home ?? [], pieces),
    rings: input.rings ?? [],
    mistaken: input.mistaken ?? [],
  };
  const layers: PictureLayer[] = [];
  const gradients: PictureGradient[] = [];
  const targets: PictureTarget[] = [];
  const mirrors: MirrorDrawing[] = [];
  for (const mirror of MIRRORS) {
    const opacity = mirrorStrength(mirror, view) * (input.mirrorOpacity ?? 1);
    if (input.mirrors?.[mirror] !== true || opacity === 0) continue;
    const drawing = drawMirror(
      context,
      view,
      mirror,
      marks,
      turning,
      gradients.length,
      input.mirrorWords,
    );
    mirrors.push(drawing);
    gradients.push(...drawing.gradients);
    layers.push(
      { name: mirror, opacity, shapes: drawing.behind },
      {
        name: `${mirror}-reflection`,
        opacity,
        clip: drawing.clip,
        shapes: drawing.reflection,
      },
      { name: `${mirror}-front`, opacity, shapes: drawing.inFront },
    );
    if (opacity === 1)
      targets.push(...drawing.targets.map((target) => ({ ...target, mirror })));
  }
  const shadow =
    mirrors.some((drawing) => drawing.mirror === "floor") || view.pitch < 0
      ? undefined
      : shadowUnder(context);
  if (shadow !== undefined)
    layers.push({ name: "shadow", opacity: 1, shapes: [shadow] });
  const cube: PictureShape[] = [];
  for (const slab of slabsInPaintOrder(turning, projector)) {
    const drawing = drawSlab(context, slab, gradients.length);
    cube.push(...drawing.shapes, ...drawMarks(context, slab, marks));
    gradients.push(...drawing.gradients);
    targets.push(...drawing.targets);
  }
  layers.push({ name: "cube", opacity: 1, shapes: cube });
  if (input.arrow !== undefined)
    layers.push({
      name: "arrow",
      opacity: 1,
      shapes: [
        ...drawArrow(input.arrow, view, projector, palette),
        ...drawMarksOverArrow(context, marks),
      ],
    });
  if (input.badges !== undefined)
    layers.push({
      name: "badges",
      opacity: 1,
      shapes: drawBadges(input.badges, targets, palette, pixelsPerCubie),
    });
  return {
    layers,
    gradients,
    targets,
    bounds: boundsOf(projector, mirrors, pixelsPerCubie),
  };
}
