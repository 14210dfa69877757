import { describe, expect, it } from "vitest";
import { parseReview } from "../../../core/memory/review-schema";
import {
  answerItem,
  currentItem,
  type Round,
  startRound,
  withHints,
  withPosition,
} from "../../../core/memory/round";
import { parseRound } from "../../../core/memory/round-schema";
import { dayNumber } from "../../../core/memory/local-day";
import { ms, sampleReview } from "./sample-review";

type Path = readonly (string | number)[];

/** A JSON value with one place changed; the place is left out where `value` is undefined. */
function changed(json: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(json))
    return json.map((item: unknown, i) =>
      i === key ? changed(item, rest, value) : item,
    );
  const all: [string, unknown][] = Object.entries(json ?? {});
  const old = all.find(([name]) => name === key)?.[1];
  const next = changed(old, rest, value);
  const others = all.filter(([name]) => name !== key);
  return Object.fromEntries(
    next === undefined ? others : [...others, [key, next]],
  );
}

function stored(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

describe("a stored review", () => {
  const review = sampleReview(20_000, {
    thinking: ms(1200.5),
    turning: ms(900),
    turns: [{ turn: "F2", at: ms(1200.5) }],
    hints: ["piece"],
    mistook: { piece: "URF", for: "DLF" },
  });

  it("is read back as it was written, times known or not", () => {
    for (const one of [review, sampleReview(20_000)])
      expect(parseReview(stored(one))).toEqual({ ok: true, value: one });
  });

  it("keeps fields that this version does not know", () => {
    const later = { ...review, mood: "good" };
    expect(parseReview(stored(later))).toEqual({ ok: true, value: later });
  });

  it.each<[string, Path, unknown, string]>([
    ["missing-field", ["learner"], undefined, "learner"],
    ["missing-field", ["turns", 0, "at"], undefined, "turns.0.at"],
    ["wrong-type", ["at"], "noon", "at"],
    ["wrong-type", ["turns"], {}, "turns"],
    ["wrong-type", ["thinking"], null, "thinking"],
    ["unknown-value", ["untimed"], false, "untimed"],
    ["unknown-value", ["case"], "E99", "case"],
    ["unknown-value", ["answeredAs"], "E99", "answeredAs"],
    ["unknown-value", ["mistook", "piece"], "RU", "mistook.piece"],
    ["missing-field", ["mistook", "for"], undefined, "mistook.for"],
    ["unknown-value", ["asking"], "never", "asking"],
    ["unknown-value", ["variant", "home"], 4, "variant.home"],
    ["unknown-value", ["hints", 0], "all", "hints.0"],
    ["out-of-range", ["total"], -1, "total"],
    ["out-of-range", ["corrections"], 0.5, "corrections"],
    ["out-of-range", ["target"], 0, "target"],
    ["out-of-range", ["utcOffset"], 2000, "utcOffset"],
    ["malformed-text", ["position"], "U".repeat(53), "position"],
    ["malformed-text", ["position"], "X".repeat(54), "position"],
  ])("is refused as %s at its place", (code, path, value, field) => {
    expect(parseReview(changed(stored(review), path, value))).toEqual({
      ok: false,
      error: { code, field },
    });
  });

  it("is refused as a whole where it is no row at all", () => {
    for (const row of [null, 7, "review"])
      expect(parseReview(row)).toEqual({
        ok: false,
        error: { code: "wrong-type", field: "" },
      });
  });
});

describe("a stored round", () => {
  const planned = (["E1", "E8a"] as const).map((id) => ({
    case: id,
    hold: "up" as const,
    deck: "d",
    target: 8,
    memory: "new" as const,
    times: 1,
  }));
  const start = startRound(planned, {
    id: "r",
    learner: "ada",
    day: dayNumber(20_000),
    seed: -5,
    now: 1,
  });

  function rounds(): Round[] {
    const all = [
      start,
      withPosition(start, "?".repeat(54)),
      withHints(start, ["piece", "home"]),
    ];
    for (let round = start; currentItem(round) !== undefined;) {
      const verdict = round.results.length === 3 ? "missed" : "right";
      const id = `x${round.results.length}`;
      round = answerItem(
        round,
        sampleReview(20_000, { id, verdict }),
        verdict === "missed" ? "missed" : "steady",
      );
      all.push(round);
    }
    return all;
  }

  it("is read back as it was written, at every point of it", () => {
    expect(rounds().length).toBeGreaterThan(12);
    for (const round of rounds())
      expect(parseRound(stored(round))).toEqual({ ok: true, value: round });
  });

  it("is read back with what is asked beyond the schedule", () => {
    const round = startRound(
      planned.map((one) => ({
        ...one,
        asking: "extra" as const,
        answerWay: "which-is-it" as const,
      })),
      { id: "r", learner: "ada", day: dayNumber(20_000), seed: 3, now: 1 },
    );
    expect(round.current?.asking).toBe("extra");
    expect(parseRound(stored(round))).toEqual({ ok: true, value: round });
    expect(
      parseRound(changed(stored(round), ["current", "answerWay"], "find-it")),
    ).toEqual({ ok: false, error: { code: "contradiction", field: "" } });
    // A task of two corners is asked by no choice.
    const tasks = startRound(
      planned.map((one) => ({
        ...one,
        case: "S1" as const,
        answerWay: "which-is-it" as const,
      })),
      { id: "r", learner: "ada", day: dayNumber(20_000), seed: 3, now: 1 },
    );
    expect(parseRound(stored(tasks))).toEqual({
      ok: false,
      error: { code: "contradiction", field: "current" },
    });
    expect(
      parseRound(changed(stored(round), ["current", "answerWay"], "on-screen")),
    ).toEqual({
      ok: false,
      error: { code: "unknown-value", field: "current.answerWay" },
    });
  });

  it.each<[string, Path, unknown, string]>([
    ["missing-field", ["tracks"], undefined, "tracks"],
    ["wrong-type", ["current", "seed"], "7", "current.seed"],
    [
      "unknown-value",
      ["tracks", 1, "steps", 0, "kind"],
      "odd",
      "tracks.1.steps.0.kind",
    ],
    ["out-of-range", ["tracks", 0, "returns"], -1, "tracks.0.returns"],
    ["malformed-text", ["current", "position"], "", "current.position"],
    ["contradiction", ["current", "variant", "placed"], [0, 1], "current"],
    [
      "contradiction",
      ["current", "variant", "placed"],
      [1, 2, 3, 1],
      "current",
    ],
    // Held up, as no slot is: else it would be at odds with its track first.
    [
      "contradiction",
      ["current", "case"],
      "second-layer-edges:DF-F",
      "current",
    ],
    ["contradiction", ["current", "track"], 1, ""],
    ["contradiction", ["current", "track"], 9, ""],
    ["contradiction", ["current", "asking"], "again", ""],
  ])("is refused as %s at its place", (code, path, value, field) => {
    expect(parseRound(changed(stored(start), path, value))).toEqual({
      ok: false,
      error: { code, field },
    });
  });
});
