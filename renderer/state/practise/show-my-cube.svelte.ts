/**
 * A learner who is stuck shows their own cube: one piece of it, or all its
 * stickers. What was told and how far the way on has come is kept while the
 * window is open, so that a look at another place loses nothing.
 */
import { type StageShown, stageShown } from "../../../core/cases/stages-shown";
import { type Hold, holdOfVariant } from "../../../core/cases/variant";
import type { WayChoice } from "../../../core/cases/way-for-position";
import {
  LAST_LAYER_COURSE_NAMES,
  type LastLayerCourse,
  type PlainStep,
  type SolveStep,
  stagesOfSolve,
  type WholeSolve,
  wholeSolve,
} from "../../../core/cases/whole-solve";
import type { Cubies } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { isSameJson } from "../../../core/same-json";
import { present } from "../../../core/invariant";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { Result } from "../../../core/result";
import type { SolverError } from "../../workers/solver-client";
import { lasting } from "../lasting.svelte";
import type { LearnerState } from "../learner.svelte";
import { findSolution } from "./set-up-service";
import { StickerEntry } from "./sticker-entry.svelte";
import { ToldPiece } from "./told-piece.svelte";

/** What is on the page. */
export type ShowMyCubePage =
  /** One piece, or the whole cube? */
  | "choose"
  | "piece"
  | "stickers"
  /** What the whole cube shows. */
  | "shown"
  /** A step of its solve. */
  | "step"
  | "solved";

/** What of a learner all this is told for: with other colours, or held otherwise, it would be another cube. */
export interface ToldFor {
  readonly scheme: ColourScheme;
  readonly hold: Hold;
  readonly way: WayChoice;
}

/** Finds turns that solve a cube. Never rejects. */
export type SolutionFinder = (
  cube: HeldCube<Cubies>,
) => Promise<Result<readonly Turn[], SolverError>>;

/** A cube that is being shown. */
export class ShowMyCube {
  readonly told: ToldFor;
  #page: ShowMyCubePage = $state("choose");
  readonly piece: ToldPiece;
  #entry: StickerEntry;
  #cube: HeldCube<Cubies> | undefined = $state.raw();
  #course: LastLayerCourse;
  #at = $state(0);
  readonly #findSolution: SolutionFinder;
  readonly #solveBy: typeof wholeSolve;
  #rest: PlainStep | undefined = $state.raw();
  #trouble: SolverError | undefined = $state.raw();
  #isToldAgain = $state(false);
  readonly #solve: WholeSolve = $derived.by(() =>
    this.#cube === undefined
      ? { steps: [], unsolved: undefined }
      : this.#solveBy(this.#cube, {
          hold: this.told.hold,
          course: this.#course,
          way: this.told.way,
        }),
  );

  constructor(
    told: ToldFor,
    findSolution: SolutionFinder,
    solve: typeof wholeSolve = wholeSolve,
  ) {
    this.told = told;
    this.#findSolution = findSolution;
    this.#solveBy = solve;
    this.piece = new ToldPiece(told.hold, told.way);
    this.#entry = $state.raw(this.#emptyEntry());
    this.#course = $state(
      present(LAST_LAYER_COURSE_NAMES[0], "there is a course"),
    );
  }

  get page(): ShowMyCubePage {
    return this.#page;
  }

  /** The stickers that have been entered. */
  get entry(): StickerEntry {
    return this.#entry;
  }

  /** Whether the stickers were filled in as they should be, to be put right where the cube looks different. */
  get isToldAgain(): boolean {
    return this.#isToldAgain;
  }

  /** The whole cube as it was shown; undefined until it is. */
  get cube(): HeldCube<Cubies> | undefined {
    return this.#cube;
  }

  /** How the last layer is gone through. */
  get course(): LastLayerCourse {
    return this.#course;
  }

  /** The steps that solve the cube that was shown: case by case, and what is left in one where no way is known for a case. */
  get steps(): readonly SolveStep[] {
    const { steps } = this.#solve;
    return this.#rest === undefined ? steps : [...steps, this.#rest];
  }

  /** Why the steps do not solve the cube; undefined where they do, or may yet. */
  get trouble(): SolverError | undefined {
    return this.#trouble;
  }

  /** Which step is open, counted from 0. */
  get at(): number {
    return this.#at;
  }

  /** The open step. */
  get step(): SolveStep | undefined {
    return this.steps[this.#at];
  }

  /** What the cube that was shown has in each stage of its solve. */
  get stages(): readonly StageShown[] {
    const cube = this.#cube;
    return cube === undefined
      ? []
      : stagesOfSolve(this.#course).map((stage) =>
          stageShown(cube.cubies, stage),
        );
  }

  /** Goes to a page. */
  go(page: "choose" | "piece" | "stickers" | "shown"): void {
    this.#page = page;
  }

  /** All stickers are told, and are a cube. */
  show(cube: HeldCube<Cubies>): void {
    this.#cube = cube;
    this.#at = 0;
    this.#page = "shown";
    void this.#solveRest();
  }

  /** Goes through the last layer in another way; before the first step. */
  takeCourse(course: LastLayerCourse): void {
    this.#course = course;
    this.#at = 0;
    void this.#solveRest();
  }

  /** Looks for the rest of the solve again, after it could not be found. */
  searchAgain(): void {
    void this.#solveRest();
  }

  /** Opens a step; the one after the last is that the cube is solved. */
  open(at: number): void {
    const { length } = this.steps;
    this.#at = Math.max(0, Math.min(length, at));
    const isOver = this.#at === length;
    this.#page =
      isOver && (this.#solve.unsolved === undefined || this.#rest !== undefined)
        ? "solved"
        : "step";
  }

  /** The cube does not look as it should: its stickers are told again, from what they should be. */
  tellAgain(cube: HeldCube<Cubies>): void {
    this.#entry = new StickerEntry(this.told.scheme, cube.hold, cube.cubies);
    this.#isToldAgain = true;
    this.#page = "stickers";
  }

  /** Another cube, or the same one told from the beginning. */
  tellAnew(): void {
    this.#entry = this.#emptyEntry();
    this.#isToldAgain = false;
    this.#cube = undefined;
    this.#page = "stickers";
  }

  /** Has the rest solved where the cases do not lead to the end. */
  async #solveRest(): Promise<void> {
    this.#rest = undefined;
    this.#trouble = undefined;
    const before = this.#solve.unsolved;
    if (before === undefined) return;
    const found = await this.#findSolution(before);
    // Another cube or another course may have been chosen since.
    if (this.#solve.unsolved !== before) return;
    if (!found.ok) {
      this.#trouble = found.error;
      return;
    }
    const turns = found.value;
    const after = applyTurns(before, turns);
    this.#rest = { kind: "rest", before, turns, after };
  }

  #emptyEntry(): StickerEntry {
    const hold = holdOfVariant({ home: 0, seenFrom: 0 }, this.told.hold);
    return new StickerEntry(this.told.scheme, hold);
  }
}

const SHOWN = new WeakMap<LearnerState, ShowMyCube>();

/** The cube that a learner shows: the same as before, unless they changed its colours or its hold since. */
export function cubeShownBy(learner: LearnerState): ShowMyCube {
  const { scheme, settings, wayChoice } = learner;
  const { hold } = settings;
  const kept = SHOWN.get(learner);
  if (
    kept !== undefined &&
    isSameJson(kept.told, { scheme, hold, way: wayChoice })
  )
    return kept;
  const fresh = lasting(
    () => new ShowMyCube({ scheme, hold, way: wayChoice }, findSolution),
  );
  SHOWN.set(learner, fresh);
  return fresh;
}
