/**
 * Reading a block of results piece by piece: text goes in as it comes, cut
 * anywhere, and at the end there is all of it or one error with its line. A
 * block is never half read: one that is half there will be read when it is
 * whole.
 */
import { lineReader } from "../backup/line-reader";
import { err, ok, type Result } from "../result";
import type { ResultsBlock } from "./results-block";
import type { ResultsError } from "./results-error";
import {
  MOST_ANSWERS,
  parseResultsHeader,
  parseResultsLine,
  RESULTS_VERSION,
  type ResultsHeader,
} from "./results-line";
import type { AnswerLine } from "./shared-answer";

/** Reads one block. */
export interface ResultsReader {
  /** The line that is being read, counted from 1. */
  readonly line: number;
  /** Takes the next piece of text. After an error every answer is that error. */
  push(text: string): Result<void, ResultsError>;
  /** What was read, once there is no more. */
  finish(): Result<ResultsBlock, ResultsError>;
}

const OK = ok(undefined);

/** Begins to read a block of at most so many answers. */
export function resultsReader(most: number = MOST_ANSWERS): ResultsReader {
  const answers: AnswerLine[] = [];
  let header: ResultsHeader | undefined;
  let ended = false;

  const takeHeader = (
    text: string,
    line: number,
  ): Result<void, ResultsError> => {
    const parsed = parseResultsHeader(text);
    if (parsed === undefined) return err({ code: "not-results" });
    if (!parsed.ok) return err({ ...parsed.error, line });
    if (parsed.value.kind === "newer")
      return err({ code: "newer-results", version: parsed.value.version });
    header = parsed.value;
    return OK;
  };

  const takeLine = (
    { kind, version }: ResultsHeader,
    text: string,
    line: number,
  ): Result<void, ResultsError> => {
    if (ended) return err({ code: "lines-after-end", line });
    const parsed = parseResultsLine(text);
    if (!parsed.ok) return err({ ...parsed.error, line });
    const said = parsed.value;
    if (said.kind === "end") {
      ended = true;
      return said.answers === answers.length
        ? OK
        : err({
            code: "wrong-counts",
            line,
            said: said.answers,
            found: answers.length,
          });
    }
    // Whatever they say: thirty million lines of two letters are not too large
    // for the unpacker, and would be read for a minute.
    if (line > most + 1) return err({ code: "too-many-answers", line });
    // A withdrawal brings nothing; a newer version may say more than we know.
    if (said.kind === "unknown" || kind === "withdrawn")
      return version > RESULTS_VERSION && said.kind === "unknown"
        ? OK
        : err({ code: "unknown-line", line });
    answers.push(said.answer);
    return OK;
  };

  const lines = lineReader<ResultsError>((text, line) =>
    header === undefined
      ? takeHeader(text, line)
      : takeLine(header, text, line),
  );

  return {
    get line() {
      return lines.line;
    },
    push: (text) => lines.push(text),
    finish() {
      if (!lines.outcome.ok) return lines.outcome;
      const last = lines.takeRest();
      if (header === undefined) return err({ code: "not-results" });
      if (!last.ok && last.error.code !== "line-not-json") return last;
      // A last line that breaks off in the middle is cut off, not wrong.
      if (!last.ok || !ended)
        return err({ code: "truncated", line: lines.line });
      const { learner, madeAt } = header;
      return ok(
        header.kind === "withdrawn"
          ? { kind: "withdrawn", learner, madeAt }
          : { kind: "answers", learner, name: header.name, madeAt, answers },
      );
    },
  };
}
