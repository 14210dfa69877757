/** Turns on paper, under a label: in letters, in words, or in both. */
import { formatTurns } from "../notation/format";
import { type Block, stacked, textBlock } from "./block";
import { TYPE } from "./sheet";
import type { ShownTurns, TurnsTold } from "./shown-case";

/** Turns under a label: letters large and the words small below them, or the words alone. */
export function turnsBlock(
  label: string,
  { turns, words }: ShownTurns,
  told: TurnsTold,
  width: number,
): Block {
  return stacked(
    width,
    [
      textBlock(label, width, TYPE.small),
      ...(told === "both"
        ? [
            textBlock(formatTurns(turns), width, TYPE.moves),
            textBlock(words, width, TYPE.small),
          ]
        : [textBlock(words, width, TYPE.body)]),
    ],
    0.3,
  );
}
