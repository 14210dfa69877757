/** A way of a case turn by turn, where the case is looked up: pictures with arrows, moves, words. */
import { caseEntry } from "../../core/cases/case-table";
import { targetsOf } from "../../core/cases/constraint";
import { type Position, startOf } from "../../core/cases/position";
import { applyTurns } from "../../core/cube/held-cube";
import { NO_PIECES } from "../../core/cube/pieces";
import type { Turn } from "../../core/cube/turns";
import { formatTurn } from "../../core/notation/format";
import { sayWay } from "../../core/notation/say-step";
import type { ColourScheme } from "../../core/picture/colour-sets";
import type { CubePictureInput } from "../../core/picture/cube-picture";
import type { CubePalette } from "../../core/picture/palette";
import { pictureOnItsWay } from "./case-showcase";

/** One turn of a way. */
export interface WalkedTurn {
  readonly move: string;
  readonly words: string;
  /** The cube before the turn, with its arrow. */
  readonly picture: CubePictureInput;
}

/** Units: pixels of a cubie in a row. */
const PIXELS = 12.4;

/** The turns of a way from a case's position. Units: pixels a cubie; absent: as in a row on the screen. */
export function walkedTurns(
  position: Position,
  turns: readonly Turn[],
  palette: CubePalette,
  colours: ColourScheme,
  pixelsPerCubie = PIXELS,
): readonly WalkedTurn[] {
  const start = startOf(position);
  // Of eight pieces on their way none is worth following.
  const follow =
    caseEntry(position.case).group === "last-layer"
      ? NO_PIECES
      : targetsOf(position);
  const words = sayWay(start, turns, follow, { colours });
  return turns.map((turn, n) => {
    const line = turns.slice(0, n);
    return {
      move: formatTurn(turn),
      words: words[n] ?? "",
      picture: pictureOnItsWay(
        position,
        { start, line, cube: applyTurns(start, line) },
        { palette, pixelsPerCubie, homes: false, arrow: turn },
      ),
    };
  });
}
