import { describe, expect, it } from "vitest";
import { areAlike } from "../../../core/cases/alike";
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import { type ClassMember, classGrid } from "../../../core/class/class-grid";
import {
  type Lesson,
  MOST_CASES,
  nextLesson,
} from "../../../core/class/lesson";
import { present } from "../../../core/invariant";
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

  it("goes on with whom it has not served, then with those at which they are stuck worst, then as the deck does", () => {
    const lesson = lessonOf([
      member("Ada", ...slowAnswers("E1", 20, 3)),
      member("Ben", ...misses("E5a", "E4a")),
    ]);
    expect(lesson.cases.map((one) => one.case)).toEqual(["E4a", "E1", "E5a"]);
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
      hold: "up",
      learners: [],
      besides: "C1",
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

  it("says truly why there is none", () => {
    expect(lessonOf([]).kind).toBe("nobody");
    expect(lessonOf([member("Ada")]).kind).toBe("nobody");
    const ada = member("Ada", ago(1, "E1"));
    expect(lessonOf([ada], ["E1"]).kind).toBe("all-met");
    expect(lessonOf([ada], []).kind).toBe("no-cases");
    const most = [
      ...Array.from({ length: 9 }, (_, i) =>
        member(`Learner ${i}`, ago(1, "E1"), ago(1, "E3")),
      ),
      member("Ada", ago(1, "E1")),
    ];
    expect(lessonOf(most, ["E1", "E3"]).kind).toBe("most-met");
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

  it("is told in one hold, and names who holds the cube the other way", () => {
    const down = (id: CaseId) =>
      misses(id).map((review) => ({ ...review, hold: "down" as const }));
    const lesson = lessonOf([
      member("Ada", ...misses("E1")),
      member("Ben", ...misses("E1")),
      member("Cam", ...down("E3")),
      member("Dee", ...[ago(1, "E5a", { hold: "down" })]),
    ]);
    expect(lesson.cases.map(({ hold }) => hold)).toEqual(["up", "up"]);
    expect(lesson).toMatchObject({ hold: "up", otherHold: ["cam"] });
  });

  it("leaves the last layer on top whatever the first layer's hold", () => {
    const id = present(casesOfStage("second-layer-edges")[0], "a case").id;
    const late = [4, 2].map((days) => ({
      ...missedAgo(days, id),
      hold: "down" as const,
    }));
    const lesson = lessonOf(
      [member("Ada", ago(9, "E1"), ...late)],
      [...CASES, id],
    );
    expect(lesson.cases.map(({ hold }) => hold)).toEqual(["down"]);
    expect(lesson.hold).toBeUndefined();
    expect(lesson.otherHold).toEqual([]);
  });
});

/** So many learners who answered these cases well, the day before. */
const knowing = (count: number, ...ids: readonly CaseId[]) =>
  Array.from({ length: count }, (_, i) =>
    member(`Learner ${i}`, ...ids.map((id) => ago(1, id))),
  );
const idsOf = ({ cases }: Lesson) => cases.map((one) => one.case);

describe("a lesson that a coach can teach in twenty minutes", () => {
  it("is a lone learner's own cases", () => {
    const lesson = lessonOf([member("Ada", ...misses("E1", "E3", "E4a"))]);
    expect(idsOf(lesson)).toEqual(["E1", "E3", "E4a"]);
    const next = lessonOf([member("Ada", ago(1, "E1"))]);
    expect(idsOf(next)).toEqual(["E2a", "E3", "E4a", "E5a", "E6a"]);
    expect(next.cases[0]).toMatchObject({ notMet: 1, hold: "up" });
  });

  it("serves both of two, and goes on though only one of them has met what comes", () => {
    const lesson = lessonOf([
      member("Ada", ...misses(...CASES)),
      member("Ben", ...slowAnswers("E6a", 20, 3)),
    ]);
    expect(idsOf(lesson)[0]).toBe("E6a");
    expect(lesson.stuck.toSorted()).toEqual(["ada", "ben"]);
    const next = lessonOf([
      member("Ada", ...CASES.map((id) => ago(1, id))),
      member("Ben", ago(1, "E1")),
    ]);
    expect(next.kind).toBe("next");
    expect(idsOf(next)).toEqual(["E2a", "E3", "E4a", "E5a", "E6a"]);
  });

  it("is for the class of forty and not for the one who is stuck everywhere", () => {
    const ada = member("Ada", ...misses(...CASES));
    const new_ = lessonOf([ada, ...knowing(39, "E1", "E2a")]);
    expect(new_.kind).toBe("next");
    expect(idsOf(new_)).toEqual(["E3", "E4a", "E5a", "E6a", "E7"]);
    expect(new_).toMatchObject({ alone: ["ada"], stuckCases: CASES.length });
    const four = ["Ben", "Cam", "Dee", "Eva"].map((name) =>
      member(name, ...misses("E3")),
    );
    const shared = lessonOf([ada, ...four, ...knowing(35, "E1")]);
    expect(shared.kind).toBe("stuck");
    expect(idsOf(shared)).toEqual(["E3"]);
    expect(shared.alone).toEqual([]);
    expect(shared.stuck).toContain("ada");
  });

  it("teaches what a few are stuck at after all, where nothing is new, and two of one child's cases at most", () => {
    const lesson = lessonOf([
      member("Ada", ...misses(...CASES)),
      ...knowing(39, ...CASES),
    ]);
    expect(lesson.kind).toBe("stuck");
    expect(lesson.cases).toHaveLength(2);
  });

  it("gives each of a small group a seat before one of them gets a second", () => {
    const lesson = lessonOf([
      member("Ada", ...misses("E1", "E2a", "E7")),
      member("Ben", ...misses("E3")),
      member("Cam", ...misses("E4a")),
      member("Dee", ...misses("E5a")),
    ]);
    expect(idsOf(lesson)).toEqual(["E1", "E3", "E4a", "E5a", "E2a"]);
  });

  it("puts nothing new on top where most are stuck, each at something else", () => {
    const lesson = lessonOf(
      CASES.slice(0, 6).map((id, i) => member(`Learner ${i}`, ...misses(id))),
    );
    expect(lesson.kind).toBe("stuck");
    expect(lesson.cases).toHaveLength(MOST_CASES);
    expect(lesson.alone).toHaveLength(1);
  });

  it("is none where all are away: they practise first", () => {
    const lesson = lessonOf(
      ["Ada", "Ben"].map((name) =>
        member(name, missedAgo(12, "E1"), missedAgo(9, "E1")),
      ),
    );
    expect(lesson).toMatchObject({ kind: "nobody", cases: [], alone: [] });
    expect(lesson.away).toHaveLength(2);
  });

  it("does not teach twenty what nineteen know", () => {
    const met = CASES.map((id) => ago(1, id));
    const lesson = lessonOf([
      ...knowing(19, ...CASES),
      member("Ada", ...met.slice(0, -1)),
    ]);
    expect(lesson.kind).toBe("most-met");
  });

  it("is for those who can follow, where half are at the beginning and half at the end", () => {
    const end = casesOfStage("second-layer-edges").map(({ id }) => id);
    const cases = [...CASES, ...end];
    const beginners = knowing(10, "E1", "E2a");
    const later = end.slice(0, 4).map((id) => ago(1, id, { hold: "down" }));
    const ahead = Array.from({ length: 10 }, (_, i) =>
      member(`Ahead ${i}`, ...CASES.map((id) => ago(1, id)), ...later),
    );
    const lesson = lessonOf([...beginners, ...ahead], cases);
    expect(lesson.kind).toBe("next");
    expect(idsOf(lesson)).toEqual(["E3", "E4a", "E5a", "E6a", "E7"]);
    expect(lesson.cases[0]?.notMet).toBe(10);
    // Who began at the end knew the beginning from elsewhere.
    const began = Array.from({ length: 11 }, (_, i) =>
      member(`Ahead ${i}`, ...later),
    );
    expect(idsOf(lessonOf([...beginners, ...began], cases))).toEqual(
      end.slice(4, 9),
    );
  });

  it("finds new cases though no two stand at the same place", () => {
    const all = [...CASES, ...casesOfStage("pairs").map(({ id }) => id)];
    const spread = Array.from({ length: 6 }, (_, i) =>
      member(
        `Learner ${i}`,
        ...all.slice(0, 6 * i + 1).map((id) => ago(1, id)),
      ),
    );
    const lesson = lessonOf(spread, all);
    expect(lesson.kind).toBe("next");
    for (const one of lesson.cases)
      expect(one.notMet).toBeGreaterThanOrEqual(3);
  });

  it("keeps the cases of a stage together, so that one half practises while the other is taught", () => {
    const end = casesOfStage("second-layer-edges").map(({ id }) => id);
    const late = end.slice(0, 2);
    const stuckLate = late.flatMap((id) =>
      [4, 2].map((days) => ({ ...missedAgo(days, id), hold: "down" as const })),
    );
    const lesson = lessonOf(
      [
        member("Ada", ...misses("E1", "E3")),
        member("Ben", ...misses("E1", "E3")),
        ...["Cam", "Dee", "Eva"].map((name) => member(name, ...misses("E1"))),
        ...["Fay", "Gus", "Hal"].map((name) => member(name, ...stuckLate)),
      ],
      [...CASES, ...late],
    );
    expect(idsOf(lesson)).toEqual(["E1", "E3", ...late]);
  });
});
