/** A case that has been answered, while the learner looks at what came of it. */
import type { Diagnosis } from "../../../core/answer/diagnose";
import type { Outcome } from "../../../core/memory/grade";
import type { Review } from "../../../core/memory/review";
import type { Memory } from "../../../core/memory/schedule";
import type { StorageError } from "../../storage/storage-error";
import type { CaseAttempt } from "./case-attempt.svelte";
import type { GivenAnswer } from "./given-answer";
import type { MyCubeAttempt } from "./my-cube-attempt.svelte";

/** An attempt, whichever way it is answered. */
export type Attempt = CaseAttempt | MyCubeAttempt;

/** What came of an attempt, and whether it is stored. */
export class AnsweredCase {
  readonly attempt: Attempt;
  readonly given: GivenAnswer;
  readonly review: Review;
  /** What went wrong; empty where nothing did, or the turns were not seen. */
  readonly diagnosis: Diagnosis;
  readonly outcome: Outcome;
  /** What the learner took for it before, thinking where this answer has that; undefined: not known yet. Units: milliseconds. */
  readonly usual: number | undefined;
  /** The memory of the case before this answer. */
  readonly before: Memory | undefined;
  /** The review's id, once it is stored for good. */
  acknowledged: string | undefined = $state();
  /** Why it could not be stored. */
  trouble: StorageError | undefined = $state.raw();

  constructor(
    attempt: Attempt,
    given: GivenAnswer,
    {
      review,
      diagnosis,
      outcome,
      usual,
    }: {
      review: Review;
      diagnosis: Diagnosis;
      outcome: Outcome;
      usual: number | undefined;
    },
    before: Memory | undefined,
  ) {
    this.attempt = attempt;
    this.given = given;
    this.review = review;
    this.diagnosis = diagnosis;
    this.outcome = outcome;
    this.usual = usual;
    this.before = before;
  }
}
