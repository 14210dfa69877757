import { describe, expect, it } from "vitest";
import type { BackupTable } from "../../../core/backup/backup-line";
import { backupWriter } from "../../../core/backup/backup-writer";
import { readLines, sampleLines } from "./sample-backup";

const SHEET = { code: "ACEFHJKM", deck: "club", more: 1 };
const OWL = { id: "ann", nickname: "Owl" };
const BLOCK = { id: "b1", learner: "ann", kind: "answers" };

type Row = readonly ["sheet" | "classmate" | "heard", BackupTable, unknown];

const ROWS: readonly Row[] = [
  ["sheet", "sheets", SHEET],
  ["classmate", "classmates", OWL],
  ["heard", "heard", { row: BLOCK, part: 0, parts: 2, answers: [1] }],
  ["heard", "heard", { row: BLOCK, part: 1, parts: 2, answers: [2, 3] }],
];

/** The lines of a backup of nothing but these. */
function linesOf(rows: readonly Row[] = ROWS): string[] {
  const writer = backupWriter();
  const counts = { learners: 0, reviews: 0, decks: 0, runs: 0 };
  return [
    writer.header({ madeAt: 5, ...counts }),
    ...rows.map(([kind, table, content]) =>
      writer.row({ kind, content, table, key: "k" }),
    ),
    writer.end(),
  ].map((line) => line.trimEnd());
}

function contentsOf(lines: readonly string[], reviews = 10) {
  const read = readLines(lines, { lines: 20, reviews });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

describe("what a coach's machine has, in a backup", () => {
  it("comes back as it was written, the parts of a block as one", () => {
    const { sheets, classmates, heard } = contentsOf(linesOf());
    expect([...sheets]).toEqual([[SHEET.code, SHEET]]);
    expect([...classmates]).toEqual([["ann", OWL]]);
    expect([...heard]).toEqual([["b1", { ...BLOCK, answers: [1, 2, 3] }]]);
  });

  it("is carried as damaged where it has no place of its own", () => {
    const lines = linesOf([
      ["sheet", "sheets", { code: 7 }],
      ["classmate", "classmates", null],
      ["heard", "heard", { row: { id: "" }, part: 0, parts: 1 }],
    ]);
    const { damaged, sheets } = contentsOf(lines);
    expect(sheets.size).toBe(0);
    expect(damaged).toEqual([
      { table: "sheets", key: "k", row: '{"code":7}' },
      { table: "classmates", key: "k", row: "null" },
      {
        table: "heard",
        key: "k",
        row: '{"row":{"id":""},"part":0,"parts":1}',
      },
    ]);
  });

  it.each([
    ["sheets", 1, 1, 0],
    ["classmates", 2, 1, 0],
    ["heard", 3, 2, 1],
  ])("is missed by the last line: %s", (field, at, said, found) => {
    const lines = linesOf().toSpliced(at, 1);
    expect(readLines(lines)).toEqual({
      ok: false,
      error: { code: "wrong-counts", line: 5, field, said, found },
    });
  });

  it("that disagrees counts once, and that is told", () => {
    const [, sheet = "", , part = ""] = linesOf();
    const lines = linesOf().toSpliced(
      5,
      0,
      sheet.replace("club", "other"),
      part,
      part.replace("[1]", "[9]"),
      part.replace('"ann"', '"ben"'),
    );
    const end = JSON.stringify({
      end: {
        learners: 0,
        settings: 0,
        decks: 0,
        reviews: 0,
        damaged: 0,
        sheets: 2,
        classmates: 1,
        heard: 5,
      },
    });
    const { sheets, heard, conflicts } = contentsOf([
      ...lines.slice(0, -1),
      end,
    ]);
    expect(sheets.get(SHEET.code)).toEqual(SHEET);
    expect(heard.get("b1")).toMatchObject({ answers: [1, 2, 3] });
    expect(conflicts).toEqual([
      { kind: "sheet", id: SHEET.code, line: 6 },
      { kind: "heard", id: "b1", line: 8 },
      { kind: "heard", id: "b1", line: 9 },
    ]);
  });

  it("is no block where a part is not there, and that is counted", () => {
    const { heard, unfinished } = contentsOf(linesOf(ROWS.slice(0, 3)));
    expect([heard.size, unfinished]).toEqual([0, 1]);
  });

  it.each([
    ['{"sheet":{"code":""}}', "sheet.code", "out-of-range"],
    ['{"classmate":{}}', "classmate.id", "missing-field"],
    [
      '{"heard":{"row":{"id":"a"},"part":1,"parts":1}}',
      "heard",
      "contradiction",
    ],
    [
      '{"heard":{"row":{"id":"a"},"part":0,"parts":0}}',
      "heard.parts",
      "out-of-range",
    ],
    ['{"heard":{"row":7,"part":0,"parts":1}}', "heard.row", "wrong-type"],
  ])("%s refuses the file with its place", (line, field, problem) => {
    const [header = "", ...rest] = linesOf();
    expect(readLines([header, line, ...rest])).toEqual({
      ok: false,
      error: { code: "wrong-field", line: 2, field, problem },
    });
  });

  it("counts its answers among those that a backup may hold", () => {
    expect(contentsOf(linesOf(), 3).heard.size).toBe(1);
    expect(readLines(linesOf(), { lines: 20, reviews: 2 })).toEqual({
      ok: false,
      error: { code: "too-many-reviews", line: 5 },
    });
  });
});

describe("a backup of version 2 from before there were such lines", () => {
  it("is read: its last line does not name them, and it has none", () => {
    const old = sampleLines().map((line) =>
      line.replace(/,"sheets":0,"classmates":0,"heard":0/, ""),
    );
    expect(old.join("")).not.toContain("sheets");
    const { sheets, classmates, heard, reviews } = contentsOf(old);
    expect([sheets.size, classmates.size, heard.size]).toEqual([0, 0, 0]);
    expect(reviews.size).toBe(3);
  });
});
