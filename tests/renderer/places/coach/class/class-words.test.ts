import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../../core/cases/case-ids";
import type { Lesson, LessonCase } from "../../../../../core/class/lesson";
import type { Stuck } from "../../../../../core/class/stuck";
import {
  awaySentences,
  type ClassReader,
  classSize,
  lessonSentence,
  otherReason,
  someNames,
  stuckPhrases,
} from "../../../../../renderer/places/coach/class/class-words";

const READER: ClassReader = {
  nameOf: (id) => id.charAt(0).toUpperCase() + id.slice(1),
  titleOf: (id) => `Case ${id}`,
  shortTitleOf: (id) => id,
};

const MISSES: Stuck = { kind: "misses", missed: 2, days: 3 };

const at = (
  id: CaseId,
  members: readonly string[],
  stuck: Stuck = MISSES,
): LessonCase => ({
  case: id,
  learners: members.map((member) => ({ member, stuck })),
  isBeside: false,
});

function lesson(
  cases: readonly LessonCase[],
  told: Partial<Lesson> = {},
): Lesson {
  return {
    kind: "stuck",
    cases,
    stuckCases: cases.length,
    practising: 24,
    stuck: [],
    away: [],
    notBegun: [],
    ...told,
  };
}

const many = (count: number) =>
  Array.from({ length: count }, (_, i) => `learner ${i}`);

describe("the sentence about a class", () => {
  it.each([
    [
      lesson([at("C1", ["ada"])]),
      "Ada is stuck at “Case C1”. Monday’s lesson: this one case.",
    ],
    [
      lesson([at("C1", ["ada", "ben"]), at("C2", ["cam"])]),
      "Ada and Ben are stuck at “Case C1”; Cam at “Case C2”. Monday’s lesson: these two cases.",
    ],
    [
      lesson([
        at("C1", many(7)),
        at("C2", many(5)),
        at("C3", many(4)),
        at("C4", many(4)),
        at("C5", many(2)),
      ]),
      "Seven of the 24 who practised are stuck at “Case C1”; five at “Case C2”. Monday’s lesson: these and three more.",
    ],
    [
      lesson([at("C1", ["ada"]), { ...at("C2", []), isBeside: true }]),
      "Ada is stuck at “Case C1”. Monday’s lesson: this and one more.",
    ],
    [
      lesson([at("C1", ["ada", "ben"]), at("C2", ["ben", "ada"])]),
      "Ada and Ben are stuck at “Case C1” and at “Case C2”. Monday’s lesson: these two cases.",
    ],
  ])("names children and cases, and stays short", (told, sentence) => {
    expect(lessonSentence(told, READER)).toBe(sentence);
  });

  it("speaks of the cases at which most are stuck, wherever they stand in the lesson", () => {
    const told = lesson([
      at("C1", many(7)),
      { ...at("C2", ["ada"]), isBeside: true },
      at("C3", many(6)),
    ]);
    expect(lessonSentence(told, READER)).toContain("; six at “Case C3”");
    const last = lesson([at("C1", ["ada"]), at("C2", many(7))]);
    expect(lessonSentence(last, READER)).toContain(
      "Seven of the 24 who practised are stuck at “Case C2”; Ada at “Case C1”.",
    );
  });

  it("says that all are stuck where all are, of those who practised", () => {
    const told = lesson([at("C1", many(7))], { practising: 7 });
    expect(lessonSentence(told, READER)).toContain(
      "All seven who practised are stuck at “Case C1”.",
    );
  });

  it("says what else a lesson can be", () => {
    const next = { kind: "next" } as const;
    expect(lessonSentence(lesson([at("C1", [])], next), READER)).toContain(
      "Nobody is stuck.",
    );
    expect(
      lessonSentence(lesson([at("C1", []), at("C2", [])], next), READER),
    ).toContain("the next two cases");
    const none = { kind: "none" } as const;
    expect(lessonSentence(lesson([], none), READER)).toContain(
      "everybody has met",
    );
    expect(
      lessonSentence(lesson([], { ...none, practising: 0 }), READER),
    ).toContain("Nobody has practised this week");
  });
});

describe("who is away", () => {
  it("is told apart from who is stuck, one with the days", () => {
    const away = [
      { member: "ada", days: 19 },
      { member: "ben", days: 9 },
    ];
    expect(
      awaySentences({ away: away.slice(1), notBegun: [] }, READER),
    ).toEqual(["Ben has not practised for 9 days."]);
    expect(awaySentences({ away, notBegun: ["cam", "dee"] }, READER)).toEqual([
      "Ada and Ben have not practised for over a week.",
      "Cam and Dee have not answered anything yet.",
    ]);
    expect(awaySentences({ away: [], notBegun: [] }, READER)).toEqual([]);
  });
});

describe("a case of the lesson", () => {
  it("says who is stuck and how, the way of most first", () => {
    const { learners } = at("C1", ["ada", "ben"]);
    const taken = at("C1", ["cam", "dee", "eva"], {
      ...MISSES,
      takenFor: "C2",
    });
    const slow = at("C1", ["fay"], { kind: "slow", share: 3 });
    const lost = at("C1", ["gus"], { kind: "lost" });
    expect(
      stuckPhrases(
        {
          learners: [
            ...learners,
            ...taken.learners,
            ...slow.learners,
            ...lost.learners,
          ],
        },
        READER,
      ),
    ).toEqual([
      "Cam, Dee and Eva take it for “C2”.",
      "Ada and Ben miss it.",
      "Fay is slow.",
      "Gus knew it, and missed it last time.",
    ]);
  });

  it("says why else it is there", () => {
    const one = at("C1", []);
    expect(otherReason({ kind: "stuck" }, one)).toBeUndefined();
    expect(otherReason({ kind: "stuck" }, { isBeside: true })).toBe(
      "Mixed up with the one before.",
    );
    expect(otherReason({ kind: "next" }, one)).toBe("Most have not met it.");
  });

  it("counts the names that are too many", () => {
    expect(someNames(["a", "b", "c"], 2)).toBe("a, b and c");
    expect(someNames(["a", "b", "c", "d"], 2)).toBe("a, b and 2 more");
  });
});

it("says how many learners and answers there are", () => {
  expect(classSize(1, 1)).toBe("1 learner, 1 answer");
  expect(classSize(24, 9412)).toBe("24 learners, 9,412 answers");
});
