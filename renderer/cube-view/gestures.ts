/**
 * What a pointer does on a cube, as actions that know no DOM.
 *
 * Dragging a sticker turns its layer, once a drag; dragging beside the cube
 * looks around; letting go where the pointer went down is a tap.
 */
import type { PictureTarget } from "../../core/picture/cube-picture";
import { turnForDrag } from "../../core/picture/pointing";
import type { Point } from "../../core/picture/projection";
import type { Turn } from "../../core/cube/turns";

/** A look-around drag: how far the pointer is from where it began. */
export interface LookDrag {
  /** Units: pixels of the picture. */
  readonly dx: number;
  readonly dy: number;
  /** Whether the pointer has just begun, goes on, or has let go. */
  readonly phase: "start" | "move" | "end";
}

/** What the pointer means. */
export type GestureAction =
  | { readonly kind: "turn"; readonly turn: Turn }
  | { readonly kind: "tap"; readonly facelet: number }
  | { readonly kind: "look"; readonly drag: LookDrag };

/** What the pointer is in the middle of. */
export type GestureState =
  | { readonly kind: "idle" }
  | {
      readonly kind: "pressed";
      readonly pointer: number;
      readonly from: Point;
      readonly target: PictureTarget | undefined;
    }
  | {
      readonly kind: "looking";
      readonly pointer: number;
      readonly from: Point;
    }
  /** The drag has turned its layer and does nothing more. */
  | { readonly kind: "spent"; readonly pointer: number };

/** A state and, where there is one, what has just been asked for. */
export interface GestureStep {
  readonly state: GestureState;
  readonly action?: GestureAction;
}

/** Nothing is pressed. */
export const IDLE: GestureState = { kind: "idle" };

/** How far a pointer moves before a press is a drag. Units: pixels. */
export const DRAG_THRESHOLD = 10;

/** A pointer goes down, on a facelet or beside the cube. */
export function press(
  state: GestureState,
  pointer: number,
  at: Point,
  target: PictureTarget | undefined,
): GestureStep {
  // A second finger changes nothing about what the first one does.
  if (state.kind !== "idle") return { state };
  return { state: { kind: "pressed", pointer, from: at, target } };
}

function look(from: Point, at: Point, phase: LookDrag["phase"]): GestureAction {
  return {
    kind: "look",
    drag: { dx: at.x - from.x, dy: at.y - from.y, phase },
  };
}

/** The pressed pointer moves. */
export function drag(
  state: GestureState,
  pointer: number,
  at: Point,
): GestureStep {
  if (state.kind === "idle" || state.pointer !== pointer) return { state };
  switch (state.kind) {
    case "spent":
      return { state };
    case "looking":
      return { state, action: look(state.from, at, "move") };
    case "pressed": {
      const moved = { x: at.x - state.from.x, y: at.y - state.from.y };
      if (Math.hypot(moved.x, moved.y) < DRAG_THRESHOLD) return { state };
      if (state.target === undefined)
        return {
          state: { kind: "looking", pointer, from: state.from },
          action: look(state.from, at, "start"),
        };
      return {
        state: { kind: "spent", pointer },
        action: { kind: "turn", turn: turnForDrag(state.target, moved) },
      };
    }
  }
}

/** The pressed pointer lets go. */
export function release(
  state: GestureState,
  pointer: number,
  at: Point,
): GestureStep {
  if (state.kind === "idle" || state.pointer !== pointer) return { state };
  switch (state.kind) {
    case "spent":
      return { state: IDLE };
    case "looking":
      return { state: IDLE, action: look(state.from, at, "end") };
    case "pressed":
      return state.target === undefined
        ? { state: IDLE }
        : {
            state: IDLE,
            action: { kind: "tap", facelet: state.target.facelet },
          };
  }
}

/** The system takes the pointer away: nothing is meant by it. */
export function abandon(state: GestureState, pointer: number): GestureStep {
  if (state.kind === "idle" || state.pointer !== pointer) return { state };
  return state.kind === "looking"
    ? { state: IDLE, action: look(state.from, state.from, "end") }
    : { state: IDLE };
}
