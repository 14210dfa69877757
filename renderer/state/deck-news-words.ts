/** What a coach changed in a deck, in the few words that matter to a learner. */
import type { DeckChange } from "../../core/deck/deck-changes";
import { capitalised, listInWords } from "../../core/notation/sentence";

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six"];

function number(count: number): string {
  return NUMBERS[count] ?? `${count}`;
}

function cases(count: number): string {
  return count === 1 ? "case" : "cases";
}

/** A sentence: "One case more, two cases gone and one asked differently." Shape: at least one change. */
export function learnerChangesInWords(changes: readonly DeckChange[]): string {
  const count = (isCounted: (change: DeckChange) => boolean) =>
    changes.filter(isCounted).length;
  const added = count(({ code }) => code === "case-added");
  const gone = count(({ code }) => code === "case-removed");
  const different = new Set(
    changes.flatMap((change) =>
      change.code === "case-field" ? [change.case] : [],
    ),
  ).size;
  const parts = [
    ...(added === 0 ? [] : [`${number(added)} ${cases(added)} more`]),
    ...(gone === 0 ? [] : [`${number(gone)} ${cases(gone)} gone`]),
    ...(different === 0
      ? []
      : [`${number(different)} ${cases(different)} asked differently`]),
  ];
  return parts.length === 0
    ? "The deck comes a little differently now."
    : `${capitalised(listInWords(parts))}.`;
}
