import type { CaseId } from "../cases/case-ids";

/** One case of a deck, as its coach wants it answered. */
export interface DeckCase {
  readonly case: CaseId;
  /** What a whole answer should take. Units: seconds. */
  readonly target: number;
}

/** An ordered selection of cases with targets. */
export interface Deck {
  /** Stored in logs and settings: never renamed. */
  readonly id: string;
  readonly name: string;
  /** One line that says what is in it. */
  readonly description: string;
  /** In the order in which they are learnt; no case twice. */
  readonly cases: readonly DeckCase[];
  /** How many cases that the learner has not met come into one round. */
  readonly newPerRound: number;
}
