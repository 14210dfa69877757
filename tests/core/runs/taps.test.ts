import { describe, expect, it } from "vitest";
import {
  BOUNCE,
  endRun,
  measuredRun,
  startRun,
  takeTapBack,
  tapRun,
} from "../../../core/runs/taps";

const PARTS = 3;

describe("taps of a run", () => {
  it("end a part each, and with the last part the run", () => {
    let run = startRun(1000);
    for (const at of [3000, 5500, 9250]) run = tapRun(run, at, PARTS);
    expect(measuredRun(run)).toEqual({ time: 8250, splits: [2000, 4500] });
  });

  it("measure nothing while it is under way", () => {
    expect(measuredRun(tapRun(startRun(0), 3000, PARTS))).toBeUndefined();
  });

  it("that bounce are one", () => {
    const run = startRun(1000);
    expect(tapRun(run, 1000 + BOUNCE - 1, PARTS)).toBe(run);
    expect(endRun(run, 1000 + BOUNCE - 1)).toBe(run);
    const once = tapRun(run, 2000, PARTS);
    expect(tapRun(once, 2000 + BOUNCE - 1, PARTS)).toBe(once);
    expect(tapRun(once, 2000 + BOUNCE, PARTS).splits).toHaveLength(2);
  });

  it("may end the run at once where pieces came together", () => {
    const run = endRun(tapRun(startRun(0), 3000, PARTS), 7000);
    expect(measuredRun(run)).toEqual({ time: 7000, splits: [3000] });
  });

  it("change nothing after the end", () => {
    const run = endRun(startRun(0), 7000);
    expect(tapRun(run, 9000, PARTS)).toBe(run);
    expect(endRun(run, 9000)).toBe(run);
  });

  it("are taken back as if nobody had tapped: the clock has run on", () => {
    let run = tapRun(startRun(0), 3000, PARTS);
    run = tapRun(run, 5000, PARTS);
    run = tapRun(takeTapBack(run), 6000, PARTS);
    run = takeTapBack(tapRun(run, 8000, PARTS));
    expect(measuredRun(run)).toBeUndefined();
    expect(measuredRun(tapRun(run, 11_000, PARTS))).toEqual({
      time: 11_000,
      splits: [3000, 6000],
    });
    expect(takeTapBack(startRun(5))).toEqual(startRun(5));
  });
});
