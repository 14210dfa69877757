/** A lesson as a deck: so that sheets can be printed of it, and learners practise it. */
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

/** The deck that was made of the same lesson before, so that a second press makes no second one. */
export function sameLesson(
  { name, cases, hold }: LessonDeck,
  decks: readonly Deck[],
): Deck | undefined {
  const idsOf = (own: LessonDeck["cases"]) => own.map((one) => one.case).join();
  return decks.find(
    (deck) =>
      deck.name === name &&
      deck.hold === hold &&
      idsOf(deck.cases) === idsOf(cases),
  );
}
