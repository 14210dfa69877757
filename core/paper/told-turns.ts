/** Turns on paper, under a label: in letters, in words, or in both. */
import { formatTurns } from "../notation/format";
import { baseline, type Block, stacked, textBlock, together } from "./block";
import { TYPE } from "./sheet";
import { textWidth } from "./text-width";
import type { ShownSetUp, ShownTurns, TurnsTold } from "./shown-case";

/** A word in front of turns in letters, on their first line. */
export function labelled(
  label: string,
  turns: ShownTurns["turns"],
  width: number,
): Block {
  const left = textWidth(label, TYPE.small.size, TYPE.small.weight) + 2.5;
  const moves = textBlock(formatTurns(turns), width - left, TYPE.moves);
  const word = textBlock(label, width, TYPE.small);
  // Both stand on one line.
  const drop = baseline(TYPE.moves) - baseline(TYPE.small);
  return together(width, Math.max(moves.height, word.height + drop), [
    { x: 0, y: drop, block: word },
    { x: left, y: 0, block: moves },
  ]);
}

/** Turns in letters with the words small below them, or the words alone. */
export function turnsBlock(
  { turns, words }: ShownTurns,
  told: TurnsTold,
  width: number,
): Block {
  return told === "words"
    ? textBlock(words, width, TYPE.body)
    : stacked(
        width,
        [
          textBlock(formatTurns(turns), width, TYPE.moves),
          textBlock(words, width, TYPE.small),
        ],
        0.3,
      );
}

/** What stands above a set-up's words: its label, and its letters where they are told. */
export function setUpHead(
  { turns, held }: ShownSetUp,
  told: TurnsTold,
  width: number,
): Block {
  if (told === "both" && held === undefined)
    return labelled("Set-up", turns, width);
  const label = held === undefined ? "Set-up" : `Set-up, ${held}`;
  return stacked(
    width,
    [
      textBlock(label, width, TYPE.small),
      ...(told === "both"
        ? [textBlock(formatTurns(turns), width, TYPE.moves)]
        : []),
    ],
    0.3,
  );
}

/** A set-up with its label; nothing where none was found. */
export function setUpBlocks(
  setUp: ShownSetUp | undefined,
  told: TurnsTold,
  width: number,
): readonly Block[] {
  if (setUp === undefined) return [];
  const style = told === "both" ? TYPE.small : TYPE.body;
  const words = textBlock(setUp.words, width, style);
  return [stacked(width, [setUpHead(setUp, told, width), words], 0.3)];
}
