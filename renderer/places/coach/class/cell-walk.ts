/**
 * Going about in a table whose cells are plain elements: forty learners by 200
 * cases are 8,000 of them, so one listener serves all, and which of them is in
 * the tab order is set by hand: a state that 8,000 cells read would be looked
 * at by all of them with every arrow.
 */
import { type GridPlace, nextPlace } from "./grid-keys";

/** What comes of it. */
export interface CellWalkTo {
  /** A cell was pressed, or Enter or the space bar on it. */
  readonly open: (place: GridPlace) => void;
  /** The cell that is pointed at or has the focus. */
  readonly look: (place: GridPlace) => void;
}

/** A table's cells that are walked through. */
export interface CellWalk {
  /** Other cells may have come: one of them is in the tab order. */
  readonly settle: () => void;
  /** Listens no longer. */
  readonly stop: () => void;
}

/**
 * Lets a person walk through the cells of a table's body by keys and pointer.
 *
 * Shape: each row of `body` begins with one head; its other cells are `td`.
 */
export function walkCells(
  body: HTMLTableSectionElement,
  to: CellWalkTo,
): CellWalk {
  let current: HTMLTableCellElement | undefined;

  function placeOf(target: EventTarget | null) {
    const cell = target instanceof Element ? target.closest("td") : null;
    const row = cell?.parentElement;
    if (cell === null || !(row instanceof HTMLTableRowElement))
      return undefined;
    const place = { row: row.sectionRowIndex, column: cell.cellIndex - 1 };
    return { cell, place };
  }

  function makeCurrent(cell: HTMLTableCellElement | undefined) {
    if (current !== undefined) current.tabIndex = -1;
    current = cell;
    if (current !== undefined) current.tabIndex = 0;
  }

  function press(event: Event) {
    const at = placeOf(event.target);
    if (at !== undefined) to.open(at.place);
  }

  function look(event: Event) {
    const at = placeOf(event.target);
    if (at !== undefined) to.look(at.place);
  }

  function focused(event: Event) {
    const at = placeOf(event.target);
    if (at !== undefined) makeCurrent(at.cell);
    look(event);
  }

  function keys(event: KeyboardEvent) {
    const at = placeOf(event.target);
    if (at === undefined) return;
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      to.open(at.place);
      return;
    }
    const next = nextPlace(event, at.place, {
      rows: body.rows.length,
      columns: (body.rows[0]?.cells.length ?? 1) - 1,
    });
    if (next === undefined) return;
    event.preventDefault();
    body.rows[next.row]?.cells[next.column + 1]?.focus();
  }

  body.addEventListener("click", press);
  body.addEventListener("keydown", keys);
  body.addEventListener("focusin", focused);
  body.addEventListener("pointerover", look);
  return {
    settle: () => {
      if (current?.isConnected !== true)
        makeCurrent(body.querySelector("td") ?? undefined);
    },
    stop: () => {
      body.removeEventListener("click", press);
      body.removeEventListener("keydown", keys);
      body.removeEventListener("focusin", focused);
      body.removeEventListener("pointerover", look);
    },
  };
}
