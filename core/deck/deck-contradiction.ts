/** What a deck says that cannot be, though each of its values alone is well written. */
import { mostPlaced } from "../cases/constraint";
import { type CaseId, CORNER_SWAP_IDS } from "../cases/case-ids";
import type { Turn } from "../cube/turns";
import { isWholeCubeTurn } from "../cube/turns";
import { type NotationError, parseTurns } from "../notation/parse";
import { err, type Result } from "../result";
import type { Deck, DeckCase } from "./deck";
import { type DeckFault, shortText } from "./deck-fault";

/** Whether no one sequence answers a case: two corners in each other's homes, either twisted in any way. */
export function hasNoOneWay(id: CaseId): boolean {
  return CORNER_SWAP_IDS.some((swap) => swap === id);
}

/** Why a typed way cannot be a way of its case, before it is played. */
export type TypedWayError =
  | { readonly code: "no-one-way" }
  | { readonly code: "way-without-turns" }
  | { readonly code: "way-not-notation"; readonly notation: NotationError };

/**
 * The turns of a way that a coach typed for a case.
 *
 * Errors: `no-one-way`, `way-not-notation` with the place in the text,
 *         `way-without-turns` where at most the whole cube is turned.
 */
export function readTypedWay(
  id: CaseId,
  text: string,
): Result<readonly Turn[], TypedWayError> {
  if (hasNoOneWay(id)) return err({ code: "no-one-way" });
  const turns = parseTurns(text);
  if (!turns.ok)
    return err({ code: "way-not-notation", notation: turns.error });
  return turns.value.every(isWholeCubeTurn)
    ? err({ code: "way-without-turns" })
    : turns;
}

/** Whether the calendar has a day written YYYY-MM-DD. */
export function isCalendarDay(day: string): boolean {
  const at = Date.parse(`${day}T00:00:00Z`);
  // 30 February is read as 2 March by some engines and refused by others.
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(day);
}

function faultOfCase(
  { case: id, placed, way }: DeckCase,
  place: number,
): DeckFault | undefined {
  const most = mostPlaced(id);
  if (placed !== undefined && placed > most)
    return {
      code: "too-many-placed",
      path: ["cases", place, "placed"],
      expected: { kind: "number", least: 0, most, whole: true },
      found: `${placed}`,
    };
  if (way?.kind !== "turns") return undefined;
  const read = readTypedWay(id, way.turns);
  if (read.ok) return undefined;
  const found = shortText(way.turns) ?? "";
  return { ...read.error, path: ["cases", place, "way"], found };
}

/** The first contradiction in a deck, by the order in which it is written; its path has the deck's own field names. */
export function contradictionIn(
  deck: Pick<Deck, "cases" | "ceiling">,
): DeckFault | undefined {
  const { cases, ceiling } = deck;
  if (ceiling !== undefined && !isCalendarDay(ceiling.until))
    return {
      code: "impossible-day",
      path: ["ceiling", "until"],
      found: ceiling.until,
    };
  const seen = new Set<CaseId>();
  for (const [place, deckCase] of cases.entries()) {
    if (seen.has(deckCase.case))
      return {
        code: "duplicate-case",
        path: ["cases", place, "case"],
        found: deckCase.case,
      };
    seen.add(deckCase.case);
    const fault = faultOfCase(deckCase, place);
    if (fault !== undefined) return fault;
  }
  return undefined;
}
