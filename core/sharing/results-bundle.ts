/**
 * The first line of a bundle: a file that holds the files of several blocks of
 * one learner, byte for byte, one behind the other.
 *
 * Their answers are not written anew into one larger block: such a block would
 * have one date, and a withdrawal made between the dates of its parts would
 * hide too much of it or too little. As it is, who reads a bundle takes in the
 * same blocks under the same ids as who read their files, and nobody need be
 * believed that they are the same.
 */
import * as v from "valibot";
import { parseText } from "../backup/backup-line";
import { COUNT, readBySchema } from "../memory/stored-row";
import { err, ok, type Result } from "../result";
import type { ResultsError } from "./results-error";

/** The version of the form that this program writes, and the newest it reads. */
const BUNDLE_VERSION = 1;

/** The most blocks in one bundle: two a day for a month. */
export const MOST_PARTS = 62;

const VERSIONS = v.looseObject({
  turnwise: v.literal("results-bundle"),
  version: COUNT,
  readableFrom: COUNT,
});

const HEADER = v.looseObject({
  parts: v.pipe(
    v.array(v.pipe(COUNT, v.minValue(1))),
    v.minLength(1),
    v.maxLength(MOST_PARTS),
  ),
});

/** The first line with its line feed. Shape: `lengths` of the parts in their order, bytes. */
export function formatBundleHeader(lengths: readonly number[]): string {
  const about = {
    turnwise: "results-bundle",
    version: BUNDLE_VERSION,
    readableFrom: BUNDLE_VERSION,
    parts: lengths,
  };
  return `${JSON.stringify(about)}\n`;
}

/** The lengths of the parts, by the first line. Errors: `not-results`, `newer-results`. Units: bytes. */
export function parseBundleHeader(
  line: string,
): Result<readonly number[], ResultsError> {
  const parsed = parseText(line);
  if (!parsed.ok) return err({ code: "not-results" });
  const versions = readBySchema(VERSIONS, parsed.value);
  if (!versions.ok) return err({ code: "not-results" });
  const { version, readableFrom } = versions.value;
  if (readableFrom > BUNDLE_VERSION)
    return err({ code: "newer-results", version });
  const header = readBySchema(HEADER, parsed.value);
  return header.ok ? ok(header.value.parts) : err({ code: "not-results" });
}
