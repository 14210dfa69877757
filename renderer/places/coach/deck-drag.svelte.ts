/**
 * A case that is dragged on the bench: from the shelf into the deck, or within
 * the deck to another place. Pointer events and not the platform's own
 * dragging, which a finger cannot do and a test cannot see.
 */
import type { CaseId } from "../../../core/cases/case-ids";

/** How far a press moves before it is a drag and no click. Units: pixels. */
const SLACK = 6;

/** How near to the column's end a drag begins to scroll it, and how fast. Units: pixels, pixels a frame. */
const SCROLL_ZONE = 48;
const SCROLL_STEP = 8;

/** The dragged case, and where the pointer holds it. Units: pixels of the window. */
export interface Dragged {
  readonly case: CaseId;
  readonly x: number;
  readonly y: number;
}

/**
 * Before how many of the rows a pointer is: the place at which a case would
 * come in. Units: pixels of the window, from top to bottom.
 */
export function gapAt(
  y: number,
  rows: readonly { readonly top: number; readonly bottom: number }[],
): number {
  return rows.filter(({ top, bottom }) => (top + bottom) / 2 < y).length;
}

/** What dragging needs to know of the bench. */
export interface DragSurface {
  /** The column that takes cases; its rows carry `data-case`. */
  readonly column: () => HTMLElement | undefined;
  /** A case was dropped before so many rows. */
  readonly ondrop: (id: CaseId, gap: number) => void;
}

/** The one drag that may be going on. */
export class DeckDrag {
  readonly #surface: DragSurface;
  dragged: Dragged | undefined = $state.raw();
  /** Before how many rows it would be dropped; undefined beside the column. */
  gap: number | undefined = $state();

  constructor(surface: DragSurface) {
    this.#surface = surface;
  }

  /** A press that may become a drag. */
  press(event: PointerEvent, id: CaseId): void {
    if (event.button !== 0 || !event.isPrimary) return;
    const { clientX, clientY, pointerId } = event;
    const gone = new AbortController();
    const { signal } = gone;
    let frame = 0;
    const follow = (x: number, y: number) => {
      this.dragged = { case: id, x, y };
      this.gap = this.#gapAt(x, y);
    };
    const scroll = () => {
      const column = this.#surface.column();
      if (this.dragged === undefined || column === undefined) return;
      const { x, y } = this.dragged;
      const { top, bottom } = column.getBoundingClientRect();
      if (this.gap !== undefined) {
        if (y < top + SCROLL_ZONE) column.scrollBy(0, -SCROLL_STEP);
        if (y > bottom - SCROLL_ZONE) column.scrollBy(0, SCROLL_STEP);
        this.gap = this.#gapAt(x, y);
      }
      frame = requestAnimationFrame(scroll);
    };
    const end = () => {
      gone.abort();
      cancelAnimationFrame(frame);
      this.dragged = undefined;
      this.gap = undefined;
    };
    const move = (moved: PointerEvent) => {
      if (moved.pointerId !== pointerId) return;
      const { clientX: x, clientY: y } = moved;
      const isFar = Math.hypot(x - clientX, y - clientY) > SLACK;
      if (this.dragged === undefined && !isFar) return;
      const begins = this.dragged === undefined;
      follow(x, y);
      if (begins) frame = requestAnimationFrame(scroll);
    };
    const drop = (moved: PointerEvent) => {
      if (moved.pointerId !== pointerId) return;
      const { gap } = this;
      const hasMoved = this.dragged !== undefined;
      end();
      if (!hasMoved) return;
      swallowClick();
      if (gap !== undefined) this.#surface.ondrop(id, gap);
    };
    addEventListener("pointermove", move, { signal });
    addEventListener("pointerup", drop, { signal });
    addEventListener("pointercancel", end, { signal });
    addEventListener("keydown", ({ key }) => key === "Escape" && end(), {
      signal,
    });
  }

  #gapAt(x: number, y: number): number | undefined {
    const column = this.#surface.column();
    if (column === undefined) return undefined;
    const { left, right, top, bottom } = column.getBoundingClientRect();
    if (x < left || x > right || y < top || y > bottom) return undefined;
    const rows = [...column.querySelectorAll("[data-case]")];
    return gapAt(
      y,
      rows.map((row) => row.getBoundingClientRect()),
    );
  }
}

/** The click that a browser makes of a drag's end is none. */
function swallowClick(): void {
  const swallow = (event: Event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => removeEventListener("click", swallow, { capture: true }));
}
