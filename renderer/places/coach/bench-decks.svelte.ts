/**
 * How decks come onto the bench and leave it: chosen, made, copied, taken in
 * from a file, deleted. The focus goes along, since the button that brought a
 * deck here is gone with the deck before.
 */
import type { Deck } from "../../../core/deck/deck";
import { ok } from "../../../core/result";
import type { AppState } from "../../state/app-state.svelte";
import type { DeckStep } from "../../state/deck-bench.svelte";
import { DECK_START, focusOn } from "./bench-work.svelte";

/** The decks of the bench of one page. Made while the page's component is. */
export class BenchDecks {
  readonly #app: AppState;
  readonly #deck: () => Deck;
  /** The id stays the same where the deck does not. */
  readonly #onBench: string = $derived.by(() => this.#deck().id);
  /** Whether the list of decks stands where the deck was. */
  isChoosing: boolean = $state(false);
  /** The deck of which is asked whether it goes. */
  deleting: Deck | undefined = $state.raw();
  #takenId: string | undefined = $state();
  #isArriving = false;

  /** Shape: `deck` gives the deck that is on the bench. */
  constructor(app: AppState, deck: () => Deck) {
    this.#app = app;
    this.#deck = deck;
    $effect(() => {
      if (this.#onBench !== "" && this.#isArriving) void focusOn(DECK_START);
      this.#isArriving = false;
    });
  }

  /** Id of the deck on the bench. */
  get onBench(): string {
    return this.#onBench;
  }

  /** Whether the deck on the bench is the one that was taken in last. */
  get isTakenIn(): boolean {
    return this.#takenId === this.#onBench;
  }

  /** A deck is coming onto the bench; the focus follows it. */
  arrive(arriving: string): void {
    this.isChoosing = false;
    if (arriving === this.#deck().id) void focusOn(DECK_START);
    else this.#isArriving = true;
  }

  #show(shown: Deck): void {
    this.arrive(shown.id);
    this.#app.route.go({ place: "coach", deck: shown.id });
  }

  /** Makes a new deck. */
  async create(): Promise<void> {
    const made = await this.#app.bench.create();
    if (made.ok) this.#show(made.value);
  }

  /** Copies a deck, and makes a step on the copy where one is given. */
  async copy(original: Deck, step?: DeckStep): Promise<void> {
    const made = await this.#app.bench.copy(original, step);
    if (made.ok) this.#show(made.value);
  }

  /** Makes the copy that was offered before a change. */
  async copyOffered(): Promise<void> {
    const { bench } = this.#app;
    const { offered } = bench;
    bench.offered = undefined;
    if (offered !== undefined) await this.copy(offered.deck, offered.step);
  }

  /** Takes the deck of a file in: as a new one, or as a change to the one with its id. */
  async take(taken: Deck): Promise<void> {
    const { bench, decks } = this.#app;
    const isHere = decks.find(taken.id) !== undefined;
    const kept = isHere
      ? bench.edit(taken.id, { label: "file", edit: () => ok(taken) })
      : await bench.takeIn(taken);
    if (!kept.ok) return;
    this.#takenId = taken.id;
    this.#show(taken);
  }

  /** Deletes the deck of which was asked. */
  async delete(): Promise<void> {
    const gone = this.deleting;
    this.deleting = undefined;
    if (gone !== undefined && (await this.#app.bench.remove(gone))) {
      this.#isArriving = true;
      this.#app.route.go({ place: "coach" });
    }
  }
}
