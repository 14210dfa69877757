/**
 * An answer that is typed, or tapped where there is no keyboard: what the
 * taps do to the text. What the text says is core's to read.
 */
import { FACES } from "../../../core/cube/faces";
import { sideName } from "../../../core/notation/place-words";

/** The keys to tap where there is no keyboard. */
export const TAP_KEYS = [
  "U",
  "D",
  "L",
  "R",
  "F",
  "B",
  "M",
  "E",
  "S",
  "x",
  "y",
  "z",
  "'",
  "2",
  "w",
] as const;

export type TapKey = (typeof TAP_KEYS)[number];

/** Whether a key belongs to the last turn instead of beginning one. */
export function isMark(key: TapKey): key is "'" | "2" | "w" {
  return key === "'" || key === "2" || key === "w";
}

/** The text after a tap: a letter begins a turn, `'`, `2` and `w` belong to the last one. */
export function tapped(text: string, key: TapKey): string {
  const before = text.trimEnd();
  if (!isMark(key)) return before === "" ? key : `${before} ${key}`;
  const last = /([^\s'2]+)(['2]*)$/.exec(before);
  const turn = last?.[1];
  if (last === null || turn === undefined) return text;
  const others = before.slice(0, last.index);
  const mark = last[2] ?? "";
  if (key !== "w")
    // A second tap on the same mark takes it away; on the other one, exchanges it.
    return others + turn + (mark === key ? "" : key);
  if (turn.endsWith("w")) return others + turn.slice(0, -1) + mark;
  // Only a face has a wide layer.
  return /^[URFDLB]$/.test(turn) ? `${others}${turn}w${mark}` : text;
}

/** The text without its last turn. */
export function withoutLastTurn(text: string): string {
  return text.trimEnd().replace(/\s*\S+$/, "");
}

/** What to know where a small letter stands for two layers, as is common practice; undefined where none does. */
export function smallLetterNote(text: string): string | undefined {
  const small = /[urfdlb](?!w)/.exec(text)?.[0];
  const face = FACES.find((name) => name === small?.toUpperCase());
  return face === undefined
    ? undefined
    : `A small ${face.toLowerCase()} turns two layers. For ${sideName(face)} alone write ${face}.`;
}

/** How far to the right an error's mark stands. Shape: the text before it, and the text it underlines (at least one letter). */
export function markedPart(
  text: string,
  error: { readonly offset: number; readonly text: string },
): { readonly before: string; readonly marked: string } {
  return {
    before: text.slice(0, error.offset),
    marked: error.text === "" ? " " : error.text,
  };
}
