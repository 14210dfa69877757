import { describe, expect, it } from "vitest";
import { FACES, type Face } from "../../../core/cube/faces";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { cubePicture } from "../../../core/picture/cube-picture";
import { cubePalette } from "../../../core/picture/palette";
import { usualView } from "../../../core/picture/projection";
import {
  abandon,
  drag,
  DRAG_THRESHOLD,
  type GestureState,
  IDLE,
  press,
  release,
} from "../../../renderer/cube-view/gestures";

const TARGETS = cubePicture({
  stickers: FACES.flatMap((face) => new Array<Face>(9).fill(face)),
  view: usualView(73),
  palette: cubePalette({ scheme: USUAL_SCHEME, theme: "light" }),
}).targets;
const CORNER = TARGETS.find((target) => target.facelet === 26);
const START = { x: 20, y: 30 };

function pressed(on = CORNER): GestureState {
  return press(IDLE, 1, START, on).state;
}

describe("gestures", () => {
  it("a press that hardly moves is a tap on its sticker", () => {
    const moved = drag(pressed(), 1, { x: 24, y: 34 });
    expect(moved.action).toBeUndefined();
    const up = release(moved.state, 1, { x: 24, y: 34 });
    expect(up).toEqual({ state: IDLE, action: { kind: "tap", facelet: 26 } });
  });

  it("dragging a sticker turns its layer as soon as the threshold is passed, and once a drag", () => {
    const before = drag(pressed(), 1, {
      x: START.x,
      y: START.y + DRAG_THRESHOLD - 1,
    });
    expect(before.action).toBeUndefined();
    const turned = drag(before.state, 1, {
      x: START.x,
      y: START.y + DRAG_THRESHOLD,
    });
    expect(turned.action).toEqual({
      kind: "turn",
      turn: { layer: "R", quarters: 3 },
    });
    const further = drag(turned.state, 1, { x: START.x, y: START.y + 200 });
    expect(further.action).toBeUndefined();
    expect(release(further.state, 1, START)).toEqual({ state: IDLE });
  });

  it("dragging beside the cube looks around, from where the pointer went down", () => {
    const beside = press(IDLE, 1, START, undefined).state;
    const first = drag(beside, 1, { x: 40, y: 30 });
    expect(first.action).toEqual({
      kind: "look",
      drag: { dx: 20, dy: 0, phase: "start" },
    });
    const next = drag(first.state, 1, { x: 60, y: 50 });
    expect(next.action).toEqual({
      kind: "look",
      drag: { dx: 40, dy: 20, phase: "move" },
    });
    expect(release(next.state, 1, { x: 61, y: 50 })).toEqual({
      state: IDLE,
      action: { kind: "look", drag: { dx: 41, dy: 20, phase: "end" } },
    });
  });

  it("a press beside the cube that goes nowhere means nothing", () => {
    const beside = press(IDLE, 1, START, undefined).state;
    expect(release(beside, 1, START)).toEqual({ state: IDLE });
  });

  it("a second finger changes nothing about the first", () => {
    const one = pressed();
    expect(press(one, 2, { x: 0, y: 0 }, undefined)).toEqual({ state: one });
    expect(drag(one, 2, { x: 300, y: 0 })).toEqual({ state: one });
    expect(release(one, 2, { x: 300, y: 0 })).toEqual({ state: one });
    expect(release(one, 1, START).action).toEqual({ kind: "tap", facelet: 26 });
  });

  it("a pointer taken away by the system turns nothing and taps nothing; a look goes back", () => {
    expect(abandon(pressed(), 1)).toEqual({ state: IDLE });
    const beside = press(IDLE, 1, START, undefined).state;
    const looking = drag(beside, 1, { x: 80, y: 30 }).state;
    expect(abandon(looking, 1)).toEqual({
      state: IDLE,
      action: { kind: "look", drag: { dx: 0, dy: 0, phase: "end" } },
    });
  });
});
