/** Where a key leads in a grid. Source: the ARIA Authoring Practices' grid pattern, from memory. */

/** A cell, counted from 0. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** How many rows a page key goes. */
const PAGE = 10;

/** The cell that a key leads to; undefined for a key that does nothing here. */
export function nextPlace(
  {
    key,
    ctrlKey,
    metaKey,
    altKey,
  }: Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey">,
  { row, column }: GridPlace,
  size: { readonly rows: number; readonly columns: number },
): GridPlace | undefined {
  if (altKey) return undefined;
  const isFar = ctrlKey || metaKey;
  const lastRow = size.rows - 1;
  const lastColumn = size.columns - 1;
  const at = (nextRow: number, nextColumn: number): GridPlace => ({
    row: Math.min(lastRow, Math.max(0, nextRow)),
    column: Math.min(lastColumn, Math.max(0, nextColumn)),
  });
  switch (key) {
    case "ArrowLeft":
      return at(row, isFar ? 0 : column - 1);
    case "ArrowRight":
      return at(row, isFar ? lastColumn : column + 1);
    case "ArrowUp":
      return at(isFar ? 0 : row - 1, column);
    case "ArrowDown":
      return at(isFar ? lastRow : row + 1, column);
    case "Home":
      return at(isFar ? 0 : row, 0);
    case "End":
      return at(isFar ? lastRow : row, lastColumn);
    case "PageUp":
      return at(row - PAGE, column);
    case "PageDown":
      return at(row + PAGE, column);
    default:
      return undefined;
  }
}
