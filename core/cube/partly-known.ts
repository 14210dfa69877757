/**
 * Partly known states: a beginner's cube has a finished cross or first layer
 * and anything below it. Pieces that are not named are unknown, and stay so
 * through any turns.
 */
import { type PartlyKnownCubies, UNKNOWN } from "./cubies";
import { type Corner, CORNER_FACES, type Edge, EDGE_FACES } from "./pieces";

/** The state with every piece outside the two sets made unknown. */
export function knownOnly(
  state: PartlyKnownCubies,
  corners: ReadonlySet<Corner>,
  edges: ReadonlySet<Edge>,
): PartlyKnownCubies {
  const mask = (
    permutation: Uint8Array,
    orientation: Uint8Array,
    known: ReadonlySet<number>,
  ): readonly [Uint8Array, Uint8Array] => {
    const isKnown = [...permutation].map((piece) => known.has(piece));
    const keep = (value: number, i: number) =>
      isKnown[i] === true ? value : UNKNOWN;
    return [permutation.map(keep), orientation.map(keep)];
  };
  const [cornerPermutation, cornerOrientation] = mask(
    state.cornerPermutation,
    state.cornerOrientation,
    corners,
  );
  const [edgePermutation, edgeOrientation] = mask(
    state.edgePermutation,
    state.edgeOrientation,
    edges,
  );
  return {
    cornerPermutation,
    cornerOrientation,
    edgePermutation,
    edgeOrientation,
  };
}

/** Any piece that may be where only the turning is known: those with a sticker of face D. */
function hasStickerOfD(
  piece: number | undefined,
  faces: readonly (readonly string[])[],
): boolean {
  return (
    piece === UNKNOWN || (piece !== undefined && faces[piece]?.[0] === "D")
  );
}

/** Whether a fully or partly known state agrees with everything that is known in `pattern`. */
export function agreesWith(
  state: PartlyKnownCubies,
  pattern: PartlyKnownCubies,
): boolean {
  const agree = (
    piece: Uint8Array,
    turned: Uint8Array,
    wantedPiece: Uint8Array,
    wantedTurned: Uint8Array,
    faces: readonly (readonly string[])[],
  ) =>
    wantedPiece.every((wanted, i) => {
      const isTurned =
        wantedTurned[i] === UNKNOWN || turned[i] === wantedTurned[i];
      if (wanted !== UNKNOWN) return isTurned && piece[i] === wanted;
      return (
        wantedTurned[i] === UNKNOWN ||
        (isTurned && hasStickerOfD(piece[i], faces))
      );
    });
  return (
    agree(
      state.cornerPermutation,
      state.cornerOrientation,
      pattern.cornerPermutation,
      pattern.cornerOrientation,
      CORNER_FACES,
    ) &&
    agree(
      state.edgePermutation,
      state.edgeOrientation,
      pattern.edgePermutation,
      pattern.edgeOrientation,
      EDGE_FACES,
    )
  );
}

/** The position where a corner sits, or undefined where it is not known. */
export function cornerPosition(
  state: PartlyKnownCubies,
  piece: Corner,
): Corner | undefined {
  const at = state.cornerPermutation.indexOf(piece);
  return at < 0 ? undefined : (at as Corner);
}

/** The position where an edge sits, or undefined where it is not known. */
export function edgePosition(
  state: PartlyKnownCubies,
  piece: Edge,
): Edge | undefined {
  const at = state.edgePermutation.indexOf(piece);
  return at < 0 ? undefined : (at as Edge);
}

/** Whether a corner is placed: in its home, every sticker matching its centre. */
export function isCornerPlaced(
  state: PartlyKnownCubies,
  piece: Corner,
): boolean {
  return (
    state.cornerPermutation[piece] === piece &&
    state.cornerOrientation[piece] === 0
  );
}

/** Whether an edge is placed: in its home, every sticker matching its centre. */
export function isEdgePlaced(state: PartlyKnownCubies, piece: Edge): boolean {
  return (
    state.edgePermutation[piece] === piece && state.edgeOrientation[piece] === 0
  );
}
