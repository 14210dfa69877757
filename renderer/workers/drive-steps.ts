import type { Milliseconds } from "../../core/memory/review";
import type { Steps } from "../../core/steps";

/** How long work goes on at a time, and what lets other things happen in between. */
export interface Slicing {
  readonly slice: Milliseconds;
  /** A clock that only runs forward. */
  readonly runningTime: () => Milliseconds;
  /** Resolves when whatever waited has had its turn. */
  readonly pause: () => Promise<void>;
}

/**
 * Drives work in slices to its end, or until it is cancelled; then undefined.
 *
 * Errors: what the work throws.
 */
export async function driveSteps<T extends object>(
  steps: Steps<T>,
  slicing: Slicing,
  signal: AbortSignal,
  onprogress: (progress: number) => void,
): Promise<T | undefined> {
  for (;;) {
    const end = slicing.runningTime() + slicing.slice;
    let step = steps.next();
    while (step.done !== true && slicing.runningTime() < end)
      step = steps.next();
    if (step.done === true) return step.value;
    onprogress(step.value);
    await slicing.pause();
    if (signal.aborted) return undefined;
  }
}
