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

/** After so many more answers it is tried again by itself: fewer hardly change what comes of it. */
export const TRY_AGAIN_AFTER = 200;

/** Why a fit came to nothing, unless somebody stopped it. */
export type FitTrouble =
  Exclude<FitError, { readonly code: "cancelled" }> | StorageError;

/** What of a learner says whether a fit is worth trying. */
export type FitCandidate = Pick<
  LearnerState,
  "learner" | "memories" | "settings"
>;

/** How many answers the model can be fitted to: those of days after a case was first met. */
export function answersToFit({
  memories,
}: Pick<FitCandidate, "memories">): number {
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

/** The one fit under way in this window: that of the learner at the desk. */
export class FitDesk {
  readonly #fit: typeof fitInWorker;
  #under: AbortController | undefined;
  /** Whose fit was stopped or failed: it waits until it is asked for, or the app is started again. */
  #leftAlone: readonly string[] = [];
  /** How far it has come, 0–1; undefined: none is under way. */
  progress: number | undefined = $state();
  /** Why the last one came to nothing. */
  trouble: FitTrouble | undefined = $state.raw();

  constructor(fit: typeof fitInWorker = fitInWorker) {
    this.#fit = fit;
  }

  /** Whether it is worth trying by itself: enough answers, and enough new ones since the last time. */
  isDue({ learner, memories, settings }: FitCandidate): boolean {
    const tried = settings.fit?.tried.answers;
    const wanted =
      tried === undefined
        ? LEAST_ANSWERS
        : Math.max(LEAST_ANSWERS, tried + TRY_AGAIN_AFTER);
    return (
      this.#under === undefined &&
      !this.#leftAlone.includes(learner.id) &&
      answersToFit({ memories }) >= wanted
    );
  }

  /** Begins a fit where one is due. Returns whether it has. */
  startIfDue(learner: LearnerState): boolean {
    const isDue = this.isDue(learner);
    if (isDue) void this.start(learner);
    return isDue;
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
      onprogress: (progress) => {
        if (this.#under === under) this.progress = progress;
      },
    });
    if (this.#under !== under) return;
    const kept = fitted.ok ? await keep(learner, fitted.value) : fitted;
    if (this.#under !== under) return;
    this.#under = undefined;
    this.progress = undefined;
    if (kept.ok || kept.error.code === "cancelled") return;
    this.#leftAlone = [...this.#leftAlone, learner.learner.id];
    this.trouble = kept.error;
  }

  /** Ends the learner's fit under way, because they want it so; nothing is changed. */
  stop({ learner }: Pick<FitCandidate, "learner">): void {
    this.#leftAlone = [...this.#leftAlone, learner.id];
    this.leave();
  }

  /** Ends the fit under way: its learner leaves the desk. */
  leave(): void {
    const under = this.#under;
    this.#under = undefined;
    this.progress = undefined;
    this.trouble = undefined;
    under?.abort();
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
