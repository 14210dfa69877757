/**
 * From written turns to turns.
 *
 * Source: WCA Regulations, Article 12 (12a1, 12a2, 12a4). Beyond them, common
 *         practice: `M E S`; small letters for wide turns; turns written
 *         without spaces; groups with a count, `(R U R' U')3`, also `×3`, `*3`
 *         and `x3`; a group undone, `(R U)'`; a direction on a half turn, `R2'`.
 *         Also a `2` or an apostrophe with a space before it, `R 2`, where it
 *         cannot belong to what follows.
 *
 * One pass with a cursor instead of splitting at spaces, because every error
 * must name its place and turns may stand without spaces. Where two readings
 * are both in use, the text is refused rather than guessed at: `(R U)x2` may
 * mean "twice" or "then the whole cube".
 */
import { type Turn, TURN_LAYERS, type TurnLayer } from "../cube/turns";
import { err, ok, type Result } from "../result";
import { inverseTurns } from "./inverse";

/** Every cause for which written turns are refused. */
export const NOTATION_ERROR_CODES = [
  /** A character that means nothing here, or the word of small letters that it is in. */
  "unknown-character",
  /** `m e s`: slices are written large. */
  "lower-case-slice",
  /** `X Y Z`: turns of the whole cube are written small. */
  "upper-case-rotation",
  /** A `w` that does not follow a large face letter. */
  "misplaced-w",
  /** `1Rw`, `3Rw`: on this cube a wide turn takes two layers. */
  "layer-number",
  /** `2R`: only a wide turn has a number in front. */
  "number-without-wide",
  /** A number that belongs to nothing. */
  "stray-number",
  /** `R3`: a turn is made once or twice. */
  "turn-count",
  /** `R'2`: the number comes first. */
  "count-after-prime",
  /** An apostrophe that belongs to nothing, or a second one. */
  "stray-prime",
  /** A times sign that does not follow a group. */
  "stray-times",
  /** A times sign with no number after it. */
  "missing-repeat-count",
  /** A group repeated no times, or more often than `MAX_REPEATS`. */
  "repeat-count",
  /** `(R U)x2`: twice, or `x2` after the group? */
  "ambiguous-repeat",
  /** A group with nothing in it. */
  "empty-group",
  /** A group that is never closed. */
  "unclosed-group",
  /** A closing bracket without its opening one. */
  "unopened-group",
  /** Groups within groups deeper than `MAX_DEPTH`. */
  "nested-too-deep",
  /** More than `MAX_TURNS` turns, repeats counted. */
  "too-long",
] as const;

export type NotationErrorCode = (typeof NOTATION_ERROR_CODES)[number];

/**
 * Why written turns were refused, and where.
 *
 * Units: `offset` counts UTF-16 units from the beginning, as text fields do;
 *        `text` is what stands there.
 */
export interface NotationError {
  readonly code: NotationErrorCode;
  readonly offset: number;
  readonly text: string;
}

/** Turns as far as they can be read while somebody is still writing. */
export interface TypedTurns {
  /** The turns before the error, or all of them; an open group counts once. */
  readonly turns: readonly Turn[];
  readonly error: NotationError | undefined;
  /** Whether going on writing can still mend the error: wait before showing it. */
  readonly unfinished: boolean;
}

/** The most turns that a text may stand for, repeats counted. */
export const MAX_TURNS = 1000;

/** The most repeats of one group. */
export const MAX_REPEATS = 100;

/** The deepest nesting of groups. */
export const MAX_DEPTH = 8;

// Zero-width spaces come along with text copied from web pages.
const SPACE = "[\\s\\u200B\\u2060]";
const SPACES = new RegExp(`${SPACE}+`, "y");
const PRIMES = "'’‘′ʼ`´";
const TURN = new RegExp(
  // A 2 that stands off is not taken from what may be meant as `2Rw`.
  `([0-9]+)?([URFDLBurfdlbMESxyz])(w)?([0-9]+|${SPACE}+2(?![0-9A-Za-z])(?!${SPACE}+[URFDLB]w))?(${SPACE}*[${PRIMES}])?`,
  "y",
);
const REPEAT = new RegExp(
  `(?:([0-9]+)|${SPACE}*([×*])${SPACE}*([0-9]+)?|${SPACE}*x([0-9]+))?([${PRIMES}])?`,
  "y",
);
const NUMBER = /[0-9]+/y;

/**
 * Reads a sequence of turns. No text is no turns.
 *
 * Errors: one of `NOTATION_ERROR_CODES`, the first from the left; a group that
 *         is not closed comes last.
 */
export function parseTurns(
  text: string,
): Result<readonly Turn[], NotationError> {
  const { turns, error } = read(text);
  return error === undefined ? ok(turns) : err(error);
}

/** Reads a sequence of turns that may not be finished yet. */
export function readTypedTurns(text: string): TypedTurns {
  const { turns, error } = read(text);
  return {
    turns,
    error,
    unfinished: error !== undefined && canStillBeMended(text, error),
  };
}

// What may still become `2Rw`.
const MAY_BECOME_WIDE: readonly NotationErrorCode[] = [
  "stray-number",
  "count-after-prime",
  "number-without-wide",
];

function canStillBeMended(text: string, error: NotationError): boolean {
  if (error.code === "unclosed-group") return true;
  if (error.offset + error.text.length < text.length) return false;
  return (
    error.code === "missing-repeat-count" ||
    (MAY_BECOME_WIDE.includes(error.code) && /^2[URFDLB]?$/.test(error.text))
  );
}

interface OpenGroup {
  readonly offset: number;
  /** How many turns stood before the group. */
  readonly begin: number;
}

function read(text: string): {
  readonly turns: readonly Turn[];
  readonly error: NotationError | undefined;
} {
  const turns: Turn[] = [];
  const groups: OpenGroup[] = [];
  let at = 0;
  const failed = (code: NotationErrorCode, offset: number, found: string) => ({
    turns,
    error: { code, offset, text: found },
  });

  while (at < text.length) {
    at += matchAt(SPACES, text, at)?.[0].length ?? 0;
    if (at >= text.length) break;

    if (text[at] === "(") {
      if (groups.length === MAX_DEPTH)
        return failed("nested-too-deep", at, "(");
      groups.push({ offset: at, begin: turns.length });
      at++;
      continue;
    }

    if (text[at] === ")") {
      const group = groups.pop();
      if (group === undefined) return failed("unopened-group", at, ")");
      const repeat = readRepeat(text, at + 1);
      if ("code" in repeat) return { turns, error: repeat };
      const once = turns.slice(group.begin);
      if (once.length === 0)
        return failed(
          "empty-group",
          group.offset,
          text.slice(group.offset, at + 1),
        );
      if (group.begin + once.length * repeat.count > MAX_TURNS)
        return failed("too-long", at, text.slice(at, repeat.end));
      const part = repeat.inverse ? inverseTurns(once) : once;
      turns.length = group.begin;
      for (let i = 0; i < repeat.count; i++) turns.push(...part);
      at = repeat.end;
      continue;
    }

    const found = matchAt(TURN, text, at);
    if (found === undefined) {
      const error = strayError(text, at);
      const word = error.code === "unknown-character" && wordAt(text, at);
      if (!word) return { turns, error };
      // What of the word could be read were no turns: a letter each.
      turns.length -= at - word.offset;
      return failed("unknown-character", word.offset, word.text);
    }
    const turn = readTurn(found, at);
    if ("code" in turn) return { turns, error: turn };
    if (turns.length === MAX_TURNS) return failed("too-long", at, found[0]);
    turns.push(turn);
    at += found[0].length;
  }

  const open = groups.at(-1);
  return open === undefined
    ? { turns, error: undefined }
    : failed("unclosed-group", open.offset, text.slice(open.offset));
}

function matchAt(
  pattern: RegExp,
  text: string,
  at: number,
): RegExpExecArray | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text) ?? undefined;
}

function readTurn(found: RegExpExecArray, at: number): Turn | NotationError {
  const [whole, number = "", letter = "", wide = "", suffix = "", prime] =
    found;
  const count = suffix.replace(/[^0-9]/g, "");
  const layer = layerWritten(letter, wide);
  if (layer === undefined) {
    const offset = at + number.length + letter.length;
    return { code: "misplaced-w", offset, text: wide };
  }
  if (number !== "") {
    // `2Rw` is a wide turn; in `2R` and `2r` the number has no meaning here.
    if (wide === "")
      return { code: "number-without-wide", offset: at, text: whole };
    if (number !== "2")
      return { code: "layer-number", offset: at, text: whole };
  }
  if (count !== "" && count !== "2") {
    const offset = at + number.length + letter.length + wide.length;
    return { code: "turn-count", offset, text: count };
  }
  if (count === "2") return { layer, quarters: 2 };
  return { layer, quarters: prime === undefined ? 1 : 3 };
}

function layerWritten(letter: string, wide: string): TurnLayer | undefined {
  const isSmallFace = "urfdlb".includes(letter);
  const written =
    isSmallFace && wide === "" ? `${letter.toUpperCase()}w` : letter + wide;
  return TURN_LAYERS.find((layer) => layer === written);
}

interface Repeat {
  readonly count: number;
  readonly inverse: boolean;
  readonly end: number;
}

function readRepeat(text: string, at: number): Repeat | NotationError {
  const [whole, plain, times, timed, lettered, prime] = matchAt(
    REPEAT,
    text,
    at,
  ) ?? [""];
  const written = plain ?? timed ?? lettered;
  if (times !== undefined && timed === undefined) {
    const offset = text.indexOf(times, at);
    return { code: "missing-repeat-count", offset, text: times };
  }
  if (lettered === "2") {
    const offset = text.indexOf("x", at);
    return { code: "ambiguous-repeat", offset, text: "x2" };
  }
  const count = written === undefined ? 1 : Number(written);
  if (written !== undefined && (count < 1 || count > MAX_REPEATS)) {
    const offset = text.indexOf(written, at);
    return { code: "repeat-count", offset, text: written };
  }
  return { count, inverse: prime !== undefined, end: at + whole.length };
}

// The w of a wide turn belongs to the letter before it.
const WORD = /(?!(?<=[URFDLB])w)[a-z]+/g;

/** The word of small letters that a letter belongs to, such as "blah", of which "bl" would be two wide turns; undefined for a letter alone. */
function wordAt(
  text: string,
  at: number,
): { readonly offset: number; readonly text: string } | undefined {
  for (const { index, 0: word } of text.matchAll(WORD))
    if (index < at && at < index + word.length)
      return { offset: index, text: word };
  return undefined;
}

/** Names what stands where neither a turn nor a bracket does. */
function strayError(text: string, at: number): NotationError {
  const character = String.fromCodePoint(text.codePointAt(at) ?? 0);
  const before = text[at - 1];
  const number = matchAt(NUMBER, text, at)?.[0];
  const error = (code: NotationErrorCode, found = character) => ({
    code,
    offset: at,
    text: found,
  });
  if (number !== undefined)
    return before !== undefined && PRIMES.includes(before)
      ? error("count-after-prime", number)
      : error("stray-number", number);
  if (PRIMES.includes(character)) return error("stray-prime");
  if ("×*".includes(character)) return error("stray-times");
  if (character === "w") return error("misplaced-w");
  if ("mes".includes(character)) return error("lower-case-slice");
  if ("XYZ".includes(character)) return error("upper-case-rotation");
  return error("unknown-character");
}
