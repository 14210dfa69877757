/**
 * The decks on the coach's bench, each with what was done to it. Every edit is
 * stored at once; what was done can be undone for as long as the window is
 * open.
 *
 * A history belongs to the deck as it was last left here. Where another window
 * has changed the deck since, it begins anew: undoing must never take back
 * what somebody else did.
 */
import { SvelteMap } from "svelte/reactivity";
import type { Deck } from "../../core/deck/deck";
import {
  copyDeck,
  type DeckEditError,
  type EditedDeck,
} from "../../core/deck/deck-edits";
import { parseDeck } from "../../core/deck/deck-schema";
import { DECK_LIMITS } from "../../core/deck/deck-values";
import {
  type EditHistory,
  recordStep,
  redo,
  startHistory,
  stepToRedo,
  stepToUndo,
  undo,
} from "../../core/deck/edit-history";
import { present } from "../../core/invariant";
import { err, ok, type Result } from "../../core/result";
import { freshId } from "../platform/random";
import type { StepLabel } from "./deck-words";
import { isStarterDeck } from "../../core/deck/starter-decks";
import type { DeckNotKept, DeckShelf } from "./decks.svelte";

/** One edit: what it is called when it is undone, and how it is made. */
export interface DeckStep {
  readonly label: StepLabel;
  readonly edit: (deck: Deck) => EditedDeck;
  /** Whether it is one step with the same one just before it: letters of one text. */
  readonly joins?: boolean;
}

type DeckHistory = EditHistory<Deck, StepLabel>;

/** Why an edit was not made; "copy-first": it is offered on a copy. */
export type EditRefusal =
  | DeckEditError
  | { readonly code: "deck-gone" | "copy-first" | "guest-at-desk" };

/** What became of an edit. */
export type EditOutcome = Result<void, EditRefusal>;

/** The beginning of a name, cut between what people see as letters. Units: `most` in UTF-16 units. */
function shortened(name: string, most: number): string {
  let kept = "";
  for (const { segment } of new Intl.Segmenter("en").segment(name)) {
    if (kept.length + segment.length > most) break;
    kept += segment;
  }
  return kept.trimEnd();
}

/** The decks, as a coach works on them. */
export class DeckBench {
  readonly #shelf: DeckShelf;
  readonly #histories = new SvelteMap<string, DeckHistory>();
  /** Of decks with edits on their way into the store: each as it was last stored. */
  readonly #stored = new SvelteMap<string, DeckHistory>();
  /** A starter deck that somebody tried to change, and what they wanted of it. */
  offered:
    { readonly deck: Deck; readonly step: DeckStep | undefined } | undefined =
    $state.raw();
  /** Why the last edit could not be stored. */
  trouble: DeckNotKept | undefined = $state.raw();

  constructor(shelf: DeckShelf) {
    this.#shelf = shelf;
  }

  #history(deck: Deck): DeckHistory {
    const known = this.#histories.get(deck.id);
    return known !== undefined &&
      JSON.stringify(known.value) === JSON.stringify(deck)
      ? known
      : startHistory(deck);
  }

  /** What undoing would take back; undefined where there is nothing, as for a guest. */
  stepToUndo(deck: Deck): StepLabel | undefined {
    if (this.#shelf.isGuests) return undefined;
    return stepToUndo(this.#history(deck));
  }

  /** What redoing would make again; undefined where there is nothing, as for a guest. */
  stepToRedo(deck: Deck): StepLabel | undefined {
    if (this.#shelf.isGuests) return undefined;
    return stepToRedo(this.#history(deck));
  }

  /** Says why nothing of a deck changes while a guest is at the desk. */
  refuseGuest(): Result<never, { readonly code: "guest-at-desk" }> {
    const error = { code: "guest-at-desk" } as const;
    this.trouble = error;
    return err(error);
  }

  /**
   * Changes the deck with an id and stores it. A starter deck is never
   * changed: a copy is offered, with the same edit on it. A refused edit
   * changes nothing; a guest's always is.
   */
  edit(id: string, step: DeckStep): EditOutcome {
    if (this.#shelf.isGuests) return this.refuseGuest();
    const deck = this.#shelf.find(id);
    if (deck === undefined || this.#shelf.isLeaving(id))
      return err({ code: "deck-gone" });
    if (isStarterDeck(deck)) {
      this.offered = { deck, step };
      return err({ code: "copy-first" });
    }
    const edited = step.edit(deck);
    if (!edited.ok) return edited;
    const before = this.#history(deck);
    if (JSON.stringify(edited.value) === JSON.stringify(deck))
      return ok(undefined);
    const { label, joins = false } = step;
    this.#take(before, recordStep(before, label, edited.value, { joins }));
    return ok(undefined);
  }

  #take(before: DeckHistory, after: DeckHistory): void {
    const { id } = after.value;
    if (this.#shelf.isLeaving(id)) return;
    this.trouble = undefined;
    if (!this.#stored.has(id)) this.#stored.set(id, before);
    this.#histories.set(id, after);
    void this.#shelf.save(after.value).then((saved) => {
      // An edit made since has this one in it: what becomes of it is for both.
      if (this.#histories.get(id) !== after) {
        if (saved.ok) this.#stored.set(id, after);
        return;
      }
      const stored = this.#stored.get(id) ?? before;
      this.#stored.delete(id);
      if (!saved.ok) this.#histories.set(id, stored);
      if (!saved.ok) this.trouble = saved.error;
    });
  }

  /** Takes the last step back. */
  undo(deck: Deck): void {
    const before = this.#history(deck);
    if (this.stepToUndo(deck) !== undefined) this.#take(before, undo(before));
  }

  /** Makes the last undone step again. */
  redo(deck: Deck): void {
    const before = this.#history(deck);
    if (this.stepToRedo(deck) !== undefined) this.#take(before, redo(before));
  }

  /** Stores a deck under a new id. Resolves with it, or with why it was not kept. */
  async #add(deck: Deck): Promise<Result<Deck, DeckNotKept>> {
    this.trouble = undefined;
    const saved = await this.#shelf.save(deck);
    if (saved.ok) return { ok: true, value: deck };
    this.trouble = saved.error;
    return saved;
  }

  /** A new deck, with nothing in it unless cases are given; under the name that is given or one like it; held as is given, or as each learner does. */
  create({
    name = "New deck",
    cases = [],
    hold,
  }: Partial<Pick<Deck, "name" | "cases" | "hold">> = {}): Promise<
    Result<Deck, DeckNotKept>
  > {
    const deck = parseDeck({
      id: freshId(),
      name: this.#freeName(name),
      description: "",
      cases,
      newPerRound: 2,
      ...(hold !== undefined && { hold }),
    });
    return this.#add(present(deck.ok ? deck.value : undefined, "it is a deck"));
  }

  /** A copy under a name of its own, with what was wanted of the original done to it. */
  async copy(deck: Deck, step?: DeckStep): Promise<Result<Deck, DeckNotKept>> {
    const name = this.#freeName(deck.name, ", copy");
    const made = copyDeck(deck, { id: freshId(), name });
    const copy = present(made.ok ? made.value : undefined, "a copy is a deck");
    const added = await this.#add(copy);
    if (added.ok && step !== undefined) this.edit(copy.id, step);
    return added;
  }

  /** Takes a deck in that came from elsewhere, under a new id. */
  takeIn(deck: Deck): Promise<Result<Deck, DeckNotKept>> {
    return this.#add(deck);
  }

  /** Removes a deck. Answers stay: memory belongs to the case. */
  async remove(deck: Deck): Promise<boolean> {
    this.trouble = undefined;
    const removed = await this.#shelf.remove(deck.id);
    if (removed.ok) this.#histories.delete(deck.id);
    else this.trouble = removed.error;
    return removed.ok;
  }

  /** A name with an ending that no deck has yet, the name cut short where it must be. */
  #freeName(name: string, ending = ""): string {
    const { all } = this.#shelf;
    for (let i = 1; ; i++) {
      const end = i === 1 ? ending : `${ending} ${i}`;
      const free = shortened(name, DECK_LIMITS.name - end.length) + end;
      if (all.every((deck) => deck.name !== free)) return free;
    }
  }
}
