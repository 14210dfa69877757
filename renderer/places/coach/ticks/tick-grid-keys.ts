/** What the keys do in the grid of ticks: as in a table of numbers, one key a box. */
import { ROW_SHAPES, type Tick } from "../../../../core/paper/entered-ticks";
import type { CodedKind } from "../../../../core/paper/sheet-code";

/** A box or a time of the grid, by its row and its column; a row's times stand behind its boxes. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** What a key does. */
export type GridAction =
  | { readonly does: "go"; readonly to: GridPlace }
  /** Past the last row: to what keeps the entry. */
  | { readonly does: "finish" }
  | {
      readonly does: "tick";
      readonly at: GridPlace;
      readonly tick: Tick | undefined;
      readonly to: GridPlace;
    }
  /** A figure typed in a box begins the first time of its row. */
  | { readonly does: "time"; readonly to: GridPlace; readonly text: string };

/** What of a key press counts. */
export type PressedKey = Pick<
  KeyboardEvent,
  "key" | "ctrlKey" | "metaKey" | "altKey"
>;

/** How many columns a row has. */
export function columnsOf(kind: CodedKind): number {
  const { ticks, times } = ROW_SHAPES[kind];
  return ticks + times;
}

function moved(
  { row, column }: GridPlace,
  rows: number,
  by: readonly [down: number, right: number],
  columns: number,
): GridAction {
  const within = (value: number, most: number) =>
    Math.min(most, Math.max(0, value));
  return {
    does: "go",
    to: {
      row: within(row + by[0], rows - 1),
      column: within(column + by[1], columns - 1),
    },
  };
}

/** What moves through boxes and times alike. */
function moveOf(
  { key }: PressedKey,
  at: GridPlace,
  kind: CodedKind,
  rows: number,
): GridAction | undefined {
  const go = (down: number, right: number) =>
    moved(at, rows, [down, right], columnsOf(kind));
  switch (key) {
    case "ArrowUp":
      return go(-1, 0);
    case "ArrowDown":
      return go(1, 0);
    case "ArrowLeft":
      return go(0, -1);
    case "ArrowRight":
      return go(0, 1);
    case "Home":
      return go(0, -at.column);
    case "End":
      return go(0, columnsOf(kind));
    case "PageUp":
      return go(-rows, 0);
    case "PageDown":
      return go(rows, 0);
    case "Enter":
      return at.row === rows - 1
        ? { does: "finish" }
        : { does: "go", to: { row: at.row + 1, column: 0 } };
    default:
      return undefined;
  }
}

const TICKED_BY: Readonly<Record<string, Tick>> = {
  " ": "right",
  t: "right",
  x: "missed",
};

/**
 * What a key does in a box; undefined: nothing of ours.
 *
 * A tick or a cross goes on to the next box. On a case sheet a figure ticks
 * the box of that day, wherever in the row one is, and on a practice sheet it
 * begins a time.
 */
export function keyInBox(
  pressed: PressedKey,
  at: GridPlace,
  kind: CodedKind,
  rows: number,
): GridAction | undefined {
  if (pressed.ctrlKey || pressed.metaKey || pressed.altKey) return undefined;
  const move = moveOf(pressed, at, kind, rows);
  if (move !== undefined) return move;
  const { row, column } = at;
  const { ticks } = ROW_SHAPES[kind];
  const next = (from: number) => ({
    row,
    column: Math.min(from + 1, columnsOf(kind) - 1),
  });
  const tick = TICKED_BY[pressed.key.toLowerCase()];
  if (tick !== undefined) return { does: "tick", at, tick, to: next(column) };
  if (pressed.key === "Backspace" || pressed.key === "Delete")
    return { does: "tick", at, tick: undefined, to: at };
  if (!/^\d$/.test(pressed.key)) return undefined;
  if (kind === "practice")
    return { does: "time", to: { row, column: ticks }, text: pressed.key };
  const day = Number(pressed.key) - 1;
  return day < 0 || day >= ticks
    ? undefined
    : {
        does: "tick",
        at: { row, column: day },
        tick: "right",
        to: next(day),
      };
}

/** Where the caret stands in a time. */
export interface Caret {
  readonly isAtStart: boolean;
  readonly isAtEnd: boolean;
}

/** What a key does in a time: left and right only from its ends. */
export function keyInTime(
  pressed: PressedKey,
  at: GridPlace,
  kind: CodedKind,
  rows: number,
  { isAtStart, isAtEnd }: Caret,
): GridAction | undefined {
  const { key } = pressed;
  if (pressed.ctrlKey || pressed.metaKey || pressed.altKey) return undefined;
  if (key === "Home" || key === "End") return undefined;
  if (key === "ArrowLeft" && !isAtStart) return undefined;
  if (key === "ArrowRight" && !isAtEnd) return undefined;
  return moveOf(pressed, at, kind, rows);
}
