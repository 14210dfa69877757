/** The mirrors around the cube of a question. */
import { caseEntry } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import type { Pieces } from "../../../core/cube/pieces";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { MirrorChoice } from "../../../core/picture/cube-picture";
import {
  mirrorsNeeded,
  stageMirrors,
} from "../../../core/picture/mirrors-needed";
import type { CubeView } from "../../../core/picture/projection";
import { pieceFacelets } from "../../state/practise/case-picture";
import { homeSide, type HomeSide, smallView } from "../../state/practise/looks";
import { piecesOf } from "../../state/practise/prompt-words";
import type { StageName } from "./stage-size.svelte";

/**
 * The floor always and, where there is room, the side away from the home, so that a mirror
 * never gives the answer away; the others where the piece shows there.
 */
export function questionMirrors(
  cube: HeldCube<PartlyKnownCubies>,
  targets: Pieces,
  view: CubeView,
  hasRoom = true,
  side: HomeSide = 1,
): MirrorChoice {
  const facelets = faceletsOf(cube, targets);
  return {
    ...mirrorsNeeded(facelets, view),
    floor: true,
    ...(hasRoom ? { [side === 1 ? "left" : "right"]: true } : {}),
  };
}

function faceletsOf(
  cube: HeldCube<PartlyKnownCubies>,
  pieces: Pieces,
): readonly number[] {
  return piecesOf(pieces).flatMap((piece) => pieceFacelets(cube, piece));
}

/** The mirrors of a position's question: in the first layer those of `questionMirrors`, else those of the layer on top. */
export function mirrorsAround(
  position: Position,
  cube: HeldCube<PartlyKnownCubies>,
  view: CubeView,
): MirrorChoice {
  const targets = targetsOf(position);
  switch (caseEntry(position.case).group) {
    case "first-layer":
      return questionMirrors(cube, targets, view, true, homeSide(position));
    case "slot":
      return stageMirrors(faceletsOf(cube, targets), view);
    case "last-layer":
      // What is asked lies on top; where pieces go while layers turn must not
      // make mirrors come and go.
      return stageMirrors([], view);
  }
}

/** The mirrors with which every sticker is seen, whichever places are compared. */
export const ALL_AROUND: MirrorChoice = { floor: true, left: true, back: true };

/** The stage on which a position is shown: as it is asked, with choices under it, or with a missed answer. */
export function stageOf(
  name: "question" | "choosing" | "miss",
  position: Position,
): StageName {
  if (caseEntry(position.case).group === "first-layer") return name;
  const view = smallView(position, 1);
  const { floor } = mirrorsAround(position, startOf(position), view);
  return floor === true ? `${name}HighWithFloor` : `${name}High`;
}
