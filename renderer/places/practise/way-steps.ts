/** A way as rows to read: each turn with its picture and what happens. */
import { type Pieces, targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { formatTurn } from "../../../core/notation/format";
import { sayWay } from "../../../core/notation/say-step";
import type { CubePictureInput } from "../../../core/picture/cube-picture";
import type { CubePalette } from "../../../core/picture/palette";
import { casePicture } from "../../state/practise/case-picture";
import { smallView } from "../../state/practise/looks";

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
  position: Position,
  turns: readonly Turn[],
  named: Pieces | undefined,
  palette: CubePalette,
): readonly WayStep[] {
  const start = startOf(position);
  const targets = targetsOf(position);
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
          view: smallView(position, PIXELS),
          arrow: turn,
        },
      ),
    };
  });
}
