import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../../core/cases/case-ids";
import type { Lesson, LessonCase } from "../../../../../core/class/lesson";
import type { Stuck } from "../../../../../core/class/stuck";
import {
  type ClassReader,
  classSize,
  leftOutSentence,
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
    alone: [],
    otherHold: [],
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
      "7 of the 24 who practised are stuck at “Case C1”; 5 at “Case C2”. Monday’s lesson: these and three more.",
    ],
    [
      lesson([at("C1", ["ada"]), { ...at("C2", []), besides: "C1" }]),
      "Ada is stuck at “Case C1”. Monday’s lesson: this and one more.",
    ],
    [
      lesson([at("C1", ["ada", "ben"]), at("C2", ["ben", "ada"])]),
      "Ada and Ben are stuck at “Case C1” and at “Case C2”. Monday’s lesson: these two cases.",
    ],
  ])("names children and cases, and stays short", (told, sentence) => {
    expect(lessonSentence(told, READER)).toBe(sentence);
  });

  it("proposes nothing where the coach has made the lesson another one", () => {
    const stuck = lesson([
      at("C1", ["ada"]),
      { ...at("C2", []), besides: "C1" },
    ]);
    expect(lessonSentence(stuck, READER, true)).toBe(
      "Ada is stuck at “Case C1”.",
    );
    const next = lesson([at("C1", [])], { kind: "next", stuckCases: 0 });
    expect(lessonSentence(next, READER, true)).toBe("Nobody is stuck.");
    const few = lesson([at("C1", [])], { kind: "next", stuckCases: 2 });
    expect(lessonSentence(few, READER, true)).toBe("No case is hard for many.");
  });

  it("speaks of the cases at which most are stuck, wherever they stand in the lesson", () => {
    const told = lesson([
      at("C1", many(7)),
      { ...at("C2", ["ada"]), besides: "C1" },
      at("C3", many(6)),
    ]);
    expect(lessonSentence(told, READER)).toContain("; 6 at “Case C3”");
    const last = lesson([at("C1", ["ada"]), at("C2", many(7))]);
    expect(lessonSentence(last, READER)).toContain(
      "7 of the 24 who practised are stuck at “Case C2”; Ada at “Case C1”.",
    );
  });

  it.each([
    [4, "All four who practised are"],
    [9, "Four of the nine who practised are"],
    [13, "4 of the 13 who practised are"],
  ])("writes both numbers as words or both as figures: of %i", (all, first) => {
    const told = lesson([at("C1", many(4))], { practising: all });
    expect(lessonSentence(told, READER)).toContain(first);
  });

  const newTo = (notMet: number, ...ids: readonly CaseId[]) =>
    ids.map((id) => ({ ...at(id, []), notMet }));

  it.each([
    [
      lesson(newTo(13, "C1", "C2"), { kind: "next", stuckCases: 0 }),
      "Nobody is stuck. Monday’s lesson can be something new: the next two cases that most have not met.",
    ],
    [
      lesson(newTo(12, "C1"), { kind: "next", stuckCases: 0 }),
      "Nobody is stuck. Monday’s lesson can be the next case that some have not met.",
    ],
    [
      lesson(newTo(1, "C1"), { kind: "next", stuckCases: 0, practising: 1 }),
      "Nobody is stuck. Monday’s lesson can be the next case.",
    ],
    [
      lesson(newTo(24, "C1"), { kind: "next", stuckCases: 3 }),
      "No case is hard for many. Monday’s lesson can be the next case that most have not met.",
    ],
    [
      lesson([], { kind: "nobody" }),
      "Nobody has practised this week, so nobody knows who is stuck. A check would tell.",
    ],
    [
      lesson([], { kind: "no-cases" }),
      "There is no case here, so there is nobody stuck and nothing to teach.",
    ],
    [
      lesson([], { kind: "all-met" }),
      "Nobody is stuck, and everybody has met all these cases.",
    ],
    [
      lesson([], { kind: "most-met" }),
      "Nobody is stuck, and most have met each of these cases.",
    ],
  ])(
    "says truly what else a lesson can be, and why there is none",
    (told, sentence) => {
      expect(lessonSentence(told, READER)).toBe(sentence);
    },
  );
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
    const beside = { ...at("C2", []), besides: "C1" } as const;
    const reasonIn = (cases: readonly LessonCase[], one: LessonCase) =>
      otherReason(lesson(cases), one, READER);
    const stuck = at("C1", ["ada"]);
    expect(reasonIn([stuck, beside], stuck)).toBeUndefined();
    expect(reasonIn([stuck, beside], beside)).toBe(
      "Mixed up with the one before.",
    );
    // The coach took the other one out, or put this one in elsewhere.
    expect(reasonIn([beside], beside)).toBe("Mixed up with “C1”.");
    expect(reasonIn([stuck, at("E1", []), beside], beside)).toBe(
      "Mixed up with “C1”.",
    );
    expect(reasonIn([at("E1", [])], at("E1", []))).toBe(
      "Nobody is stuck here.",
    );
  });

  it.each([
    [1, 1, "Not met yet."],
    [20, 20, "Nobody has met it."],
    [10, 20, "10 of 20 have not met it."],
    [1, 3, "One of three has not met it."],
  ])(
    "says for how many it is new: %i of %i",
    (notMet, practising, sentence) => {
      const one = { ...at("C1", []), notMet };
      const next = lesson([one], { kind: "next", practising });
      expect(otherReason(next, one, READER)).toBe(sentence);
    },
  );

  it("counts the names that are too many", () => {
    expect(someNames(["a", "b", "c"], 2)).toBe("a, b and c");
    expect(someNames(["a", "b", "c", "d"], 2)).toBe("a, b and 2 more");
  });
});

it("says how many learners and answers there are", () => {
  expect(classSize(1, 1)).toBe("1 learner, 1 answer");
  expect(classSize(24, 9412)).toBe("24 learners, 9,412 answers");
});

describe("answers that could not be read", () => {
  it("are said by their learners' names, and that the others are there", () => {
    expect(leftOutSentence([], 3)).toBeUndefined();
    expect(leftOutSentence(["Ann"], 0)).toBe(
      "The answers of Ann could not be read.",
    );
    expect(leftOutSentence(["Ann", "Ben"], 3)).toBe(
      "The answers of Ann and Ben could not be read and are left out; all others are here.",
    );
  });
});
