import { describe, expect, it } from "vitest";
import type { Deck } from "../../../../core/deck/deck";
import type { LessonCase } from "../../../../core/class/lesson";
import { dayNumber } from "../../../../core/memory/local-day";
import {
  lessonDeck,
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
