import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEEPEST_LINE, LONGEST_LINE } from "../../../core/backup/backup-line";
import type { Milliseconds } from "../../../core/memory/review";
import type { ResultsBlock } from "../../../core/sharing/results-block";
import { resultsReader } from "../../../core/sharing/results-reader";
import {
  blocksToShare,
  nextMadeAt,
  writeResults,
} from "../../../core/sharing/results-writer";
import { ANN, answersOf } from "../backup/sample-backup";
import { answersBlock, withdrawnBlock } from "./sample-block";

const BLOCK = answersBlock(5, answersOf(ANN, 3));
const [HEADER = "", ...OTHERS] = writeResults(BLOCK).text.trimEnd().split("\n");
const [ANSWER = ""] = OTHERS;

function read(lines: readonly string[], most?: number) {
  const reader = resultsReader(most);
  for (const line of lines) reader.push(`${line}\n`);
  return reader.finish();
}

/** The header with some of its fields changed. */
const header = (changes: object) =>
  JSON.stringify({ ...(JSON.parse(HEADER) as object), ...changes });

/** An answer's line with some of its fields changed. */
const answer = (changes: object) =>
  JSON.stringify({
    answer: {
      ...(JSON.parse(ANSWER) as { answer: object }).answer,
      ...changes,
    },
  });

describe("a block of results", () => {
  it.each<ResultsBlock>([
    BLOCK,
    answersBlock(5, answersOf(ANN, 3), { part: "turns", name: "Owl" }),
    withdrawnBlock(7),
  ])("comes back as it was written ($kind)", (block) => {
    const { text, leftOut } = writeResults(block);
    const reader = resultsReader();
    reader.push(text);
    expect(reader.finish()).toEqual({ ok: true, value: block });
    expect(leftOut).toBe(0);
  });

  it("is the same however its text is cut into pieces, and cut off anywhere is refused", () => {
    const { text } = writeResults(BLOCK);
    fc.assert(
      fc.property(
        fc.array(fc.nat(text.length)),
        fc.nat(text.length - 2),
        (places, short) => {
          const cuts = [0, ...places.sort((a, b) => a - b), text.length];
          const reader = resultsReader();
          cuts.forEach((cut, i) => reader.push(text.slice(cut, cuts[i + 1])));
          expect(reader.finish()).toEqual({ ok: true, value: BLOCK });
          const half = resultsReader();
          half.push(text.slice(0, short));
          const code = short < HEADER.length ? "not-results" : "truncated";
          expect(half.finish()).toMatchObject({ error: { code } });
        },
      ),
      { numRuns: 200 },
    );
  });

  it("keeps fields of a newer version that this one may read, and passes over its new lines", () => {
    const lines = [
      header({ version: 2, colour: "teal" }),
      answer({ mood: "good" }),
      '{"drawing":{}}',
      '{"end":{"answers":1}}',
    ];
    expect(read(lines)).toMatchObject({
      ok: true,
      value: { answers: [{ mood: "good" }] },
    });
  });

  it("cleans a name of what no screen can show", () => {
    const lines = [header({ name: " An\u0000n\u202e\n " }), ...OTHERS];
    expect(read(lines)).toMatchObject({ value: { name: "Ann" } });
  });

  it("stays an error once it was one", () => {
    const reader = resultsReader();
    const wrong = { ok: false, error: { code: "not-results" } };
    expect(reader.push("hello\n")).toEqual(wrong);
    expect(reader.push(`${HEADER}\n`)).toEqual(wrong);
    expect(reader.finish()).toEqual(wrong);
  });
});

describe("a block is refused, with the line,", () => {
  const deep = `{"answer":${"[".repeat(DEEPEST_LINE)}`;
  it.each<[string, readonly string[], object]>([
    [
      "that is another kind of file",
      ['{"turnwise":"backup"}'],
      { code: "not-results" },
    ],
    ["that is empty", [], { code: "not-results" }],
    [
      "of a version that this one cannot read",
      [header({ version: 9, readableFrom: 9, kind: "woven" })],
      { code: "newer-results", version: 9 },
    ],
    ["that has no end", [HEADER, ANSWER], { code: "truncated", line: 3 }],
    [
      "that goes on after its end",
      [HEADER, '{"end":{"answers":0}}', ANSWER],
      { code: "lines-after-end", line: 3 },
    ],
    [
      "with a line of no kind",
      [HEADER, '{"drawing":{}}'],
      { code: "unknown-line", line: 2 },
    ],
    [
      "that is a withdrawal with answers",
      [header({ kind: "withdrawn" }), ANSWER],
      { code: "unknown-line", line: 2 },
    ],
    [
      "that says another number of answers",
      [HEADER, ANSWER, '{"end":{"answers":2}}'],
      { code: "wrong-counts", line: 3, said: 2, found: 1 },
    ],
    [
      "with a line that is no JSON",
      [HEADER, "{"],
      { code: "line-not-json", line: 2 },
    ],
    ["nested too deep", [HEADER, deep], { code: "line-too-deep", line: 2 }],
    [
      "with a line that is too long",
      [HEADER, " ".repeat(LONGEST_LINE + 1)],
      { code: "line-too-long", line: 2 },
    ],
    [
      "with a key that reaches a prototype",
      [HEADER, '{"answer":{"__proto__":{}}}'],
      { code: "forbidden-key", line: 2, field: "answer.__proto__" },
    ],
    [
      "with a wrong answer",
      [HEADER, answer({ case: "E99" })],
      {
        code: "wrong-field",
        line: 2,
        field: "answer.case",
        problem: "unknown-value",
      },
    ],
    [
      "with a wrong end",
      [HEADER, '{"end":{"answers":-1}}'],
      {
        code: "wrong-field",
        line: 2,
        field: "end.answers",
        problem: "out-of-range",
      },
    ],
    [
      "of nobody",
      [header({ learner: "ann" })],
      {
        code: "wrong-field",
        line: 1,
        field: "learner",
        problem: "out-of-range",
      },
    ],
    [
      "whose name is empty once cleaned",
      [header({ name: "\u0007" })],
      { code: "wrong-field", line: 1, field: "name", problem: "out-of-range" },
    ],
    [
      "without a version",
      [header({ version: undefined })],
      {
        code: "wrong-field",
        line: 1,
        field: "version",
        problem: "missing-field",
      },
    ],
  ])("%s", (_what, lines, error) => {
    expect(read(lines)).toEqual({ ok: false, error });
  });

  it("with more answers than one may hold", () => {
    expect(read([HEADER, ...OTHERS], 2)).toEqual({
      ok: false,
      error: { code: "too-many-answers", line: 4 },
    });
  });

  it("with more lines than that which say nothing to this version", () => {
    expect(
      read([header({ version: 2 }), "{}", "{}", "{}", ...OTHERS], 2),
    ).toEqual({ ok: false, error: { code: "too-many-answers", line: 4 } });
  });
});

describe("what is shared", () => {
  it("leaves out an answer that no reader would take, and says how many", () => {
    const odd = { ...answersOf(ANN, 1)[0], id: "" };
    const block = answersBlock(5, [odd as never, ...answersOf(ANN, 2)]);
    const { text, answers, leftOut } = writeResults(block);
    expect([answers, leftOut]).toEqual([["Ann-0", "Ann-1"], 1]);
    expect(read(text.trimEnd().split("\n")).ok).toBe(true);
  });

  it("is divided into blocks that are made one after the other", () => {
    const blocks = blocksToShare(
      {
        learner: ANN.id,
        name: "Ann",
        part: "answers",
        reviews: answersOf(ANN, 5),
        now: 100 as Milliseconds,
        last: 200 as Milliseconds,
      },
      2,
    );
    expect(blocks.map(({ madeAt }) => madeAt)).toEqual([201, 202, 203]);
    expect(
      blocks.flatMap(({ answers }) => answers.map(({ id }) => id)),
    ).toEqual(answersOf(ANN, 5).map(({ id }) => id));
  });

  it("is made later than what was shared before, under any clock", () => {
    fc.assert(
      fc.property(
        fc.nat(),
        fc.option(fc.nat(), { nil: undefined }),
        (now, last) => {
          const next = nextMadeAt(now as Milliseconds, last as Milliseconds);
          expect(next).toBeGreaterThanOrEqual(now);
          if (last !== undefined) expect(next).toBeGreaterThan(last);
        },
      ),
    );
  });
});
