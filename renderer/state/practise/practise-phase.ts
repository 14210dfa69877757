/** What the place to practise shows. */
import type { Milliseconds } from "../../../core/memory/review";
import type { Round } from "../../../core/memory/round";
import type { StorageError } from "../../storage/storage-error";
import type { AnsweredCase, Attempt } from "./answered-case.svelte";

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
  | {
      readonly kind: "summary";
      readonly round: Round;
      /** Whether a round that was put aside waits to go on. */
      readonly waiting: boolean;
    };

/** What is on the desk, asked or answered. */
export function attemptIn(phase: PractisePhase): Attempt | undefined {
  if (phase.kind === "case") return phase.attempt;
  return phase.kind === "answered" ? phase.answered.attempt : undefined;
}
