import { describe, expect, it } from "vitest";
import type { Lesson } from "../../../../../core/class/lesson";
import type { ClassReader } from "../../../../../renderer/places/coach/class/class-words";
import { otherSentences } from "../../../../../renderer/places/coach/class/other-words";

const READER: Pick<ClassReader, "nameOf"> = {
  nameOf: (id) => id.charAt(0).toUpperCase() + id.slice(1),
};

const many = (count: number) =>
  Array.from({ length: count }, (_, i) => `learner ${i}`);

const LESSON = {
  kind: "stuck",
  alone: [],
  otherHold: [],
  away: [],
  notBegun: [],
} as const satisfies Partial<Lesson>;

describe("who needs something else than the lesson", () => {
  it("is told apart from who is stuck: who is away, one with the days", () => {
    const away = [
      { member: "ada", days: 19 },
      { member: "ben", days: 9 },
    ];
    const told = LESSON;
    expect(otherSentences({ ...told, away: away.slice(1) }, READER)).toEqual([
      "Ben has not practised for 9 days.",
    ]);
    expect(
      otherSentences({ ...told, away, notBegun: ["cam", "dee"] }, READER),
    ).toEqual([
      "Ada and Ben have not practised for over a week.",
      "Cam and Dee have not answered anything yet.",
    ]);
    expect(otherSentences(told, READER)).toEqual([]);
  });

  it("is who is stuck where the lesson does not help", () => {
    const told = { ...LESSON, alone: ["ada"] };
    expect(otherSentences(told, READER)).toEqual([
      "Ada is stuck at other cases, and needs a moment alone with you.",
    ]);
    expect(
      otherSentences({ ...told, kind: "next", alone: many(5) }, READER),
    ).toEqual([
      "Learner 0, Learner 1, Learner 2 and 2 more are stuck, and need a moment alone with you.",
    ]);
  });

  it("is who holds the cube the other way up", () => {
    const told = { ...LESSON, hold: "down", otherHold: ["ada"] } as const;
    expect(otherSentences(told, READER)).toEqual([
      "Ada holds the cube the other way up: this lesson and its sheets have the first layer at the bottom.",
    ]);
    expect(otherSentences({ ...told, hold: "up" }, READER)[0]).toContain(
      "on top.",
    );
  });
});
