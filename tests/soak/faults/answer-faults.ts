import type { PlantedFault } from "../planted-fault";

/** Faults in how an answer is measured, judged and explained. */
export const ANSWER_FAULTS: readonly PlantedFault[] = [
  {
    name: "a turn taken back is no correction",
    file: "core/answer/turn-trail.ts",
    find: "if (last.isTurning) this.#correct(last, at);",
    replace: "",
    tests: ["tests/core/answer/measure.test.ts"],
  },
  {
    name: "lining up ends the thinking time",
    file: "core/answer/turn-trail.ts",
    find: `if (body.kind === "committing") this.committedAt ??= at;`,
    replace: `if (body.kind !== "whole-cube") this.committedAt ??= at;`,
    tests: ["tests/core/answer/measure.test.ts"],
  },
  {
    name: "a learner who forgot to line up is told that they saw the wrong thing",
    file: "core/answer/diagnose.ts",
    find: "  linedUpWrongly,\n  wrongPieceByWay,",
    replace: "  wrongPieceByWay,",
    tests: [
      "tests/core/answer/explain-beginning.test.ts",
      "tests/core/answer/simulated-mistakes.test.ts",
    ],
  },
  {
    name: "a turn is blamed although the answer is not right without its fault",
    file: "core/answer/explain-one-turn.ts",
    find: "    line.lead === given.split.lead &&\n    lineKey(line.core) === lineKey(given.split.core)",
    replace: "    line.lead === line.lead && given.split.lead >= 0",
    tests: [
      "tests/core/answer/explain-whole-way.test.ts",
      "tests/core/answer/simulated-mistakes.test.ts",
    ],
  },
  {
    name: "a wrong turn is named one place too late",
    file: "core/answer/explain-one-turn.ts",
    find: "if (isSameState(made, beginning)) return index;",
    replace: "if (isSameState(made, beginning)) return index + 1;",
    tests: ["tests/core/answer/explain-one-turn.test.ts"],
  },
  {
    name: "an answer made for the wrong side is taken for one made for its neighbour",
    file: "core/answer/explain-whole-way.ts",
    find: "asIf: homeAfter(given.position.variant.home, steps),",
    replace: "asIf: homeAfter(given.position.variant.home, -steps),",
    tests: ["tests/core/answer/explain-whole-way.test.ts"],
  },
  {
    name: "a slip of the hand is logged as a confusion of cases",
    file: "renderer/state/practise/reviewed-answer.ts",
    find: "answeredAs = explanation && confusedWith(explanation);",
    replace:
      "answeredAs =\n    explanation && (confusedWith(explanation) ?? item.case);",
    tests: ["tests/renderer/practise/stored-answer.test.ts"],
  },
];
