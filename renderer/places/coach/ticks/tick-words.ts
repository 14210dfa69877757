/** What the page of ticks says. */
import type { SheetCodeError } from "../../../../core/paper/sheet-code";
import type { KeptSheet } from "../../../../core/paper/kept-sheet";
import { storageErrorText } from "../../../error-text";
import type { KeepError } from "../../../state/ticks/ticks-desk.svelte";

/** Why a text is no code, and what to do. */
export function sheetCodeErrorText(error: SheetCodeError): string {
  switch (error.code) {
    case "wrong-length":
      return error.length === 0
        ? "Write the eight signs that stand at the top right of the sheet."
        : `A code has eight signs, and these are ${error.length}.`;
    case "unknown-sign":
      return `No code has “${error.sign}”. Look again at sign ${error.offset + 1}.`;
    case "mistyped":
      return "This is no code: one sign is wrong, or two have changed places.";
  }
}

/** Why ticks cannot be entered just now, and what to do. */
export const GUEST_ENTERS_NOTHING =
  "A guest is at the desk: ticks are entered by somebody of the house, who can sit down with F2.";

/** Why an entry was not kept, and what to do. */
export function keepErrorText(error: KeepError): string {
  if (error.code === "guest-at-desk") return GUEST_ENTERS_NOTHING;
  if (!("row" in error)) return storageErrorText(error);
  const row = `Row ${error.row + 1}`;
  switch (error.code) {
    case "not-a-time":
      return `${row}: write a time in seconds, as 4.2 or 1:05.`;
    case "too-long":
      return `${row}: a time of over ten minutes does not count. Leave it out.`;
  }
}

/** "12 cases", "24 positions". */
export function sizeInWords({
  kind,
  cases,
  count,
}: Pick<KeptSheet, "kind" | "cases" | "count">): string {
  if (kind === "practice")
    return count === 1 ? "1 position" : `${count} positions`;
  return cases.length === 1 ? "1 case" : `${cases.length} cases`;
}

/** "1 answer", "30 answers". */
export function answersInWords(count: number): string {
  return count === 1 ? "1 answer" : `${count} answers`;
}
