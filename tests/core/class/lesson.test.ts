import { describe, expect, it } from "vitest";
import { areAlike } from "../../../core/cases/alike";
import type { CaseId } from "../../../core/cases/case-ids";
import { type ClassMember, classGrid } from "../../../core/class/class-grid";
import { MOST_CASES, nextLesson } from "../../../core/class/lesson";
import { dayNumber } from "../../../core/memory/local-day";
import { ago, member, missedAgo, slowAnswers, TODAY } from "./made-members";

const CASES: readonly CaseId[] = ["E1", "E2a", "E3", "E4a", "E5a", "E6a", "E7"];

const lessonOf = (members: readonly ClassMember[], cases = CASES) =>
  nextLesson(classGrid(members, cases, dayNumber(TODAY)));

const misses = (...ids: readonly CaseId[]) =>
  [4, 2].flatMap((days) => ids.map((id) => missedAgo(days, id)));

describe("the next lesson", () => {
  it("begins with the case at which most are stuck, however badly one of them is at another", () => {
    const badly = [6, 4, 2].map((days) => missedAgo(days, "E1"));
    const lesson = lessonOf([
      member("Ada", ...badly),
      member("Ben", ...slowAnswers("E3", 20, 3)),
      member("Cam", ...slowAnswers("E3", 20, 3)),
    ]);
    expect(lesson.kind).toBe("stuck");
    expect(lesson.cases.map((one) => one.case)).toEqual(["E3", "E1"]);
    expect(lesson.cases[0]?.learners.map((one) => one.member)).toEqual([
      "ben",
      "cam",
    ]);
    expect(lesson).toMatchObject({ stuckCases: 2, practising: 3 });
    expect(lesson.stuck).toEqual(["ben", "cam", "ada"]);
  });

  it("goes on with those at which they are stuck worst, then as the deck does", () => {
    const lesson = lessonOf([
      member("Ada", ...slowAnswers("E1", 20, 3)),
      member("Ben", ...misses("E5a", "E4a")),
    ]);
    expect(lesson.cases.map((one) => one.case)).toEqual(["E4a", "E5a", "E1"]);
  });

  it("has no more than five cases, and says at how many somebody is stuck", () => {
    const lesson = lessonOf([member("Ada", ...misses(...CASES))]);
    expect(lesson.cases).toHaveLength(MOST_CASES);
    expect(lesson.stuckCases).toBe(CASES.length);
  });

  it("keeps two cases together that are mixed up, the second without anybody stuck at it too", () => {
    const cases: readonly CaseId[] = ["E1", "E2a", "C1", "C2"];
    expect(areAlike("C1", "C2")).toBe(true);
    const lesson = lessonOf(
      [
        member("Ada", missedAgo(4, "C1", "C2"), missedAgo(2, "C1")),
        member("Ben", ...misses("C1", "E1")),
        member("Cam", ...misses("E1", "E2a")),
        member("Dee", ...misses("C1")),
      ],
      cases,
    );
    expect(lesson.cases.map((one) => one.case)).toEqual([
      "C1",
      "C2",
      "E1",
      "E2a",
    ]);
    expect(lesson.cases[1]).toEqual({
      case: "C2",
      learners: [],
      isBeside: true,
    });
  });

  it("gives no seat to what only one in four of those mixes up who are stuck there", () => {
    const others = ["Ben", "Cam", "Dee"].map((name) =>
      member(name, ...misses("C1")),
    );
    const ada = member("Ada", missedAgo(4, "C1", "C2"), missedAgo(2, "C1"));
    const ids = (members: readonly ClassMember[]) =>
      lessonOf(members, ["C1", "C2"]).cases.map((one) => one.case);
    expect(ids([ada, ...others])).toEqual(["C1"]);
    expect(ids([ada, ...others.slice(1)])).toEqual(["C1", "C2"]);
  });

  it("counts children who mix two up, and not how often one of them does", () => {
    const ada = [8, 6, 4, 2].map((days) => missedAgo(days, "C1", "C2"));
    const others = ["Ben", "Cam", "Dee"].map((name) =>
      member(name, ...misses("C1")),
    );
    expect(
      lessonOf([member("Ada", ...ada), ...others], ["C1", "C2"]).cases.map(
        (one) => one.case,
      ),
    ).toEqual(["C1"]);
  });

  it("takes a single mix-up of cases that do not look alike for an accident", () => {
    expect(areAlike("E1", "E7")).toBe(false);
    const once = member("Ada", missedAgo(4, "E1", "E7"), missedAgo(2, "E1"));
    const twice = member(
      "Ben",
      missedAgo(4, "E1", "E7"),
      missedAgo(2, "E1", "E7"),
    );
    expect(lessonOf([once]).cases.map((one) => one.case)).toEqual(["E1"]);
    expect(lessonOf([twice]).cases.map((one) => one.case)).toEqual([
      "E1",
      "E7",
    ]);
  });

  it("does not count who has been away, and tells them apart with who never began", () => {
    const lesson = lessonOf([
      member("Ada", missedAgo(12, "E1"), missedAgo(9, "E1")),
      member("Ben", missedAgo(22, "E1"), missedAgo(19, "E1")),
      member("Cam"),
      member("Dee", ...misses("E2a")),
    ]);
    expect(lesson.cases.map((one) => one.case)).toEqual(["E2a"]);
    expect(lesson.away).toEqual([
      { member: "ben", days: 19 },
      { member: "ada", days: 9 },
    ]);
    expect(lesson.notBegun).toEqual(["cam"]);
    expect(lesson.practising).toBe(1);
  });

  it("is what comes next in the deck where nobody is stuck: the first cases that most have not met", () => {
    const lesson = lessonOf([
      member("Ada", ago(1, "E1"), ago(1, "E2a")),
      member("Ben", ago(1, "E1")),
      member("Cam", ago(1, "E1"), ago(1, "E3")),
    ]);
    expect(lesson.kind).toBe("next");
    expect(lesson.cases.map((one) => one.case)).toEqual([
      "E2a",
      "E3",
      "E4a",
      "E5a",
      "E6a",
    ]);
  });

  it("is none without anybody who practises, or with nothing left", () => {
    expect(lessonOf([]).kind).toBe("none");
    expect(lessonOf([member("Ada")]).kind).toBe("none");
    expect(lessonOf([member("Ada", ago(1, "E1"))], ["E1"]).kind).toBe("none");
  });

  it("is told in the hold of most of those who are stuck", () => {
    const down = misses("E1").map((review) => ({
      ...review,
      hold: "down" as const,
    }));
    const lesson = lessonOf([
      member("Ada", ...down),
      member("Ben", ...down),
      member("Cam", ...misses("E1")),
    ]);
    expect(lesson.cases[0]?.hold).toBe("down");
  });
});
