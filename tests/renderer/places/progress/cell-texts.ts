import { screen } from "@testing-library/svelte";

/** What stands in the cells of the page's table, row by row. */
export function cellTexts(): readonly (readonly string[])[] {
  return screen
    .getAllByRole("row")
    .map((row) =>
      [...row.children].map((cell) =>
        cell.textContent.replace(/\s+/g, " ").trim(),
      ),
    );
}
