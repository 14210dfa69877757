import { describe, expect, it } from "vitest";
import {
  executionTurns,
  outerBlockTurns,
  quarterTurns,
} from "../../../core/notation/metrics";
import { turnsOf } from "./turns-of";

describe("metrics", () => {
  it.each([
    // WCA Regulations 12a5, 12a6: faces and wide layers 1; the whole cube 0 and 1.
    ["", 0, 0],
    ["R U R' U'", 4, 4],
    ["F2 Rw' Uw2", 3, 3],
    ["x y2 z'", 0, 3],
    ["y D L D' L'", 4, 5],
    ["R R", 2, 2],
    // Slices: common practice.
    ["M' U M2", 5, 3],
  ])("counts %j as %i outer-block and %i execution turns", (text, ob, ex) => {
    const turns = turnsOf(text);
    expect([outerBlockTurns(turns), executionTurns(turns)]).toEqual([ob, ex]);
  });

  it.each([
    // Common practice: a half turn is two quarters, whichever way it is made.
    ["", 0],
    ["R U R' U'", 4],
    ["F2 Rw' Uw2", 5],
    ["x y2 z'", 0],
    ["M' U M2", 7],
  ])("counts %j as %i quarters", (text, quarters) => {
    expect(quarterTurns(turnsOf(text))).toBe(quarters);
  });
});
