/** What stickers of each colour of a learner's cube look like. */
import { FACES } from "../../../core/cube/faces";
import type {
  ColourName,
  ColourScheme,
} from "../../../core/picture/colour-sets";
import type { CubePalette } from "../../../core/picture/palette";

/** A sticker's fill, and what is written on it, if anything. */
export interface StickerLook {
  /** Shape: `#rrggbb`. */
  readonly fill: string;
  readonly letter: string | undefined;
}

/** The look of each of the six colours. */
export function stickerLooks(
  scheme: ColourScheme,
  palette: CubePalette,
): ReadonlyMap<ColourName, StickerLook> {
  return new Map(
    FACES.map((face) => [
      scheme[face],
      { fill: palette.faces[face], letter: palette.letters?.[face] },
    ]),
  );
}
