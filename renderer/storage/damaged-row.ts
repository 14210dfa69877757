/** A row that could not be read. It stays where it is, untouched. */
export interface DamagedRow {
  readonly table:
    | "learners"
    | "decks"
    | "reviews"
    | "blocks"
    | "rounds"
    | "runs"
    | "settings";
  /** Its key, as far as it has one. */
  readonly key: string;
  /** Which part of it is wrong, dotted; empty for the whole. */
  readonly field: string;
}
