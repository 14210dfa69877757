/** A way as rows to read: each turn with its picture and what happens. */
import { targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { formatTurn } from "../../../core/notation/format";
import { sayWay } from "../../../core/notation/say-step";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { CubePictureInput } from "../../../core/picture/cube-picture";
import type { CubePalette } from "../../../core/picture/palette";
import { casePicture, type Named } from "../../state/practise/case-picture";
import { smallView } from "../../state/practise/looks";

/** A turn as it is written and as it is said. */
export interface SaidTurn {
  readonly move: string;
  readonly words: string;
}

/** One row. */
export interface WayStep extends SaidTurn {
  /** The cube before the turn, with its arrow. */
  readonly picture: CubePictureInput;
}

/** Units: pixels of a cubie in a row. */
const PIXELS = 12.4;

/** A way turn by turn, told by what becomes of the piece. */
export function sayTurns(
  position: Position,
  turns: readonly Turn[],
  colours: ColourScheme,
): readonly SaidTurn[] {
  const sentences = sayWay(startOf(position), turns, targetsOf(position), {
    colours,
  });
  return turns.map((turn, n) => ({
    move: formatTurn(turn),
    words: sentences[n] ?? "",
  }));
}

/** The rows of a way. */
export function waySteps(
  position: Position,
  turns: readonly Turn[],
  named: Named | undefined,
  palette: CubePalette,
  colours: ColourScheme,
): readonly WayStep[] {
  const start = startOf(position);
  const targets = targetsOf(position);
  return sayTurns(position, turns, colours).map((said, n) => {
    const line = turns.slice(0, n);
    return {
      ...said,
      picture: casePicture(
        { start, line, cube: applyTurns(start, line) },
        {
          named,
          outlined: targets,
          homes: undefined,
          palette,
          view: smallView(position, PIXELS),
          arrow: turns[n],
        },
      ),
    };
  });
}
