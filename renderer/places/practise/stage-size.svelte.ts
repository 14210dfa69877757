/**
 * How large the cube is drawn. The look's measures are for a window of
 * 1280 × 800 and one of 360 × 740; in between and beyond they grow with it.
 */
import { MediaQuery } from "svelte/reactivity";
import { innerHeight, innerWidth } from "svelte/reactivity/window";
import type { PictureBounds } from "../../../core/picture/cube-picture";
import type { HomeSide } from "../../state/practise/looks";

/** Width under which the narrow layout holds, as in the style sheets. Units: pixels. */
const NARROW = 720;

/** A cube's size and the space kept around its centre. Units: pixels. */
export interface StageSize {
  readonly pixelsPerCubie: number;
  readonly frame: PictureBounds;
}

/** The stages of a place, each with its size at the two windows of the look. */
const SIZES = {
  question: {
    wide: { pixels: 73, frame: [-322, -174, 194, 314] },
    narrow: { pixels: 44, frame: [-182, -104, 146, 186] },
  },
  // Seen from higher up, with a mirror on both sides; the floor only where it
  // is needed, or the cube would always be small.
  questionHigh: {
    wide: { pixels: 78, frame: [-359, -189, 368, 204] },
    narrow: { pixels: 38, frame: [-164, -94, 164, 104] },
  },
  questionHighWithFloor: {
    wide: { pixels: 68, frame: [-314, -165, 322, 326] },
    narrow: { pixels: 37, frame: [-164, -92, 164, 176] },
  },
  // Smaller, for the choices under the cube.
  choosing: {
    wide: { pixels: 56, frame: [-247, -134, 149, 241] },
    narrow: { pixels: 36, frame: [-149, -85, 120, 152] },
  },
  choosingHigh: {
    wide: { pixels: 62, frame: [-286, -151, 293, 163] },
    narrow: { pixels: 34, frame: [-147, -84, 147, 94] },
  },
  choosingHighWithFloor: {
    wide: { pixels: 58, frame: [-268, -141, 275, 278] },
    narrow: { pixels: 33, frame: [-146, -82, 146, 157] },
  },
  answer: {
    wide: { pixels: 86, frame: [-290, -216, 290, 270] },
    narrow: { pixels: 48, frame: [-164, -124, 164, 156] },
  },
  miss: {
    wide: { pixels: 76, frame: [-310, -180, 310, 330] },
    narrow: { pixels: 46, frame: [-164, -116, 164, 196] },
  },
  missHigh: {
    wide: { pixels: 70, frame: [-323, -170, 331, 184] },
    narrow: { pixels: 38, frame: [-164, -94, 164, 104] },
  },
  missHighWithFloor: {
    wide: { pixels: 66, frame: [-305, -160, 312, 318] },
    narrow: { pixels: 37, frame: [-164, -92, 164, 176] },
  },
  step: {
    wide: { pixels: 84, frame: [-290, -212, 290, 236] },
    narrow: { pixels: 46, frame: [-164, -120, 164, 136] },
  },
  setUp: {
    wide: { pixels: 92, frame: [-290, -224, 290, 290] },
    narrow: { pixels: 48, frame: [-164, -122, 164, 152] },
  },
  // Seen from higher up, with a mirror on both sides; the floor where it is needed.
  myCubeHigh: {
    wide: { pixels: 70, frame: [-323, -170, 331, 184] },
    narrow: { pixels: 38, frame: [-164, -94, 164, 104] },
  },
  myCubeHighWithFloor: {
    wide: { pixels: 66, frame: [-305, -160, 312, 318] },
    narrow: { pixels: 37, frame: [-164, -92, 164, 176] },
  },
} as const;

export type StageName = keyof typeof SIZES;

/** Height of everything but the cube where keys to tap stand under a question. Units: pixels. */
const BESIDE_CUBE = 464;

/** Width of what stands beside a question's cube, with the page's margin. Units: pixels. */
const RIGHT_OF_CUBE = 252;

const coarse = new MediaQuery("pointer: coarse");

/** Whether keys to tap stand under the cube: a finger is the pointer, or there is no room for a keyboard's. */
export function hasTapKeys(): boolean {
  return isNarrow() || coarse.current;
}

/** Whether the window has the narrow layout. */
export function isNarrow(): boolean {
  return (innerWidth.current ?? 1280) < NARROW;
}

/**
 * The size of a stage in the window as it is now; read it in markup or
 * `$derived`. Seen from the other side the picture is the same in a mirror.
 */
export function stageSize(name: StageName, side: HomeSide = 1): StageSize {
  const width = innerWidth.current ?? 1280;
  const height = innerHeight.current ?? 800;
  const narrow = width < NARROW;
  const { pixels, frame } = SIZES[name][narrow ? "narrow" : "wide"];
  const [left, top, right, bottom] = frame;
  const isQuestion = name.startsWith("question");
  const room = isQuestion && hasTapKeys() ? height - BESIDE_CUBE : Infinity;
  const roomRight = isQuestion ? width / 2 - RIGHT_OF_CUBE : Infinity;
  // A low window, or a zoomed one, still shows the whole cube at once.
  const scale = narrow
    ? Math.min(1.7, width / 360, Math.max(0.72, height / 740))
    : Math.max(
        0.62,
        Math.min(
          1.45,
          width / 1280,
          height / 800,
          room / (bottom - top),
          roomRight / right,
        ),
      );
  const scaled = (length: number) => length * scale;
  return {
    pixelsPerCubie: scaled(pixels),
    frame: {
      left: scaled(side === 1 ? left : -right),
      top: scaled(top),
      right: scaled(side === 1 ? right : -left),
      bottom: scaled(bottom),
    },
  };
}
