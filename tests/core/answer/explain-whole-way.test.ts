import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { confusedWith } from "../../../core/answer/explanation";
import { caseEntry, waysOf } from "../../../core/cases/case-table";
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import { HOLDS, type HomeIndex } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import {
  lineUpTurns,
  turnsForPosition,
  wayForPosition,
} from "../../../core/cases/way-for-position";
import { edge } from "../../../core/cube/pieces";
import { rotationAbout } from "../../../core/cube/symmetries";
import { present } from "../../../core/invariant";
import { turnsThroughSymmetry } from "../../../core/notation/mirror";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";
import { explained, positionOf, SEED, SINGLE } from "./explained-answer";
import { findingOf } from "./judged-explanation";
import { tableOfWays } from "./table-of-ways";

describe("the explanation of a whole way that was of something else", () => {
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
