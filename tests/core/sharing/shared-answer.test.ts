import { describe, expect, it } from "vitest";
import { gradeLog } from "../../../core/memory/grader";
import {
  ANSWER_WAYS,
  ASKINGS,
  type Milliseconds,
} from "../../../core/memory/review";
import {
  answerLineOf,
  parseAnswerLine,
} from "../../../core/sharing/shared-answer";
import { sampleReview } from "../memory/sample-review";

const TURNS = [{ turn: "F2", at: 900 as Milliseconds }];

describe("what is shared of an answer", () => {
  it("is enough to grade it as its own machine does", () => {
    const log = Array.from({ length: 12 }, (_, i) =>
      sampleReview(20_000 + i, { corrections: i % 3 === 2 ? 1 : 0 }),
    );
    const heard = log.map((review) => ({
      ...answerLineOf(review, "answers"),
      learner: review.learner,
    }));
    const worth = (graded: ReturnType<typeof gradeLog>) =>
      graded.map(({ outcome, recall }) => ({ outcome, recall }));
    expect(gradeLog(heard).map(({ outcome }) => outcome)).toEqual(
      gradeLog(log).map(({ outcome }) => outcome),
    );
    expect(
      worth(gradeLog(log)).some(({ outcome }) => outcome !== "steady"),
    ).toBe(true);
  });

  it("names its fields one by one, so that nothing else goes along", () => {
    const review = {
      ...sampleReview(20_000, { turns: TURNS }),
      mood: "secret",
    };
    const line = answerLineOf(review, "answers");
    for (const field of [
      "mood",
      "turns",
      "position",
      "learner",
      "deck",
      "firstColour",
      "variant",
    ])
      expect(line).not.toHaveProperty(field);
    expect(line).toMatchObject({ case: "E1", verdict: "right", total: 5000 });
  });

  it("has the turns and the position only where these are shared too", () => {
    const review = sampleReview(20_000, { turns: TURNS });
    expect(answerLineOf(review, "turns")).toMatchObject({
      turns: TURNS,
      position: review.position,
    });
  });

  it("comes back as it went, for every way and asking", () => {
    for (const answerWay of ANSWER_WAYS)
      for (const asking of ASKINGS)
        for (const part of ["answers", "turns"] as const) {
          const review = {
            ...sampleReview(20_000, {
              answerWay,
              asking,
              verdict: "missed",
              answeredAs: "E2a",
              mistook: { piece: "UF", for: "UR" },
              turning: 100 as Milliseconds,
              hints: ["piece"],
            }),
            untimed: true as const,
          };
          const line = answerLineOf(review, part);
          const sent = JSON.parse(JSON.stringify(line)) as unknown;
          expect(parseAnswerLine(sent)).toEqual({ ok: true, value: line });
        }
  });

  it("is refused with the field that is wrong", () => {
    const line = answerLineOf(sampleReview(20_000), "turns");
    const wrong: readonly (readonly [object, string, string])[] = [
      [{ id: "" }, "id", "out-of-range"],
      [{ id: "x".repeat(201) }, "id", "out-of-range"],
      [{ case: "no such case" }, "case", "unknown-value"],
      [{ at: -1 }, "at", "out-of-range"],
      [{ at: "now" }, "at", "wrong-type"],
      [{ total: undefined }, "total", "missing-field"],
      [{ untimed: false }, "untimed", "unknown-value"],
      [{ position: "?" }, "position", "malformed-text"],
      [
        { turns: Array.from({ length: 3601 }, () => TURNS[0]) },
        "turns",
        "out-of-range",
      ],
    ];
    for (const [change, field, code] of wrong)
      expect(parseAnswerLine({ ...line, ...change })).toEqual({
        ok: false,
        error: { code, field },
      });
  });
});
