/**
 * Every deck on this machine: the starter decks, then those that were made or
 * read here. They belong to the machine; which of them somebody practises is
 * in that learner's settings.
 */
import { SvelteSet } from "svelte/reactivity";
import type { Deck } from "../../core/deck/deck";
import { STARTER_DECKS } from "../../core/deck/starter-decks";
import { err, ok, type Result } from "../../core/result";
import { now } from "../platform/clock";
import { tellOtherWindows } from "../platform/other-windows";
import type { DamagedRow } from "../storage/damaged-row";
import type { TurnwiseDatabase } from "../storage/database";
import { deleteDeck, readDecks, replaceDeck, saveDeck } from "../storage/decks";
import type { StorageError } from "../storage/storage-error";

/** The decks with another one among them, in the place of its old version or at the end. */
function withDeck(decks: readonly Deck[], deck: Deck): readonly Deck[] {
  return decks.some(({ id }) => id === deck.id)
    ? decks.map((old) => (old.id === deck.id ? deck : old))
    : [...decks, deck];
}

/** Why a deck was not kept; "deck-gone": it was deleted meanwhile, here or in another window. */
export type DeckNotKept =
  | StorageError
  | { readonly code: "deck-gone" }
  | { readonly code: "guest-at-desk" };

/**
 * The decks of this machine, as every place sees them.
 *
 * The store is read and written one thing after the other, in the order in
 * which it was asked for: a deck is edited faster than it is stored, and a
 * deleted one must not come back with the edit before.
 */
export class DeckShelf {
  readonly #database: TurnwiseDatabase;
  #own: readonly Deck[] = $state.raw([]);
  /** Decks on their way into the store, as they were last changed. */
  #unsaved: readonly Deck[] = [];
  /** Ids of decks that somebody has asked to delete. */
  readonly #leaving = new SvelteSet<string>();
  #lastJob: Promise<unknown> = Promise.resolve();
  /** Stored decks that could not be read; kept as they are. */
  damaged: readonly DamagedRow[] = $state.raw([]);

  /** Whether a guest is at the desk: they may look at every deck and change none. Set by whoever seats them. */
  isGuests = $state(false);

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

  #inOrder<Done>(job: () => Promise<Done>): Promise<Done> {
    const done = this.#lastJob.then(job);
    // What a job throws is for whoever asked for it; the next one goes on.
    this.#lastJob = done.catch(() => undefined);
    return done;
  }

  /** Reads what is stored, at the start and after another window has written. */
  reload(): Promise<Result<void, StorageError>> {
    return this.#inOrder(async () => {
      const read = await readDecks(this.#database);
      if (!read.ok) return read;
      // What was changed here meanwhile is stored next, and counts already.
      this.#own = this.#unsaved.reduce(withDeck, read.value.decks);
      this.damaged = read.value.damaged;
      return ok(undefined);
    });
  }

  /**
   * Stores a deck, new or changed; it is seen at once and taken back where it
   * could not be stored. A deck that is already here is only changed: one that
   * was deleted meanwhile stays deleted.
   */
  async save(deck: Deck): Promise<Result<void, DeckNotKept>> {
    if (this.isGuests) return err({ code: "guest-at-desk" });
    const isNew = this.find(deck.id) === undefined;
    this.#own = withDeck(this.#own, deck);
    this.#unsaved = withDeck(this.#unsaved, deck);
    const saved = await this.#inOrder(() => this.#write(deck, isNew));
    this.#unsaved = this.#unsaved.filter((unsaved) => unsaved !== deck);
    if (saved.ok) tellOtherWindows({ changed: "decks" });
    else if (saved.error.code === "deck-gone") this.#forget(deck.id);
    else await this.reload();
    return saved;
  }

  async #write(deck: Deck, isNew: boolean): Promise<Result<void, DeckNotKept>> {
    if (isNew) return saveDeck(this.#database, deck, now());
    const replaced = await replaceDeck(this.#database, deck);
    if (!replaced.ok) return replaced;
    return replaced.value ? ok(undefined) : err({ code: "deck-gone" });
  }

  #forget(id: string): void {
    this.#unsaved = this.#unsaved.filter((deck) => deck.id !== id);
    this.#own = this.#own.filter((deck) => deck.id !== id);
  }

  /** Whether a deck is on its way out: nothing can be changed in it any more. */
  isLeaving(id: string): boolean {
    return this.#leaving.has(id);
  }

  /** Deletes a deck; it is seen until it is out of the store. */
  async remove(id: string): Promise<Result<void, DeckNotKept>> {
    if (this.isGuests) return err({ code: "guest-at-desk" });
    this.#leaving.add(id);
    const removed = await this.#inOrder(() => deleteDeck(this.#database, id));
    this.#leaving.delete(id);
    if (!removed.ok) return removed;
    this.#forget(id);
    tellOtherWindows({ changed: "decks" });
    return removed;
  }
}
