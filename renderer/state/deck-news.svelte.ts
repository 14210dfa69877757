/**
 * What a learner's coach has changed in the decks they practise since they last
 * looked: the versions they have seen are kept beside their settings.
 *
 * A deck that is new to them brings its message; one that was revised also what
 * is different. Comments of the author's own are nobody else's.
 */
import * as v from "valibot";
import type { Deck } from "../../core/deck/deck";
import { type DeckChange, deckChanges } from "../../core/deck/deck-changes";
import { parseDeck } from "../../core/deck/deck-schema";
import { ok, type Result } from "../../core/result";
import { isSameJson as isSame } from "../../core/same-json";
import { decksSeenKey } from "../storage/learners";
import { readSetting, saveSetting } from "../storage/settings";
import type { StorageError } from "../storage/storage-error";
import { isStarterDeck } from "../../core/deck/starter-decks";
import type { LearnerState } from "./learner.svelte";

/** What is to be told about one deck. */
export interface DeckNews {
  readonly deck: Deck;
  /** Undefined where there is none, or it was read before. */
  readonly message: string | undefined;
  /** Empty for a deck that is new to the learner. */
  readonly changes: readonly DeckChange[];
}

const SEEN = v.record(v.string(), v.unknown());

/** Decks by their id. */
type SeenDecks = Readonly<Record<string, Deck>>;

function parseSeen(stored: unknown): SeenDecks {
  const rows = v.safeParse(SEEN, stored);
  if (!rows.success) return {};
  return Object.fromEntries(
    Object.entries(rows.output).flatMap(([id, row]) => {
      const deck = parseDeck(row);
      return deck.ok ? [[id, deck.value] as const] : [];
    }),
  );
}

function newsOf(deck: Deck, seen: Deck | undefined): DeckNews | undefined {
  const changes =
    seen === undefined
      ? []
      : deckChanges(seen, deck).filter(
          (change) =>
            change.code !== "deck-field" ||
            (change.field !== "note" && change.field !== "message"),
        );
  const message = deck.message === seen?.message ? undefined : deck.message;
  return message === undefined && changes.length === 0
    ? undefined
    : { deck, message, changes };
}

/** The news of one learner. */
export class DeckNewsBoard {
  readonly #learner: LearnerState;
  readonly #key: string;
  #seen: SeenDecks | undefined = $state.raw();

  constructor(learner: LearnerState) {
    this.#learner = learner;
    this.#key = decksSeenKey(learner.learner.id);
  }

  /** What the learner has not read yet; none until it is known what they have. */
  get news(): readonly DeckNews[] {
    const seen = this.#seen;
    if (seen === undefined) return [];
    return this.#learner.decks
      .filter((deck) => !isStarterDeck(deck))
      .flatMap((deck) => newsOf(deck, seen[deck.id]) ?? []);
  }

  /** Reads what the learner has seen. */
  async open(): Promise<Result<unknown, StorageError>> {
    const stored = await readSetting(this.#learner.database, this.#key);
    if (!stored.ok) return stored;
    this.#seen = parseSeen(stored.value);
    // A deck that has nothing to say counts as seen: what changes in it later
    // is then told.
    const unread = this.news.map(({ deck }) => deck.id);
    return this.#see((deck) => !unread.includes(deck.id));
  }

  /** The learner has read what there is to some decks: they count as seen as they now are. */
  read(ids: readonly string[]): Promise<Result<void, StorageError>> {
    return this.#see((deck) => ids.includes(deck.id));
  }

  async #see(
    isSeen: (deck: Deck) => boolean,
  ): Promise<Result<void, StorageError>> {
    const before = this.#seen ?? {};
    const decks = this.#learner.decks
      .filter((deck) => !isStarterDeck(deck))
      .filter(isSeen);
    // A deck that is not practised just now was seen all the same.
    const after = {
      ...before,
      ...Object.fromEntries(decks.map((deck) => [deck.id, deck])),
    };
    this.#seen = after;
    return isSame(before, after)
      ? ok(undefined)
      : saveSetting(this.#learner.database, this.#key, after);
  }
}
