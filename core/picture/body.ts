/** The cube's plastic and stickers, slab by slab. */
import { contrast, shaded } from "./colours";
import { FACE_FRAMES, FACELET_PLACES, type FaceletPlace } from "./cube-layout";
import {
  type DrawingContext,
  plasticColour,
  stickerColour,
} from "./drawing-context";
import {
  faceletSquare,
  type FaceletTarget,
  faceletTarget,
} from "./facelet-square";
import {
  type PathShape,
  type PictureGradient,
  type PictureShape,
  pathNumber,
  polygonPath,
  rectangleCorners,
  rectanglePath,
} from "./shapes";
import { sheenOn } from "./sheen";
import { type SlabSide, slabSides, turnedRectangle } from "./slab-sides";
import { inSlab, type Slab, slabHolds } from "./slabs";

/** What drawing a slab gives. */
export interface SlabDrawing {
  readonly shapes: readonly PictureShape[];
  /** Colour ramps, numbered from the `firstGradient` that was passed in. */
  readonly gradients: readonly PictureGradient[];
  readonly targets: readonly FaceletTarget[];
}

// How dark the plastic inside a cut is, against the body's.
const CUT_SHADE = 0.86;

function bodyShape(
  context: DrawingContext,
  slab: Slab,
  side: SlabSide,
): PathShape {
  const { palette, projector, style, pixelsPerCubie } = context;
  const { inks } = palette;
  const normal = inSlab(slab, FACE_FRAMES[side.face].normal);
  const corners = rectangleCorners(turnedRectangle(slab, side.rectangle));
  const colour = side.isCut
    ? shaded(inks.gap, CUT_SHADE)
    : plasticColour(context, inks.gap, normal);
  return {
    kind: "path",
    role: side.isCut ? "cut" : "body",
    d: polygonPath(corners.map((corner) => projector.project(corner))),
    fill: colour,
    stroke: colour,
    strokeWidth: style.bodyLine * pixelsPerCubie,
  };
}

/** Draws one facelet's squares, from the tile up. */
function facelet(
  context: DrawingContext,
  slab: Slab,
  place: FaceletPlace,
): readonly PathShape[] {
  const { palette, projector, style, pixelsPerCubie } = context;
  const { inks } = palette;
  const normal = inSlab(slab, place.frame.normal);
  const shapes: PathShape[] = [];
  const add = (
    role: "tile" | "sticker",
    half: number,
    radius: number,
    look: Pick<PathShape, "fill" | "stroke" | "strokeWidth" | "strokeOpacity">,
  ) =>
    shapes.push({
      kind: "path",
      role,
      d: rectanglePath(projector, faceletSquare(slab, place, half, radius)),
      facelet: place.facelet,
      ...look,
    });
  const face = context.stickers[place.facelet];
  if (face === undefined) {
    add("tile", style.bareHalf, style.bareRadius, {
      fill: plasticColour(context, inks.bare, normal),
    });
    if (style.plateHalf !== undefined)
      add("tile", style.plateHalf, style.plateRadius, {
        fill: plasticColour(context, inks.plate, normal),
        ...(style.stickerLine > 0
          ? { stroke: inks.plateLine, strokeWidth: style.stickerLine }
          : {}),
      });
    return shapes;
  }
  if (style.tileHalf !== undefined)
    add("tile", style.tileHalf, style.tileRadius, {
      fill: plasticColour(context, inks.tile, normal),
    });
  add("sticker", style.stickerHalf, style.stickerRadius, {
    fill: stickerColour(context, face, normal),
    ...(style.stickerLine > 0
      ? { stroke: inks.stickerLine, strokeWidth: style.stickerLine }
      : {}),
  });
  if (palette.rim !== undefined) {
    const width = Math.max(1, 0.05 * pixelsPerCubie);
    const inset = width / pixelsPerCubie / 2;
    add("sticker", style.stickerHalf - inset, style.stickerRadius, {
      stroke: palette.rim,
      strokeWidth: pathNumber(width),
    });
    return shapes;
  }
  const line = style.innerLine;
  if (line > 0)
    add("sticker", style.stickerHalf - line / 2, style.stickerRadius, {
      stroke: "#ffffff",
      strokeWidth: line * pixelsPerCubie,
      strokeOpacity:
        contrast(palette.faces[face], "#ffffff") < 1.3 ? 0.6 : 0.16,
    });
  return shapes;
}

/** One slab: its plastic, its tiles and stickers, and the light on its sides. */
export function drawSlab(
  context: DrawingContext,
  slab: Slab,
  firstGradient: number,
): SlabDrawing {
  const { projector, style, palette, reflected } = context;
  const shapes: PictureShape[] = [];
  const gradients: PictureGradient[] = [];
  const targets: FaceletTarget[] = [];
  const sides = slabSides(slab, style.bodyLine / 2, style.bodyInset).filter(
    (side) =>
      projector.facesViewer(
        inSlab(slab, side.rectangle.centre),
        inSlab(slab, FACE_FRAMES[side.face].normal),
      ),
  );
  const bodies = sides.map((side) => bodyShape(context, slab, side));
  const { silhouette } = palette.inks;
  if (silhouette !== undefined && !reflected)
    for (const body of bodies)
      shapes.push({
        ...body,
        fill: silhouette,
        stroke: silhouette,
        strokeWidth: (body.strokeWidth ?? 0) + 2,
      });
  shapes.push(...bodies);
  for (const side of sides) {
    if (side.isCut) continue;
    for (const place of FACELET_PLACES) {
      if (place.face !== side.face || !slabHolds(slab, place.cubie)) continue;
      shapes.push(...facelet(context, slab, place));
      targets.push(faceletTarget(projector, slab, place));
    }
    if (!style.sheen) continue;
    const light = sheenOn(
      projector,
      slab,
      side,
      firstGradient + gradients.length,
    );
    if (light === undefined) continue;
    shapes.push(light.shape);
    gradients.push(light.ramp);
  }
  return { shapes, gradients, targets };
}
