import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  answersOfRow,
  emptyRow,
  type EnteredRow,
  parseWrittenTime,
  ROW_SHAPES,
  type Tick,
} from "../../../core/paper/entered-ticks";

describe("a time written on paper", () => {
  it.each([
    ["4", 4000],
    ["4.2", 4200],
    [" 4,25 ", 4250],
    ["12.345", 12_345],
    ["1:05", 65_000],
    ["1:05.5", 65_500],
    ["0.5", 500],
    ["90", 90_000],
    ["7 s", 7000],
    ["7sec.", 7000],
    ["10:00", 600_000],
  ])("%j is read", (text, time) => {
    expect(parseWrittenTime(text)).toEqual({ ok: true, value: time });
  });

  it.each([
    "",
    "0",
    "0.0",
    "-3",
    "4.2.1",
    "1:5",
    "1:75",
    "fast",
    "4e3",
    "Ⅳ",
    "4 5",
  ])("%j is none", (text) => {
    expect(parseWrittenTime(text)).toEqual({
      ok: false,
      error: { code: "not-a-time" },
    });
  });

  it("of over ten minutes is refused", () => {
    for (const text of ["600.1", "10:01", "9999"])
      expect(parseWrittenTime(text)).toEqual({
        ok: false,
        error: { code: "too-long" },
      });
  });

  it("is a number of milliseconds up to ten minutes, whatever is pasted", () => {
    fc.assert(
      fc.property(fc.string(), (junk) => {
        const read = parseWrittenTime(junk);
        if (!read.ok) return;
        expect(Number.isInteger(read.value)).toBe(true);
        expect(read.value).toBeGreaterThan(0);
        expect(read.value).toBeLessThanOrEqual(600_000);
      }),
    );
  });
});

describe("a row of a case sheet", () => {
  it("is one untimed answer for each box filled in, on its day", () => {
    const tick = fc.constantFrom<Tick | undefined>(
      "right",
      "missed",
      undefined,
    );
    fc.assert(
      fc.property(fc.array(tick, { minLength: 7, maxLength: 7 }), (ticks) => {
        const read = answersOfRow("cases", { ticks, times: [] });
        expect(read).toEqual({
          ok: true,
          value: ticks.flatMap((verdict, day) =>
            verdict === undefined
              ? []
              : [
                  {
                    place: day,
                    days: day,
                    verdict,
                    asking: "alone",
                    total: undefined,
                  },
                ],
          ),
        });
      }),
    );
  });
});

describe("a row of a practice sheet", () => {
  const answers = (tick: Tick | undefined, ...times: readonly string[]) =>
    answersOfRow("practice", {
      ticks: [tick],
      times: [...times, "", "", ""].slice(0, ROW_SHAPES.practice.times),
    });
  const first = (verdict: Tick, total?: number) => ({
    place: 0,
    days: 0,
    verdict,
    asking: "alone",
    total,
  });

  it("is one answer, timed where its first time is written, and once more for each other time", () => {
    expect(answers("right")).toEqual({ ok: true, value: [first("right")] });
    expect(answers("missed", "9")).toEqual({
      ok: true,
      value: [first("missed", 9000)],
    });
    expect(answers("missed", "9", "", "6,5")).toEqual({
      ok: true,
      value: [
        first("missed", 9000),
        { place: 2, days: 0, verdict: "right", asking: "again", total: 6500 },
      ],
    });
  });

  it("with a time and no mark worked; without either it is nothing", () => {
    expect(answers(undefined, "4")).toEqual({
      ok: true,
      value: [first("right", 4000)],
    });
    for (const kind of ["cases", "practice"] as const)
      expect(answersOfRow(kind, emptyRow(kind))).toEqual({
        ok: true,
        value: [],
      });
  });

  it("says which time is none", () => {
    expect(answers("right", "4", "junk")).toEqual({
      ok: false,
      error: { code: "not-a-time", time: 1 },
    });
    expect(answers("right", "4", "", "11:00")).toEqual({
      ok: false,
      error: { code: "too-long", time: 2 },
    });
  });

  it("makes at most one answer that counts for memory", () => {
    const row: fc.Arbitrary<EnteredRow> = fc.record({
      ticks: fc.tuple(
        fc.constantFrom<Tick | undefined>("right", "missed", undefined),
      ),
      times: fc.array(fc.constantFrom("", "4", "12.5", " "), {
        minLength: 3,
        maxLength: 3,
      }),
    });
    fc.assert(
      fc.property(row, (one) => {
        const read = answersOfRow("practice", one);
        if (!read.ok) throw new Error(read.error.code);
        const alone = read.value.filter(({ asking }) => asking === "alone");
        expect(alone.length).toBe(Math.min(1, read.value.length));
      }),
    );
  });
});
