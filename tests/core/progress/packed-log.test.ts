import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HOLDS } from "../../../core/cases/variant";
import { PIECE_NAMES } from "../../../core/cube/pieces";
import { dayNumber } from "../../../core/memory/local-day";
import {
  ANSWER_WAYS,
  ASKINGS,
  HINTS,
  type Review,
} from "../../../core/memory/review";
import { committedTurns } from "../../../core/progress/answer-log";
import {
  logDigest,
  logPacker,
  packLog,
  type PackedAnswer,
  unpacked,
} from "../../../core/progress/packed-log";
import { progressFacts } from "../../../core/progress/progress-facts";
import { parseProgressFacts } from "../../../core/progress/progress-facts-schema";
import { ms, sampleReview } from "../memory/sample-review";

const CASES = ["E1", "C2", "pairs:DFR-R.FR-F"] as const;
const time = fc.double({ min: 0, max: 1e7, noNaN: true }).map(ms);
const one = <T>(values: readonly T[]) => fc.constantFrom(...values);

const answer: fc.Arbitrary<PackedAnswer> = fc
  .record(
    {
      case: one(CASES),
      hold: one(HOLDS),
      localDay: fc.nat({ max: 40_000 }).map(dayNumber),
      asking: one(ASKINGS),
      answerWay: one(ANSWER_WAYS),
      interrupted: fc.boolean(),
      verdict: one<Review["verdict"]>(["right", "missed"]),
      corrections: fc.nat({ max: 300 }),
      hints: fc.subarray([...HINTS]),
      total: time,
      target: fc.integer({ min: 1, max: 60 }),
      turns: fc.array(fc.record({ turn: fc.constant("R"), at: time })),
      answeredAs: one(CASES),
      mistook: fc.record({ piece: one(PIECE_NAMES), for: one(PIECE_NAMES) }),
      thinking: time,
      turning: time,
      untimed: fc.constant(true as const),
    },
    {
      requiredKeys: [
        "case",
        "hold",
        "localDay",
        "asking",
        "answerWay",
        "interrupted",
        "verdict",
        "corrections",
        "hints",
        "total",
        "target",
        "turns",
      ],
    },
  )
  .map((made): PackedAnswer => made);

describe("a packed log", () => {
  it("unpacks to what was packed, the turns counted", () => {
    fc.assert(
      fc.property(fc.array(answer), (log) => {
        const list = unpacked(packLog(log));
        expect(list).toHaveLength(log.length);
        expect(log.map((_, i) => list.at(i))).toEqual(
          log.map(({ turns, ...rest }) => ({
            ...rest,
            committedTurns: committedTurns({ ...rest, turns }),
          })),
        );
        expect(list.at(log.length)).toBeUndefined();
      }),
    );
  });

  it("has a digest that every answer and every field of it changes", () => {
    fc.assert(
      fc.property(
        fc.array(answer, { minLength: 1, maxLength: 9 }),
        answer,
        fc.nat(),
        (log, other, at) => {
          const digest = logDigest(packLog(log));
          expect(logDigest(packLog([...log]))).toBe(digest);
          expect(logDigest(packLog([...log, other]))).not.toBe(digest);
          const i = at % log.length;
          const total = ms((log[i]?.total ?? 0) + 1);
          const changed = log.with(i, { ...sampleReview(1), ...log[i], total });
          expect(logDigest(packLog(changed))).not.toBe(digest);
          const [first] = log;
          const thinking = ms(0);
          const turns = [{ turn: "R", at: ms(1) }];
          const still = log.with(0, {
            ...first,
            thinking,
            turns: [],
          } as PackedAnswer);
          const turned = log.with(0, {
            ...first,
            thinking,
            turns,
          } as PackedAnswer);
          expect(logDigest(packLog(turned))).not.toBe(
            logDigest(packLog(still)),
          );
        },
      ),
    );
  });

  it("takes as many answers as were announced, no more and no fewer", () => {
    const packer = logPacker(1);
    expect(() => packer.finish()).toThrow();
    packer.add(sampleReview(1));
    expect(() => packer.add(sampleReview(1))).toThrow();
    expect(packer.finish().columns.days).toHaveLength(1);
  });
});

describe("the turns of an answer", () => {
  const at = (...times: number[]) =>
    times.map((time) => ({ turn: "R", at: ms(time) }));

  it("count from the first that commits", () => {
    const turns = at(500, 1000, 1400, 1900);
    expect(committedTurns({ thinking: ms(1000), turns })).toBe(3);
    expect(committedTurns({ thinking: ms(500), turns })).toBe(4);
  });

  it("are none where nobody saw them, or when they began", () => {
    expect(committedTurns({ thinking: ms(1000), turns: [] })).toBe(0);
    expect(committedTurns({ turns: at(500, 1000) })).toBe(0);
  });
});

function factsOf(log: readonly PackedAnswer[], today: number) {
  return progressFacts(unpacked(packLog(log)), dayNumber(today));
}

describe("progress facts", () => {
  const log = [
    sampleReview(1, { asking: "shown" }),
    sampleReview(2, { thinking: ms(2000), turning: ms(2500) }),
    sampleReview(4, { verdict: "missed", answeredAs: "E3" }),
    sampleReview(5, {
      answerWay: "find-it",
      asking: "extra",
      verdict: "missed",
      mistook: { piece: "UF", for: "UR" },
    }),
    sampleReview(5, { case: "C1", hold: "down" }),
  ];

  it("tell of answers, not of showings", () => {
    const facts = factsOf(log, 6);
    expect(facts.answers).toBe(4);
    expect(facts.firstDay).toBe(2);
    expect(facts.times.map((times) => `${times.case} ${times.hold}`)).toEqual([
      "E1 up",
      "C1 down",
    ]);
    expect(facts.confusions.pairs).toHaveLength(1);
    expect(facts.confusions.pieces).toHaveLength(1);
    expect(facts.forecast.answers).toBe(1);
    expect(facts.kept).toHaveLength(5);
  });

  it("of a new learner are empty", () => {
    const facts = factsOf([], 6);
    expect(facts).not.toHaveProperty("firstDay");
    expect(facts.kept).toEqual([]);
    expect(facts.allOverDays.periods).toEqual([]);
  });

  it("are read back as they were written, from any log", () => {
    fc.assert(
      fc.property(fc.array(answer, { maxLength: 60 }), (answers) => {
        const sorted = answers.toSorted((a, b) => a.localDay - b.localDay);
        const facts = factsOf(sorted, 40_000);
        expect(parseProgressFacts(structuredClone(facts))).toEqual({
          ok: true,
          value: facts,
        });
      }),
    );
  });

  it("that are not whole are refused, with the place", () => {
    const facts = factsOf(log, 6);
    const { kept, ...rest } = facts;
    expect(kept).not.toEqual([]);
    expect(parseProgressFacts(rest)).toEqual({
      ok: false,
      error: { code: "missing-field", field: "kept" },
    });
    expect(
      parseProgressFacts({
        ...facts,
        confusions: {
          missed: 1,
          pieces: [],
          pairs: [{ ...facts.confusions.pairs[0], answeredAs: "E99" }],
        },
      }),
    ).toEqual({
      ok: false,
      error: { code: "unknown-value", field: "confusions.pairs.0.answeredAs" },
    });
    expect(
      parseProgressFacts({
        ...facts,
        confusions: {
          ...facts.confusions,
          pieces: [{ ...facts.confusions.pieces[0], for: "RU" }],
        },
      }),
    ).toEqual({
      ok: false,
      error: { code: "unknown-value", field: "confusions.pieces.0.for" },
    });
  });
});
