import { describe, expect, it } from "vitest";
import { LOG_COLUMNS } from "../../../core/backup/log-export";
import { tableRows } from "../../../core/backup/table";
import type { Review } from "../../../core/memory/review";
import { tableAsCsv } from "../../../renderer/storage/table-csv";
import { sampleReview } from "./sample-review";

/** By RFC 4180, letter by letter: quotes, doubled quotes, CRLF. */
function cellsOf(csv: string): readonly (readonly string[])[] {
  const rows: string[][] = [[""]];
  let quoted = false;
  for (let i = 0; i < csv.length; i += 1) {
    const letter = csv[i] ?? "";
    const row = rows[rows.length - 1] ?? [];
    const add = (text: string) => {
      row[row.length - 1] = `${row[row.length - 1] ?? ""}${text}`;
    };
    if (quoted && letter === '"' && csv[i + 1] === '"') {
      add('"');
      i += 1;
    } else if (letter === '"') quoted = !quoted;
    else if (!quoted && letter === ",") row.push("");
    else if (!quoted && csv.startsWith("\r\n", i)) {
      rows.push([""]);
      i += 1;
    } else add(letter);
  }
  return rows;
}

function cell(csv: string, name: string): string | undefined {
  const [names = [], first = []] = cellsOf(csv.replace("\uFEFF", ""));
  return first[names.indexOf(name)];
}

function logAsCsv(reviews: readonly Review[]): string {
  return tableAsCsv(tableRows(LOG_COLUMNS, reviews));
}

describe("a table as CSV", () => {
  it("is a row of names and a row for each answer, each with its line end", () => {
    const csv = logAsCsv([sampleReview(), sampleReview()]);
    expect(csv.startsWith("\uFEFFid,learner,at,time,")).toBe(true);
    const rows = cellsOf(csv);
    expect(rows).toHaveLength(4);
    expect(rows[3]).toEqual([""]);
    for (const row of rows.slice(0, 3))
      expect(row).toHaveLength(LOG_COLUMNS.length);
  });

  // Source: OWASP, "CSV Injection".
  it.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "=1\n2"])(
    "puts an apostrophe before text that begins like a formula: %j",
    (deck) => {
      expect(cell(logAsCsv([sampleReview({ deck })]), "deck")).toBe(`'${deck}`);
    },
  );

  it("leaves numbers below zero numbers, and other text as it is", () => {
    const deck = 'my, "deck"\r\n=1';
    const csv = logAsCsv([sampleReview({ deck, utcOffset: -300 })]);
    expect(cell(csv, "utcOffset")).toBe("-300");
    expect(cell(csv, "deck")).toBe(deck);
  });
});
