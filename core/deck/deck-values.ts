/**
 * What the single values of a deck must be, written once for stored rows,
 * edits and files.
 *
 * Patterns have no flags, because a JSON Schema's have none; they are written
 * so that they mean the same read as UTF-16 units and as code points.
 */
import * as v from "valibot";
import { HOLDS } from "../cases/variant";

/** The limits of a deck. Units: texts in UTF-16 units, as text fields count. */
export const DECK_LIMITS = {
  name: 60,
  description: 200,
  message: 500,
  caseNote: 280,
  deckNote: 1000,
  way: 400,
  target: { least: 0.5, most: 600 },
  newPerRound: { least: 0, most: 12 },
  everyDays: { least: 1, most: 60 },
  cases: 500,
} as const;

// Controls of the terminal, line and paragraph separators, characters that
// turn the direction of what follows, and those that nobody sees: none belongs
// in a sentence.
const CONTROLS =
  "\\x00-\\x09\\x0B-\\x1F\\x7F-\\x9F\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069";
const UNSEEN = "\\u061C\\u200B\\u200E\\u200F\\u2060-\\u2064\\uFEFF";
// Half the people among the emoji, and words of Persian and Hindi, are written
// with these two; they count where they join two things that are seen.
const JOINERS = "\\u200C-\\u200D";
const UNWANTED = `${CONTROLS}${UNSEEN}`;
const PAIR = "[\\uD800-\\uDBFF][\\uDC00-\\uDFFF]";
const SEEN = `[^\\s${JOINERS}]`;
const JOINED = `(?<=${SEEN})[${JOINERS}](?=${SEEN})`;
const LONE_JOINER = `(?<!${SEEN})[${JOINERS}]|[${JOINERS}](?!${SEEN})`;

/** A text of one line, free of control characters, of unseen ones and of halves of a surrogate pair. */
export const ONE_LINE = new RegExp(
  `^(?:[^\\n\\uD800-\\uDFFF${JOINERS}${UNWANTED}]|${PAIR}|${JOINED})*$`,
);

/** The same with line breaks. */
export const LINES = new RegExp(
  `^(?:[^\\uD800-\\uDFFF${JOINERS}${UNWANTED}]|${PAIR}|${JOINED})*$`,
);

const UNWANTED_CHARACTER = new RegExp(
  `[${UNWANTED}]|\\p{Cs}|${LONE_JOINER}`,
  "u",
);

/** The first character of a text that no text may have; line breaks count where it must be one line. */
export function unwantedCharacter(
  text: string,
  isOneLine: boolean,
): string | undefined {
  const [line = ""] = isOneLine ? text.split("\n", 1) : [text];
  const found = UNWANTED_CHARACTER.exec(line)?.[0];
  return found ?? (line.length < text.length ? "\n" : undefined);
}

/** Something other than spaces and characters that nobody sees. */
export const NOT_BLANK = new RegExp(`[^\\s${JOINERS}${UNSEEN}]`);

/** A random UUID, or the id of a starter deck. */
export const DECK_ID =
  /^(?:[0-9A-Fa-f]{8}-[0-9A-Fa-f]{4}-[0-9A-Fa-f]{4}-[0-9A-Fa-f]{4}-[0-9A-Fa-f]{12}|starter-(?:edges|corners|rest|second-layer|last-steps|pairs|two-looks|turning|placing))$/;

/** A day as YYYY-MM-DD. Whether the calendar has it is another question. */
export const DAY = /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/;

function isWithoutRepeats(list: readonly unknown[]): boolean {
  return new Set(list).size === list.length;
}

function oneLine(most: number) {
  return v.pipe(v.string(), v.maxLength(most), v.regex(ONE_LINE));
}

function lines(most: number) {
  return v.pipe(v.string(), v.maxLength(most), v.regex(LINES));
}

function wholeNumber(limits: {
  readonly least: number;
  readonly most: number;
}) {
  return v.pipe(
    v.number(),
    v.integer(),
    v.minValue(limits.least),
    v.maxValue(limits.most),
  );
}

/** A list of some of the options, each once, at least one. */
export function someOf<const Option extends string>(
  options: readonly Option[],
) {
  return v.pipe(
    v.array(v.picklist(options)),
    v.minLength(1),
    v.check((list: Option[]) => isWithoutRepeats(list)),
  );
}

/** The schemas of single values, by what they are. */
export const DECK_VALUES = {
  id: v.pipe(v.string(), v.regex(DECK_ID)),
  name: v.pipe(
    v.string(),
    v.regex(NOT_BLANK),
    v.maxLength(DECK_LIMITS.name),
    v.regex(ONE_LINE),
  ),
  description: oneLine(DECK_LIMITS.description),
  message: lines(DECK_LIMITS.message),
  caseNote: lines(DECK_LIMITS.caseNote),
  deckNote: lines(DECK_LIMITS.deckNote),
  way: oneLine(DECK_LIMITS.way),
  caseId: v.pipe(
    v.string(),
    v.minLength(1),
    v.maxLength(60),
    v.regex(ONE_LINE),
  ),
  target: v.pipe(
    v.number(),
    v.minValue(DECK_LIMITS.target.least),
    v.maxValue(DECK_LIMITS.target.most),
  ),
  newPerRound: wholeNumber(DECK_LIMITS.newPerRound),
  everyDays: wholeNumber(DECK_LIMITS.everyDays),
  day: v.pipe(v.string(), v.regex(DAY)),
  placed: v.picklist([0, 1, 2, 3]),
  hold: v.picklist(HOLDS),
} as const;
