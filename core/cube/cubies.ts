/**
 * The state of the twenty movable pieces relative to the centres, and its
 * group operation.
 *
 * Kept as four small typed arrays rather than 54 stickers: composing two
 * states is twenty look-ups, and an impossible combination (one twisted
 * corner) can be named.
 */

declare const fullyKnown: unique symbol;

/** Stands for "not known" in every array of a partly known state. */
export const UNKNOWN = 255;

/**
 * Which piece sits where, as far as it is known.
 *
 * Shape: `cornerPermutation[i]` is the corner now at position i, 0–7;
 *        `cornerOrientation[i]` how it is twisted there, 0–2 clockwise;
 *        `edgePermutation[i]`, 0–11; `edgeOrientation[i]`, 0–1. `UNKNOWN` in
 *        both arrays where nothing is known. A piece may be known and not how
 *        it is turned. How it is turned may be known and not which it is: then
 *        it is one of those with a sticker of face D, and that is the sticker
 *        that is turned so. All of it is followed through any turns. Treated
 *        as immutable.
 */
export interface PartlyKnownCubies {
  readonly cornerPermutation: Uint8Array;
  readonly cornerOrientation: Uint8Array;
  readonly edgePermutation: Uint8Array;
  readonly edgeOrientation: Uint8Array;
}

/** A state in which every piece is known. */
export interface Cubies extends PartlyKnownCubies {
  readonly [fullyKnown]: true;
}

/** Arrays that are known to hold no `UNKNOWN`, as a fully known state. */
export function trustedCubies(arrays: PartlyKnownCubies): Cubies {
  return arrays as Cubies;
}

/** A fully known state from plain numbers, for tables. */
export function cubiesFrom(
  cornerPermutation: readonly number[],
  cornerOrientation: readonly number[],
  edgePermutation: readonly number[],
  edgeOrientation: readonly number[],
): Cubies {
  return trustedCubies({
    cornerPermutation: Uint8Array.from(cornerPermutation),
    cornerOrientation: Uint8Array.from(cornerOrientation),
    edgePermutation: Uint8Array.from(edgePermutation),
    edgeOrientation: Uint8Array.from(edgeOrientation),
  });
}

/** The solved state, the identity of `compose`. */
export const SOLVED: Cubies = cubiesFrom(
  [0, 1, 2, 3, 4, 5, 6, 7],
  [0, 0, 0, 0, 0, 0, 0, 0],
  [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
  [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
);

/**
 * State `a` followed by the effect of `b`.
 *
 * Shape: `a` may be partly known, then so is the result; `b` is fully known.
 */
export function compose<State extends PartlyKnownCubies>(
  a: State,
  b: Cubies,
): State {
  const cornerPermutation = new Uint8Array(8);
  const cornerOrientation = new Uint8Array(8);
  for (let i = 0; i < 8; i++) {
    const from = b.cornerPermutation[i]!;
    const twist = a.cornerOrientation[from]!;
    cornerPermutation[i] = a.cornerPermutation[from]!;
    cornerOrientation[i] =
      twist === UNKNOWN ? UNKNOWN : (twist + b.cornerOrientation[i]!) % 3;
  }
  const edgePermutation = new Uint8Array(12);
  const edgeOrientation = new Uint8Array(12);
  for (let i = 0; i < 12; i++) {
    const from = b.edgePermutation[i]!;
    const flip = a.edgeOrientation[from]!;
    edgePermutation[i] = a.edgePermutation[from]!;
    edgeOrientation[i] =
      flip === UNKNOWN ? UNKNOWN : flip ^ b.edgeOrientation[i]!;
  }
  // The shape of `a` decides: known stays known, unknown stays unknown.
  return {
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  } as PartlyKnownCubies as State;
}

/** The state that undoes `a`: `compose(a, invert(a))` is `SOLVED`. */
export function invert(a: Cubies): Cubies {
  const cornerPermutation = new Uint8Array(8);
  const cornerOrientation = new Uint8Array(8);
  for (let i = 0; i < 8; i++) {
    const piece = a.cornerPermutation[i]!;
    cornerPermutation[piece] = i;
    cornerOrientation[piece] = (3 - a.cornerOrientation[i]!) % 3;
  }
  const edgePermutation = new Uint8Array(12);
  const edgeOrientation = new Uint8Array(12);
  for (let i = 0; i < 12; i++) {
    const piece = a.edgePermutation[i]!;
    edgePermutation[piece] = i;
    edgeOrientation[piece] = a.edgeOrientation[i]!;
  }
  return trustedCubies({
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  });
}

/** Whether two states are the same, unknown pieces included. */
export function isSameState(
  a: PartlyKnownCubies,
  b: PartlyKnownCubies,
): boolean {
  for (let i = 0; i < 8; i++) {
    if (a.cornerPermutation[i] !== b.cornerPermutation[i]) return false;
    if (a.cornerOrientation[i] !== b.cornerOrientation[i]) return false;
  }
  for (let i = 0; i < 12; i++) {
    if (a.edgePermutation[i] !== b.edgePermutation[i]) return false;
    if (a.edgeOrientation[i] !== b.edgeOrientation[i]) return false;
  }
  return true;
}

/** Whether every piece of a state is known. */
export function isFullyKnown(state: PartlyKnownCubies): state is Cubies {
  return (
    !state.cornerPermutation.includes(UNKNOWN) &&
    !state.cornerOrientation.includes(UNKNOWN) &&
    !state.edgePermutation.includes(UNKNOWN) &&
    !state.edgeOrientation.includes(UNKNOWN)
  );
}

/**
 * Whether a permutation is odd.
 *
 * Shape: `permutation` holds each of 0…n−1 once.
 */
export function isOddPermutation(permutation: Uint8Array): boolean {
  let odd = false;
  for (let i = 0; i < permutation.length; i++) {
    for (let j = 0; j < i; j++) {
      if (permutation[j]! > permutation[i]!) odd = !odd;
    }
  }
  return odd;
}

/** The smallest n > 0 for which n repetitions of a state's effect change nothing. */
export function order(state: Cubies): number {
  let power = state;
  let n = 1;
  while (!isSameState(power, SOLVED)) {
    power = compose(power, state);
    n++;
  }
  return n;
}
