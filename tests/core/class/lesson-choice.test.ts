import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import { type ClassMember, classGrid } from "../../../core/class/class-grid";
import { type Lesson, nextLesson } from "../../../core/class/lesson";
import {
  chosenLesson,
  lessonCandidates,
} from "../../../core/class/lesson-choice";
import { dayNumber } from "../../../core/memory/local-day";
import { ago, member, missedAgo, TODAY } from "./made-members";

const CASES: readonly CaseId[] = ["E1", "E2a", "E3", "E4a", "E5a", "E6a", "E7"];

const gridOf = (members: readonly ClassMember[], cases = CASES) =>
  classGrid(members, cases, dayNumber(TODAY));

const misses = (...ids: readonly CaseId[]) =>
  [4, 2].flatMap((days) => ids.map((id) => missedAgo(days, id)));

const idsOf = ({ cases }: Pick<Lesson, "cases">) =>
  cases.map((one) => one.case);

/** The lesson of a class, and what could be put in once a case is taken out. */
function without(grid: ReturnType<typeof gridOf>, out: CaseId) {
  const proposed = nextLesson(grid);
  const left = idsOf(proposed).filter((id) => id !== out);
  const lesson = chosenLesson(grid, proposed, left);
  return {
    proposed,
    lesson,
    candidates: lessonCandidates(grid, lesson, proposed),
  };
}

describe("what could be put into a lesson", () => {
  it("is first where most are stuck, then where those are who have no case yet, each with who", () => {
    const grid = gridOf([
      member("Ada", ...misses("E1", "E2a", "E3", "E4a", "E5a", "E6a")),
      member("Ben", ...misses("E1", "E2a", "E3", "E4a", "E6a")),
      member("Cam", ...misses("E1", "E2a", "E3")),
      member("Dee", ...misses("E7")),
    ]);
    const { proposed, lesson, candidates } = without(grid, "E1");
    expect(idsOf(proposed)).toEqual(["E1", "E2a", "E3", "E4a", "E6a"]);
    expect(idsOf(lesson)).toEqual(["E2a", "E3", "E4a", "E6a"]);
    expect(candidates.map((one) => one.case).slice(0, 3)).toEqual([
      "E1",
      "E7",
      "E5a",
    ]);
    expect(candidates[0]?.learners.map((one) => one.member)).toEqual([
      "ada",
      "ben",
      "cam",
    ]);
  });

  it("has each case once and none of the lesson, and ends with what is new", () => {
    const grid = gridOf([
      member("Ada", ...misses("E1", "E3"), ago(1, "E2a")),
      member("Ben", ...misses("E1"), ago(1, "E2a")),
    ]);
    const { lesson, candidates } = without(grid, "E3");
    const ids = candidates.map((one) => one.case);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => idsOf(lesson).includes(id))).toEqual([]);
    expect(ids).toEqual(["E3", "E4a", "E5a", "E6a", "E7"]);
    expect(candidates[1]).toEqual({ case: "E4a", learners: [], notMet: 2 });
  });

  it("goes on with new cases where the lesson is of new ones, and says who is stuck there already", () => {
    const all = [...CASES, ...casesOfStage("pairs").map(({ id }) => id)];
    const met = ["E1"] as const;
    const class_ = ["Ben", "Cam", "Dee", "Eva", "Fay"].map((name) =>
      member(name, ...met.map((id) => ago(1, id))),
    );
    const grid = gridOf([member("Ada", ...misses("E1", "E7")), ...class_], all);
    const { proposed, candidates } = without(grid, "E3");
    expect(proposed.kind).toBe("next");
    expect(idsOf(proposed)).toEqual(["E2a", "E3", "E4a", "E5a", "E6a"]);
    expect(candidates[0]).toMatchObject({ case: "E3", learners: [] });
    const known = candidates.find((one) => one.case === "E7");
    expect(known?.notMet).toBe(5);
    expect(known?.learners.map((one) => one.member)).toEqual(["ada"]);
    expect(candidates.map((one) => one.case)).toContain("E1");
  });

  it("has what is mixed up with a case of the lesson, also once it was taken out", () => {
    const grid = gridOf(
      [member("Ada", missedAgo(4, "C1", "C2"), missedAgo(2, "C1"))],
      ["C1", "C2"],
    );
    const { proposed, candidates } = without(grid, "C2");
    expect(idsOf(proposed)).toEqual(["C1", "C2"]);
    expect(candidates).toEqual([{ case: "C2", learners: [], besides: "C1" }]);
  });
});

describe("a lesson that its coach changed", () => {
  const down = (id: CaseId) =>
    misses(id).map((review) => ({ ...review, hold: "down" as const }));

  it("is the proposal where nothing was changed", () => {
    const grid = gridOf(
      [
        member("Ada", missedAgo(4, "C1", "C2"), missedAgo(2, "C1")),
        member("Ben", ...misses("E1")),
      ],
      ["E1", "C1", "C2"],
    );
    const proposed = nextLesson(grid);
    expect(chosenLesson(grid, proposed, idsOf(proposed))).toEqual(proposed);
    const fresh = gridOf([member("Ada", ago(1, "E1"))]);
    const next = nextLesson(fresh);
    expect(chosenLesson(fresh, next, idsOf(next))).toEqual(next);
  });

  it("says anew who is stuck elsewhere, and how those hold the cube whom it is for", () => {
    const grid = gridOf([
      member("Ada", ...misses("E1")),
      member("Ben", ...misses("E1")),
      member("Cam", ...down("E3")),
    ]);
    const { proposed, lesson } = without(grid, "E1");
    expect(proposed).toMatchObject({ hold: "up", otherHold: ["cam"] });
    expect(lesson).toMatchObject({
      kind: "stuck",
      hold: "down",
      stuck: ["cam"],
      alone: ["ada", "ben"],
      otherHold: [],
    });
  });

  it("keeps the cases of one stage together, wherever one was put in", () => {
    const late = casesOfStage("second-layer-edges").map(({ id }) => id)[0];
    if (late === undefined) throw new Error("no case");
    const grid = gridOf(
      [member("Ada", ...misses("E1", "E3"), ...down(late))],
      [...CASES, late],
    );
    const proposed = nextLesson(grid);
    const chosen = chosenLesson(grid, proposed, ["E1", late, "E3"]);
    expect(idsOf(chosen)).toEqual(["E1", "E3", late]);
  });
});
