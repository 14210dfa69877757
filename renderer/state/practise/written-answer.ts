/**
 * An answer that is typed, or tapped where there is no keyboard: what the
 * taps do to the text. What the text says is core's to read.
 */
import { FACES } from "../../../core/cube/faces";
import { sideName } from "../../../core/notation/place-words";

/** The keys to tap where there is no keyboard. */
export const TAP_KEYS = ["U", "D", "L", "R", "F", "B", "'", "2"] as const;

export type TapKey = (typeof TAP_KEYS)[number];

/** The text after a tap: a letter begins a turn, `'` and `2` belong to the last one. */
export function tapped(text: string, key: TapKey): string {
  const before = text.trimEnd();
  if (key !== "'" && key !== "2")
    return before === "" ? key : `${before} ${key}`;
  const turn = /[^\s'2]+$/.exec(before.replace(/['2]+$/, ""))?.[0];
  if (turn === undefined) return text;
  const bare = before.replace(/['2]+$/, "");
  // A second tap on the same mark takes it away; on the other one, exchanges it.
  return before.endsWith(key) ? bare : bare + key;
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
