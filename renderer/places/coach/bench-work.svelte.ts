/**
 * The coach's hands on the deck on the bench: each edit with what is read out
 * after it and where the focus goes on, so that ten cases are put in, moved
 * or taken out without looking for the place again.
 */
import { tick } from "svelte";
import type { CaseId } from "../../../core/cases/case-ids";
import type { WholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { Deck } from "../../../core/deck/deck";
import type { DeckBench, DeckStep } from "../../state/deck-bench.svelte";
import { stepInWords } from "../../state/deck-words";
import { isStarterDeck } from "../../../core/deck/starter-decks";
import { editRefusalText } from "../../state/edit-refusals";
import {
  addAllStep,
  addedSaid,
  addStep,
  moveStep,
  placeOf,
  placeSaid,
  removeStep,
} from "./bench-edits";

/** Where a deck begins: its first case, or the place for one. */
export const DECK_START = ".bench .deck [data-case] a, .bench .next";

/** Gives the focus to something that may only now come onto the page. */
export async function focusOn(
  selector: string,
  options?: FocusOptions,
): Promise<void> {
  await tick();
  document.querySelector<HTMLElement>(selector)?.focus(options);
}

/** Scrolls a deck's column, and nothing else, until the row of a case is seen above the place for the next one. */
export function showRow(column: HTMLElement | undefined, id: CaseId): void {
  if (column === undefined) return;
  const row = column.querySelector(`[data-case="${id}"]`);
  const end = column.querySelector(".end");
  if (row === null || end === null) return;
  const { top, bottom } = row.getBoundingClientRect();
  const below = bottom - end.getBoundingClientRect().top;
  const above = column.getBoundingClientRect().top - top;
  if (below > 0) column.scrollTop += below;
  else if (above > 0) column.scrollTop -= above;
}

function isFocusInRow(): boolean {
  return document.activeElement?.closest("[data-case]") instanceof HTMLElement;
}

const rowOf = (id: CaseId) => `[data-case="${id}"] a`;

/** The deck that is worked on, as it is now. */
export interface WorkedOn {
  readonly bench: DeckBench;
  readonly deck: () => Deck;
  readonly naming: () => WholeCubeNaming;
}

/** What is done to the deck on the bench. */
export class BenchWork {
  readonly #on: WorkedOn;
  /** What was done last, to be read out. */
  said = $state("");

  constructor(on: WorkedOn) {
    this.#on = on;
  }

  /** Makes an edit; what has become of the case it is about is read out. Answers why not, if not. */
  edit(step: DeckStep, about?: CaseId): string | undefined {
    const { bench, deck, naming } = this.#on;
    const edited = bench.edit(deck().id, step);
    if (!edited.ok) return editRefusalText(edited.error);
    if (about !== undefined) this.said = placeSaid(deck(), about, naming());
    return undefined;
  }

  /** Puts a case in at the end; the focus goes on to the case beside it on the shelf. */
  add(id: CaseId, beside: CaseId | undefined): void {
    this.edit(addStep(id), id);
    void focusOn(
      beside === undefined ? ".bench .next" : `[data-shelf-case="${beside}"]`,
    );
  }

  /** Puts many cases in at the end as one step; what has become of it is read out, or why it cannot be. */
  addAll(ids: readonly CaseId[]): void {
    const deck = this.#on.deck();
    const before = deck.cases.length;
    const refusal = this.edit(addAllStep(ids));
    const after = this.#on.deck();
    if (refusal !== undefined) this.said = refusal;
    else if (!isStarterDeck(after))
      this.said = addedSaid(after.cases.length - before, after);
    void focusOn(
      ".bench .add-all-place button, .bench [data-shelf-case], .bench .next",
    );
  }

  /** Moves a case so many places later, or earlier; a row that has the focus keeps it. */
  move(id: CaseId, by: number): void {
    const deck = this.#on.deck();
    const to = placeOf(deck, id) + by;
    if (to < 0 || to >= deck.cases.length) return;
    const isRow = isFocusInRow();
    this.edit(moveStep(id, to), id);
    if (isRow) void focusOn(rowOf(id));
  }

  /** Takes a case out; answers the case that comes in its place, if any. */
  remove(id: CaseId): CaseId | undefined {
    const deck = this.#on.deck();
    const place = placeOf(deck, id);
    const next = deck.cases[place + 1] ?? deck.cases[place - 1];
    const preventScroll = !isFocusInRow();
    if (this.edit(removeStep(id), id) !== undefined) return id;
    void focusOn(next === undefined ? DECK_START : rowOf(next.case), {
      preventScroll,
    });
    return next?.case;
  }

  /** Takes the last step back, or makes it again. */
  goThroughSteps(way: "undo" | "redo"): void {
    const { bench } = this.#on;
    const deck = this.#on.deck();
    const step =
      way === "undo" ? bench.stepToUndo(deck) : bench.stepToRedo(deck);
    if (step === undefined) return;
    bench[way](deck);
    this.said = `${way === "undo" ? "Undone" : "Done again"}: ${stepInWords(step)}.`;
  }
}
