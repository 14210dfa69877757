import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { breather } from "../../../renderer/platform/breather";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["performance", "setTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});

describe("long work", () => {
  it("goes on at once for ten milliseconds, then lets others in", async () => {
    const breathe = breather();
    vi.advanceTimersByTime(9);
    await breathe();
    expect(vi.getTimerCount()).toBe(0);
    vi.advanceTimersByTime(1);
    const done = vi.fn();
    const rest = breathe().then(done);
    await Promise.resolve();
    expect(done).not.toHaveBeenCalled();
    expect(vi.getTimerCount()).toBe(1);
    await vi.runAllTimersAsync();
    await rest;
    await breathe();
    expect(vi.getTimerCount()).toBe(0);
  });
});
