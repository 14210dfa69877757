/**
 * What follows about a partly known cube from what is known of it: the last
 * piece of a kind is where none of the others is, and the last one is turned
 * as all the others together demand.
 */
import { isOddPermutation, type PartlyKnownCubies, UNKNOWN } from "./cubies";
import { ORIENTATIONS } from "./pieces";

type Kind = keyof typeof ORIENTATIONS;

function onlyUnknown(array: Uint8Array): number | undefined {
  const at = array.indexOf(UNKNOWN);
  return at >= 0 && at === array.lastIndexOf(UNKNOWN) ? at : undefined;
}

function withLastPiece(permutation: Uint8Array): Uint8Array {
  const at = onlyUnknown(permutation);
  if (at === undefined) return permutation;
  const piece = [...permutation.keys()].find(
    (one) => !permutation.includes(one),
  );
  return permutation.map((value, i) => (i === at ? (piece ?? UNKNOWN) : value));
}

function sumOf(orientation: Uint8Array): number {
  return orientation.reduce(
    (sum, value) => (value === UNKNOWN ? sum : sum + value),
    0,
  );
}

function withLastTurned(orientation: Uint8Array, kind: Kind): Uint8Array {
  const at = onlyUnknown(orientation);
  if (at === undefined) return orientation;
  const radix = ORIENTATIONS[kind];
  const rest = (radix - (sumOf(orientation) % radix)) % radix;
  return orientation.map((value, i) => (i === at ? rest : value));
}

/** The state with every piece and turning added that follows from the others. */
export function withForcedPieces(state: PartlyKnownCubies): PartlyKnownCubies {
  return {
    cornerPermutation: withLastPiece(state.cornerPermutation),
    cornerOrientation: withLastTurned(state.cornerOrientation, "corner"),
    edgePermutation: withLastPiece(state.edgePermutation),
    edgeOrientation: withLastTurned(state.edgeOrientation, "edge"),
  };
}

function isSumRight(orientation: Uint8Array, kind: Kind): boolean {
  return (
    orientation.includes(UNKNOWN) ||
    sumOf(orientation) % ORIENTATIONS[kind] === 0
  );
}

/** Whether a cube that can be put together from solved by turns agrees with a state. */
export function canBe(state: PartlyKnownCubies): boolean {
  const {
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  } = withForcedPieces(state);
  const areAllNamed =
    !cornerPermutation.includes(UNKNOWN) && !edgePermutation.includes(UNKNOWN);
  return (
    isSumRight(cornerOrientation, "corner") &&
    isSumRight(edgeOrientation, "edge") &&
    (!areAllNamed ||
      isOddPermutation(cornerPermutation) === isOddPermutation(edgePermutation))
  );
}
