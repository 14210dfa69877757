/**
 * Blocks of results as files: packed and named by what is in them, and read
 * again. A file that is named by another digest than its content's is not
 * whole yet, or is damaged; it is left alone and read again later.
 */
import { err, ok, type Result } from "../../core/result";
import type {
  NamedBlock,
  ResultsBlock,
} from "../../core/sharing/results-block";
import type { ResultsError } from "../../core/sharing/results-error";
import {
  idInFileName,
  MAX_RESULTS_BYTES,
} from "../../core/sharing/results-file-name";
import { resultsReader } from "../../core/sharing/results-reader";
import { writeResults } from "../../core/sharing/results-writer";
import { sha256 } from "../platform/digest";
import {
  type PackedFileError,
  type PackedFileLimits,
  readPackedLines,
} from "./packed-lines";

type Bytes = Uint8Array<ArrayBuffer>;

/** Why a file was not read as results. Nothing was changed by trying. */
export type ResultsFileError =
  | ResultsError
  | PackedFileError
  /** Its name says what its content should be, and it is not that: half-written, or damaged. */
  | { readonly code: "not-whole" };

/** The largest files: 50,000 answers with their turns are 60 MB, and 12 packed. */
const RESULTS_FILE_LIMITS: PackedFileLimits = {
  packed: MAX_RESULTS_BYTES,
  unpacked: 100_000_000,
};

/** A block as a file. */
export interface PackedResults {
  /** As of `NamedBlock`. */
  readonly id: string;
  /** Gzip of JSON lines. */
  readonly bytes: Bytes;
  /** The ids of the answers in it. */
  readonly answers: readonly string[];
  /** How many answers were left out, because no reader would take them. */
  readonly leftOut: number;
}

/**
 * What stands for a learner in the name of a withdrawal's file.
 *
 * Shape: 16 hexadecimal digits, of a digest of the learner's id.
 */
export async function learnerMark(learner: string): Promise<string> {
  const id = new TextEncoder().encode(`withdrawn by ${learner}`);
  return (await sha256(id)).slice(0, 16);
}

/** Packs a block. */
export async function packResults(block: ResultsBlock): Promise<PackedResults> {
  const { text, answers, leftOut } = writeResults(block);
  const packed = new Blob([text])
    .stream()
    .pipeThrough(new CompressionStream("gzip"));
  const bytes = new Uint8Array(await new Response(packed).arrayBuffer());
  return { id: await sha256(bytes), bytes, answers, leftOut };
}

/** Reads a file's bytes as a block. Shape: `name` without its folder. */
export async function readResultsFile(
  name: string,
  bytes: Bytes,
  limits: PackedFileLimits = RESULTS_FILE_LIMITS,
): Promise<Result<NamedBlock, ResultsFileError>> {
  if (bytes.length > limits.packed)
    return err({ code: "packed-too-large", limit: limits.packed });
  const id = await sha256(bytes);
  const named = idInFileName(name);
  if (named !== undefined && named !== id) return err({ code: "not-whole" });
  const file = new Blob([bytes]).stream();
  const read = await readPackedLines(file, limits, resultsReader());
  return read.ok ? ok({ id, block: read.value }) : read;
}
