/**
 * Reading and writing a deck file: UTF-8 JSON that one coach hands to another,
 * or writes by hand.
 *
 * A file is read from the outside in, and refused at the first fault: its
 * size, its JSON, whose kind and which form it is, its fields, what they say
 * together. Nothing in it is run, and no text of it is taken for anything but
 * text.
 */
import { err, ok, type Result } from "../result";
import { contradictionIn } from "./deck-contradiction";
import { type DeckFault, shortText, type ValuePath } from "./deck-fault";
import {
  DECK_FILE,
  DECK_FILE_HEAD,
  DECK_FILE_VERSION,
  type DeckFile,
  NEWER_DECK_FILE,
} from "./deck-file-schema";
import {
  type DeckDraft,
  deckFromFile,
  fileFromDeck,
  filePath,
  type UnknownCase,
} from "./deck-file-values";
import {
  jsonFault,
  type JsonFault,
  offsetOfPath,
  placeInText,
  type TextPlace,
} from "./json-text";
import { readDeckValue } from "./read-deck-value";

/** The largest deck file. Units: UTF-16 units of its text; whoever reads the file checks its bytes against the same number first. */
export const MAX_DECK_FILE_LENGTH = 1_000_000;

/** How deep lists and fields of a file may lie within one another; ours lie three deep. */
export const MAX_DECK_FILE_DEPTH = 32;

/** Why a deck file is refused, and where. */
export type DeckFileError =
  | {
      readonly code: "too-large";
      readonly length: number;
      readonly most: number;
    }
  | (Omit<JsonFault, "offset"> & TextPlace)
  /** Not Turnwise's: JSON of something else, or a text that does not even begin like one. */
  | { readonly code: "not-turnwise" }
  /** Turnwise's, but no deck; `kind` is empty where it is no word. */
  | { readonly code: "other-kind"; readonly kind: string }
  | {
      readonly code: "newer-version";
      readonly version: number;
      readonly readableFrom: number;
    }
  /** A value; `field` is its path as people write it, `cases[3].target`. */
  | (DeckFault & TextPlace & { readonly field: string });

/** A deck that was read from a file. */
export interface ReadDeck {
  readonly deck: DeckDraft;
  /** Named, and not in `deck`. */
  readonly unknownCases: readonly UnknownCase[];
}

function pathInWords(path: ValuePath): string {
  return path
    .map((step, i) =>
      typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`,
    )
    .join("");
}

function kindFault(value: unknown): DeckFileError | undefined {
  const isFields =
    typeof value === "object" && value !== null && !Array.isArray(value);
  if (!isFields || !("turnwise" in value)) return { code: "not-turnwise" };
  const kind = value.turnwise;
  return kind === "deck"
    ? undefined
    : { code: "other-kind", kind: shortText(kind) ?? "" };
}

/** Whether a text begins as one in which somebody tried to write JSON; a letter or a page does not. */
function beginsLikeJson(text: string): boolean {
  return /^\s*(?:[{["]|$)/.test(text);
}

/**
 * The deck that a file's text holds. A byte order mark and line ends of any
 * kind are taken as they come; cases that this version does not have are named
 * beside the deck.
 *
 * Errors: one of `DeckFileError`, the first from the outside in. Texts in an
 *         error are cut short, but are the file's own: show them as text.
 */
export function parseDeckFile(
  written: string,
): Result<ReadDeck, DeckFileError> {
  const text = written.startsWith("\uFEFF") ? written.slice(1) : written;
  if (text.length > MAX_DECK_FILE_LENGTH)
    return err({
      code: "too-large",
      length: text.length,
      most: MAX_DECK_FILE_LENGTH,
    });
  const broken = jsonFault(text, MAX_DECK_FILE_DEPTH);
  if (broken !== undefined) {
    if (!beginsLikeJson(text)) return err({ code: "not-turnwise" });
    const { offset, ...fault } = broken;
    return err({ ...fault, ...placeInText(text, offset) });
  }
  const value: unknown = JSON.parse(text);
  const otherKind = kindFault(value);
  if (otherKind !== undefined) return err(otherKind);
  const refuse = (fault: DeckFault) =>
    err({
      ...fault,
      ...placeInText(text, offsetOfPath(text, fault.path)),
      field: pathInWords(fault.path),
    });

  const head = readDeckValue(DECK_FILE_HEAD, value);
  if (!head.ok) return refuse(head.error);
  const { version, readableFrom = version } = head.value;
  if (readableFrom > DECK_FILE_VERSION)
    return err({ code: "newer-version", version, readableFrom });
  const file = readDeckValue<DeckFile>(
    version > DECK_FILE_VERSION ? NEWER_DECK_FILE : DECK_FILE,
    value,
  );
  if (!file.ok) return refuse(file.error);

  const { deck, unknownCases, places } = deckFromFile(file.value);
  const fault = contradictionIn(deck);
  if (fault !== undefined)
    return refuse({ ...fault, path: filePath(fault.path, places) });
  return ok({ deck, unknownCases });
}

/** JSON on one line, with a space after each colon and comma; `undefined` fields are left out. */
function onOneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .map(([key, field]) => `${JSON.stringify(key)}: ${onOneLine(field)}`);
  return fields.length === 0 ? "{}" : `{ ${fields.join(", ")} }`;
}

/** The text of a deck's file: a field a line, a case a line, LF at the end of each. */
export function formatDeckFile(deck: DeckDraft): string {
  const { cases, ...fields } = fileFromDeck(deck);
  const lines = Object.entries(fields)
    .filter(([, field]) => field !== undefined)
    .map(([key, field]) => `  ${JSON.stringify(key)}: ${onOneLine(field)},\n`);
  const list = Array.isArray(cases) ? cases.map(onOneLine) : [];
  const column =
    list.length === 0 ? "[]" : `[\n    ${list.join(",\n    ")}\n  ]`;
  return `{\n${lines.join("")}  "cases": ${column}\n}\n`;
}
