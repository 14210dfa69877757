/**
 * A block of results: what one learner shared at one time, as it was read.
 *
 * Blocks are the whole of what machines tell each other. One is written once,
 * named by the digest of its bytes and never changed, so no machine has to
 * know of another: whoever has the same set of blocks has the same results, in
 * whatever order, how often and under whatever names they came.
 */
import type { Milliseconds } from "../memory/review";
import type { AnswerLine } from "./shared-answer";

/** Answers that a learner shared. */
export interface AnswersBlock {
  readonly kind: "answers";
  readonly learner: string;
  /** The name under which they share. */
  readonly name: string;
  /** When it was made, UTC; strictly rising with each block of a learner. */
  readonly madeAt: Milliseconds;
  readonly answers: readonly AnswerLine[];
}

/** The learner takes back every block of theirs that was made until then, whichever comes first. */
export interface WithdrawnBlock {
  readonly kind: "withdrawn";
  readonly learner: string;
  readonly madeAt: Milliseconds;
}

/** See above. */
export type ResultsBlock = AnswersBlock | WithdrawnBlock;

/** A block under its id. */
export interface NamedBlock {
  /** The SHA-256 of the file's bytes. Shape: 64 hexadecimal digits, lower case. */
  readonly id: string;
  readonly block: ResultsBlock;
}

/** Whether one block was made after another; of two made at once, the one with the greater id. */
export function isMadeAfter(
  a: { readonly madeAt: number; readonly id: string },
  b: { readonly madeAt: number; readonly id: string },
): boolean {
  return a.madeAt !== b.madeAt ? a.madeAt > b.madeAt : a.id > b.id;
}
