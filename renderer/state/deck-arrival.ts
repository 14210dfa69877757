/**
 * A deck file that has been read and not yet taken in: what is in it, what
 * would change, and how it is taken in. Nothing is stored before a person has
 * said so.
 */
import type { CaseId } from "../../core/cases/case-ids";
import type { Deck } from "../../core/deck/deck";
import { deckChanges, type DeckChange } from "../../core/deck/deck-changes";
import {
  type DeckFileError,
  MAX_DECK_FILE_LENGTH,
  parseDeckFile,
} from "../../core/deck/deck-file";
import type { DeckDraft, UnknownCase } from "../../core/deck/deck-file-values";
import { parseDeck } from "../../core/deck/deck-schema";
import { casesWithBadWays, withoutWays } from "../../core/deck/typed-ways";
import { present } from "../../core/invariant";
import { randomSource } from "../../core/random-source";
import { err, ok, type Result } from "../../core/result";
import { deckFileErrorText } from "../deck-error-text";
import { desktopErrorText } from "../desktop-error-text";
import type { ReadTextFile, TextFileError } from "../platform/files";
import { freshId, freshSeed } from "../platform/random";
import { isStarterDeck } from "../../core/deck/starter-decks";

/** The ending of deck files; a plain `.json` is read as well. */
export const DECK_FILE_ENDING = ".turnwise-deck";

/** Endings of files that may hold a deck. */
export const DECK_FILE_ENDINGS = [DECK_FILE_ENDING, ".json"] as const;

/** The most that is read of a file. Units: bytes, of which a text's unit has at least one. */
export const MOST_DECK_BYTES = MAX_DECK_FILE_LENGTH;

/** A deck that somebody may take in. */
export interface DeckArrival {
  readonly file: string;
  readonly draft: DeckDraft;
  readonly unknownCases: readonly UnknownCase[];
  /** Cases whose typed way does not answer them; it is left out of `draft`. */
  readonly badWays: readonly CaseId[];
  /** The deck here with the same id, which it would revise. */
  readonly revises: Deck | undefined;
  readonly changes: readonly DeckChange[];
}

/** A file that is no deck, or cannot be read. */
export interface RefusedFile {
  readonly file: string;
  /** What is wrong, where, and what to do. */
  readonly reason: string;
}

function fileErrorText(error: TextFileError): string {
  switch (error.code) {
    case "file-too-large":
      return "This file is too large for a deck: a deck has less than a megabyte. Choose another file.";
    case "file-not-text":
      return "This file is no text, so it is no deck. Choose a deck file.";
    case "file-not-read":
      return "This file could not be read. Choose it again, or copy it to another folder first.";
    case "desktop-refused":
      return desktopErrorText(error.error);
  }
}

/** What a file that was chosen or dropped holds, compared with the decks that are here. */
export function deckArrival(
  read: ReadTextFile,
  decks: readonly Deck[],
): Result<DeckArrival, RefusedFile> {
  if (!read.ok)
    return err({ file: read.error.name, reason: fileErrorText(read.error) });
  const { name: file, text } = read.value;
  const parsed: Result<
    { deck: DeckDraft; unknownCases: readonly UnknownCase[] },
    DeckFileError
  > = parseDeckFile(text);
  if (!parsed.ok) return err({ file, reason: deckFileErrorText(parsed.error) });
  const { deck, unknownCases } = parsed.value;
  const badWays = casesWithBadWays(deck.cases, randomSource(freshSeed()));
  const draft = { ...deck, cases: withoutWays(deck.cases, badWays) };
  const known = decks.find(({ id }) => id === draft.id);
  // A starter deck stays as it is: a file with its id is a deck beside it.
  const revises =
    known === undefined || isStarterDeck(known) ? undefined : known;
  const changes = deckChanges(revises, draft);
  return ok({ file, draft, unknownCases, badWays, revises, changes });
}

/** The arrived deck as it is stored: under its own id where it revises or is new here, else, or `asNew`, under a fresh one. */
export function arrivedDeck(
  { draft, revises }: DeckArrival,
  decks: readonly Deck[],
  { asNew }: { readonly asNew: boolean },
): Deck {
  const isTaken = decks.some(({ id }) => id === draft.id);
  const keepsId = !asNew && (revises !== undefined || !isTaken);
  const id = keepsId ? (draft.id ?? freshId()) : freshId();
  const deck = parseDeck({ ...draft, id });
  return present(deck.ok ? deck.value : undefined, "its reader passed it");
}
