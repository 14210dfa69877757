/**
 * Where the window was and how large, kept from one start to the next.
 *
 * The file is outside input: a person, a crash or another version may have
 * written it. A place is used again only where a display still shows it.
 */
import * as v from "valibot";
import { err, ok, type Result } from "../core/result";

/** A rectangle in the system's own screen units. */
export interface Bounds {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What is kept of a window. */
export interface WindowState {
  readonly bounds: Bounds;
  readonly maximized: boolean;
}

/** Why a kept state cannot be read, and the field that is wrong. */
export type WindowStateError =
  | { readonly code: "not-json" }
  | { readonly code: "not-a-window-state"; readonly field: string };

/** The size of a first window. */
export const FIRST_SIZE = { width: 1280, height: 800 } as const;

/** The least size: the narrowest screen that the page is made for. */
export const LEAST_SIZE = { width: 360, height: 480 } as const;

const screenUnits = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(-100_000),
  v.maxValue(100_000),
);

const stateSchema = v.object({
  bounds: v.object({
    x: screenUnits,
    y: screenUnits,
    width: v.pipe(screenUnits, v.minValue(1)),
    height: v.pipe(screenUnits, v.minValue(1)),
  }),
  maximized: v.boolean(),
});

/** Reads a kept state. */
export function parseWindowState(
  text: string,
): Result<WindowState, WindowStateError> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return err({ code: "not-json" });
  }
  const state = v.safeParse(stateSchema, value);
  if (state.success) return ok(state.output);
  return err({
    code: "not-a-window-state",
    field: v.getDotPath(state.issues[0]) ?? "",
  });
}

/** Writes a state in the form that `parseWindowState` reads. */
export function formatWindowState(state: WindowState): string {
  return `${JSON.stringify(state)}\n`;
}

/** How much of the top edge must be on a display for the window to be held. */
const GRIP = { width: 120, height: 32 } as const;

/**
 * The bounds to open a window with, or `undefined` where no display shows
 * enough of its top edge to take hold of it; the size never exceeds the
 * display's.
 *
 * Shape: `displays` are the work areas of the displays there are now.
 */
export function usableBounds(
  kept: Bounds,
  displays: readonly Bounds[],
): Bounds | undefined {
  const display = displays.find((area) => showsGrip(kept, area));
  if (display === undefined) return undefined;
  return {
    x: kept.x,
    y: kept.y,
    width: clamp(kept.width, LEAST_SIZE.width, display.width),
    height: clamp(kept.height, LEAST_SIZE.height, display.height),
  };
}

function showsGrip(window: Bounds, area: Bounds): boolean {
  const seenWidth =
    Math.min(window.x + window.width, area.x + area.width) -
    Math.max(window.x, area.x);
  return (
    seenWidth >= Math.min(GRIP.width, window.width) &&
    window.y >= area.y &&
    window.y + GRIP.height <= area.y + area.height
  );
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), Math.max(least, most));
}
