/** Long work on the window's own thread, in slices that nobody notices. */
import type { Milliseconds } from "../../core/memory/review";
import type { Steps } from "../../core/steps";
import { driveSteps } from "../workers/drive-steps";
import { runningTime } from "./clock";

/** Half a frame: the window draws and answers between two. */
const SLICE = 8 as Milliseconds;

/** Drives work to its end in slices; undefined where it was given up. */
export function inSlices<T extends object>(
  steps: Steps<T>,
  signal: AbortSignal,
): Promise<T | undefined> {
  const pause = () =>
    new Promise<void>((resolve) => setTimeout(() => resolve()));
  return driveSteps(
    steps,
    { slice: SLICE, runningTime, pause },
    signal,
    () => undefined,
  );
}
