/**
 * The worker that finds set-ups: heavy work stays off the window's thread.
 */
import { runningTime } from "../platform/clock";
import type { Milliseconds } from "../../core/memory/review";
import { createSolverService } from "./solver-service";

/** Long enough to be worth its pause, short enough to be cancelled at once. */
const SLICE = 12 as Milliseconds;

// A message to oneself waits behind those that have come in; a timer of 0 ms
// would wait 4 ms more each time.
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

const service = createSolverService((reply) => self.postMessage(reply), {
  slice: SLICE,
  runningTime,
  pause: () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      channel.port2.postMessage(undefined);
    }),
});

self.addEventListener("message", (event: MessageEvent<unknown>) => {
  void service.receive(event.data);
});
