/**
 * A cube that a learner enters sticker by sticker: what is told so far, what
 * must follow from it, and whether it is a cube.
 *
 * The middles are known: the learner holds the cube as they are told to, so
 * that its colours say which side is which.
 */
import type { Cubies } from "../../../core/cube/cubies";
import { deducedStickers } from "../../../core/cube/deduced-stickers";
import type { EnteredFault } from "../../../core/cube/entered-fault";
import {
  type EnteredStickers,
  heldAsColoured,
  readEnteredStickers,
} from "../../../core/cube/entered-stickers";
import { standingOut } from "../../../core/cube/entry-slips";
import {
  centreFacelet,
  faceletFace,
  stickersOf,
} from "../../../core/cube/facelets";
import { FACES, type Face } from "../../../core/cube/faces";
import { bodyFace, type HeldCube } from "../../../core/cube/held-cube";
import type { Rotation } from "../../../core/cube/symmetries";
import { present } from "../../../core/invariant";
import type {
  ColourName,
  ColourScheme,
} from "../../../core/picture/colour-sets";

/** The sides in the order in which they are asked for: round the cube, then its top and bottom. */
export const ENTRY_ORDER = [
  "F",
  "R",
  "B",
  "L",
  "U",
  "D",
] as const satisfies readonly Face[];

/** What has been entered, and the side that is being entered. */
export class StickerEntry {
  readonly scheme: ColourScheme;
  readonly hold: Rotation;
  /** The cube's six colours, in the order of its sides as seen: the first has key 1. */
  readonly colours: readonly ColourName[];
  #stickers: EnteredStickers<ColourName>;
  #before: readonly EnteredStickers<ColourName>[] = $state.raw([]);
  /** What a tap paints with; undefined rubs out. */
  brush: ColourName | undefined = $state();
  #at: number = $state(9 * FACES.indexOf("F"));
  #isInTurn = $state(true);
  readonly #read = $derived.by(() => readEnteredStickers(this.#stickers));
  readonly #deduced = $derived.by(() => deducedStickers(this.#stickers));

  /** An entry with only its middles told, or with all that a cube should show, to be put right. */
  constructor(scheme: ColourScheme, hold: Rotation, cubies?: Cubies) {
    this.scheme = scheme;
    this.hold = hold;
    this.colours = FACES.map((view) => scheme[bodyFace(hold, view)]);
    this.brush = this.colours[0];
    this.#stickers = $state.raw(
      cubies === undefined
        ? this.#onlyMiddles()
        : stickersOf({ cubies, hold }).map((face) => face && scheme[face]),
    );
  }

  /** The stickers as they are seen, indexed as in `facelets.ts`. */
  get stickers(): EnteredStickers<ColourName> {
    return this.#stickers;
  }

  /** The facelet under the keyboard's cursor. */
  get at(): number {
    return this.#at;
  }

  /** The side that is being entered. */
  get face(): Face {
    return faceletFace(this.#at);
  }

  /** Whether the learner came here from the side before, and can be told how to turn. */
  get isInTurn(): boolean {
    return this.#isInTurn;
  }

  /** How many of a side's nine are told. */
  toldOn(face: Face): number {
    const first = 9 * FACES.indexOf(face);
    return this.#stickers
      .slice(first, first + 9)
      .filter((colour) => colour !== undefined).length;
  }

  /** How many stickers of a colour are told; nine are right. */
  countOf(colour: ColourName): number {
    return this.#stickers.filter((told) => told === colour).length;
  }

  /** What is wrong; undefined while nothing is, though stickers may be missing. */
  get fault():
    | Exclude<EnteredFault<ColourName>, { code: "stickers-missing" }>
    | undefined {
    const read = this.#read;
    return read.ok || read.error.code === "stickers-missing"
      ? undefined
      : read.error;
  }

  /** The stickers to look at again. */
  get pointedAt(): readonly number[] {
    const fault = this.fault;
    if (fault === undefined) return [];
    const slips = "slips" in fault ? standingOut(fault.slips) : [];
    // The middles were not entered.
    if (slips.length === 0) return fault.facelets.filter((at) => at % 9 !== 4);
    // Two colours taken for each other are everywhere: the words say enough.
    return slips.flatMap(({ kind, facelets }) =>
      kind === "colours-exchanged" ? [] : facelets,
    );
  }

  /** How many stickers can be filled in, because they can be only one colour. */
  get deducible(): number {
    return this.#deduced.size;
  }

  get canUndo(): boolean {
    return this.#before.length > 0;
  }

  /** The learner's cube, once it is told whole and can exist. */
  get cube(): HeldCube<Cubies> | undefined {
    const read = this.#read;
    if (!read.ok) return undefined;
    return present(
      heldAsColoured(read.value, this.scheme),
      "the middles are those of the colouring",
    );
  }

  /** Moves the cursor. */
  moveTo(facelet: number): void {
    if (faceletFace(facelet) !== this.face) this.#isInTurn = false;
    this.#at = facelet;
  }

  /** Goes to a side: its first open sticker, or the first of all. */
  goTo(face: Face): void {
    const first = 9 * FACES.indexOf(face);
    const own = this.#stickers.slice(first, first + 9);
    const isNext = face === this.neighbour(1);
    this.moveTo(first + Math.max(0, own.indexOf(undefined)));
    this.#isInTurn = isNext;
  }

  /** The next side in the order, or the one before; undefined at either end. */
  neighbour(by: 1 | -1): Face | undefined {
    return ENTRY_ORDER[ENTRY_ORDER.findIndex((f) => f === this.face) + by];
  }

  /** Gives a sticker a colour, or none. The middles stay. */
  set(facelet: number, colour: ColourName | undefined): void {
    this.moveTo(facelet);
    if (facelet === centreFacelet(faceletFace(facelet))) return;
    this.#change([[facelet, colour]]);
  }

  /** Gives the sticker under the cursor a colour and goes on to the side's next one. */
  type(colour: ColourName): void {
    const at = this.#at;
    this.set(at, colour);
    const next = at % 9 === 3 ? at + 2 : at + 1;
    if (Math.floor(next / 9) === Math.floor(at / 9)) this.#at = next;
  }

  /** Fills in what can be only one colour. */
  fillIn(): void {
    this.#change(this.#deduced);
  }

  /** Rubs out a side, all but its middle. */
  clear(face: Face): void {
    const first = 9 * FACES.indexOf(face);
    this.#change(
      [0, 1, 2, 3, 5, 6, 7, 8].map((k) => [first + k, undefined] as const),
    );
    this.moveTo(first);
  }

  /** Takes the last change back, and goes where it was. */
  undo(): void {
    const before = this.#before.at(-1);
    if (before === undefined) return;
    const changed = before.findIndex((told, at) => told !== this.#stickers[at]);
    this.#stickers = before;
    this.#before = this.#before.slice(0, -1);
    if (changed >= 0) this.moveTo(changed);
  }

  #change(
    changes: Iterable<
      readonly [facelet: number, colour: ColourName | undefined]
    >,
  ): void {
    const changed = [...this.#stickers];
    for (const [at, colour] of changes) changed[at] = colour;
    if (changed.every((told, at) => told === this.#stickers[at])) return;
    this.#before = [...this.#before, this.#stickers];
    this.#stickers = changed;
  }

  #onlyMiddles(): EnteredStickers<ColourName> {
    return Array.from({ length: 54 }, (_, at) =>
      at % 9 === 4 ? this.colours[Math.floor(at / 9)] : undefined,
    );
  }
}
