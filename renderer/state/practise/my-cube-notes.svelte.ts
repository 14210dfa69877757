/**
 * What is noted of an answer on the learner's own cube while it lasts. The app
 * does not see the turns: it hears when the case was seen, when the learner
 * knew it and was done, and what help they asked for.
 *
 * Units: milliseconds; what is given is of the page's running time, what is
 * noted counts from when the case was seen.
 */
import type { AnswerEvent } from "../../../core/answer/measure";
import { type Hint, HINTS } from "../../../core/memory/review";

/** The notes of one attempt. */
export class MyCubeNotes {
  #events: readonly AnswerEvent[] = [];
  #seenAt: number | undefined;
  #hints: readonly Hint[];

  /** Shape: `hints` is the help asked for before the case was begun anew. */
  constructor(hints: readonly Hint[]) {
    this.#hints = $state.raw(hints);
  }

  get events(): readonly AnswerEvent[] {
    return this.#events;
  }

  /** Help asked for so far, in order. */
  get hints(): readonly Hint[] {
    return this.#hints;
  }

  /** The help that comes next; undefined: the whole way was shown. */
  get nextHint(): Hint | undefined {
    return HINTS[this.#hints.length];
  }

  /** The learner has seen the case: time counts from here. */
  seen(at: number): void {
    this.#seenAt = at;
    this.#note({ kind: "seen", at: 0 });
  }

  /** A turn of a way that is shown is made: time counts from the first. */
  shownTurn(at: number): void {
    this.#seenAt ??= at;
  }

  /** The learner knows what it is. */
  known(at: number): void {
    this.#note({ kind: "know", at: this.#since(at) });
  }

  /** The learner is done turning. */
  done(at: number): void {
    this.#note({ kind: "done", at: this.#since(at) });
  }

  /** The learner is helped one step further, short of the whole way. */
  hinted(hint: Exclude<Hint, "whole-way">, at: number): void {
    this.#hints = [...this.#hints, hint];
    this.#note({ kind: "hint", hint, at: this.#since(at) });
  }

  /** The learner wants to see the whole way. */
  shownTheWay(at: number): void {
    this.#hints = [...this.#hints, "whole-way"];
    this.#note({ kind: "show-me", at: this.#since(at) });
  }

  /** The case is set up again: what was noted was of no answer. Help stays asked for. */
  startOver(): void {
    this.#events = [];
    this.#seenAt = undefined;
  }

  /** Before the case was seen no time has passed. */
  #since(at: number): number {
    return at - (this.#seenAt ?? at);
  }

  #note(event: AnswerEvent): void {
    this.#events = [...this.#events, event];
  }
}
