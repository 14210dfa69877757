/** The tables of README that tell what a file's columns mean. */
import { readFileSync } from "node:fs";
import type { Column } from "../../../core/backup/table";

/** The cells of each row of the table under a heading of README. */
export function toldInReadme(heading: string): readonly (readonly string[])[] {
  const [, section = ""] =
    new RegExp(`### ${heading}\n(.*?)\n###? `, "s").exec(
      readFileSync("README.md", "utf8"),
    ) ?? [];
  return section
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) =>
      line
        .split("|")
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

/** Columns as README tells them. */
export function asTold(
  columns: readonly Pick<Column<never>, "name" | "unit" | "meaning">[],
): readonly (readonly string[])[] {
  return columns.map(({ name, unit, meaning }) => [
    `\`${name}\``,
    unit,
    meaning,
  ]);
}
