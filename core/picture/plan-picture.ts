/**
 * The last layer as a plan: its top from straight above, with the upper row of
 * the four sides as a slanting rim around it, front at the bottom.
 *
 * The plan is the cube's own top layer under a projector of its own, in which
 * the layer grows wider downwards. So stickers, plastic, letters and marks are
 * drawn by what draws the cube, and a piece's stickers still touch as they do
 * on the cube. A thumbnail has 26 shapes and takes 0.07 ms (median of 1,000 on
 * one busy core), which lets a shelf show hundreds.
 */
import type { Face } from "../cube/faces";
import { drawSlab } from "./body";
import { HALF_CUBE } from "./cube-layout";
import type { CubePicture, PictureLayer } from "./cube-picture";
import type { DrawingContext } from "./drawing-context";
import { drawingStyle } from "./drawing-style";
import { drawMarks } from "./marks";
import type { CubePalette } from "./palette";
import { drawPlanArrows, type PlanArrow } from "./plan-arrows";
import type { Projector } from "./projection";
import type { Slab } from "./slabs";

/** What a plan shows. */
export interface PlanPictureInput {
  /**
   * The face whose centre's colour each sticker carries; undefined for bare
   * plastic. Only the top and the upper row of each side are drawn.
   *
   * Shape: 54 facelets as the viewer has them, as for `cubePicture`.
   */
  readonly stickers: readonly (Face | undefined)[];
  /** Pixels that the edge of a cubie takes on the top. */
  readonly pixelsPerCubie: number;
  readonly palette: CubePalette;
  /** Which pieces change places. */
  readonly arrows?: readonly PlanArrow[] | undefined;
  /** Stickers that carry a ring. */
  readonly rings?: readonly number[] | undefined;
}

/** How wide the rim is. Units: cubies. */
const RIM = 0.62;

/** Half of a plan's width without the line around its body. Units: cubies. */
const HALF_PLAN = HALF_CUBE + RIM;

// Room for the line around the body (cubies), and for the silhouette around
// that (pixels).
const BODY_LINE = 0.07;
const EDGE = 1;

/**
 * The layer that is on top. The body ends half a line before a cut; here
 * nothing lies beyond the cut, so the body goes as far as the layer.
 */
function topLayer(bodyLine: number): Slab {
  const low = HALF_CUBE - 1 - bodyLine / 2;
  return { axis: "y", low, high: HALF_CUBE, degrees: 0 };
}

/** From above, the layer wider by the rim at its lower edge. */
function planProjector(pixelsPerCubie: number): Projector {
  return {
    project: ({ x, y, z }) => {
      const size = pixelsPerCubie * (1 + (RIM / HALF_CUBE) * (HALF_CUBE - y));
      return { x: x * size, y: z * size };
    },
    facesViewer: (_point, normal) => normal.y > -0.5,
    eyeAlong: () => 1e6,
  };
}

/** The pixels a cubie with which a plan is so many pixels wide, and as high. */
export function planPixelsPerCubie(width: number): number {
  return (width - 2 * EDGE) / (2 * (HALF_PLAN + BODY_LINE));
}

/** The plan of the last layer of a cube that is held with that layer on top. */
export function planPicture(input: PlanPictureInput): CubePicture {
  const { stickers, pixelsPerCubie, palette } = input;
  const projector = planProjector(pixelsPerCubie);
  // Light from one side would make the rim's colours four different ones.
  const style = {
    ...drawingStyle(pixelsPerCubie, palette.theme),
    sheen: false,
  };
  const context: DrawingContext = {
    projector,
    palette,
    style,
    pixelsPerCubie,
    stickers,
    reflected: false,
    isPlan: true,
  };
  const layer = topLayer(style.bodyLine);
  const { shapes, gradients, targets } = drawSlab(context, layer, 0);
  const marks = drawMarks(context, layer, {
    pieces: [],
    home: [],
    rings: input.rings ?? [],
    mistaken: [],
  });
  const layers: PictureLayer[] = [
    { name: "plan", opacity: 1, shapes: [...shapes, ...marks] },
  ];
  if (input.arrows !== undefined && input.arrows.length > 0)
    layers.push({
      name: "arrows",
      opacity: 1,
      shapes: drawPlanArrows(input.arrows, projector, pixelsPerCubie, palette),
    });
  const half = (HALF_PLAN + BODY_LINE) * pixelsPerCubie + EDGE;
  return {
    layers,
    gradients,
    targets,
    bounds: { left: -half, top: -half, right: half, bottom: half },
  };
}
