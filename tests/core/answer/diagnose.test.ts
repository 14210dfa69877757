import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { confusedWith } from "../../../core/answer/explanation";
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { caseEntry, waysOf } from "../../../core/cases/case-table";
import { holdFor } from "../../../core/cases/hold-in-stage";
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import {
  HOLDS,
  type HomeIndex,
  type Variant,
} from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import {
  lineUpTurns,
  turnsForPosition,
  wayForPosition,
} from "../../../core/cases/way-for-position";
import { corner, edge } from "../../../core/cube/pieces";
import { rotationAbout } from "../../../core/cube/symmetries";
import type { Turn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import { formatTurns } from "../../../core/notation/format";
import { turnsThroughSymmetry } from "../../../core/notation/mirror";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";
import { findingOf } from "./judged-explanation";
import { tableOfWays } from "./table-of-ways";

const SEED = 17;
const SINGLE = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

function positionOf(
  id: Position["case"],
  variant: Partial<Variant> = {},
): Position {
  const random = randomSource(SEED);
  const drawn = randomVariant(random, id, { homes: [0] });
  const hold = holdFor(caseEntry(id).stage, "up");
  return randomPosition(random, id, { ...drawn, ...variant }, hold);
}

function leftWay(id: Position["case"], played: string, way: string) {
  const found = diagnose(positionOf(id), turnsOf(played), turnsOf(way));
  const left = found.leftWay;
  return (
    left && {
      index: left.index,
      played: left.played && formatTurns([left.played]),
      wanted: left.wanted && formatTurns([left.wanted]),
    }
  );
}

/** The explanation of turns on a position whose way is the taught one. */
function explained(position: Position, played: string) {
  const way = turnsForPosition(position);
  return diagnose(position, turnsOf(played), way).explanation;
}

describe("where an answer left the way", () => {
  // Source: look/practise-miss-light.png.
  it("is the first turn where a case is answered as its twin", () => {
    expect(leftWay("C2", "D' R' D R", "R' D' R")).toEqual({
      index: 0,
      played: "D'",
      wanted: "R'",
    });
  });

  it("is counted in the turns that were made, whole-cube turns and taken-back ones among them", () => {
    expect(leftWay("C1", "y L L' y' D' R' D' R", "D' R' D R")).toMatchObject({
      index: 6,
      played: "D'",
      wanted: "D",
    });
  });

  it("is the end where the answer stopped short, and has nothing wanted where it went on", () => {
    expect(leftWay("C1", "D' R' D", "D' R' D R")).toMatchObject({
      index: 3,
      played: undefined,
      wanted: "R",
    });
    expect(leftWay("C1", "D' R' D R L", "D' R' D R")).toMatchObject({
      index: 4,
      played: "L",
      wanted: undefined,
    });
    expect(leftWay("C1", "", "D' R' D R")).toMatchObject({
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
      expect(
        diagnose(positionOf("C1"), turnsOf(played), turnsOf("D' R' D R")),
        played,
      ).toEqual({});
  });

  it("says what was wanted as the learner then held the cube", () => {
    expect(leftWay("C1", "y D' F' D'", "D' R' D R")).toMatchObject({
      index: 3,
      played: "D'",
      wanted: "D",
    });
    expect(leftWay("C1", "y D' L'", "D' R' D R")).toMatchObject({
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

describe("the explanation of an answer", () => {
  it("is nothing where it is right, by any way", () => {
    expect(explained(positionOf("C3"), "F D2 F' D' F D F'")).toBeUndefined();
    expect(explained(positionOf("C1"), "F D F' D2 y")).toBeUndefined();
  });

  it("is what is missing where a known way was begun", () => {
    expect(explained(positionOf("C1"), "D' R' D")).toEqual({
      kind: "stopped-early",
      missing: turnsOf("R"),
    });
    expect(explained(positionOf("C1"), "y D'")).toEqual({
      kind: "stopped-early",
      missing: turnsOf("F' D F"),
    });
    // With no other edge home the back may be turned along, before or after.
    const alone = positionOf("E1", { placed: [], turnedAway: 0, seenFrom: 0 });
    expect(diagnose(alone, turnsOf("B"), turnsOf("F2 B"))).toMatchObject({
      leftWay: { index: 1, wanted: turnsOf("F2")[0] },
      explanation: { kind: "stopped-early", missing: turnsOf("F2") },
    });
  });

  it("is the last turn and what is missing after it where a known way was begun but for that", () => {
    // R' D2 R D R' D' R, the fourth turn too far.
    expect(explained(positionOf("C3"), "R' D2 R D2")).toEqual({
      kind: "stopped-early",
      missing: turnsOf("R' D' R"),
      wrong: {
        slip: "amount",
        index: 3,
        made: turnsOf("D2")[0],
        wanted: turnsOf("D")[0],
      },
    });
    // The usual eight turns of an edge that goes to the right.
    const id = "second-layer-edges:DR-D";
    const variant = {
      home: 0,
      placed: [],
      turnedAway: 0,
      seenFrom: 0,
    } as const;
    const position = randomPosition(randomSource(SEED), id, variant, "down");
    const way = turnsOf("U R U' R' U' F' U F");
    expect(diagnose(position, way, way)).toEqual({});
    expect(diagnose(position, turnsOf("U R U"), way)).toMatchObject({
      leftWay: {
        index: 2,
        played: turnsOf("U")[0],
        wanted: turnsOf("U'")[0],
      },
      explanation: {
        kind: "stopped-early",
        missing: turnsOf("R' U' F' U F"),
        wrong: { slip: "reversed", index: 2 },
      },
    });
    expect(diagnose(position, turnsOf("U R U2 U'"), way)).toMatchObject({
      explanation: { wrong: { slip: "reversed", index: 2 } },
    });
    // What comes after is then turned from how the cube is held.
    expect(diagnose(position, turnsOf("U R U y"), way)).toMatchObject({
      explanation: { missing: turnsOf("F' U' L' U L") },
    });
    // Before anything commits the last turn shows no way.
    expect(diagnose(position, turnsOf("U2"), way).explanation).toEqual({
      kind: "unexplained",
    });
  });

  it("is the lining up where the turns are right after it", () => {
    const position = positionOf("C1", { turnedAway: 3 });
    expect(explained(position, "D' R' D R")).toEqual({
      kind: "lined-up-wrongly",
      off: 1,
      wanted: turnsOf("D")[0],
    });
    // Seen from the right, the bottom is still the bottom.
    expect(explained(position, "y D' F' D F")).toMatchObject({
      kind: "lined-up-wrongly",
    });
  });

  it("is the other home where the piece was brought there", () => {
    // From home 3, at the top back right, the whole cube turned by y.
    expect(explained(positionOf("C1"), "y D D' R' D R")).toEqual({
      kind: "another-home",
      evidence: "from-known-way",
      home: 3,
    });
  });

  it("is the piece that was brought home instead", () => {
    const position = positionShowing("E1", 1, "E4a");
    const [way] = waysOf("E4a", "up");
    const played = [...turnsOf("y'"), ...present(way, "E4a has one").turns];
    const { explanation } = diagnose(
      position,
      played,
      turnsForPosition(position),
    );
    expect(explanation).toEqual({
      kind: "wrong-piece",
      evidence: "from-known-way",
      pieces: { corners: [], edges: [edge("UL")] },
      into: 1,
    });
  });

  // The way of the design's first-layer.md: R' D2 R D R' D' R.
  it.each([
    ["R' D2 R D R' D R", "reversed", 5, "D'", "D"],
    ["R' D2 R D2 R' D' R", "amount", 3, "D", "D2"],
    ["R' D2 D R' D' R", "missing", 2, "R", undefined],
    ["R' D2 R D L R' D' R", "extra", 4, undefined, "L"],
    ["R' D2 R D R' F' R", "another-layer", 5, "D'", "F'"],
    ["y F' D2 F D F' L F", "another-layer", 6, "D'", "L"],
    ["R' D2 R D Rw' D' R", "another-layer", 4, "R'", "Rw'"],
  ] as const)(
    "is one turn of C3's way, named with its place: %s",
    (played, slip, index, wanted, made) => {
      const text = (turn: Turn | undefined) => turn && formatTurns([turn]);
      const found = explained(positionOf("C3"), played);
      expect(found).toMatchObject({ kind: "one-turn", slip, index });
      if (found?.kind !== "one-turn") return;
      expect(text(found.wanted)).toBe(wanted);
      expect(text(found.made)).toBe(made);
      expect(formatTurns(found.right)).toBe("R' D2 R D R' D' R");
    },
  );

  it("is the twin, another side, the way backwards or another case where a whole way was that", () => {
    const way = { evidence: "from-known-way" } as const;
    // Ways of the design's first-layer.md. C2 and C1, C9 and C6 are twins.
    expect(explained(positionOf("C2"), "D' R' D R")).toEqual({
      kind: "twin",
      case: "C1",
      ...way,
    });
    expect(explained(positionOf("C9"), "L D L' R' D' R")).toEqual({
      kind: "twin",
      case: "C6",
      ...way,
    });
    expect(explained(positionOf("C7"), "y L D L' D' R' D R")).toEqual({
      kind: "other-side",
      asIf: 3,
      ...way,
    });
    expect(explained(positionOf("C7"), "R' D' R D L D' L'")).toEqual({
      kind: "inverse",
      ...way,
    });
    expect(explained(positionOf("C7"), "L D L' R' D' R")).toEqual({
      kind: "other-case",
      case: "C6",
      ...way,
    });
  });

  it("tells from the turns alone which side of the last layer was taken for the front", () => {
    const id = "last-layer-edges-turned:0101";
    const turns = present(
      tableOfWays(id, "down", "right")[0],
      "published",
    ).turns;
    const position = lastLayerPosition(id);
    const way = wayForPosition(position, { turns });
    expect(diagnose(position, way, way, tableOfWays)).toEqual({});
    // Two edges across from each other: the next side is wrong, the one across right.
    const found = (quarters: 1 | 2) =>
      diagnose(
        position,
        turnsThroughSymmetry(way, rotationAbout("y", quarters)),
        way,
        tableOfWays,
      ).explanation;
    expect(found(1)).toMatchObject({ kind: "other-side" });
    expect(found(2)).toBeUndefined();
  });

  it("goes by what the turns do where they are no known way", () => {
    const position = positionOf("C1");
    // The seventh turn brings the edge down, D2 would bring it back up.
    expect(explained(position, "D2 D R' D R D L' D2 L")).toMatchObject({
      kind: "one-turn",
      evidence: "by-effect",
    });
    // The first half of the usual eight turns' twin: the edge comes home, the corner under it goes.
    const slot = positionOf("second-layer-edges:DF-F");
    expect(explained(slot, "U R U' R'")).toEqual({
      kind: "others-lost",
      lost: { corners: [corner("URF")], edges: [] },
    });
    expect(explained(position, "R D2 F2 B L D")).toEqual({
      kind: "unexplained",
    });
  });

  it("is not guessed at where nothing or only a single turn was made", () => {
    expect(explained(positionOf("C2"), "y")).toEqual({ kind: "unexplained" });
    expect(explained(positionOf("C2"), "B")).toEqual({ kind: "unexplained" });
  });

  it("is the case whose way was played after lining up, or one that is nearer, for every pair of cases of a stage and either hand", () => {
    const random = randomSource(SEED);
    const findings = { named: 0, nearer: 0 };
    for (const [i, id] of SINGLE.entries()) {
      for (const hand of HANDS) {
        const hold = HOLDS[(i + HANDS.indexOf(hand)) % 2] ?? "up";
        const variant = randomVariant(random, id, {
          turnedAway: true,
          seenFromAnywhere: true,
        });
        const position = randomPosition(random, id, variant, hold);
        const taught = turnsForPosition(position);
        const others = SINGLE.filter(
          (other) =>
            other !== id && caseEntry(other).stage === caseEntry(id).stage,
        );
        for (const other of others) {
          const [first] = waysOf(other, hold, hand);
          if (first === undefined) continue;
          const turns = [...lineUpTurns(position), ...first.turns];
          const { explanation, leftWay } = diagnose(position, turns, taught);
          expect(leftWay, `${id} as ${other}`).toBeDefined();
          const named = present(explanation, "it is not right");
          if (confusedWith(named) === other) findings.named++;
          else {
            const mistake = {
              kind: "other-case",
              detail: other,
              position,
              turns,
              taught,
            } as const;
            const finding = findingOf(named, mistake, waysOf);
            expect(finding, `${id} as ${other}: ${named.kind}`).toBe(
              "as-brief",
            );
            findings.nearer++;
          }
        }
      }
    }
    // 17 × 16 edges and 14 × 13 corners, two hands.
    expect(findings.named + findings.nearer).toBe((17 * 16 + 14 * 13) * 2);
    expect(findings.named).toBeGreaterThan(8 * findings.nearer);
  });

  it("is nothing for any way of the case itself", () => {
    const random = randomSource(SEED);
    for (const id of SINGLE) {
      const variant = randomVariant(random, id, { turnedAway: true });
      const position = randomPosition(random, id, variant, "up");
      for (const way of waysOf(id, "up")) {
        const played = wayForPosition(position, way);
        expect(diagnose(position, played, played)).toEqual({});
      }
    }
  });
});

/** A position of a case, no other home placed, in which another home shows a case, lined up. */
function positionShowing(
  id: Position["case"],
  home: HomeIndex,
  shown: Position["case"],
): Position {
  const random = randomSource(SEED);
  const variant = { home: 0, placed: [], turnedAway: 0, seenFrom: 0 } as const;
  for (;;) {
    const position = randomPosition(random, id, variant, "up");
    const { stage } = caseEntry(id);
    const found = recognise(position.cubies, stage, home);
    if (found?.case === shown && found.turnedAway === 0) return position;
  }
}

function lastLayerPosition(id: Position["case"]): Position {
  const variant = randomVariant(randomSource(SEED), id, { homes: [0] });
  return randomPosition(randomSource(SEED), id, variant, "down");
}
