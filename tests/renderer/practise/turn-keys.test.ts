import { describe, expect, it } from "vitest";
import { FACES } from "../../../core/cube/faces";
import {
  cubeKeyAction,
  isCubeKey,
  type KeyPress,
} from "../../../renderer/state/practise/turn-keys";

function press(key: string, more: Partial<KeyPress> = {}): KeyPress {
  return {
    key,
    code: "",
    shiftKey: false,
    ctrlKey: false,
    altKey: false,
    metaKey: false,
    repeat: false,
    ...more,
  };
}

describe("the keys of a focused cube", () => {
  it("turn each face clockwise by its letter and the other way with Shift", () => {
    for (const face of FACES) {
      const letter = face.toLowerCase();
      expect(cubeKeyAction(press(letter), false)).toEqual({
        kind: "turn",
        turn: { layer: face, quarters: 1 },
      });
      expect(cubeKeyAction(press(face, { shiftKey: true }), false)).toEqual({
        kind: "turn",
        turn: { layer: face, quarters: 3 },
      });
    }
  });

  it("turn slices by m e s and the whole cube by x y z", () => {
    for (const layer of ["M", "E", "S", "x", "y", "z"])
      expect(cubeKeyAction(press(layer.toLowerCase()), false)).toEqual({
        kind: "turn",
        turn: { layer, quarters: 1 },
      });
  });

  it("take the wide layer of the face whose letter follows w", () => {
    expect(cubeKeyAction(press("w"), false)).toEqual({ kind: "wide-next" });
    expect(cubeKeyAction(press("r"), true)).toEqual({
      kind: "turn",
      turn: { layer: "Rw", quarters: 1 },
    });
    expect(cubeKeyAction(press("U", { shiftKey: true }), true)).toEqual({
      kind: "turn",
      turn: { layer: "Uw", quarters: 3 },
    });
    expect(cubeKeyAction(press("m"), true)).toEqual({
      kind: "turn",
      turn: { layer: "M", quarters: 1 },
    });
  });

  it("turn the same way while Caps Lock is on", () => {
    expect(cubeKeyAction(press("R"), false)).toEqual({
      kind: "turn",
      turn: { layer: "R", quarters: 1 },
    });
  });

  it("go by the physical key where the layout writes no Latin letters", () => {
    expect(cubeKeyAction(press("к", { code: "KeyR" }), false)).toEqual({
      kind: "turn",
      turn: { layer: "R", quarters: 1 },
    });
  });

  it("take back, start over and look", () => {
    const kinds = ["Backspace", "Delete", "ArrowDown", "ArrowUp"].map(
      (key) => cubeKeyAction(press(key), false)?.kind,
    );
    expect(kinds).toEqual([
      "take-back",
      "start-over",
      "look-underneath",
      "look-behind",
    ]);
  });

  it("ask for nothing when a held key repeats", () => {
    expect(cubeKeyAction(press("r", { repeat: true }), false)).toBeUndefined();
    expect(
      cubeKeyAction(press("Backspace", { repeat: true }), false),
    ).toBeUndefined();
  });

  it("leave the browser's and the system's own key combinations alone", () => {
    for (const held of ["ctrlKey", "altKey", "metaKey"])
      expect(
        cubeKeyAction(press("r", { [held]: true }), false),
      ).toBeUndefined();
  });

  it("ask for nothing where the letter names no layer", () => {
    for (const key of ["q", "?", "Enter", "Tab", "1"])
      expect(cubeKeyAction(press(key), false)).toBeUndefined();
  });

  it("belong to the cube while they are held down, though they ask for nothing", () => {
    const held = press("ArrowDown", { repeat: true });
    expect(cubeKeyAction(held, false)).toBeUndefined();
    expect(isCubeKey(held)).toBe(true);
    expect(isCubeKey(press("Tab", { repeat: true }))).toBe(false);
    expect(isCubeKey(press("r", { repeat: true, ctrlKey: true }))).toBe(false);
  });
});
