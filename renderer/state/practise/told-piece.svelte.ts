/**
 * One piece that a learner is stuck with: which it is, where it is, and what
 * follows. Everything that comes before its stage is taken to be placed.
 */
import { piecesOfHome, placedBefore } from "../../../core/cases/constraint";
import { holdFor, holdInStage } from "../../../core/cases/hold-in-stage";
import { recognise } from "../../../core/cases/recognise";
import {
  FIRST_LAYER_STAGES,
  type FirstLayerStage,
  SLOT_STAGES,
  type SlotStage,
} from "../../../core/cases/stage";
import {
  type Hold,
  HOME_INDICES,
  type HomeIndex,
} from "../../../core/cases/variant";
import type { WayChoice } from "../../../core/cases/way-for-position";
import { type CaseStep, stepToAnswer } from "../../../core/cases/whole-solve";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import { placeFacelets } from "./case-picture";
import { type CubePiece, isKnown, onlyHome, withPieceAt } from "./own-cube";
import { piecesOf } from "./prompt-words";

/** The stages in which single pieces are brought home. */
export const PIECE_STAGES = [...FIRST_LAYER_STAGES, ...SLOT_STAGES] as const;

/** A stage in which single pieces are brought home. */
export type PieceStage = FirstLayerStage | SlotStage;

/** What comes of a piece that was told. */
export type PieceOutcome =
  | { readonly kind: "way"; readonly step: CaseStep }
  | { readonly kind: "home" }
  /** The case is known, and no way for it. */
  | { readonly kind: "no-way" };

/** A piece that is being told. */
export class ToldPiece {
  readonly #chosenHold: Hold;
  readonly #way: WayChoice;
  #stage: PieceStage = $state("first-layer-edges");
  #home: HomeIndex | undefined = $state();
  #cubies: PartlyKnownCubies;
  readonly #asked = $derived.by(() =>
    this.#home === undefined
      ? undefined
      : piecesOf(piecesOfHome(this.#stage, this.#home)).find(
          (piece) => !isKnown(this.#cubies, piece),
        ),
  );
  readonly #outcome: PieceOutcome | undefined = $derived.by(() => {
    const home = this.#home;
    if (home === undefined || this.#asked !== undefined) return undefined;
    const { cube, stage } = this;
    if (recognise(cube.cubies, stage, home) === undefined)
      return { kind: "home" };
    const step = stepToAnswer(cube, stage, home, this.#chosenHold, this.#way);
    return step === undefined ? { kind: "no-way" } : { kind: "way", step };
  });

  constructor(hold: Hold, way: WayChoice) {
    this.#chosenHold = hold;
    this.#way = way;
    this.#cubies = $state.raw(this.#before());
  }

  get stage(): PieceStage {
    return this.#stage;
  }

  /** Where the piece belongs; undefined until one is chosen. */
  get home(): HomeIndex | undefined {
    return this.#home;
  }

  /** What is known of the cube, held as it is asked to be: with the chosen home in front. */
  get cube(): HeldCube<PartlyKnownCubies> {
    const hold = holdFor(this.#stage, this.#chosenHold);
    return {
      cubies: this.#cubies,
      hold: holdInStage(
        this.#stage,
        { home: this.#home ?? 0, seenFrom: 0 },
        hold,
      ),
    };
  }

  /** The piece whose place is asked for; undefined while none is chosen, and when all is told. */
  get asked(): CubePiece | undefined {
    return this.#asked;
  }

  /** What comes of it; undefined until all is told. */
  get outcome(): PieceOutcome | undefined {
    return this.#outcome;
  }

  /** The home that a facelet of the picture belongs to; undefined where it is none of the stage's. */
  homeOfFacelet(facelet: number): HomeIndex | undefined {
    return HOME_INDICES.find((home) =>
      piecesOf(piecesOfHome(this.#stage, home)).some(({ kind, piece }) =>
        placeFacelets(this.cube, kind, piece).includes(facelet),
      ),
    );
  }

  /** Chooses among the pieces of another stage. */
  takeStage(stage: PieceStage): void {
    this.#stage = stage;
    this.forget();
  }

  /** Chooses the piece. */
  choose(home: HomeIndex): void {
    this.#cubies = this.#before();
    this.#home = home;
  }

  /** The piece that is asked for is there. */
  found(position: number, orientation: number): void {
    const { asked } = this;
    if (asked === undefined) return;
    this.#cubies = withPieceAt(this.#cubies, asked, position, orientation);
  }

  /** Its place was told wrongly: it is asked for again. */
  tellAgain(): void {
    this.#cubies = this.#before();
  }

  /** No piece is chosen. */
  forget(): void {
    this.#home = undefined;
    this.#cubies = this.#before();
  }

  /** A cube on which only what comes before the stage is known: it is placed. */
  #before(): PartlyKnownCubies {
    return onlyHome(piecesOf(placedBefore(this.#stage)));
  }
}
