/**
 * Every deck on this machine: the starter decks, then those that were made or
 * read here. They belong to the machine; which of them somebody practises is
 * in that learner's settings.
 */
import type { Deck } from "../../core/deck/deck";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { ok, type Result } from "../../core/result";
import { now } from "../platform/clock";
import { tellOtherWindows } from "../platform/other-windows";
import type { DamagedRow } from "../storage/damaged-row";
import type { TurnwiseDatabase } from "../storage/database";
import { deleteDeck, readDecks, saveDeck } from "../storage/decks";
import type { StorageError } from "../storage/storage-error";

/** Whether a deck came with the app: it is copied, never changed. */
export function isStarterDeck({ id }: Pick<Deck, "id">): boolean {
  return STARTER_DECKS.some((deck) => deck.id === id);
}

/** The decks of this machine, as every place sees them. */
export class DeckShelf {
  readonly #database: TurnwiseDatabase;
  #own: readonly Deck[] = $state.raw([]);
  /** Stored decks that could not be read; kept as they are. */
  damaged: readonly DamagedRow[] = $state.raw([]);

  constructor(database: TurnwiseDatabase) {
    this.#database = database;
  }

  /** The starter decks, then the others, oldest first. */
  get all(): readonly Deck[] {
    return [...STARTER_DECKS, ...this.#own];
  }

  find(id: string): Deck | undefined {
    return this.all.find((deck) => deck.id === id);
  }

  /** Reads what is stored, at the start and after another window has written. */
  async reload(): Promise<Result<void, StorageError>> {
    const read = await readDecks(this.#database);
    if (!read.ok) return read;
    this.#own = read.value.decks;
    this.damaged = read.value.damaged;
    return ok(undefined);
  }

  /** Stores a deck, new or changed; it is seen at once and taken back where it could not be stored. */
  async save(deck: Deck): Promise<Result<void, StorageError>> {
    const before = this.#own;
    const isKnown = before.some(({ id }) => id === deck.id);
    this.#own = isKnown
      ? before.map((old) => (old.id === deck.id ? deck : old))
      : [...before, deck];
    const saved = await saveDeck(this.#database, deck, now());
    if (saved.ok) tellOtherWindows({ changed: "decks" });
    else await this.reload();
    return saved;
  }

  async remove(id: string): Promise<Result<void, StorageError>> {
    const removed = await deleteDeck(this.#database, id);
    if (!removed.ok) return removed;
    this.#own = this.#own.filter((deck) => deck.id !== id);
    tellOtherWindows({ changed: "decks" });
    return removed;
  }
}
