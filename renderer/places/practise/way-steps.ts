/** A way as rows to read: each turn with its picture and what happens. */
import type { Pieces } from "../../../core/cases/constraint";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { formatTurn } from "../../../core/notation/format";
import { sayWay } from "../../../core/notation/say-step";
import type { CubePictureInput } from "../../../core/picture/cube-picture";
import type { CubePalette } from "../../../core/picture/palette";
import { usualView } from "../../../core/picture/projection";
import { casePicture } from "../../state/practise/case-picture";

/** One row. */
export interface WayStep {
  readonly move: string;
  readonly words: string;
  /** The cube before the turn, with its arrow. */
  readonly picture: CubePictureInput;
}

/** Units: pixels of a cubie in a row. */
const PIXELS = 12.4;

/** The rows of a way. */
export function waySteps(
  start: HeldCube<PartlyKnownCubies>,
  turns: readonly Turn[],
  targets: Pieces,
  named: Pieces | undefined,
  palette: CubePalette,
): readonly WayStep[] {
  const sentences = sayWay(start, turns, targets);
  return turns.map((turn, n) => {
    const line = turns.slice(0, n);
    return {
      move: formatTurn(turn),
      words: sentences[n] ?? "",
      picture: casePicture(
        { start, line, cube: applyTurns(start, line) },
        {
          named,
          outlined: targets,
          homes: undefined,
          palette,
          view: usualView(PIXELS),
          arrow: turn,
        },
      ),
    };
  });
}
