import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { randomPosition } from "../../../core/cases/random-position";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";
import { explained, positionOf, SEED } from "./explained-answer";

describe("the explanation of a way that was begun, or not lined up", () => {
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
});
