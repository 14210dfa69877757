/**
 * What differs between two versions of a deck: for the preview before a file
 * is taken in, and for telling learners what their coach changed.
 *
 * Case by case and field by field, and not line by line of the file: a case
 * that moved and got a new target is two changes of one case. As few cases as
 * possible count as moved; the longest run that kept its order did not.
 */
import type { CaseId } from "../cases/case-ids";
import type { Deck, DeckCase } from "./deck";
import type { DeckDraft } from "./deck-file-values";

/** The fields of a deck that are compared, in the order in which their changes are told. */
export const DECK_FIELDS = [
  "name",
  "description",
  "message",
  "hold",
  "newPerRound",
  "stages",
  "ceiling",
  "note",
] as const satisfies readonly (keyof Deck)[];

/** The fields of a case that are compared, in the order in which their changes are told. */
export const CASE_FIELDS = [
  "target",
  "way",
  "note",
  "placed",
  "home",
  "lining",
  "pieces",
  "answerWays",
] as const satisfies readonly (keyof DeckCase)[];

/** A field of a deck with its value before and after; undefined: left to the app. */
type FieldChange = {
  [Field in (typeof DECK_FIELDS)[number]]: {
    readonly code: "deck-field";
    readonly field: Field;
    readonly before: Deck[Field] | undefined;
    readonly after: Deck[Field] | undefined;
  };
}[(typeof DECK_FIELDS)[number]];

/** A field of a case with its value before and after; undefined: left to the app. */
type CaseFieldChange = {
  [Field in (typeof CASE_FIELDS)[number]]: {
    readonly code: "case-field";
    readonly case: CaseId;
    readonly field: Field;
    readonly before: DeckCase[Field] | undefined;
    readonly after: DeckCase[Field] | undefined;
  };
}[(typeof CASE_FIELDS)[number]];

/** One difference. Places count from 0. */
export type DeckChange =
  /** There was no such deck before; its cases follow as added. */
  | { readonly code: "deck-added"; readonly name: string }
  | FieldChange
  | { readonly code: "case-added"; readonly case: CaseId; readonly at: number }
  | {
      readonly code: "case-removed";
      readonly case: CaseId;
      readonly from: number;
    }
  | {
      readonly code: "case-moved";
      readonly case: CaseId;
      readonly from: number;
      readonly to: number;
    }
  | CaseFieldChange;

/** Whether two values of a deck say the same, key order aside. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a !== "object" || typeof b !== "object") return a === b;
  if (a === null || b === null) return a === b;
  const fields = new Map(Object.entries(a));
  const others = Object.entries(b);
  return (
    fields.size === others.length &&
    others.every(([key, value]) => isSame(fields.get(key), value))
  );
}

/** The members of a longest rising run of numbers, in order. Source: patience sorting with a link to the pile before. */
function longestRising(numbers: readonly number[]): readonly number[] {
  interface Link {
    readonly value: number;
    readonly before: Link | undefined;
  }
  const tops: Link[] = [];
  for (const value of numbers) {
    const pile = tops.findIndex((top) => top.value >= value);
    const place = pile < 0 ? tops.length : pile;
    tops[place] = { value, before: tops[place - 1] };
  }
  const run: number[] = [];
  for (let link = tops.at(-1); link !== undefined; link = link.before)
    run.unshift(link.value);
  return run;
}

// The compiler does not follow that a field's name and its two values belong
// together once the fields are a list, so that both kinds of change are told it.

function caseFieldChanges(before: DeckCase, after: DeckCase): DeckChange[] {
  return CASE_FIELDS.filter(
    (field) => !isSame(before[field], after[field]),
  ).map(
    (field) =>
      ({
        code: "case-field",
        case: after.case,
        field,
        before: before[field],
        after: after[field],
      }) as CaseFieldChange,
  );
}

function caseChanges(
  before: readonly DeckCase[],
  after: readonly DeckCase[],
): readonly DeckChange[] {
  const placesBefore = new Map(before.map(({ case: id }, i) => [id, i]));
  const kept = after.flatMap(({ case: id }) => placesBefore.get(id) ?? []);
  const unmoved = new Set(longestRising(kept));
  const ids = new Set(after.map(({ case: id }) => id));
  const removed = before.flatMap(({ case: id }, from): DeckChange[] =>
    ids.has(id) ? [] : [{ code: "case-removed", case: id, from }],
  );
  const others = after.flatMap((entry, to): DeckChange[] => {
    const { case: id } = entry;
    const from = placesBefore.get(id);
    const old = from === undefined ? undefined : before[from];
    if (from === undefined || old === undefined)
      return [{ code: "case-added", case: id, at: to }];
    return [
      ...(unmoved.has(from)
        ? []
        : [{ code: "case-moved" as const, case: id, from, to }]),
      ...caseFieldChanges(old, entry),
    ];
  });
  return [...removed, ...others];
}

/**
 * What is different after: first the deck's own fields, then the cases that
 * are gone, then the others in their new order. None where nothing a person
 * can see is different.
 */
export function deckChanges(
  before: DeckDraft | undefined,
  after: DeckDraft,
): readonly DeckChange[] {
  if (before === undefined)
    return [
      { code: "deck-added", name: after.name },
      ...caseChanges([], after.cases),
    ];
  const fields = DECK_FIELDS.filter(
    (field) => !isSame(before[field], after[field]),
  ).map(
    (field) =>
      ({
        code: "deck-field",
        field,
        before: before[field],
        after: after[field],
      }) as FieldChange,
  );
  return [...fields, ...caseChanges(before.cases, after.cases)];
}
