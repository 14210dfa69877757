import { afterEach, describe, expect, it, vi } from "vitest";
import { randomPosition } from "../../../core/cases/random-position";
import { SOLVED } from "../../../core/cube/cubies";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { err } from "../../../core/result";
import { randomSource } from "../../../core/random-source";
import { findSetUp } from "../../../renderer/state/practise/set-up-service";

/** A worker that breaks as soon as it is asked anything. */
class BrokenWorker extends EventTarget {
  static started = 0;

  constructor() {
    super();
    BrokenWorker.started += 1;
  }

  postMessage(): void {
    this.dispatchEvent(new ErrorEvent("error", { message: "it broke" }));
  }
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("asking for a set-up", () => {
  it("says why there is none, and starts another worker after one that failed", async () => {
    vi.stubGlobal("Worker", BrokenWorker);
    const cube = { cubies: SOLVED, hold: NO_ROTATION };
    const position = randomPosition(
      randomSource(1),
      "E1",
      { home: 1, seenFrom: 0, placed: [], turnedAway: 0 },
      "up",
    );
    for (const started of [1, 2]) {
      expect(await findSetUp(cube, position, 1)).toEqual(
        err({ code: "solver-failed", reason: "it broke" }),
      );
      expect(BrokenWorker.started).toBe(started);
    }
  });
});
