import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import type { Position } from "../../../core/cases/position";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { formatTurns } from "../../../core/notation/format";
import { turnsOf } from "../notation/turns-of";
import { positionOf } from "./explained-answer";

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
