/** A lesson as a deck: so that sheets can be printed of it, and learners practise it. */
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import type { Lesson } from "../../../core/class/lesson";
import type { Deck, DeckCase } from "../../../core/deck/deck";
import { dayAfter } from "../../../core/memory/local-day";
import type { LocalDay } from "../../../core/memory/review";
import { dateWithYear } from "../../components/time-words";

/** 1 January 1970, day 0, was a Thursday. */
const FIRST_MONDAY = 4;

/** The next Monday; today where it is one. */
export function nextMonday(today: LocalDay): LocalDay {
  return dayAfter(today, (7 + FIRST_MONDAY - (today % 7)) % 7);
}

/** What a deck of a lesson has in it. */
export type LessonDeck = Pick<Deck, "name" | "cases" | "hold">;

/**
 * The lesson's cases as the decks want them, what the deck is called, and how
 * the lesson holds the first layer: sheets are drawn so, and their ticks make
 * memories of that hold, whichever the coach's own is.
 */
export function lessonDeck(
  { cases, hold }: Pick<Lesson, "cases" | "hold">,
  ordered: readonly DeckCase[],
  today: LocalDay,
): LessonDeck {
  return {
    name: `Monday’s lesson, ${dateWithYear(nextMonday(today))}`,
    cases: cases.map(
      ({ case: id }) =>
        ordered.find((one) => one.case === id) ?? {
          case: id,
          target: caseEntry(id).targets.starting,
        },
    ),
    ...(hold === undefined ? {} : { hold }),
  };
}

function idsOf({ cases }: Pick<Deck, "cases">): string {
  return cases.map((one) => one.case).join();
}

/** The decks that were made for the same Monday. */
function ofSameMonday(
  { name }: LessonDeck,
  decks: readonly Deck[],
): readonly Deck[] {
  return decks.filter((deck) => deck.name.startsWith(name));
}

/** The deck that was made of the same lesson before, so that a second press makes no second one. */
export function sameLesson(
  draft: LessonDeck,
  decks: readonly Deck[],
): Deck | undefined {
  return ofSameMonday(draft, decks).find(
    (deck) => deck.hold === draft.hold && idsOf(deck) === idsOf(draft),
  );
}

/**
 * The same lesson, its name told apart from those made before for the same
 * Monday by a case that none of them has, or by its first one:
 * "Monday’s lesson, 30 November 2026, with Top left, flipped".
 */
export function namedApart(
  draft: LessonDeck,
  decks: readonly Deck[],
  titleOf: (id: CaseId) => string,
): LessonDeck {
  const others = ofSameMonday(draft, decks);
  const known = new Set(
    others.flatMap(({ cases }) => cases.map((one) => one.case)),
  );
  const [first] = draft.cases;
  const own = draft.cases.find((one) => !known.has(one.case)) ?? first;
  return others.length === 0 || own === undefined
    ? draft
    : { ...draft, name: `${draft.name}, with ${titleOf(own.case)}` };
}
