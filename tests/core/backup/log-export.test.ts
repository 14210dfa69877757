import { describe, expect, it } from "vitest";
import { LOG_COLUMNS } from "../../../core/backup/log-export";
import { asJsonLines, tableRows } from "../../../core/backup/table";
import { asTold, toldInReadme } from "./readme-table";
import { ms, sampleReview } from "../memory/sample-review";

const FULL = sampleReview(20_000, {
  thinking: ms(1200),
  turning: ms(900),
  turns: [
    { turn: "F2", at: ms(1200) },
    { turn: "R'", at: ms(2100) },
  ],
  hints: ["piece", "home"],
  hintTimes: [ms(1200), ms(3400)],
  looks: 2,
  untimed: true,
  answeredAs: "E2a",
  mistook: { piece: "UF", for: "UBR" },
});

/** A review's value under a dotted name, as a cell shows it. */
function valueAt(review: object, name: string): unknown {
  const at = (value: unknown, key: string): unknown =>
    Array.isArray(value)
      ? value.map((one: unknown) => at(one, key))
      : (Object.entries(value ?? {}) as [string, unknown][]).find(
          ([own]) => own === key,
        )?.[1];
  const value = name.split(".").reduce<unknown>(at, review);
  return Array.isArray(value) ? value.join(" ") : (value ?? "");
}

describe("a log as a table", () => {
  it("has in each column the field that it is named after", () => {
    for (const review of [FULL, sampleReview(20_001)]) {
      const [names = [], cells = []] = tableRows(LOG_COLUMNS, [review]);
      expect(cells).toHaveLength(names.length);
      names.forEach((name, i) => {
        if (name === "time") expect(cells[i]).toMatch(/^2024-10-0\dT12:00:00/);
        else expect(cells[i]).toBe(valueAt(review, String(name)));
      });
    }
  });

  it("leaves out no field of a review", () => {
    const fields = new Set(
      LOG_COLUMNS.map(({ name }) => name.split(".", 1)[0]),
    );
    fields.delete("time");
    expect(fields).toEqual(new Set(Object.keys(FULL)));
  });

  it("has no readable time for an instant that no calendar has", () => {
    const [names = [], cells = []] = tableRows(LOG_COLUMNS, [
      { ...FULL, at: ms(1e16) },
    ]);
    expect(cells[names.indexOf("time")]).toBe("");
  });

  it("is told in README as it is, field by field", () => {
    expect(toldInReadme("A learner’s log")).toEqual(asTold(LOG_COLUMNS));
  });
});

describe("a log as JSON lines", () => {
  it("holds each answer as it is stored, with fields of newer versions", () => {
    const later = { ...FULL, mood: "good\nor bad" };
    const lines = asJsonLines([FULL, later]).split("\n");
    expect(
      lines.map((line) => (line === "" ? "" : JSON.parse(line)) as unknown),
    ).toEqual([FULL, later, ""]);
  });
});
