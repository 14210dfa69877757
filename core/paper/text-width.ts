/** How wide text is on paper, and how it is broken into lines. */
import {
  FIRST_GLYPH,
  GLYPH_WIDTHS,
  OTHER_WIDTHS,
  type PaperWeight,
  WIDEST,
} from "./glyph-widths";

/** Numbers stand in figures of one width, that of the widest. */
const FIGURE = { 400: 648, 640: 657 } as const;

function glyphWidth(letter: string, weight: PaperWeight): number {
  if (letter >= "0" && letter <= "9") return FIGURE[weight];
  // A letter with an accent is as wide as the letter without.
  const [plain = letter] = letter.normalize("NFD");
  const code = plain.codePointAt(0) ?? 0;
  return (
    OTHER_WIDTHS[letter] ?? GLYPH_WIDTHS[weight][code - FIRST_GLYPH] ?? WIDEST
  );
}

/** How wide a line of text is. Units: those of `size`, the type size. */
export function textWidth(
  text: string,
  size: number,
  weight: PaperWeight,
): number {
  let width = 0;
  for (const letter of text) width += glyphWidth(letter, weight);
  return (width * size) / 1000;
}

/** A word too long for a line, in pieces that are not. */
function piecesOfWord(
  word: string,
  isTooLong: (text: string) => boolean,
): readonly string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const letter of word) {
    if (piece !== "" && isTooLong(piece + letter)) {
      pieces.push(piece);
      piece = "";
    }
    piece += letter;
  }
  return [...pieces, piece];
}

/**
 * Text in lines no wider than there is room, broken between words, and within
 * one only where it is wider than a line by itself.
 *
 * Units: those of `size`. Shape: empty for a text without words.
 */
export function textLines(
  text: string,
  size: number,
  weight: PaperWeight,
  room: number,
): readonly string[] {
  const isTooLong = (line: string) => textWidth(line, size, weight) > room;
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((part) => part !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (!isTooLong(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const pieces = piecesOfWord(word, isTooLong);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? "";
  }
  return line === "" ? lines : [...lines, line];
}
