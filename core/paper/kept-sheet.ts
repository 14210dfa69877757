/** A sheet that was printed, as it is kept until its ticks come back. Rows are parsed, never believed. */
import * as v from "valibot";
import { CASE_ID } from "../cases/case-id-schema";
import { HOLDS } from "../cases/variant";
import { DECK_LIMITS, DECK_VALUES } from "../deck/deck-values";
import {
  COUNT,
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
  TARGET,
} from "../memory/stored-row";
import type { Milliseconds } from "../memory/review";
import { OPENINGS } from "../memory/variant-opening";
import { err, type Result } from "../result";
import { LARGEST_NUMBER } from "./sheet";
import {
  CODED_KINDS,
  type CodedSheet,
  parseSheetCode,
  sheetCode,
  type SheetCode,
} from "./sheet-code";

/** A sheet with its code, and the deck that its answers belong to. */
export interface KeptSheet extends CodedSheet {
  readonly code: SheetCode;
  /** Id and name of the deck; it may be gone. */
  readonly deck: string;
  readonly deckName: string;
  /** When it was printed last, UTC. */
  readonly printedAt: Milliseconds;
}

const CODE = v.pipe(
  v.string(),
  v.check((text) => parseSheetCode(text).ok),
  v.transform((text) => text as SheetCode),
);

const KEPT_SHEET = v.object({
  code: CODE,
  kind: v.picklist(CODED_KINDS),
  cases: v.pipe(
    v.array(
      v.object({
        case: CASE_ID,
        target: TARGET,
        placed: v.exactOptional(DECK_VALUES.placed),
        home: v.exactOptional(v.picklist(["front", "anywhere"])),
        lining: v.exactOptional(v.picklist(["lined-up", "turned-away"])),
      }),
    ),
    v.minLength(1),
    v.maxLength(DECK_LIMITS.cases),
  ),
  hold: v.picklist(HOLDS),
  number: v.pipe(COUNT, v.minValue(1), v.maxValue(LARGEST_NUMBER)),
  count: v.pipe(COUNT, v.minValue(1), v.maxValue(DECK_LIMITS.cases)),
  opening: v.picklist(OPENINGS),
  deck: v.string(),
  deckName: v.string(),
  printedAt: MILLISECONDS,
});

/**
 * The printed sheet that a stored row holds. Errors: as `readBySchema`; a
 * `contradiction` where the code is not that of what the row says is on the
 * sheet: ticks would be taken for answers to other cases.
 */
export function parseKeptSheet(
  row: unknown,
): Result<KeptSheet, StoredRowError> {
  const read = readBySchema(KEPT_SHEET, row);
  return read.ok && sheetCode(read.value) !== read.value.code
    ? err({ code: "contradiction", field: "code" })
    : read;
}
