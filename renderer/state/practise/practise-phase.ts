/** What the place to practise shows. */
import type { Milliseconds } from "../../../core/memory/review";
import type { Round, RoundItem } from "../../../core/memory/round";
import type { StorageError } from "../../storage/storage-error";
import type { AnsweredChoice } from "./answered-choice.svelte";
import type { AnsweredCase, Attempt } from "./answered-case.svelte";
import type { ChoiceAttempt } from "./choice-attempt.svelte";

/** What the place shows. */
export type PractisePhase =
  | { readonly kind: "opening" }
  /** Another window practises as this learner. */
  | { readonly kind: "elsewhere"; readonly since: Milliseconds | undefined }
  | { readonly kind: "trouble"; readonly error: StorageError }
  /** What today brings, or that nothing does. */
  | { readonly kind: "today" }
  | { readonly kind: "case"; readonly attempt: Attempt }
  | { readonly kind: "answered"; readonly answered: AnsweredCase }
  /** To be answered by choosing. */
  | { readonly kind: "question"; readonly attempt: ChoiceAttempt }
  | { readonly kind: "chosen"; readonly answered: AnsweredChoice }
  | {
      readonly kind: "summary";
      readonly round: Round;
      /** Whether a round that was put aside waits to go on. */
      readonly waiting: boolean;
    };

/** What is on the desk to be turned, asked or answered. */
export function attemptIn(phase: PractisePhase): Attempt | undefined {
  if (phase.kind === "case") return phase.attempt;
  return phase.kind === "answered" ? phase.answered.attempt : undefined;
}

/** What was answered and lies on the desk, however it was answered. */
export function answeredIn(
  phase: PractisePhase,
): AnsweredCase | AnsweredChoice | undefined {
  return phase.kind === "answered" || phase.kind === "chosen"
    ? phase.answered
    : undefined;
}

/** What of the round is on the desk, asked or answered, however it is answered. */
export function itemIn(phase: PractisePhase): RoundItem | undefined {
  return phase.kind === "question"
    ? phase.attempt.item
    : (answeredIn(phase)?.attempt ?? attemptIn(phase))?.item;
}

/** Whether something of the round is on the desk. */
export function isAtWork(phase: PractisePhase): boolean {
  return itemIn(phase) !== undefined;
}
