/**
 * The library that fits weights, in Node: the same compiled code as in the
 * window's worker, so that a simulation fits what a learner would get.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Trainer } from "../../core/memory/fit";

/** What the library's helper for threads listens on; we start none. */
const NOBODY = { addEventListener: () => undefined };

/** Loads the library; what it prints while fitting is not passed on. */
export async function loadTrainer(): Promise<Trainer> {
  // Other libraries in one process may have made a `self` that hears nothing.
  const { self } = globalThis as { self?: { addEventListener?: unknown } };
  if (typeof self?.addEventListener !== "function")
    Object.defineProperty(globalThis, "self", {
      configurable: true,
      writable: true,
      value: NOBODY,
    });
  const { Fsrs, initSync } = await import("fsrs-browser");
  const file = createRequire(import.meta.url).resolve(
    "fsrs-browser/fsrs_browser_bg.wasm",
  );
  initSync({ module: readFileSync(file) });
  return ({ ratings, days, lengths }) =>
    quietly(() =>
      new Fsrs().computeParameters(ratings, days, lengths, null, true),
    );
}

function quietly<T>(work: () => T): T {
  const { log, info, debug } = console;
  const silent = () => undefined;
  Object.assign(console, { log: silent, info: silent, debug: silent });
  try {
    return work();
  } finally {
    Object.assign(console, { log, info, debug });
  }
}
