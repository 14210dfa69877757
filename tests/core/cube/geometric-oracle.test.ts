import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { FACES } from "../../../core/cube/faces";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { TURN_LAYERS, type Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { arbitraryTurns } from "../notation/arbitrary-turns";
import {
  afterTurns,
  faceletString,
  isSameVector,
  NORMALS,
  solvedStickers,
} from "../../oracles/geometric-cube";

const START = { cubies: SOLVED, hold: NO_ROTATION };

function expectAgreement(turns: readonly Turn[]): void {
  const ours = applyTurns(START, turns);
  const theirs = afterTurns(solvedStickers(), formatTurns(turns));
  expect(formatFacelets(ours)).toBe(faceletString(theirs));
  for (const face of FACES) {
    const centre = theirs.find((s) => isSameVector(s.piece, NORMALS[face]));
    expect(centre?.at).toEqual(NORMALS[viewFace(ours.hold, face)]);
  }
}

describe("the geometric oracle and the cube", () => {
  it("agree on every single turn", () => {
    for (const layer of TURN_LAYERS)
      for (const quarters of [1, 2, 3] as const)
        expectAgreement([{ layer, quarters }]);
  });

  it("agree on all stickers and on the hold after any turns", () => {
    fc.assert(fc.property(arbitraryTurns(), expectAgreement), { numRuns: 300 });
  });

  it("the oracle by itself shows a solved cube as the usual string", () => {
    expect(faceletString(solvedStickers())).toBe(
      FACES.map((face) => face.repeat(9)).join(""),
    );
  });

  it("the oracle refuses what it cannot read", () => {
    for (const text of ["Q", "Mw", "R3", "r", "(R"])
      expect(() => afterTurns(solvedStickers(), text)).toThrow();
  });
});
