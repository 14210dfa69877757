/**
 * One question that is answered by choosing. It ends with the first choice:
 * nothing can be taken back, or the choices would be tried out.
 */
import type { RecognisingQuestion } from "../../../core/answer/recognising-question";
import type { Position } from "../../../core/cases/position";
import type { RoundItem } from "../../../core/memory/round";
import { choiceLookFrom } from "./choice-pictures";
import { LookAround } from "./look-around.svelte";

/** What was chosen, and when. */
export interface Chosen {
  /** The index of the choice. */
  readonly choice: number;
  /** Since the question was shown. Units: milliseconds. */
  readonly total: number;
  /** How often the learner looked underneath, behind or around. */
  readonly looks: number;
}

/** What a question is begun with. */
export interface ChoiceStart {
  readonly item: RoundItem;
  readonly position: Position;
  readonly question: RecognisingQuestion;
  readonly onchosen: (chosen: Chosen) => void;
}

/** A question while it lasts. Times given to it are of the page's running time. */
export class ChoiceAttempt {
  readonly item: RoundItem;
  readonly position: Position;
  readonly question: RecognisingQuestion;
  /** Where the learner looks from. */
  readonly looking: LookAround;
  readonly #onchosen: (chosen: Chosen) => void;
  #shownAt: number | undefined;
  #looks = 0;
  #hasEnded = false;

  constructor({ item, position, question, onchosen }: ChoiceStart) {
    this.item = item;
    this.position = position;
    this.question = question;
    this.#onchosen = onchosen;
    this.looking = new LookAround(
      choiceLookFrom(question, position),
      () => (this.#looks += 1),
    );
  }

  /** The frame after the picture was in the page: from here time counts. */
  caseShown(at: number): void {
    this.#shownAt ??= at;
  }

  /** Takes a choice; one that is not there is none. */
  choose(choice: number, at: number): void {
    if (this.#hasEnded || choice < 0) return;
    if (choice >= this.question.choices.length) return;
    this.#hasEnded = true;
    this.#onchosen({
      choice,
      total: Math.max(0, at - (this.#shownAt ?? at)),
      looks: this.#looks,
    });
  }
}
