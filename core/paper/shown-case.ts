/** A case as sheets show it: what a page needs to know of it, and nothing of how it is drawn. */
import type { Turn } from "../cube/turns";
import type { CubePicture } from "../picture/cube-picture";
import type { PaperName } from "./paper-size";

/** How turns are told: letters with words, or words alone. */
export type TurnsTold = "both" | "words";

/** A picture with what it shows, in words. */
export interface ShownPicture {
  readonly picture: CubePicture;
  readonly label: string;
}

/** One turn of a way: the cube before it, with an arrow. */
export interface ShownStep extends ShownPicture {
  /** In notation. */
  readonly move: string;
  /** What the turn does: "Right side down; the corner goes home." */
  readonly words: string;
}

/** Turns as they stand on paper. */
export interface ShownTurns {
  readonly turns: readonly Turn[];
  /** The same in words, one sentence. */
  readonly words: string;
}

/** How a cube is brought to a position. */
export interface ShownSetUp extends ShownTurns {
  /** How it is held at first, where the head does not say it for the whole sheet: "white on top and green in front". */
  readonly held?: string;
}

/** A case to keep beside the cube. */
export interface ShownCase extends ShownPicture {
  readonly title: string;
  /** Brings a cube to it; undefined where none was found. */
  readonly setUp: ShownSetUp | undefined;
  /** Undefined where no one way answers it. */
  readonly way: ShownTurns | undefined;
  /** The way turn by turn. */
  readonly steps: readonly ShownStep[];
}

/** A position to answer. */
export interface ShownQuestion extends ShownPicture {
  readonly setUp: ShownSetUp | undefined;
  /** What is to be done, where the head does not say it for the whole sheet. */
  readonly asks?: string;
  /** The name of the case that it shows: part of the answer. */
  readonly title: string;
  readonly answer: ShownTurns;
}

/** What a sheet of cases is made from. */
export interface CasesOnPaper {
  readonly paper: PaperName;
  readonly title: string;
  /** What to do, one paragraph each. */
  readonly lines: readonly string[];
  readonly cases: readonly ShownCase[];
  readonly told: TurnsTold;
}

/** One of many cells of a sheet. Units: millimetres. */
export interface CellPlace {
  /** Counted from 1. */
  readonly number: number;
  readonly told: TurnsTold;
  readonly width: number;
  /** Where what stands beside its picture begins. */
  readonly beside: number;
}

/** How wide pictures may be on each kind of sheet. Units: millimetres. */
export const PICTURE_ROOM = {
  case: 44,
  step: 24,
  question: 42,
  overview: 33,
} as const;
