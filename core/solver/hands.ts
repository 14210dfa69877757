/**
 * What turning costs two hands: our own model of how a cube is turned by
 * somebody who has practised a little. Everything that is assumed about hands
 * stands in this file; `ease-of-turning.ts` only adds up.
 *
 * Units: fifths of one easy quarter turn, which is a turn of the right side by
 *        the right wrist, or of the top by the right index finger.
 * Source: thought out from how hands work, for a right-handed person; the
 *         numbers are judgements and were fitted to nothing.
 *
 * The hands. Each holds its side of the cube between the thumb and the
 * fingers. At ease the thumbs are in front and the fingers behind, the index
 * fingers at the top and the ring fingers at the bottom.
 * - A wrist turns the hand's own side, and takes thumb and fingers along: after
 *   R the right thumb is on top, after R' underneath. Further than that a wrist
 *   does not go: the hand takes hold anew first.
 * - Fingers turn the layers that cross the held sides. Where the thumb is
 *   decides which: with the thumb underneath the right index finger lies on
 *   top and pulls F almost as easily as U with the thumb in front. Pulling
 *   is easier than pushing; ring fingers are weaker than index fingers; a
 *   layer out of sight (B, and less so D) is turned with care.
 * - A half turn by fingers takes two fingers or one finger twice.
 * - A wide layer is a little heavier than its face; a slice needs the fingers
 *   behind it.
 * - Taking hold anew with one hand costs as much as an easy quarter turn.
 * - While one wrist turns, the other hand holds still; changing these parts
 *   takes a moment.
 * - Turning the whole cube takes both hands off it, so both may take hold as
 *   they like. About the left–right axis it is easiest.
 */
import { type Quarters, type Turn, type TurnLayer } from "../cube/turns";

/** Where a thumb is, in quarter turns of its side from ease (clockwise for the right hand, counter-clockwise for the left): 1 on top, −1 underneath. */
export type Wrist = -1 | 0 | 1;

/** How both hands hold the cube. */
export interface Grip {
  readonly right: Wrist;
  readonly left: Wrist;
  /** The hand whose wrist turned last; the other held still. */
  readonly turning: "right" | "left";
}

/** One way for hands to make a turn. */
export interface HandTurn {
  readonly grip: Grip;
  /** Units: fifths of an easy quarter turn. */
  readonly cost: number;
}

/** Letting go with one hand and taking hold anew with any wrist. */
export const REGRIP_COST = 5;

/** The other wrist turned before: the hands change parts. */
export const CHANGE_COST = 2;

/** All wrists, ease first. */
export const WRISTS = [0, 1, -1] as const satisfies readonly Wrist[];

/** All ways to hold the cube. */
export const GRIPS: readonly Grip[] = WRISTS.flatMap((right) =>
  WRISTS.flatMap((left) =>
    (["right", "left"] as const).map((turning) => ({ right, left, turning })),
  ),
);

/** A wrist's quarter turn, and what comes on top of it. */
const WRIST = {
  quarter: 5,
  half: 8,
  wide: 1,
  left: 1,
};

/** What fingers of one hand do: a clockwise quarter, a half turn, a counter-clockwise quarter. */
type FingerCosts = readonly [clockwise: number, half: number, counter: number];

/** A wrist's row: what the right hand's fingers reach from there. */
type FingerRow = Readonly<Partial<Record<TurnLayer, FingerCosts>>>;

const RIGHT_FINGERS: Readonly<Record<Wrist, FingerRow>> = {
  // Thumb in front: the index pulls U, the ring finger pulls D', the thumb
  // pushes F'; B is felt for behind. The fingers lie behind the middle slice.
  0: {
    U: [5, 8, 8],
    D: [11, 13, 7],
    F: [10, 14, 9],
    B: [15, 22, 14],
    Uw: [9, 13, 11],
    Dw: [14, 16, 10],
    M: [10, 10, 7],
    E: [14, 19, 14],
    S: [15, 21, 15],
  },
  // Thumb on top: the index still reaches the top from behind; the fingers
  // lie underneath, where the ring finger pulls F' and the index pulls B.
  1: {
    U: [5, 9, 9],
    D: [12, 14, 8],
    F: [13, 16, 10],
    B: [12, 21, 15],
    Uw: [9, 14, 12],
    Dw: [15, 17, 11],
    M: [13, 14, 10],
  },
  // Thumb underneath: the index lies on top and pulls F, or pushes it back.
  [-1]: {
    U: [10, 15, 10],
    D: [11, 16, 11],
    F: [6, 10, 8],
    B: [16, 22, 13],
    Fw: [9, 14, 11],
    Bw: [21, 27, 17],
  },
};

/** What the left hand's fingers turn is what a mirror shows of the right hand's. */
function fingersOf(
  hand: "right" | "left",
  wrist: Wrist,
  { layer, quarters }: Turn,
): number | undefined {
  const costs = RIGHT_FINGERS[wrist][layer];
  if (costs === undefined) return undefined;
  if (hand === "right") return costs[quarters - 1];
  // A mirror turns a slice between the hands the same way round.
  const seen = layer === "M" ? quarters : 4 - quarters;
  return costs[seen - 1];
}

const WHOLE_CUBE: Readonly<
  Partial<Record<TurnLayer, readonly [quarter: number, half: number]>>
> = { x: [8, 12], y: [10, 14], z: [11, 15] };

/** The layers that wrists turn. */
const WRIST_LAYERS: Readonly<
  Partial<
    Record<
      TurnLayer,
      { readonly hand: "right" | "left"; readonly wide: boolean }
    >
  >
> = {
  R: { hand: "right", wide: false },
  Rw: { hand: "right", wide: true },
  L: { hand: "left", wide: false },
  Lw: { hand: "left", wide: true },
};

function wristTurns(
  grip: Grip,
  hand: "right" | "left",
  isWide: boolean,
  quarters: Quarters,
): readonly HandTurn[] {
  const before = grip[hand];
  // The right thumb goes up with R, the left one with L'.
  const up = hand === "right" ? quarters : 4 - quarters;
  const steps = up === 2 ? [2, -2] : [up === 1 ? 1 : -1];
  return steps.flatMap((step) => {
    const after = WRISTS.find((wrist) => wrist === before + step);
    if (after === undefined) return [];
    const cost =
      (up === 2 ? WRIST.half : WRIST.quarter) +
      (isWide ? WRIST.wide : 0) +
      (grip.turning === hand ? 0 : CHANGE_COST) +
      (hand === "left" ? WRIST.left : 0);
    return [{ grip: { ...grip, [hand]: after, turning: hand }, cost }];
  });
}

/**
 * All ways to make a turn from a grip without taking hold anew first; none
 * where the hands must.
 */
export function handTurns(grip: Grip, turn: Turn): readonly HandTurn[] {
  const whole = WHOLE_CUBE[turn.layer];
  if (whole !== undefined) {
    const cost = whole[turn.quarters === 2 ? 1 : 0];
    return GRIPS.map((fresh) => ({ grip: fresh, cost }));
  }
  const wrist = WRIST_LAYERS[turn.layer];
  if (wrist !== undefined)
    return wristTurns(grip, wrist.hand, wrist.wide, turn.quarters);
  const costs = (["right", "left"] as const)
    .map((hand) => fingersOf(hand, grip[hand], turn))
    .filter((cost) => cost !== undefined);
  return costs.length === 0 ? [] : [{ grip, cost: Math.min(...costs) }];
}
