import { describe, expect, it } from "vitest";
import type { Deck } from "../../../../core/deck/deck";
import type { LessonCase } from "../../../../core/class/lesson";
import { dayNumber } from "../../../../core/memory/local-day";
import {
  lessonDeck,
  namedApart,
  sameLesson,
} from "../../../../renderer/state/class/lesson-deck";

/** Wednesday, 7 January 1970. */
const WEDNESDAY = dayNumber(6);
const E1: LessonCase = { case: "E1", learners: [] };

describe("the hold of a lesson's deck", () => {
  it("is the lesson's, so that its sheets are drawn so; none where the lesson has none", () => {
    expect(lessonDeck({ cases: [E1] }, [], WEDNESDAY)).not.toHaveProperty(
      "hold",
    );
    const draft = lessonDeck({ cases: [E1], hold: "down" }, [], WEDNESDAY);
    expect(draft.hold).toBe("down");
  });

  it("tells two lessons of the same cases apart", () => {
    const draft = lessonDeck({ cases: [E1], hold: "down" }, [], WEDNESDAY);
    const made: Deck = {
      id: "made",
      description: "",
      newPerRound: 2,
      ...draft,
    };
    expect(sameLesson(draft, [made])).toBe(made);
    expect(sameLesson({ ...draft, hold: "up" }, [made])).toBeUndefined();
  });
});

describe("the name of a lesson's deck", () => {
  const E3: LessonCase = { case: "E3", learners: [] };
  const titleOf = (id: string) => `Case ${id}`;
  const kept = (draft: ReturnType<typeof lessonDeck>): Deck => ({
    id: draft.name,
    description: "",
    newPerRound: 2,
    ...draft,
  });

  it("is its Monday; a second one's says which case the others have not", () => {
    const first = lessonDeck({ cases: [E1] }, [], WEDNESDAY);
    expect(namedApart(first, [], titleOf).name).toBe(
      "Monday’s lesson, 12 January 1970",
    );
    const second = lessonDeck({ cases: [E1, E3] }, [], WEDNESDAY);
    const named = namedApart(second, [kept(first)], titleOf);
    expect(named.name).toBe("Monday’s lesson, 12 January 1970, with Case E3");
    // Pressed again it is found under that name.
    const made = kept(named);
    expect(sameLesson(second, [kept(first), made])).toBe(made);
  });

  it("says the first case where the others have all of them", () => {
    const first = lessonDeck({ cases: [E1, E3] }, [], WEDNESDAY);
    const second = lessonDeck({ cases: [E3] }, [], WEDNESDAY);
    expect(namedApart(second, [kept(first)], titleOf).name).toBe(
      "Monday’s lesson, 12 January 1970, with Case E3",
    );
  });
});
