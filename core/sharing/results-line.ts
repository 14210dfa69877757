/**
 * The lines of a block of results, as they are read: in the manner of a
 * backup's, a header, a line for each answer, and a line that says how many
 * there were, so that a file cut off anywhere is seen to be.
 */
import * as v from "valibot";
import { type LineError, parseText, under } from "../backup/backup-line";
import { SHOWN_NAME } from "../memory/learner";
import { COUNT, MILLISECONDS, readBySchema } from "../memory/stored-row";
import { ok, type Result } from "../result";
import { type AnswerLine, parseAnswerLine } from "./shared-answer";

/** The version of the format that this program writes, and the newest it reads. */
export const RESULTS_VERSION = 1;

/** The most answers in one block: 200 a day for eight months. */
export const MOST_ANSWERS = 50_000;

const ABOUT = {
  turnwise: v.literal("results"),
  version: v.pipe(COUNT, v.minValue(1)),
  readableFrom: v.pipe(COUNT, v.minValue(1)),
  learner: v.pipe(v.string(), v.uuid()),
  madeAt: MILLISECONDS,
};

const HEADER = v.variant("kind", [
  v.looseObject({ ...ABOUT, kind: v.literal("answers"), name: SHOWN_NAME }),
  v.looseObject({ ...ABOUT, kind: v.literal("withdrawn") }),
]);

const VERSIONS = v.looseObject({
  version: ABOUT.version,
  readableFrom: ABOUT.readableFrom,
});

const END = v.looseObject({ answers: COUNT });

/** The first line: what kind of block it is, whose, and when it was made. */
export type ResultsHeader = v.InferOutput<typeof HEADER>;

/** The first line of a version that this one cannot read. */
export interface NewerHeader {
  readonly kind: "newer";
  readonly version: number;
}

/** A line after the header, by its kind. */
export type ResultsLine =
  | { readonly kind: "answer"; readonly answer: AnswerLine }
  | { readonly kind: "end"; readonly answers: number }
  /** A kind that this version does not know. */
  | { readonly kind: "unknown" };

/** The first line, or undefined where the text is no block at all. */
export function parseResultsHeader(
  text: string,
): Result<ResultsHeader | NewerHeader, LineError> | undefined {
  const parsed = parseText(text);
  if (!parsed.ok || parsed.value["turnwise"] !== "results") return undefined;
  // Before the rest: of a newer version's header no more than this is known.
  const versions = under("", readBySchema(VERSIONS, parsed.value));
  if (!versions.ok) return versions;
  const { version, readableFrom } = versions.value;
  return readableFrom > RESULTS_VERSION
    ? ok({ kind: "newer", version })
    : under("", readBySchema(HEADER, parsed.value));
}

/** What a line after the header says. */
export function parseResultsLine(text: string): Result<ResultsLine, LineError> {
  const parsed = parseText(text);
  if (!parsed.ok) return parsed;
  const { answer, end } = parsed.value;
  if (answer !== undefined) {
    const read = under("answer", parseAnswerLine(answer));
    return read.ok ? ok({ kind: "answer", answer: read.value }) : read;
  }
  if (end !== undefined) {
    const read = under("end", readBySchema(END, end));
    return read.ok ? ok({ kind: "end", answers: read.value.answers }) : read;
  }
  return ok({ kind: "unknown" });
}
