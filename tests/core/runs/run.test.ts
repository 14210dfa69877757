import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  RUN_KINDS,
  RUN_PARTS,
  type RunRow,
  standingRuns,
  timedParts,
} from "../../../core/runs/run";
import { parseRunRow } from "../../../core/runs/run-schema";
import { ms, sampleRun } from "./sample-run";

const STRIKE = {
  id: "strike-1",
  learner: sampleRun().learner,
  at: ms(1_800_000_100_000),
  strikes: "run-1",
};

describe("the parts of a run", () => {
  it("take as long together as the run, however many taps were made", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...RUN_KINDS),
        fc.array(fc.nat(100_000), { maxLength: 8 }),
        (kind, instants) => {
          const [time = 0, ...rest] = [...instants].sort((a, b) => b - a);
          const splits = rest
            .slice(0, RUN_PARTS[kind].length - 1)
            .reverse()
            .map(ms);
          const parts = timedParts({ kind, splits, time: ms(time) });
          expect(parts.reduce((sum, part) => sum + part.time, 0)).toBe(time);
          expect(parts.flatMap((part) => part.parts)).toEqual(RUN_PARTS[kind]);
        },
      ),
    );
  });

  it("that were not tapped apart are one", () => {
    expect(
      timedParts({ kind: "solve", splits: [ms(4000)], time: ms(9500) }),
    ).toEqual([
      { parts: ["cross"], time: 4000 },
      { parts: ["corners", "second-layer", "last-layer"], time: 5500 },
    ]);
  });
});

describe("runs that count", () => {
  it("are those that are not struck out, oldest first, in whatever order the rows come", () => {
    const older = sampleRun({ id: "older", at: ms(1_799_999_999_000) });
    const newer = sampleRun({ id: "newer", at: ms(1_800_000_200_000) });
    const rows: RunRow[] = [sampleRun(), newer, older, older, STRIKE];
    fc.assert(
      fc.property(
        fc.shuffledSubarray(rows, { minLength: rows.length }),
        (some) => {
          expect(standingRuns(some)).toEqual([older, newer]);
        },
      ),
    );
  });
});

describe("a stored run", () => {
  it("comes back as it was kept, with what a newer version added", () => {
    const run = {
      ...sampleRun({
        mix: "R U' F2",
        inspection: ms(9000),
        splits: [ms(1), ms(2)],
        wasHidden: true,
      }),
      mood: "good",
    };
    expect(parseRunRow(run)).toEqual({ ok: true, value: run });
    expect(parseRunRow(STRIKE)).toEqual({ ok: true, value: STRIKE });
  });

  it.each([
    [7, "wrong-type", ""],
    [{ ...sampleRun(), time: undefined }, "missing-field", "time"],
    [{ ...sampleRun(), kind: "half" }, "unknown-value", "kind"],
    [{ ...sampleRun(), time: -1 }, "out-of-range", "time"],
    [{ ...sampleRun(), id: "" }, "out-of-range", "id"],
    [{ ...sampleRun(), splits: [9, 3] }, "contradiction", ""],
    [{ ...sampleRun(), splits: [12_346] }, "contradiction", ""],
    [{ ...sampleRun(), splits: [1, 2, 3, 4, 5] }, "contradiction", ""],
    [{ ...STRIKE, strikes: 7 }, "wrong-type", "strikes"],
    [{ ...STRIKE, at: Number.NaN }, "wrong-type", "at"],
  ])("%j is refused as %s at “%s”", (row, code, field) => {
    expect(parseRunRow(row)).toEqual({ ok: false, error: { code, field } });
  });
});
