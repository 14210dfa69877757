/**
 * The turns of an answer one after the other, each told apart as searching or
 * turning, with what was corrected on the way.
 *
 * Searching: whole-cube turns, and turns of the free layer while no other
 * turn stands (lining up). Turning: everything else. Whatever moves only the
 * free layer against the rest is a turn of it: with the first layer up, `D`,
 * but also `Uw`, and after `z2` the learner's `U`.
 */
import { FREE_LAYER } from "../cases/stage";
import type { Face } from "../cube/faces";
import { bodyTurns, holdAfterTurn } from "../cube/held-cube";
import type { Rotation } from "../cube/symmetries";
import { inverseTurn, type Turn } from "../cube/turns";

/** How soon a correction must come to be a finger slip. Units: milliseconds. */
export const SLIP_WITHIN = 1000;

/** What a turn does to the body, whatever the learner calls it. */
interface BodyTurn {
  readonly kind: "whole-cube" | "free" | "committing";
  /** Quarters by body face; empty for a whole-cube turn. */
  readonly faces: ReadonlyMap<Face, number>;
  readonly holdAfter: Rotation;
}

/** What a turn does to the body of a cube held so. */
export function bodyTurnOf(hold: Rotation, turn: Turn): BodyTurn {
  const faces = new Map(bodyTurns(hold, turn));
  const isFree = faces.size === 1 && faces.has(FREE_LAYER);
  const kind = faces.size === 0 ? "whole-cube" : isFree ? "free" : "committing";
  return { kind, faces, holdAfter: holdAfterTurn(hold, turn) };
}

function undoes(a: BodyTurn, b: BodyTurn): boolean {
  return (
    a.faces.size === b.faces.size &&
    [...a.faces].every(
      ([face, quarters]) => (quarters + (b.faces.get(face) ?? 0)) % 4 === 0,
    )
  );
}

/** A turn that is on the cube. */
interface StandingTurn {
  readonly turn: Turn;
  readonly at: number;
  readonly body: BodyTurn;
  readonly holdBefore: Rotation;
  readonly isTurning: boolean;
  /** The turn that it undid at once. */
  readonly undid: StandingTurn | undefined;
  /** Whether it undid another or was undone itself. */
  isCancelled: boolean;
}

/** A turn as it was made on the cube, one taken back as its inverse. */
export interface MadeTurn {
  readonly turn: Turn;
  readonly at: number;
}

/** The turns of an answer while it goes on. Times: milliseconds since the case was shown. */
export class TurnTrail {
  #hold: Rotation;
  readonly #standing: StandingTurn[] = [];
  /** Everything that was done to the cube, in order. */
  readonly made: MadeTurn[] = [];
  /** When the first turn that commits was made. */
  committedAt: number | undefined;
  /** When a layer was last turned after that. */
  lastTurnAt: number | undefined;
  corrections = 0;
  slips = 0;

  constructor(hold: Rotation) {
    this.#hold = hold;
  }

  /** The turns that are on the cube, taken-back ones left out. */
  get standing(): readonly Turn[] {
    return this.#standing.map(({ turn }) => turn);
  }

  /** Makes a turn. */
  turn(turn: Turn, at: number): void {
    const body = bodyTurnOf(this.#hold, turn);
    const isTurning =
      body.kind === "committing" ||
      (body.kind === "free" && this.#hasCommitted());
    if (body.kind === "committing") this.committedAt ??= at;
    const undid = isTurning ? this.#undoneBy(body) : undefined;
    if (undid !== undefined) {
      undid.isCancelled = true;
      this.#correct(undid, at);
    }
    this.#standing.push({
      turn,
      at,
      body,
      holdBefore: this.#hold,
      isTurning,
      undid,
      isCancelled: undid !== undefined,
    });
    this.#hold = body.holdAfter;
    this.made.push({ turn, at });
    if (body.kind !== "whole-cube") this.#turned(at);
  }

  /** Takes the last standing turn back; nothing where none stands. */
  takeBack(at: number): void {
    const last = this.#remove(at);
    if (last === undefined) return;
    if (last.isTurning) this.#correct(last, at);
    if (last.body.kind !== "whole-cube") this.#turned(at);
  }

  /** Takes every standing turn back: one correction, whatever stood. */
  restart(at: number): void {
    const turning = this.#standing.filter(
      (turn) => turn.isTurning && !turn.isCancelled,
    );
    const [only] = turning;
    if (only !== undefined) {
      if (turning.length === 1) this.#correct(only, at);
      else this.corrections += 1;
      this.#turned(at);
    }
    while (this.#standing.length > 0) this.#remove(at);
  }

  #hasCommitted(): boolean {
    return this.#standing.some(
      ({ body, isCancelled }) => body.kind === "committing" && !isCancelled,
    );
  }

  /** The turn before, when it was turning and this one undoes it. */
  #undoneBy(body: BodyTurn): StandingTurn | undefined {
    const before = this.#standing.findLast(
      (turn) => turn.body.kind !== "whole-cube",
    );
    return before !== undefined &&
      before.isTurning &&
      !before.isCancelled &&
      undoes(before.body, body)
      ? before
      : undefined;
  }

  #remove(at: number): StandingTurn | undefined {
    const last = this.#standing.pop();
    if (last === undefined) return undefined;
    if (last.undid !== undefined) last.undid.isCancelled = false;
    this.#hold = last.holdBefore;
    this.made.push({ turn: inverseTurn(last.turn), at });
    return last;
  }

  #correct(corrected: StandingTurn, at: number): void {
    if (at - corrected.at <= SLIP_WITHIN) this.slips += 1;
    else this.corrections += 1;
  }

  #turned(at: number): void {
    if (this.committedAt !== undefined) this.lastTurnAt = at;
  }
}
