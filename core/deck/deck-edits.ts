/**
 * What a coach does to a deck. Each edit returns a new deck that has passed
 * the reader of stored decks, or says why it cannot be made; the old deck
 * stays as it is.
 */
import type { CaseId } from "../cases/case-ids";
import { caseEntry } from "../cases/case-table";
import { err, type Result } from "../result";
import type { Deck, DeckCase } from "./deck";
import type { DeckFault } from "./deck-fault";
import { parseDeck } from "./deck-schema";

/** Why an edit cannot be made. */
export type DeckEditError =
  | DeckFault
  | { readonly code: "case-not-in-deck"; readonly case: CaseId }
  /** A place that the deck does not have; counted from 0. */
  | { readonly code: "no-such-place"; readonly place: number };

/** A deck after an edit. */
export type EditedDeck = Result<Deck, DeckEditError>;

/** New values for some fields; `undefined` leaves the choice to the app again. */
type Patch<Value> = {
  readonly [Key in keyof Value]?: Value[Key] | undefined;
};

/** What can be changed of a deck as a whole. */
export type DeckPatch = Patch<Omit<Deck, "id" | "cases" | "extra">>;

/** What can be changed of a case in a deck. */
export type DeckCasePatch = Patch<Omit<DeckCase, "case" | "extra">>;

const OPTIONAL_TEXTS: readonly string[] = ["note", "message"];

/** The value with a patch on it, fields without a value left out; an optional text with nothing in it is none. */
function patched(value: object, patch: object): object {
  const fields = Object.entries({ ...value, ...patch }).filter(
    ([key, field]) =>
      field !== undefined &&
      !(
        OPTIONAL_TEXTS.includes(key) &&
        typeof field === "string" &&
        field.trim() === ""
      ),
  );
  return Object.fromEntries(fields);
}

/** The deck with some of its fields changed. Errors: the first fault. */
export function changeDeck(deck: Deck, patch: DeckPatch): EditedDeck {
  const { name } = patch;
  const trimmed = name === undefined ? {} : { name: name.trim() };
  return parseDeck(patched(deck, { ...patch, ...trimmed }));
}

/** The deck under another name, spaces about it left out. Errors: `blank-text`, `text-too-long`, `unwanted-character`. */
export function renameDeck(deck: Deck, name: string): EditedDeck {
  return changeDeck(deck, { name });
}

/** Another deck with the same content. Errors: a fault of its name or id. */
export function copyDeck(
  deck: Deck,
  { id, name }: Pick<Deck, "id" | "name">,
): EditedDeck {
  return parseDeck({ ...deck, id, name: name.trim() });
}

function withCases(deck: Deck, cases: readonly DeckCase[]): EditedDeck {
  return parseDeck({ ...deck, cases });
}

function isPlace(place: number, count: number): boolean {
  return Number.isInteger(place) && place >= 0 && place < count;
}

/**
 * The deck with one more case, at a place or at the end, with the table's
 * starting target.
 *
 * Errors: `no-such-place`, `duplicate-case`, `list-too-long`.
 */
export function addCase(
  deck: Deck,
  id: CaseId,
  at = deck.cases.length,
): EditedDeck {
  if (!isPlace(at, deck.cases.length + 1))
    return err({ code: "no-such-place", place: at });
  const added = { case: id, target: caseEntry(id).targets.starting };
  return withCases(deck, deck.cases.toSpliced(at, 0, added));
}

/**
 * The deck with more cases at its end, those that it has already left out,
 * each with the table's starting target.
 *
 * Errors: `list-too-long`.
 */
export function addCases(deck: Deck, ids: readonly CaseId[]): EditedDeck {
  const added = ids
    .filter((id) => !deck.cases.some((entry) => entry.case === id))
    .map((id) => ({ case: id, target: caseEntry(id).targets.starting }));
  return withCases(deck, [...deck.cases, ...added]);
}

/** The deck without a case. Errors: `case-not-in-deck`. */
export function removeCase(deck: Deck, id: CaseId): EditedDeck {
  const cases = deck.cases.filter((entry) => entry.case !== id);
  return cases.length === deck.cases.length
    ? err({ code: "case-not-in-deck", case: id })
    : withCases(deck, cases);
}

/** The deck with the case of one place moved to another: afterwards it is at `to`. Errors: `no-such-place`. */
export function moveCase(deck: Deck, from: number, to: number): EditedDeck {
  const { cases } = deck;
  const moved = isPlace(from, cases.length) ? cases[from] : undefined;
  if (moved === undefined) return err({ code: "no-such-place", place: from });
  if (!isPlace(to, cases.length))
    return err({ code: "no-such-place", place: to });
  return withCases(deck, cases.toSpliced(from, 1).toSpliced(to, 0, moved));
}

/** The deck with some fields of a case changed. Errors: `case-not-in-deck`, or the first fault. */
export function changeCase(
  deck: Deck,
  id: CaseId,
  patch: DeckCasePatch,
): EditedDeck {
  if (!deck.cases.some((entry) => entry.case === id))
    return err({ code: "case-not-in-deck", case: id });
  const cases = deck.cases.map((entry) =>
    entry.case === id ? patched(entry, patch) : entry,
  );
  return parseDeck({ ...deck, cases });
}
