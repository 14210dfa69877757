import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import { dayNumber } from "../../../../core/memory/local-day";
import {
  type ClassFilter,
  eachOnce,
  filteredCases,
  formatClassFilter,
  parseClassFilter,
} from "../../../../renderer/state/class/class-filter";
import {
  lessonDeck,
  nextMonday,
  sameLesson,
} from "../../../../renderer/state/class/lesson-deck";

const FILTERS: readonly ClassFilter[] = [
  { kind: "met" },
  { kind: "deck", deck: "some deck" },
  { kind: "stage", stage: "first-layer-corners" },
];

const MET = new Set<CaseId>(["pairs:DFR-R.FR-F", "C2", "C1", "E1"]);
const ORDER = [
  { case: "C1", target: 5 },
  { case: "C2", target: 5 },
  { case: "C1", target: 9 },
] as const;

describe("which cases of a class are looked at", () => {
  it("is a choice that is read as it was written", () => {
    for (const filter of FILTERS)
      expect(parseClassFilter(formatClassFilter(filter))).toEqual(filter);
    expect(parseClassFilter("stage nowhere")).toEqual({ kind: "met" });
    expect(parseClassFilter("")).toEqual({ kind: "met" });
  });

  it("are those that were answered, in the decks' order and then the solve's", () => {
    expect(filteredCases({ kind: "met" }, MET, [], eachOnce(ORDER))).toEqual([
      "C1",
      "C2",
      "E1",
      "pairs:DFR-R.FR-F",
    ]);
    expect(
      filteredCases(
        { kind: "stage", stage: "first-layer-corners" },
        MET,
        [],
        eachOnce(ORDER),
      ),
    ).toEqual(["C1", "C2"]);
  });

  it("are all of a deck, answered or not; none of one that is gone", () => {
    const deck = present(STARTER_DECKS[0], "there are starter decks");
    const all = deck.cases.map((one) => one.case);
    const of = (id: string) =>
      filteredCases({ kind: "deck", deck: id }, MET, STARTER_DECKS, ORDER);
    expect(of(deck.id)).toEqual(all);
    expect(of("gone")).toEqual([]);
  });

  it("stand once each, as the first deck has them", () => {
    expect(eachOnce(ORDER)).toEqual([
      { case: "C1", target: 5 },
      { case: "C2", target: 5 },
    ]);
  });
});

describe("a lesson's deck", () => {
  // Thursday 26 November 2026.
  const thursday = dayNumber(Date.UTC(2026, 10, 26) / 86_400_000);
  const lesson = {
    cases: (["C2", "E1"] as const).map((id) => ({
      case: id,
      learners: [],
      isBeside: false,
    })),
  };

  it("is for the next Monday, which may be today", () => {
    const monday = dayNumber(thursday + 4);
    for (let day: number = thursday; day <= monday; day++)
      expect(nextMonday(dayNumber(day))).toBe(monday);
    expect(nextMonday(dayNumber(monday + 1))).toBe(monday + 7);
  });

  it("has the lesson's cases as the decks want them, with starting targets where none does", () => {
    expect(lessonDeck(lesson, ORDER, thursday)).toEqual({
      name: "Monday’s lesson, 30 November 2026",
      cases: [
        { case: "C2", target: 5 },
        { case: "E1", target: 8 },
      ],
    });
  });

  it("is made once", () => {
    const draft = lessonDeck(lesson, ORDER, thursday);
    const deck = { id: "a", description: "", newPerRound: 2, ...draft };
    expect(sameLesson(draft, [deck])).toBe(deck);
    expect(sameLesson(draft, [{ ...deck, name: "Another" }])).toBeUndefined();
    expect(
      sameLesson(draft, [{ ...deck, cases: draft.cases.slice(1) }]),
    ).toBeUndefined();
  });
});
