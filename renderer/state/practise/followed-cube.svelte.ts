/**
 * The cube in the learner's hands as far as the app follows it: what they said
 * of it, piece by piece where it has to be put right, and what their turns
 * made of it.
 */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { withForcedPieces } from "../../../core/cube/forced-pieces";
import {
  type CubePiece,
  type CubePlace,
  UNKNOWN_CUBE,
  withPieceAt,
  withTurnedAt,
} from "./own-cube";

/** What is known of a cube, and what of it was told last. */
export class FollowedCube {
  #known: PartlyKnownCubies | undefined;
  /** What was known before each place that was told since the last turn. */
  #before: readonly PartlyKnownCubies[] = $state.raw([]);
  #isPuttingRight = false;

  constructor(known: PartlyKnownCubies | undefined) {
    this.#known = $state.raw(known);
  }

  /** Undefined: nothing. While a walk is under way: before its first turn. */
  get known(): PartlyKnownCubies | undefined {
    return this.#known;
  }

  /** Whether the learner is putting the cube right piece by piece. */
  get isPuttingRight(): boolean {
    return this.#isPuttingRight;
  }

  /** Whether a place was told since the last turn. */
  get wasTold(): boolean {
    return this.#before.length > 0;
  }

  /** The learner says what their cube has now. */
  say(known: PartlyKnownCubies | undefined): void {
    this.#known = known;
    this.#isPuttingRight = false;
    this.#before = [];
  }

  /** The learner found a piece. */
  found(piece: CubePiece, position: number, orientation: number): void {
    this.#isPuttingRight = true;
    this.#tell((before) => withPieceAt(before, piece, position, orientation));
  }

  /** The learner said how the piece at a place is turned. */
  told(place: CubePlace, orientation: number): void {
    this.#tell((before) => withTurnedAt(before, place, orientation));
  }

  /** What was told last was wrong. */
  tellAnew(): void {
    if (!this.wasTold) return;
    this.#known = this.#before.at(-1);
    this.#before = this.#before.slice(0, -1);
  }

  /** A turn was made: what was told before it holds. */
  turned(): void {
    this.#before = [];
  }

  /** What a walk, or the end of an attempt, made of the cube. Putting it right goes on. */
  becomes(known: PartlyKnownCubies | undefined): void {
    this.#known = known;
  }

  /** A walk that brought a piece home is taken up again. */
  goOnPuttingRight(): void {
    this.#isPuttingRight = true;
  }

  #tell(tell: (before: PartlyKnownCubies) => PartlyKnownCubies): void {
    const before = this.#known ?? UNKNOWN_CUBE;
    this.#before = [...this.#before, before];
    this.#known = withForcedPieces(tell(before));
  }
}
