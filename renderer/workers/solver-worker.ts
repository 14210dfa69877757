/**
 * The worker for heavy work, which stays off the window's thread. One script,
 * run twice, told apart by the worker's name: a search for ways may go on for
 * half a minute, and must not hold up the set-ups that a learner waits for.
 */
import { runningTime } from "../platform/clock";
import type { Milliseconds } from "../../core/memory/review";
import { createSolverService } from "./solver-service";
import { WAY_FINDER } from "./way-finder-messages";
import { createWayFinderService } from "./way-finder-service";

/** Long enough to be worth its pause, short enough to be cancelled at once. */
const SLICE = 12 as Milliseconds;

// A message to oneself waits behind those that have come in; a timer of 0 ms
// would wait 4 ms more each time.
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

const slicing = {
  slice: SLICE,
  runningTime,
  pause: () =>
    new Promise<void>((resolve) => {
      waiting.push(resolve);
      channel.port2.postMessage(undefined);
    }),
};

const service =
  self.name === WAY_FINDER
    ? createWayFinderService((reply) => self.postMessage(reply), slicing)
    : createSolverService((reply) => self.postMessage(reply), slicing);

self.addEventListener("message", (event: MessageEvent<unknown>) => {
  void service.receive(event.data);
});
