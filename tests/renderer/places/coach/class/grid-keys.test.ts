import { describe, expect, it } from "vitest";
import { nextPlace } from "../../../../../renderer/places/coach/class/grid-keys";
import { ringStep } from "../../../../../renderer/places/coach/class/ring-step";

const SIZE = { rows: 30, columns: 20 };
const NONE = { ctrlKey: false, metaKey: false, altKey: false };

describe("keys in a grid", () => {
  it.each([
    ["ArrowLeft", 4, 3],
    ["ArrowRight", 4, 5],
    ["ArrowUp", 3, 4],
    ["ArrowDown", 5, 4],
    ["Home", 4, 0],
    ["End", 4, 19],
    ["PageUp", 0, 4],
    ["PageDown", 14, 4],
  ])("%s leads from the fifth cell of the fifth row", (key, row, column) => {
    expect(nextPlace({ key, ...NONE }, { row: 4, column: 4 }, SIZE)).toEqual({
      row,
      column,
    });
  });

  it("with Ctrl lead to the ends, and never over the edge", () => {
    const far = { ...NONE, ctrlKey: true };
    const from = { row: 4, column: 4 };
    expect(nextPlace({ key: "End", ...far }, from, SIZE)).toEqual({
      row: 29,
      column: 19,
    });
    expect(nextPlace({ key: "Home", ...far }, from, SIZE)).toEqual({
      row: 0,
      column: 0,
    });
    expect(
      nextPlace({ key: "ArrowLeft", ...NONE }, { row: 0, column: 0 }, SIZE),
    ).toEqual({ row: 0, column: 0 });
  });

  it("that mean something else are left alone", () => {
    const from = { row: 4, column: 4 };
    expect(nextPlace({ key: "a", ...NONE }, from, SIZE)).toBeUndefined();
    expect(
      nextPlace({ key: "ArrowLeft", ...NONE, altKey: true }, from, SIZE),
    ).toBeUndefined();
  });
});

describe("a ring in eighths", () => {
  it("is empty for nothing, full at half a year, and never emptier for longer", () => {
    expect([0, 180, 1000].map(ringStep)).toEqual([0, 8, 8]);
    const steps = Array.from({ length: 200 }, (_, days) => ringStep(days));
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
  });
});
