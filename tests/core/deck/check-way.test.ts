import { describe, expect, it } from "vitest";
import { type CaseId, FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { waysOf } from "../../../core/cases/case-table";
import { startOf } from "../../../core/cases/position";
import { HOLDS } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import { checkWay } from "../../../core/deck/check-way";
import { turnsOfDeckWay } from "../../../core/deck/way-of-deck";
import { isAnswered } from "../../../core/answer/judge";
import { randomPosition } from "../../../core/cases/random-position";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { edge } from "../../../core/cube/pieces";
import { applyTurns } from "../../../core/cube/held-cube";
import { formatTurns } from "../../../core/notation/format";
import { recogniseLastLayer } from "../../../core/cases/recognise-last-layer";
import { invert } from "../../../core/cube/cubies";
import { present } from "../../../core/invariant";
import { randomSource } from "../../../core/random-source";
import { LAST_LAYER_PERMUTATIONS } from "../../reference/published-values";
import { madeOnTop } from "../cases/made-on-top";
import { turnsOf } from "../notation/turns-of";

const SEED = 20260731;

/** The case of placing the last layer that a sequence answers. */
function placedBy(sequence: string): CaseId {
  const effect = madeOnTop(turnsOf(sequence));
  const answered = recogniseLastLayer(invert(effect), "last-layer-placed");
  if (answered === undefined || answered === "answered")
    throw new Error("the sequence answers nothing");
  return answered.id;
}

describe("a typed way", () => {
  it("is taken where it is one of the app's own, in either hold and hand, and is kept held up", () => {
    for (const id of FIRST_LAYER_IDS)
      for (const hold of HOLDS)
        for (const hand of HANDS)
          for (const { turns } of waysOf(id, hold, hand)) {
            const text = formatTurns(turns);
            const checked = checkWay(id, text, randomSource(SEED), {
              hold,
              positions: 40,
            });
            expect(checked, `${id} ${hold} ${text}`).toMatchObject({
              ok: true,
              value: { turns, positions: 40 },
            });
            if (!checked.ok) continue;
            const way = { kind: "turns", turns: checked.value.kept } as const;
            expect(turnsOfDeckWay(id, way, hold, "right")).toEqual(turns);
          }
  });

  it("is kept as the coach wrote it, and played on 200 positions", () => {
    expect(checkWay("C1", " (R' D' R D)5 ", randomSource(SEED))).toMatchObject({
      ok: true,
      value: { kept: "(R' D' R D)5", positions: 200 },
    });
  });

  it("may turn the whole cube", () => {
    // After `y` the front is on the left.
    expect(checkWay("E1", "y L2 y'", randomSource(SEED)).ok).toBe(true);
    expect(checkWay("E1", "y R2 y'", randomSource(SEED)).ok).toBe(false);
    expect(checkWay("E1", "x2 z2 F2", randomSource(SEED)).ok).toBe(false);
  });

  it("is refused with the first position that it does not answer, and with what it loses there", () => {
    // The edge comes home, but the right side stays turned.
    const checked = checkWay("E3", "D R F'", randomSource(SEED));
    expect(checked).toMatchObject({
      ok: false,
      error: {
        code: "does-not-answer",
        verdict: { pieceState: "placed", missing: { edges: [] } },
      },
    });
    if (checked.ok || checked.error.code !== "does-not-answer") return;
    const { position, verdict } = checked.error;
    // With no other home placed there is nothing to lose.
    expect(position.variant.placed).toEqual([3]);
    expect(verdict.lost.edges).toEqual([edge("UR")]);
    expect(isAnswered(position, startOf(position))).toBe(false);
    expect(checkWay("E3", "D R F'", randomSource(SEED), { placed: 0 }).ok).toBe(
      true,
    );
  });

  it("is refused as the way of the case that it answers", () => {
    expect(checkWay("E2a", "F", randomSource(SEED))).toMatchObject({
      ok: false,
      error: {
        code: "does-not-answer",
        verdict: { pieceState: "elsewhere" },
        diagnosis: { leftWay: { index: 0 } },
      },
    });
    expect(checkWay("E4a", "L D L' F2", randomSource(SEED))).toMatchObject({
      error: { diagnosis: { explanation: { case: "E4b" } } },
    });
  });

  // Source: tests/reference/published-values.ts, the 21 sequences that place the last layer.
  it("is told what to turn first where it would answer the last layer after that", () => {
    let refused = 0;
    for (const { sequence } of LAST_LAYER_PERMUTATIONS)
      for (const before of ["", "U ", "y U2 ", "U' y "]) {
        const text = `${before}${sequence}`;
        const id = placedBy(sequence);
        const checked = checkWay(id, text, randomSource(SEED));
        if (checked.ok) continue;
        refused++;
        const { error } = checked;
        if (error.code !== "does-not-answer") throw new Error(error.code);
        const whole = present(error.answersAfter, text).way;
        const again = checkWay(id, whole, randomSource(SEED));
        expect(again.ok, whole).toBe(true);
      }
    // Two of the 21 look alike from every side, and answer however they begin.
    expect(refused).toBeGreaterThan(19 * 2);
    const T = "R U R' U' R' F R2 U' R' U' R U R' F'";
    expect(checkWay(placedBy(T), T, randomSource(SEED))).toMatchObject({
      error: { answersAfter: { lead: turnsOf("U"), way: `U ${T}` } },
    });
  });

  it("is told the turn of the free layer that it lacks in the first layer, in the coach's hold", () => {
    const after = (hold: "up" | "down", text: string) => {
      const checked = checkWay("C1", text, randomSource(SEED), { hold });
      return !checked.ok && checked.error.code === "does-not-answer"
        ? checked.error.answersAfter
        : undefined;
    };
    // C1's way is D' R' D R.
    expect(after("up", "R' D R")).toEqual({
      lead: turnsOf("D'"),
      way: "D' R' D R",
    });
    expect(after("up", "D R' D R")?.way).toBe("D' R' D R");
    expect(after("up", "R' D' R")).toBeUndefined();
    expect(after("down", "L' U L")?.way).toBe("U' L' U L");
  });

  it.each([
    ["R U Q", { code: "way-not-notation", notation: { offset: 4, text: "Q" } }],
    [" ", { code: "way-without-turns" }],
    ["x y2", { code: "way-without-turns" }],
  ])("is refused where it reads %j", (text, error) => {
    expect(checkWay("C1", text, randomSource(SEED))).toMatchObject({
      ok: false,
      error,
    });
  });

  it.each(["S1", "S2"] as const)(
    "is never taken for %s, because what answers one twist misses another",
    (id) => {
      const random = randomSource(SEED);
      const variant = {
        home: 0,
        placed: [],
        turnedAway: 0,
        seenFrom: 0,
      } as const;
      const position = () => randomPosition(random, id, variant, "up");
      const first = position();
      const turns = turnsForPosition(first);
      const answers = Array.from({ length: 200 }, position).filter((other) =>
        isAnswered(other, applyTurns(startOf(other), turns)),
      );
      expect(isAnswered(first, applyTurns(startOf(first), turns))).toBe(true);
      // One twist in nine.
      expect(answers.length).toBeGreaterThan(5);
      expect(answers.length).toBeLessThan(50);
      expect(checkWay(id, formatTurns(turns), random)).toEqual({
        ok: false,
        error: { code: "no-one-way" },
      });
      const way = { kind: "turns", turns: formatTurns(turns) } as const;
      expect(turnsOfDeckWay(id, way, "up", "right")).toBeUndefined();
    },
  );
});

describe("the way of a deck", () => {
  it("is that of its school, with the deck's hand before the learner's", () => {
    const right = turnsOfDeckWay(
      "C1",
      { kind: "school", school: "shortest" },
      "up",
      "right",
    );
    expect(formatTurns(right ?? [])).toBe("F D F'");
    const way = { kind: "school", school: "first", hand: "left" } as const;
    expect(turnsOfDeckWay("C1", way, "down", "right")).toEqual(
      waysOf("C1", "down", "left")[0]?.turns,
    );
  });
});
