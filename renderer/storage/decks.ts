/** The decks that were made or read on this machine; the starter decks are not stored. */
import * as v from "valibot";
import type { Deck } from "../../core/deck/deck";
import { isStarterDeck } from "../../core/deck/starter-decks";
import { parseDeck } from "../../core/deck/deck-schema";
import { ok, type Result } from "../../core/result";
import type { RawRow, TurnwiseDatabase } from "./database";
import type { DamagedRow } from "./damaged-row";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

const ROW_SCHEMA = v.object({
  id: v.string(),
  /** When it was made or first read, UTC: the order of the list. */
  createdAt: v.pipe(v.number(), v.finite()),
  deck: v.unknown(),
});

/** The decks that could be read, oldest first, and what could not. */
export interface StoredDecks {
  readonly decks: readonly Deck[];
  readonly damaged: readonly DamagedRow[];
}

interface ReadRow {
  readonly deck: Deck;
  readonly createdAt: number;
}

/** The deck in a stored row, or what is wrong with the row. */
export function readDeckRow(row: RawRow): Result<ReadRow, DamagedRow> {
  const key = String(row["id"]);
  const refuse = (field: string) =>
    ({ ok: false, error: { table: "decks", key, field } }) as const;
  const parsed = v.safeParse(ROW_SCHEMA, row);
  if (!parsed.success) return refuse(v.getDotPath(parsed.issues[0]) ?? "");
  const deck = parseDeck(parsed.output.deck);
  if (!deck.ok) return refuse(["deck", ...deck.error.path].join("."));
  // Those that came with the app are in no store: a row with such an id is
  // somebody else's doing, and would stand twice in every list.
  const isOwn = deck.value.id === key && !isStarterDeck(deck.value);
  return isOwn
    ? ok({ deck: deck.value, createdAt: parsed.output.createdAt })
    : refuse("deck.id");
}

/** Reads every stored deck. A row that cannot be read is reported and left as it is. */
export async function readDecks(
  database: TurnwiseDatabase,
): Promise<Result<StoredDecks, StorageError>> {
  const read = await tryReading(() => database.decks.toArray());
  if (!read.ok) return read;
  const rows: ReadRow[] = [];
  const damaged: DamagedRow[] = [];
  for (const row of read.value.map(readDeckRow))
    if (row.ok) rows.push(row.value);
    else damaged.push(row.error);
  rows.sort((a, b) => a.createdAt - b.createdAt);
  return ok({ decks: rows.map(({ deck }) => deck), damaged });
}

/**
 * Stores a deck: a new one, or an old one as it now stands.
 *
 * Units: `now`, milliseconds since the Unix epoch, counts for a new one alone.
 */
export function saveDeck(
  database: TurnwiseDatabase,
  deck: Deck,
  now: number,
): Promise<Result<void, StorageError>> {
  const { decks } = database;
  return tryWriting(() =>
    database.transaction("rw", decks, async () => {
      const createdAt = (await decks.get(deck.id))?.["createdAt"] ?? now;
      await decks.put({ id: deck.id, createdAt, deck });
    }),
  );
}

/** Stores an old deck as it now stands. Resolves with whether it was there: one that was deleted meanwhile does not come back. */
export function replaceDeck(
  database: TurnwiseDatabase,
  deck: Deck,
): Promise<Result<boolean, StorageError>> {
  return tryWriting(
    async () => (await database.decks.update(deck.id, { deck })) > 0,
  );
}

/** Removes a deck. What was answered in it stays: memory belongs to the case. */
export function deleteDeck(
  database: TurnwiseDatabase,
  id: string,
): Promise<Result<void, StorageError>> {
  return tryWriting(() => database.decks.delete(id));
}
