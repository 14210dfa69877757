import { describe, expect, it } from "vitest";
import { keptRuns, RUN_COLUMNS } from "../../../core/backup/run-export";
import { tableRows } from "../../../core/backup/table";
import type { Run, RunRow } from "../../../core/runs/run";
import { ms } from "../memory/sample-review";
import { sampleRun } from "../runs/sample-run";
import { asTold, toldInReadme } from "./readme-table";

const FULL: Run = {
  ...sampleRun(),
  mix: "R U F2",
  inspection: ms(9000),
  splits: [ms(4000), ms(9000)],
  wasHidden: true,
};

/** A run's cells by the name of their column. */
function cellsOf(rows: readonly RunRow[], n = 0) {
  const [names = [], ...entries] = tableRows(RUN_COLUMNS, keptRuns(rows));
  return Object.fromEntries(
    names.map((name, i) => [String(name), entries[n]?.[i]]),
  );
}

describe("runs as a table", () => {
  it("has every field of a run under its name", () => {
    const { ended, struckOut, ...cells } = cellsOf([FULL]);
    expect(cells).toEqual({ ...FULL, splits: "4000 9000" });
    expect(ended).toBe(new Date(FULL.at).toISOString());
    expect(struckOut).toBe("");
  });

  it("leaves empty what was not measured", () => {
    const { mix, inspection, wasHidden, ...rest } = FULL;
    expect(cellsOf([rest])).toMatchObject({
      ...{ mix: "", inspection: "", wasHidden: "" },
      splits: "4000 9000",
    });
    expect([mix, inspection, wasHidden]).not.toContain(undefined);
  });

  it("has the runs oldest first, with those that are struck out", () => {
    const early = { ...FULL, id: "early", at: ms(FULL.at - 1000) };
    const strike = {
      ...{ id: "strike", learner: FULL.learner },
      ...{ at: ms(FULL.at + 1), strikes: "early" },
    };
    const rows = [FULL, strike, early];
    expect(keptRuns(rows)).toHaveLength(2);
    expect(cellsOf(rows, 0)).toMatchObject({ id: "early", struckOut: true });
    expect(cellsOf(rows, 1)).toMatchObject({ id: FULL.id, struckOut: "" });
  });

  it("is told in README as it is, field by field", () => {
    expect(toldInReadme("Whole runs")).toEqual(asTold(RUN_COLUMNS));
  });
});
