/** Why a deck is refused, as sentences that name the place and say what to do. */
import type { DeckFault, Expected } from "../core/deck/deck-fault";
import type { DeckFileError } from "../core/deck/deck-file";
import { notationErrorText } from "./notation-error-text";

/** What would be right in a place of a deck, after "must be". */
function expectedText(expected: Expected | undefined): string {
  switch (expected?.kind) {
    case undefined:
      return "something else";
    case "text":
      return "a text in quotation marks";
    case "number": {
      const { least, most, whole } = expected;
      const what = whole ? "a whole number" : "a number";
      if (least === undefined) return what;
      return most === undefined
        ? `${what}, at least ${least}`
        : `${what} from ${least} to ${most}`;
    }
    case "one-of": {
      const options = expected.options.map((option) =>
        typeof option === "number" ? `${option}` : `“${option}”`,
      );
      return options.length === 1
        ? (options[0] ?? "")
        : `${options.slice(0, -1).join(", ")} or ${options.at(-1) ?? ""}`;
    }
    case "list":
      return "a list in square brackets";
    case "fields":
      return "fields in curly brackets";
    case "yes-or-no":
      return "true or false";
  }
}

/** A character that cannot be seen, by its number in Unicode. */
function hiddenCharacterText(character: string): string {
  if (character === "\n") return "a line break";
  const number = (character.codePointAt(0) ?? 0).toString(16).toUpperCase();
  return `a hidden character (U+${number.padStart(4, "0")})`;
}

/** What is wrong with a value of a deck, and what to do about it. */
export function deckFaultText(fault: DeckFault): string {
  const { expected, found = "", notation, path } = fault;
  const field = path.findLast((step) => typeof step === "string") ?? "deck";
  const most =
    expected !== undefined && "most" in expected
      ? `${expected.most}`
      : "so many";
  switch (fault.code) {
    case "missing-field":
      return `“${field}” is missing. Add it.`;
    case "unknown-field":
      return `Turnwise knows no “${field}”. Check how it is spelt, or leave it out.`;
    case "wrong-type":
      return `“${field}” must be ${expectedText(expected)}${expected?.kind === "number" ? ", without quotation marks" : ""}.`;
    case "unknown-value":
    case "out-of-range":
      return `“${field}” must be ${expectedText(expected)}${found === "" ? "" : `, not “${found}”`}.`;
    case "blank-text":
      return `“${field}” has nothing in it. Write something.`;
    case "text-too-long":
      return `“${field}” is too long. Keep it to ${most} letters.`;
    case "unwanted-character":
      return `“${field}” has ${hiddenCharacterText(found)} in it. Take it out.`;
    case "malformed-id":
      return `“${found}” is no id that Turnwise made. Leave the id out, and the deck gets a new one.`;
    case "empty-list":
      return `“${field}” is empty. Name at least one, or leave the whole field out.`;
    case "list-too-long":
      return `“${field}” holds too many. A deck has room for ${most}.`;
    case "duplicate-value":
      return `“${field}” says the same thing twice. Take one out.`;
    case "duplicate-case":
      return `The case ${found} is in the deck twice. Take one out.`;
    case "too-many-placed":
      return `This case has room for at most ${most} other pieces at home, not ${found}.`;
    case "impossible-day":
      return `“${found}” is no day of the calendar. Write it as 2027-02-01: year, month, day.`;
    case "way-not-notation":
      return notation === undefined
        ? "This way cannot be read. Check how its turns are written."
        : `This way cannot be read at letter ${notation.offset + 1}. ${notationErrorText(notation)}`;
    case "way-without-turns":
      return "Nothing turns in this way. Write its turns, or leave it out.";
    case "no-one-way":
      return "Two corners in each other’s homes have no one way: they can lie in nine ways. Leave the way out.";
  }
}

/** What to look for where a file is no JSON. */
function missingText(comma: "line-before" | "same-line" | undefined): string {
  switch (comma) {
    case "line-before":
      return "A comma may be missing at the end of the line before.";
    case "same-line":
      return "A comma may be missing just before it.";
    case undefined:
      return "Look for a comma, a bracket or a quotation mark too many or too few.";
  }
}

/** Why a deck file was not read, where, and what to do about it. Nothing was changed by it. */
export function deckFileErrorText(error: DeckFileError): string {
  const place =
    "line" in error ? `Line ${error.line}, letter ${error.column}: ` : "";
  if ("field" in error) return place + deckFaultText(error);
  switch (error.code) {
    case "too-large":
      return "This file is too large for a deck: a deck has less than a megabyte. Choose another file.";
    case "empty":
      return "This file is empty. Ask for it again, or choose another one.";
    case "ends-early":
      return `${place}the file ends in the middle. It may have been cut short on its way: ask for it again.`;
    case "text-not-closed":
      return `${place}a quotation mark opens here and is not closed on its line. Close it; for a new line within a text write \\n.`;
    case "not-json":
      return `${place}this is not written as a deck file is${error.found === "" ? "" : ` (it says “${error.found}”)`}. ${missingText(error.missingComma)}`;
    case "nested-too-deep":
      return `${place}too many brackets lie within one another for a deck. Choose another file.`;
    case "duplicate-key":
      return `${place}this field is there twice. Take one out.`;
    case "reserved-key":
      return `${place}a field cannot have this name. Take it out.`;
    case "number-too-large":
      return `${place}this number is too large. Write a smaller one.`;
    case "not-turnwise":
      return "This file is not from Turnwise. Choose a deck file.";
    case "other-kind":
      return `This file is from Turnwise, but holds no deck${error.kind === "" ? "" : ` (it says “${error.kind}”)`}. Choose a deck file.`;
    case "newer-version":
      return "A newer Turnwise wrote this deck, in a form that this one cannot read. Get the newer Turnwise, or ask for the deck in the older form.";
  }
}
