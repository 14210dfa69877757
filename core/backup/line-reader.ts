/**
 * Lines out of text that comes in pieces, cut anywhere. What is in a line is
 * for somebody else to say; after an error nothing more is taken.
 */
import { ok, type Result } from "../result";
import { LONGEST_LINE } from "./backup-line";

/** Reads line by line. */
export interface LineReader<Refusal> {
  /** The line that is being read, counted from 1. */
  readonly line: number;
  /** The error, if there was one. */
  readonly outcome: Result<void, Refusal>;
  /** Takes the next piece of text. After an error every answer is that error. */
  push(text: string): Result<void, Refusal>;
  /** Takes what stands behind the last line's end. Shape: called once, after no error. */
  takeRest(): Result<void, Refusal>;
}

const OK = ok(undefined);

/** Begins to read. Shape: `takeLine` gets a line without its end, and its number counted from 1. */
export function lineReader<Refusal>(
  takeLine: (text: string, line: number) => Result<void, Refusal>,
): LineReader<Refusal> {
  let line = 1;
  let pending = "";
  let outcome: Result<void, Refusal> = OK;
  const take = (text: string) => (outcome = takeLine(text, line));
  return {
    get line() {
      return line;
    },
    get outcome() {
      return outcome;
    },
    push(text) {
      if (!outcome.ok) return outcome;
      const [first = "", ...rest] = text.split("\n");
      pending += first;
      for (const next of rest) {
        const taken = take(pending);
        if (!taken.ok) return taken;
        line += 1;
        pending = next;
      }
      // Not waiting for the line's end: it may never come.
      return pending.length > LONGEST_LINE ? take(pending) : OK;
    },
    takeRest: () => (pending === "" ? OK : take(pending)),
  };
}
