import fc from "fast-check";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import { mostPlaced } from "../../../core/cases/constraint";
import { FIRST_LAYER_STAGES } from "../../../core/cases/stage";
import { HANDS, WAY_SCHOOLS } from "../../../core/cases/way";
import type { Deck, DeckCase, DeckWay } from "../../../core/deck/deck";
import { hasNoOneWay } from "../../../core/deck/deck-contradiction";
import { DECK_LIMITS } from "../../../core/deck/deck-values";
import { TURNED_WAYS } from "../../../core/memory/review";

const PIECES = [
  ...Array.from("abc ÄßéЖ中🙂\"'\\/<>&{}[],:#=+-@"),
  "</script>",
  "👩‍🏫",
  "__proto__",
];

/** A text of one line, or of several, up to `most` UTF-16 units. */
function arbitraryText(most: number, breaks = false): fc.Arbitrary<string> {
  const pieces = breaks ? [...PIECES, "\n"] : PIECES;
  return fc
    .array(fc.constantFrom(...pieces), { maxLength: 30 })
    .map((parts) => parts.join(""))
    .filter((text) => text.length <= most);
}

const NAME = arbitraryText(DECK_LIMITS.name)
  .map((text) => text.trim())
  .filter((text) => text !== "");

const TURNS = fc.constantFrom("F2", "(R' D' R D)5", "y D L D' L'", "r’ M2 F");

function arbitraryWay(id: CaseId): fc.Arbitrary<DeckWay> {
  const school = fc.record(
    {
      kind: fc.constant("school" as const),
      school: fc.constantFrom(...WAY_SCHOOLS),
      hand: fc.constantFrom(...HANDS),
    },
    { requiredKeys: ["kind", "school"] },
  );
  const turns = fc.record({
    kind: fc.constant("turns" as const),
    turns: TURNS,
  });
  return hasNoOneWay(id) ? school : fc.oneof(school, turns);
}

function arbitraryCase(id: CaseId): fc.Arbitrary<DeckCase> {
  const counts = ([0, 1, 2, 3] as const).filter((n) => n <= mostPlaced(id));
  return fc.record(
    {
      case: fc.constant(id),
      target: fc.oneof(
        fc.integer({ min: 1, max: 600 }),
        fc.double({ min: 0.5, max: 600, noNaN: true }),
      ),
      way: arbitraryWay(id),
      note: arbitraryText(DECK_LIMITS.caseNote, true),
      placed: fc.constantFrom(...counts),
      home: fc.constantFrom("front" as const, "anywhere" as const),
      lining: fc.constantFrom("lined-up" as const, "turned-away" as const),
      pieces: fc.constantFrom("marked" as const, "unmarked" as const),
      answerWays: fc.subarray([...TURNED_WAYS], { minLength: 1 }),
    },
    { requiredKeys: ["case", "target"] },
  );
}

const DAY = fc
  .date({
    min: new Date("2026-01-01T00:00:00Z"),
    max: new Date("2099-12-31T00:00:00Z"),
    noInvalidDate: true,
  })
  .map((date) => date.toISOString().slice(0, 10));

const CASES = fc
  .shuffledSubarray([...FIRST_LAYER_IDS], { maxLength: 8 })
  .chain((ids) => fc.tuple(...ids.map(arbitraryCase)));

/** Any deck that a coach may make. */
export const ARBITRARY_DECK: fc.Arbitrary<Deck> = fc.record(
  {
    id: fc.uuid(),
    name: NAME,
    description: arbitraryText(DECK_LIMITS.description),
    cases: CASES,
    newPerRound: fc.integer({ min: 0, max: 12 }),
    hold: fc.constantFrom("up" as const, "down" as const),
    stages: fc.shuffledSubarray([...FIRST_LAYER_STAGES], { minLength: 1 }),
    ceiling: fc.record(
      {
        everyDays: fc.integer({ min: 1, max: 60 }),
        until: DAY,
        note: arbitraryText(DECK_LIMITS.deckNote, true),
      },
      { requiredKeys: ["everyDays", "until"] },
    ),
    message: arbitraryText(DECK_LIMITS.message, true),
    note: arbitraryText(DECK_LIMITS.deckNote, true),
  },
  { requiredKeys: ["id", "name", "description", "cases", "newPerRound"] },
);
