/** What to do about written turns that cannot be read, in a learner's words. */
import {
  MAX_REPEATS,
  MAX_TURNS,
  type NotationError,
} from "../core/notation/parse";

/** A sentence for an error in written turns. */
export function notationErrorText({ code, text }: NotationError): string {
  switch (code) {
    case "unknown-character":
      return `“${text}” is not a turn. Use U D L R F B, with ' for the other way and 2 for a half turn.`;
    case "lower-case-slice":
      return `Write the middle layer large: ${text.toUpperCase()}.`;
    case "upper-case-rotation":
      return `Write a turn of the whole cube small: ${text.toLowerCase()}.`;
    case "misplaced-w":
      return "A w stands only behind a large letter, as in Rw.";
    case "layer-number":
      return "A wide turn takes two layers: write Rw or 2Rw.";
    case "number-without-wide":
      return "A number stands behind the letter: R2 is a half turn.";
    case "stray-number":
      return `Write the number right behind its letter, as in R2: “${text}” stands alone.`;
    case "turn-count":
      return `A layer is turned once or twice, so “${text}” cannot stand here.`;
    case "count-after-prime":
      return "Write the number before the ' sign, or leave one of them out.";
    case "stray-prime":
      return "There is no turn in front of this ' sign.";
    case "stray-times":
      return "A times sign stands only behind a group in brackets.";
    case "missing-repeat-count":
      return "Write how often after the times sign.";
    case "repeat-count":
      return `A group can be repeated 1 to ${MAX_REPEATS} times.`;
    case "ambiguous-repeat":
      return "Write (…)2 for the group twice, or a space before x2 for the whole cube.";
    case "empty-group":
      return "There is nothing in these brackets.";
    case "unclosed-group":
      return "This bracket is not closed yet.";
    case "unopened-group":
      return "There is no opening bracket for this one.";
    case "nested-too-deep":
      return "Too many brackets inside one another.";
    case "too-long":
      return `More than ${MAX_TURNS} turns are too many.`;
  }
}
