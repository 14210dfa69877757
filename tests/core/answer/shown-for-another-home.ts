/** What the pieces of one home would show if they were those of another. */
import { caseEntry } from "../../../core/cases/case-table";
import { piecesOfHome } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import { type Recognition, recognise } from "../../../core/cases/recognise";
import {
  homeAfter,
  isLastLayerStage,
  rotationToHome,
} from "../../../core/cases/stage";
import type { HomeIndex } from "../../../core/cases/variant";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { Pieces } from "../../../core/cube/pieces";
import { cornerImage, edgeImage } from "../../../core/cube/symmetries";

/** A state in which some pieces are called by the names of those that a turn of the whole cube takes them to. */
function renamed(
  state: PartlyKnownCubies,
  { corners, edges }: Pieces,
  rotation: ReturnType<typeof rotationToHome>,
  areMiddle: boolean,
): PartlyKnownCubies {
  const result = {
    cornerPermutation: Uint8Array.from(state.cornerPermutation),
    cornerOrientation: Uint8Array.from(state.cornerOrientation),
    edgePermutation: Uint8Array.from(state.edgePermutation),
    edgeOrientation: Uint8Array.from(state.edgeOrientation),
  };
  for (const piece of corners) {
    const image = cornerImage(rotation, piece);
    swapNames(result.cornerPermutation, piece, image);
  }
  for (const piece of edges) {
    const image = edgeImage(rotation, piece);
    swapNames(result.edgePermutation, piece, image);
    // A quarter turn takes a middle edge's first sticker to the second.
    const isOdd = (image - piece) % 2 !== 0;
    const at = result.edgePermutation.indexOf(image);
    if (areMiddle && isOdd)
      result.edgeOrientation[at] = 1 - (result.edgeOrientation[at] ?? 0);
  }
  return result;
}

function swapNames(permutation: Uint8Array, a: number, b: number): void {
  if (a === b) return;
  const [atA, atB] = [permutation.indexOf(a), permutation.indexOf(b)];
  if (atA >= 0) permutation[atA] = b;
  if (atB >= 0) permutation[atB] = a;
}

/** The case that the pieces of one home show for another; none in a last layer. */
export function shownFor(
  position: Position,
  of: HomeIndex,
  home: HomeIndex,
): Recognition | undefined {
  const { stage } = caseEntry(position.case);
  if (isLastLayerStage(stage)) return undefined;
  const rotation = rotationToHome(homeAfter(home, -of));
  const { cubies } = position;
  const pieces = piecesOfHome(stage, of);
  // The pieces renamed to those that belong there, stickers and all.
  return recognise(
    renamed(
      cubies,
      pieces,
      rotation,
      stage === "pairs" || stage === "second-layer-edges",
    ),
    stage,
    home,
  );
}
