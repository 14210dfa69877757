/**
 * Where an attempt on the learner's own cube can stand, what it is begun with,
 * and what the learner reports at its end.
 */
import type { Position } from "../../../core/cases/position";
import type { WayChoice } from "../../../core/cases/way-for-position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { Hint } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import type { Result } from "../../../core/result";
import type { SolverError } from "../../workers/solver-client";
import type { RequestOptions } from "../../workers/worker-requests";
import type { StoredWalk } from "./desk-schema";
import type { GivenAnswer } from "./given-answer";
import type { CubePiece, CubePlace } from "./own-cube";
import type { TurnWalk } from "./turn-walk";

/** Finds turns that bring the learner's cube to a position. Never rejects. */
export type SetUpFinder = (
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  seed: number,
  options?: RequestOptions,
) => Promise<Result<readonly Turn[], SolverError>>;

/**
 * What a learner says at any time when the cube in their hands is not what
 * the app takes it for. The base is what was done before the stage: the cross,
 * the first layer, the first two layers.
 */
export type Astray = "looks-different" | "base-lost" | "solved";

/** What the learner says the cube shows after their answer. */
export type Report = "done" | "corrected" | "not-done";

/** Where the case's set-up stands. */
export type SetUpStage =
  /** What the cube has now is not known. */
  | { readonly kind: "has" }
  /** A piece has to be found on the cube. */
  | { readonly kind: "find"; readonly piece: CubePiece }
  /** It has to be said how the piece at a place of the last layer is turned. */
  | { readonly kind: "tell"; readonly place: CubePlace }
  /** A piece is brought home. */
  | {
      readonly kind: "bring";
      readonly piece: CubePiece;
      readonly walk: TurnWalk;
    }
  | { readonly kind: "searching"; readonly progress: number }
  /** No set-up was found, said plainly. */
  | { readonly kind: "no-set-up"; readonly error: SolverError }
  | { readonly kind: "set-up"; readonly walk: TurnWalk };

/** Where the answer stands, once the case is set up. */
export type AnswerStage =
  /** A new case: its way is walked through. */
  | { readonly kind: "shown"; readonly walk: TurnWalk }
  /** The clock waits for the learner to have seen it. */
  | { readonly kind: "see" }
  | { readonly kind: "turning"; readonly hasSaidKnown: boolean }
  | { readonly kind: "report" }
  | { readonly kind: "ended" };

/** Where an attempt on the learner's own cube stands. */
export type MyCubeStage = SetUpStage | AnswerStage;

/** What an attempt is begun with. */
export interface MyCubeStart {
  readonly item: RoundItem;
  /** Every piece known; the learner's cube shows the part of it that is named. */
  readonly position: Position;
  /** The way that is taught, as it is played on this position. */
  readonly way: readonly Turn[];
  /** How other pieces are brought home where the cube has to be put right first. */
  readonly wayChoice: WayChoice;
  /** Whether the piece and its home are marked. */
  readonly isMarked: boolean;
  readonly isRetry: boolean;
  /** What is known of the cube in the hands; undefined: not yet asked. */
  readonly ownCube: PartlyKnownCubies | undefined;
  /** A walk that was under way when the window closed. */
  readonly walk?: StoredWalk | undefined;
  readonly findSetUp: SetUpFinder;
  /** The case is set up: what is shown now has been shown. */
  readonly onset: () => void;
  /** Something changed that must survive a reload. */
  readonly onmoved: () => void;
  /** More help was asked for; everything so far. */
  readonly onhinted: (hints: readonly Hint[]) => void;
  readonly onended: (given: GivenAnswer) => void;
}
