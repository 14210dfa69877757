/** Reading a deck from storage or from an edit: rows are parsed, never believed. */
import * as v from "valibot";
import { CASE_ID } from "../cases/case-id-schema";
import { STAGES } from "../cases/stage";
import { HANDS, WAY_SCHOOLS } from "../cases/way";
import { TURNED_WAYS } from "../memory/review";
import { err, type Result } from "../result";
import type { Deck } from "./deck";
import { contradictionIn } from "./deck-contradiction";
import type { DeckFault } from "./deck-fault";
import { readDeckValue } from "./read-deck-value";
import { DECK_LIMITS, DECK_VALUES, someOf } from "./deck-values";

const UNKNOWN_FIELDS = v.record(v.string(), v.unknown());

const WAY = v.variant("kind", [
  v.object({
    kind: v.literal("school"),
    school: v.picklist(WAY_SCHOOLS),
    hand: v.exactOptional(v.picklist(HANDS)),
  }),
  v.object({ kind: v.literal("turns"), turns: DECK_VALUES.way }),
]);

const DECK_CASE = v.object({
  case: CASE_ID,
  target: DECK_VALUES.target,
  way: v.exactOptional(WAY),
  note: v.exactOptional(DECK_VALUES.caseNote),
  placed: v.exactOptional(DECK_VALUES.placed),
  home: v.exactOptional(v.picklist(["front", "anywhere"])),
  lining: v.exactOptional(v.picklist(["lined-up", "turned-away"])),
  pieces: v.exactOptional(v.picklist(["marked", "unmarked"])),
  answerWays: v.exactOptional(someOf(TURNED_WAYS)),
  extra: v.exactOptional(UNKNOWN_FIELDS),
});

const DECK = v.object({
  id: DECK_VALUES.id,
  name: DECK_VALUES.name,
  description: DECK_VALUES.description,
  cases: v.pipe(v.array(DECK_CASE), v.maxLength(DECK_LIMITS.cases)),
  newPerRound: DECK_VALUES.newPerRound,
  hold: v.exactOptional(DECK_VALUES.hold),
  stages: v.exactOptional(someOf(STAGES)),
  ceiling: v.exactOptional(
    v.object({
      everyDays: DECK_VALUES.everyDays,
      until: DECK_VALUES.day,
      note: v.exactOptional(DECK_VALUES.deckNote),
      extra: v.exactOptional(UNKNOWN_FIELDS),
    }),
  ),
  message: v.exactOptional(DECK_VALUES.message),
  note: v.exactOptional(DECK_VALUES.deckNote),
  extra: v.exactOptional(
    v.object({
      version: v.pipe(v.number(), v.integer(), v.minValue(1)),
      readableFrom: v.pipe(v.number(), v.integer(), v.minValue(1)),
      fields: UNKNOWN_FIELDS,
    }),
  ),
});

/**
 * The deck that a stored row holds. A field that no deck has is left out.
 *
 * Errors: the first fault, its path in the deck's own field names.
 */
export function parseDeck(row: unknown): Result<Deck, DeckFault> {
  const read = readDeckValue(DECK, row);
  if (!read.ok) return read;
  const fault = contradictionIn(read.value);
  return fault === undefined ? read : err(fault);
}
