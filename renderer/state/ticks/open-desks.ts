/** Sheets whose ticks are being entered in this window. */
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import type { SheetCode } from "../../../core/paper/sheet-code";
import type { AppState } from "../app-state.svelte";
import { lasting } from "../lasting.svelte";
import { TicksDesk } from "./ticks-desk.svelte";

const desks = new WeakMap<AppState, Map<SheetCode, TicksDesk>>();

/** The desk at which a sheet's ticks are entered: the same one while the window is open, so that undo and what was typed outlive a look at another place. */
export function ticksDeskFor(app: AppState, sheet: KeptSheet): TicksDesk {
  const own = desks.get(app) ?? new Map<SheetCode, TicksDesk>();
  desks.set(app, own);
  const desk = own.get(sheet.code) ?? lasting(() => new TicksDesk(app, sheet));
  own.set(sheet.code, desk);
  return desk;
}
