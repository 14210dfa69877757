import type { PlantedFault } from "../planted-fault";

/** Faults in what is asked when, and what an answer tells of it. */
export const MEMORY_FAULTS: readonly PlantedFault[] = [
  {
    name: "a learner's day turns over at midnight instead of three",
    file: "core/memory/local-day.ts",
    find: "DAY_TURNS_OVER_AT = 3;",
    replace: "DAY_TURNS_OVER_AT = 0;",
    tests: ["tests/core/memory/local-day.test.ts"],
  },
  {
    name: "a case comes back a day late",
    file: "core/memory/day-plan.ts",
    find: "due !== undefined && due <= input.today",
    replace: "due !== undefined && due < input.today",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "new cases come although due ones wait",
    file: "core/memory/today.ts",
    find: "waiting.length > 0 ? 0 :",
    replace: "waiting.length > 99 ? 0 :",
    tests: ["tests/core/memory/today.test.ts"],
  },
  {
    name: "two look-alikes are met in one round",
    file: "core/memory/fresh-order.ts",
    find: "if (!chosen.some((other) => areAlike(one.case, other.case)))",
    replace: "if (!chosen.some((other) => areAlike(other.case, other.case)))",
    tests: ["tests/core/memory/fresh-order.test.ts"],
  },
  {
    name: "practice beside the schedule takes its minutes",
    file: "core/memory/time-needed.ts",
    find: 'review.localDay !== day || review.asking === "extra"',
    replace: 'review.localDay !== day || review.asking === "again"',
    tests: ["tests/core/memory/time-needed.test.ts"],
  },
  {
    name: "a second answer on one day counts as another day",
    file: "core/memory/grader.ts",
    find: "(lastDay === undefined || review.localDay > lastDay)",
    replace: "(lastDay === undefined || review.localDay >= lastDay)",
    tests: ["tests/core/memory/grader.test.ts"],
  },
  {
    name: "a missed case comes back after two others",
    file: "core/memory/round-track.ts",
    find: "RETURN_GAP = 3;",
    replace: "RETURN_GAP = 2;",
    tests: ["tests/core/memory/round-track.test.ts"],
  },
  {
    name: "a fit is taken that foretells worse",
    file: "core/memory/fit.ts",
    find: "mean(gains) >= GATE * lossBefore &&",
    replace: "mean(gains) < GATE * lossBefore ||",
    tests: ["tests/core/memory/fit.test.ts"],
  },
  {
    name: "the time of an interrupted answer is held against the learner",
    file: "core/memory/grader.ts",
    find: 'if (grade !== "clean" || review.interrupted)',
    replace: 'if (grade !== "clean")',
    tests: ["tests/core/memory/grader.test.ts"],
  },
  {
    name: "a case with three others placed may be asked with fewer",
    file: "core/memory/variant-opening.ts",
    find: "...(placed === undefined ? {} : { placedCount: placed }),",
    replace: "...(placed === undefined ? {} : { placedCount: 0 }),",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "a class's ceiling goes on after its last day",
    file: "core/memory/due-day.ts",
    find: "asked <= dayOfDate(ceiling.until)",
    replace: "asked <= Infinity + dayOfDate(ceiling.until)",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "a deck's stages come in the column's order",
    file: "core/memory/plan-candidates.ts",
    find: "cases.toSorted((a, b) => rank(a) - rank(b))",
    replace: "cases.toSorted((a, b) => 0 * (rank(a) - rank(b)))",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
];
