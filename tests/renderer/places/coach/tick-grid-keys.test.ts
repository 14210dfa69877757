import { describe, expect, it } from "vitest";
import type { CodedKind } from "../../../../core/paper/sheet-code";
import {
  columnsOf,
  type GridAction,
  type GridPlace,
  keyInBox,
  keyInTime,
} from "../../../../renderer/places/coach/ticks/tick-grid-keys";

const pressed = (key: string) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
});

const box = (
  key: string,
  row: number,
  column: number,
  kind: CodedKind = "cases",
) => keyInBox(pressed(key), { row, column }, kind, 12);

const goes = (row: number, column: number): GridAction => ({
  does: "go",
  to: { row, column },
});

describe("keys in a box", () => {
  it("move to neighbours and ends, and never out of the grid", () => {
    expect(box("ArrowRight", 3, 2)).toEqual(goes(3, 3));
    expect(box("ArrowLeft", 3, 2)).toEqual(goes(3, 1));
    expect(box("ArrowUp", 3, 2)).toEqual(goes(2, 2));
    expect(box("ArrowDown", 3, 2)).toEqual(goes(4, 2));
    expect(box("Home", 3, 2)).toEqual(goes(3, 0));
    expect(box("End", 3, 2)).toEqual(goes(3, 6));
    expect(box("PageUp", 3, 2)).toEqual(goes(0, 2));
    expect(box("PageDown", 3, 2)).toEqual(goes(11, 2));
    for (const key of ["ArrowUp", "ArrowLeft"])
      expect(box(key, 0, 0)).toEqual(goes(0, 0));
    for (const key of ["ArrowDown", "ArrowRight"])
      expect(box(key, 11, 6)).toEqual(goes(11, 6));
  });

  it("tick, cross and empty; a mark goes on to the next box", () => {
    const at = { row: 1, column: 2 };
    const to = { row: 1, column: 3 };
    for (const key of [" ", "t", "T"])
      expect(box(key, 1, 2)).toEqual({ does: "tick", at, tick: "right", to });
    expect(box("x", 1, 2)).toEqual({ does: "tick", at, tick: "missed", to });
    for (const key of ["Backspace", "Delete"])
      expect(box(key, 1, 2)).toEqual({
        does: "tick",
        at,
        tick: undefined,
        to: at,
      });
    expect(box("t", 1, 6)).toMatchObject({ to: { row: 1, column: 6 } });
  });

  it("tick a day by its figure on a case sheet, and begin a time on a practice sheet", () => {
    expect(box("3", 1, 6)).toEqual({
      does: "tick",
      at: { row: 1, column: 2 },
      tick: "right",
      to: { row: 1, column: 3 },
    });
    for (const key of ["0", "8", "9"]) expect(box(key, 1, 0)).toBeUndefined();
    expect(box("0", 1, 0, "practice")).toEqual({
      does: "time",
      to: { row: 1, column: 1 },
      text: "0",
    });
  });

  it("go to the next row by Enter, and past the last one to the end", () => {
    expect(box("Enter", 3, 5)).toEqual(goes(4, 0));
    expect(box("Enter", 11, 5)).toEqual({ does: "finish" });
  });

  it("that belong to the system or mean nothing are left alone", () => {
    const at: GridPlace = { row: 0, column: 0 };
    for (const key of ["a", "Tab", "Escape", "F5", "Process", "é", "Dead"])
      expect(box(key, 0, 0)).toBeUndefined();
    for (const held of ["ctrlKey", "metaKey", "altKey"])
      for (const key of ["x", "t", "v", "1", "Enter", "ArrowLeft"])
        expect(
          keyInBox({ ...pressed(key), [held]: true }, at, "cases", 12),
        ).toBeUndefined();
  });
});

describe("keys in a time", () => {
  const time = (key: string, isAtStart: boolean, isAtEnd: boolean) =>
    keyInTime(pressed(key), { row: 2, column: 2 }, "practice", 6, {
      isAtStart,
      isAtEnd,
    });

  it("leave it up, down and by Enter, to the sides from its ends only", () => {
    expect(columnsOf("practice")).toBe(4);
    expect(time("ArrowUp", false, false)).toEqual(goes(1, 2));
    expect(time("ArrowDown", false, false)).toEqual(goes(3, 2));
    expect(time("Enter", false, false)).toEqual(goes(3, 0));
    expect(time("ArrowLeft", false, true)).toBeUndefined();
    expect(time("ArrowLeft", true, false)).toEqual(goes(2, 1));
    expect(time("ArrowRight", true, false)).toBeUndefined();
    expect(time("ArrowRight", true, true)).toEqual(goes(2, 3));
  });

  it("are the field's own otherwise", () => {
    for (const key of ["Home", "End", "4", " ", "x", "Backspace", "Tab"])
      expect(time(key, true, true)).toBeUndefined();
  });
});
