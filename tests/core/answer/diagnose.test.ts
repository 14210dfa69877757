import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { caseEntry, waysOf } from "../../../core/cases/case-table";
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { HOLDS, type Variant } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import {
  lineUpTurns,
  turnsForPosition,
  wayForPosition,
} from "../../../core/cases/way-for-position";
import { formatTurns } from "../../../core/notation/format";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";

const SEED = 17;
const SINGLE = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

function positionOf(
  id: Position["case"],
  variant: Partial<Variant> = {},
): Position {
  const random = randomSource(SEED);
  const drawn = randomVariant(random, id, { homes: [0] });
  return randomPosition(random, id, { ...drawn, ...variant }, "up");
}

function diagnosed(
  id: Position["case"],
  played: string,
  way: string,
  variant: Partial<Variant> = {},
) {
  const found = diagnose(
    positionOf(id, variant),
    turnsOf(played),
    turnsOf(way),
  );
  const { leftWay } = found;
  return {
    ...(leftWay === undefined
      ? {}
      : {
          index: leftWay.index,
          played: leftWay.played && formatTurns([leftWay.played]),
          wanted: leftWay.wanted && formatTurns([leftWay.wanted]),
        }),
    answeredAs: found.answeredAs,
  };
}

describe("where an answer left the way", () => {
  // Source: look/practise-miss-light.png.
  it("is the first turn where a case is answered as its twin", () => {
    expect(diagnosed("C2", "D' R' D R", "R' D' R")).toEqual({
      index: 0,
      played: "D'",
      wanted: "R'",
      answeredAs: { case: "C1", home: 0 },
    });
  });

  it("is counted in the turns that were made, whole-cube turns and taken-back ones among them", () => {
    expect(diagnosed("C1", "y L L' y' D' R' D' R", "D' R' D R")).toMatchObject({
      index: 6,
      played: "D'",
      wanted: "D",
    });
  });

  it("is the end where the answer stopped short, and has nothing wanted where it went on", () => {
    expect(diagnosed("C1", "D' R' D", "D' R' D R")).toMatchObject({
      index: 3,
      played: undefined,
      wanted: "R",
    });
    expect(diagnosed("C1", "D' R' D R L", "D' R' D R")).toMatchObject({
      index: 4,
      played: "L",
      wanted: undefined,
    });
    expect(diagnosed("C1", "", "D' R' D R")).toMatchObject({
      index: 0,
      wanted: "D'",
    });
  });

  it("is nowhere for the way itself, however it is written and held", () => {
    for (const played of [
      "D' R' D R",
      "D D2 R' D R",
      "D' R2 R D R",
      "y D' F' D F",
      "x2 U' R' U R",
      // Rw = x L turned back: L' as seen, the right side against its centres.
      "D' Lw' x' D R",
      "D' R' Uw y' R",
      // E' = y U' D, so that U and y' leave the bottom turned.
      "D' R' E' U y' R",
    ])
      expect(diagnosed("C1", played, "D' R' D R"), played).toEqual({
        answeredAs: undefined,
      });
  });

  it("says what was wanted as the learner then held the cube", () => {
    expect(diagnosed("C1", "y D' F' D'", "D' R' D R")).toMatchObject({
      index: 3,
      played: "D'",
      wanted: "D",
    });
    expect(diagnosed("C1", "y D' L'", "D' R' D R")).toMatchObject({
      index: 2,
      played: "L'",
      wanted: "F'",
    });
  });

  it("is counted along another way of the case that the answer kept to for longer", () => {
    const way = "y D L D' L'";
    const found = diagnose(positionOf("C2"), turnsOf("R' D' R'"), turnsOf(way));
    expect(found.leftWay).toMatchObject({ index: 2, way: turnsOf("R' D' R") });
    expect(
      diagnose(positionOf("C2"), turnsOf("D'"), turnsOf(way)).leftWay,
    ).toMatchObject({ index: 0, way: turnsOf(way) });
  });

  it("follows two corners in each other's homes through both their ways", () => {
    const position = positionOf("S1");
    const way = turnsForPosition(position);
    expect(diagnose(position, way, way)).toEqual({});
    const half = way.slice(0, 4);
    expect(diagnose(position, half, way).leftWay).toMatchObject({ index: 4 });
  });
});

describe("an answer that is the whole way of something else", () => {
  it("is taken for the right case when only the lining up was left out", () => {
    expect(
      diagnosed("C1", "D' R' D R", "D D' R' D R", { turnedAway: 3 }),
    ).toMatchObject({ answeredAs: { case: "C1", home: 0, misaligned: 3 } });
  });

  it("is taken for the right case at a neighbour's home when it was lined up for that", () => {
    // From home 3, at the top back right, the whole cube turned by y.
    expect(diagnosed("C1", "y D D' R' D R", "D' R' D R")).toMatchObject({
      answeredAs: { case: "C1", home: 3 },
    });
  });

  it("is not guessed at where only a part of a way was played, or nothing", () => {
    expect(diagnosed("C2", "D' R' D", "R' D' R").answeredAs).toBeUndefined();
    expect(diagnosed("C2", "", "R' D' R").answeredAs).toBeUndefined();
    expect(diagnosed("C2", "L2 B", "R' D' R").answeredAs).toBeUndefined();
  });

  it("is taken for the case whose way was played after lining up, for every pair of cases of a stage and either hand", () => {
    const random = randomSource(SEED);
    let pairs = 0;
    for (const [i, id] of SINGLE.entries()) {
      for (const hand of HANDS) {
        const hold = HOLDS[(i + HANDS.indexOf(hand)) % 2] ?? "up";
        const variant = randomVariant(random, id, {
          turnedAway: true,
          seenFromAnywhere: true,
        });
        const position = randomPosition(random, id, variant, hold);
        const way = turnsForPosition(position);
        const others = SINGLE.filter(
          (other) =>
            other !== id && caseEntry(other).stage === caseEntry(id).stage,
        );
        for (const other of others) {
          const [first] = waysOf(other, hold, hand);
          if (first === undefined) continue;
          const played = [...lineUpTurns(position), ...first.turns];
          const found = diagnose(position, played, way);
          expect(found.answeredAs, `${id} as ${other}`).toEqual({
            case: other,
            home: variant.home,
          });
          expect(found.leftWay, `${id} as ${other}`).toBeDefined();
          pairs++;
        }
      }
    }
    // 17 × 16 edges and 14 × 13 corners, two hands.
    expect(pairs).toBe((17 * 16 + 14 * 13) * 2);
  });

  it("is never claimed of the way of the case itself", () => {
    const random = randomSource(SEED);
    for (const id of SINGLE) {
      const variant = randomVariant(random, id, { turnedAway: true });
      const position = randomPosition(random, id, variant, "up");
      for (const way of waysOf(id, "up").filter((w) => w.school === "first")) {
        const played = wayForPosition(position, way);
        expect(diagnose(position, played, played)).toEqual({});
      }
    }
  });
});
