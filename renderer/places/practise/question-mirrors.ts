/** The mirrors around the cube of a question. */
import type { Pieces } from "../../../core/cube/pieces";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { MirrorChoice } from "../../../core/picture/cube-picture";
import { mirrorsNeeded } from "../../../core/picture/mirrors-needed";
import type { CubeView } from "../../../core/picture/projection";
import { pieceFacelets } from "../../state/practise/case-picture";
import type { HomeSide } from "../../state/practise/looks";
import { piecesOf } from "../../state/practise/prompt-words";

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
  const facelets = piecesOf(targets).flatMap((piece) =>
    pieceFacelets(cube, piece),
  );
  return {
    ...mirrorsNeeded(facelets, view),
    floor: true,
    ...(hasRoom ? { [side === 1 ? "left" : "right"]: true } : {}),
  };
}
