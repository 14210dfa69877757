/**
 * Fitting the memory model to whoever is at the desk: when it is worth trying,
 * how far it has come, and what became of it. The work is a worker's.
 */
import type { FitOutcome } from "../../core/memory/fit";
import { LEAST_ANSWERS } from "../../core/memory/fit";
import { ok, type Result } from "../../core/result";
import type { StorageError } from "../storage/storage-error";
import { type FitError, fitInWorker } from "../workers/fit-client";
import { fitRequest } from "../workers/fit-messages";
import type { LearnerState } from "./learner.svelte";
import type { StoredFit } from "./learner-settings";

/** After so many more answers it is tried again: fewer hardly change what comes of it. */
const TRY_AGAIN_AFTER = 200;

/** Why a fit ended without an outcome that is kept. */
export type FitTrouble = FitError | StorageError;

/** How many answers the model can be fitted to: those of days after a case was first met. */
export function answersToFit({
  memories,
}: Pick<LearnerState, "memories">): number {
  let count = 0;
  for (const { days } of memories.values()) count += days - 1;
  return count;
}

/** What is stored of an outcome; undefined where there were too few answers to try. */
export function storedFit(
  before: StoredFit | undefined,
  outcome: FitOutcome,
  weightsVersion: number,
): StoredFit | undefined {
  if (outcome.kind === "too-few") return undefined;
  const { kind, answers, lossBefore, lossAfter, weights } = outcome;
  const isTaken = kind === "fitted";
  const gain = 1 - lossAfter / lossBefore;
  return {
    ...before,
    weightsVersion: isTaken ? weightsVersion + 1 : weightsVersion,
    ...(weights === undefined ? {} : { weights: [...weights] }),
    tried: { answers, isTaken, gain: Number.isFinite(gain) ? gain : -1 },
  };
}

/** The one fit under way in this window. */
export class FitDesk {
  readonly #fit: typeof fitInWorker;
  #under: AbortController | undefined;
  /** How far it has come, 0–1; undefined: none is under way. */
  progress: number | undefined = $state();
  /** Why the last one came to nothing. */
  trouble: FitTrouble | undefined = $state.raw();

  constructor(fit: typeof fitInWorker = fitInWorker) {
    this.#fit = fit;
  }

  /** Whether it is worth trying by itself: enough answers, and enough new ones since the last time. */
  isDue(learner: LearnerState): boolean {
    const tried = learner.settings.fit?.tried.answers;
    const wanted =
      tried === undefined
        ? LEAST_ANSWERS
        : Math.max(LEAST_ANSWERS, tried + TRY_AGAIN_AFTER);
    return this.progress === undefined && answersToFit(learner) >= wanted;
  }

  /** Fits, and takes the new weights where they foretell better. One at a time: a second call does nothing. */
  async start(learner: LearnerState): Promise<void> {
    if (this.#under !== undefined) return;
    const under = new AbortController();
    this.#under = under;
    this.trouble = undefined;
    this.progress = 0;
    const inUse = learner.settings.fit?.weights;
    const fitted = await this.#fit(fitRequest(learner.answers, inUse), {
      signal: under.signal,
      onprogress: (progress) => (this.progress = progress),
    });
    const kept = fitted.ok ? await keep(learner, fitted.value) : fitted;
    this.#under = undefined;
    this.progress = undefined;
    if (!kept.ok && kept.error.code !== "cancelled") this.trouble = kept.error;
  }

  /** Ends the fit under way; nothing is changed. */
  cancel(): void {
    this.#under?.abort();
  }
}

async function keep(
  learner: LearnerState,
  outcome: FitOutcome,
): Promise<Result<void, FitTrouble>> {
  const { weightsVersion, settings } = learner;
  const fit = storedFit(settings.fit, outcome, weightsVersion);
  return fit === undefined ? ok(undefined) : learner.changeSettings({ fit });
}
