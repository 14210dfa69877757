/** Bundles of blocks as files: written, told from a block's file, and read. */
import { err, ok, type Result } from "../../core/result";
import type { NamedBlock } from "../../core/sharing/results-block";
import {
  formatBundleHeader,
  parseBundleHeader,
} from "../../core/sharing/results-bundle";
import {
  idInFileName,
  MAX_RESULTS_BYTES,
} from "../../core/sharing/results-file-name";
import { sha256 } from "../platform/digest";
import { readResultsFile, type ResultsFileError } from "./results-files";

type Bytes = Uint8Array<ArrayBuffer>;

/** What a part may be: 62 of the largest fit into a file of results, and the answers of a day take a tenth of it. Units: bytes. */
export const PART_LIMITS = { packed: 300_000, unpacked: 3_000_000 };

/** The longest first line. Units: bytes. */
const LONGEST_HEADER = 2_000;

/** The blocks of a file. */
export interface ResultsInFile {
  /** As of `NamedBlock`; of a bundle, that of the whole file. */
  readonly id: string;
  /** All of one learner; answers where there are several. */
  readonly blocks: readonly [NamedBlock, ...NamedBlock[]];
  readonly isBundle: boolean;
}

/** Puts the files of blocks into one. */
export async function packBundle(
  parts: readonly Bytes[],
): Promise<{ readonly id: string; readonly bytes: Bytes }> {
  const header = formatBundleHeader(parts.map(({ length }) => length));
  const bytes = new Uint8Array(
    await new Blob([header, ...parts]).arrayBuffer(),
  );
  return { id: await sha256(bytes), bytes };
}

/**
 * Reads a file's bytes, whether they are a block or a bundle; all of it or
 * nothing. Shape: `name` without its folder.
 */
export async function readResultsIn(
  name: string,
  bytes: Bytes,
): Promise<Result<ResultsInFile, ResultsFileError>> {
  // A block's file is gzip and begins otherwise (RFC 1952, section 2.3.1).
  if (bytes[0] !== "{".charCodeAt(0)) {
    const one = await readResultsFile(name, bytes);
    if (!one.ok) return one;
    return ok({ id: one.value.id, blocks: [one.value], isBundle: false });
  }
  if (bytes.length > MAX_RESULTS_BYTES)
    return err({ code: "packed-too-large", limit: MAX_RESULTS_BYTES });
  const id = await sha256(bytes);
  const named = idInFileName(name);
  if (named !== undefined && named !== id) return err({ code: "not-whole" });
  const blocks = await readParts(bytes);
  if (!blocks.ok) return blocks;
  const [first, ...others] = blocks.value;
  // A bundle speaks for one learner, as a block does.
  if (
    first === undefined ||
    blocks.value.some(
      ({ block }) =>
        block.kind !== "answers" || block.learner !== first.block.learner,
    )
  )
    return err({ code: "not-results" });
  return ok({ id, blocks: [first, ...others], isBundle: true });
}

async function readParts(
  bytes: Bytes,
): Promise<Result<readonly NamedBlock[], ResultsFileError>> {
  const end = bytes.indexOf("\n".charCodeAt(0));
  if (end < 0 || end > LONGEST_HEADER) return err({ code: "not-results" });
  const lengths = parseBundleHeader(
    new TextDecoder().decode(bytes.subarray(0, end)),
  );
  if (!lengths.ok) return lengths;
  let from = end + 1;
  const blocks: NamedBlock[] = [];
  for (const length of lengths.value) {
    const part = bytes.slice(from, from + length);
    if (part.length < length) return err({ code: "truncated", line: 1 });
    const read = await readResultsFile("", part, PART_LIMITS);
    if (!read.ok) return read;
    blocks.push(read.value);
    from += length;
  }
  return from === bytes.length
    ? ok(blocks)
    : err({ code: "lines-after-end", line: 1 });
}
