import { describe, expect, it } from "vitest";
import { BACKUP_VERSION } from "../../../core/backup/backup-line";
import { backupWriter } from "../../../core/backup/backup-writer";
import { ms, sampleRun } from "../runs/sample-run";
import { ANN, readLines, sampleLines } from "./sample-backup";

const RUN = sampleRun();
const STRIKE = { id: "strike", learner: ANN.id, at: ms(7), strikes: RUN.id };
const TORN = { id: "torn", learner: ANN.id };

/** The lines of a backup of nothing but runs. */
function linesOf(...runs: readonly unknown[]): string[] {
  const writer = backupWriter();
  const counts = { learners: 0, reviews: 0, decks: 0, runs: runs.length };
  return [
    writer.header({ madeAt: 5, ...counts }),
    ...runs.map((content) =>
      writer.row({ kind: "run", content, table: "runs", key: "k" }),
    ),
    writer.end(),
  ].map((line) => line.trimEnd());
}

describe("whole runs in a backup", () => {
  it("come back as they were written, a damaged one as text", () => {
    const newer = { ...RUN, mood: "good" };
    const read = readLines(linesOf(newer, STRIKE, TORN));
    if (!read.ok) throw new Error(read.error.code);
    expect(read.value.header).toMatchObject({ version: 2, readableFrom: 2 });
    expect([...read.value.runs.values()]).toEqual([newer, STRIKE]);
    expect(read.value.damaged).toEqual([
      { table: "runs", key: "k", row: JSON.stringify(TORN) },
    ]);
  });

  it("that disagree count once, and that is told", () => {
    const read = readLines(linesOf(RUN, { ...RUN, time: 1 }));
    if (!read.ok) throw new Error(read.error.code);
    expect([...read.value.runs.values()]).toEqual([RUN]);
    expect(read.value.conflicts).toEqual([
      { kind: "run", id: RUN.id, line: 3 },
    ]);
  });

  it.each([
    [{ ...RUN, time: -1 }, "run.time"],
    [{ ...RUN, id: 7 }, "run.id"],
  ])("%j refuse the file with their place", (run, field) => {
    const [header = "", , end = ""] = linesOf(RUN);
    const read = readLines([header, JSON.stringify({ run }), end]);
    expect(read).toMatchObject({
      ok: false,
      error: { code: "wrong-field", line: 2, field },
    });
  });

  it("that are lost on the way are missed, by the last line and by the first", () => {
    const [header = "", run = "", strike = "", end = ""] = linesOf(RUN, STRIKE);
    expect(readLines([header, run, end])).toEqual({
      ok: false,
      error: {
        code: "wrong-counts",
        line: 3,
        field: "runs",
        said: 2,
        found: 1,
      },
    });
    const one = end.replace('"runs":2', '"runs":1');
    expect(readLines([header, run, one])).toEqual({
      ok: false,
      error: {
        code: "wrong-counts",
        line: 1,
        field: "runs",
        said: 2,
        found: 1,
      },
    });
    expect(readLines([header, run, strike, end]).ok).toBe(true);
  });
});

describe("a backup of version 1", () => {
  it("is read: it counts no runs, and has none", () => {
    const old = sampleLines().map((line) =>
      line.replace('"version":2', '"version":1').replace(/,"runs":0/, ""),
    );
    expect(old.join("")).not.toContain("runs");
    const read = readLines(old);
    expect(read.ok && read.value.runs.size).toBe(0);
    expect(read.ok && read.value.reviews.size).toBe(3);
  });
});

describe("Turnwise with backups of version 1", () => {
  it("is told by the first line that it cannot read what is written now", () => {
    const [header = ""] = linesOf(RUN);
    // Its rule: a file is refused where `readableFrom` is above its own version.
    const { readableFrom } = JSON.parse(header) as { readableFrom: number };
    expect(readableFrom).toBeGreaterThan(1);
    expect(BACKUP_VERSION).toBe(2);
  });
});
