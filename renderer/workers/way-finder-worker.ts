/**
 * The worker that looks for ways. Not the solver's: a search of half a minute
 * would hold up the set-ups that a learner waits for.
 */
import type { Milliseconds } from "../../core/memory/review";
import { runningTime } from "../platform/clock";
import { createWayFinderService } from "./way-finder-service";

/** Long enough to be worth its pause, short enough to be cancelled at once. */
const SLICE = 24 as Milliseconds;

const service = createWayFinderService((reply) => self.postMessage(reply), {
  slice: SLICE,
  runningTime,
  pause: () => new Promise((resolve) => setTimeout(resolve)),
});

self.addEventListener("message", (event: MessageEvent<unknown>) => {
  void service.receive(event.data);
});
