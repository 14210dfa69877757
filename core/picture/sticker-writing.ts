/** What is written on stickers: letters, or signs in their place. */
import { contrast } from "./colours";
import type { FaceletPlace } from "./cube-layout";
import {
  type DrawingContext,
  plasticColour,
  stickerColour,
} from "./drawing-context";
import { faceletSquare, stepOnPaper } from "./facelet-square";
import {
  type PathShape,
  type PictureShape,
  pathNumber,
  type TextShape,
} from "./shapes";
import { inSlab, type Slab } from "./slabs";
import { signPath } from "./sticker-signs";
import { onPlane, type Vector } from "./vector";

/** The colour of black or white that stands out more from a sticker. */
export function inkOn(hex: string): string {
  return contrast(hex, "#111111") >= contrast(hex, "#ffffff")
    ? "#111111"
    : "#ffffff";
}

/** The colour that a mark on a facelet lies on. */
export function underlying(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
): string {
  const face = context.stickers[place.facelet];
  const normal = inSlab(slab, place.frame.normal);
  if (face !== undefined) return stickerColour(context, face, normal);
  const { bare, plate } = context.palette.inks;
  return plasticColour(
    context,
    context.style.plateHalf === undefined ? bare : plate,
    normal,
  );
}

function letterShape(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
): TextShape | undefined {
  const { palette, projector, pixelsPerCubie } = context;
  const face = context.stickers[place.facelet];
  const text = face === undefined ? undefined : palette.letters?.[face];
  if (text === undefined) return undefined;
  const square = faceletSquare(slab, place, 0.5, 0);
  const { x, y } = projector.project(square.centre);
  const fill = inkOn(underlying(context, slab, place));
  if (context.isPlan === true)
    return {
      kind: "text",
      role: "letter",
      text,
      matrix: [1, 0, 0, 1, pathNumber(x), pathNumber(y)],
      // A plan's rim is narrower than its top.
      fontSize: pathNumber((place.face === "U" ? 0.52 : 0.42) * pixelsPerCubie),
      weight: 700,
      anchor: "middle",
      fill,
      facelet: place.facelet,
    };
  const along = (direction: Vector) => {
    const step = stepOnPaper(projector, square.centre, direction);
    return { x: step.x / pixelsPerCubie, y: step.y / pixelsPerCubie };
  };
  let column = along(square.column);
  let row = along(square.row);
  // In a mirror a letter would read backwards: turn it the readable way.
  if (column.x * row.y - column.y * row.x < 0) {
    if (place.face === "D" || place.face === "U")
      row = { x: -row.x, y: -row.y };
    else column = { x: -column.x, y: -column.y };
  }
  return {
    kind: "text",
    role: "letter",
    text,
    matrix: [column.x, column.y, row.x, row.y, x, y],
    fontSize: pathNumber(0.52 * pixelsPerCubie),
    weight: 700,
    anchor: "middle",
    fill,
    facelet: place.facelet,
  };
}

/** Half of a sticker's width. Units: cubies; on a plan's rim, which is narrower than its top. */
const HALF = 0.425;
const HALF_ON_RIM = 0.31;

function signShape(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
): PathShape | undefined {
  const { palette, projector, pixelsPerCubie } = context;
  const face = context.stickers[place.facelet];
  const sign = face === undefined ? undefined : palette.signs?.[face];
  if (sign === undefined) return undefined;
  const { centre, column, row } = faceletSquare(slab, place, 0.5, 0);
  const middle = projector.project(centre);
  const onPlan = pixelsPerCubie * (place.face === "U" ? HALF : HALF_ON_RIM);
  return {
    kind: "path",
    role: "sign",
    d: signPath(sign, (x, y) =>
      context.isPlan === true
        ? { x: middle.x + x * onPlan, y: middle.y + y * onPlan }
        : projector.project(onPlane(centre, column, x * HALF, row, y * HALF)),
    ),
    fill: inkOn(underlying(context, slab, place)),
    facelet: place.facelet,
  };
}

/** What is written on a sticker, if anything. */
export function writingOn(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
): PictureShape | undefined {
  return signShape(context, slab, place) ?? letterShape(context, slab, place);
}
