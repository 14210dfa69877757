/**
 * The names of results' files. A file is named by its content, so that a copy
 * under any other name is known to be a copy, and a name that is there already
 * says that its content is.
 *
 * Systems that keep folders alike on several machines put words between a
 * conflicting copy's name and its ending, or behind the digest: such a name
 * still begins with the digest.
 */

/** What the files end with. */
export const RESULTS_ENDING = ".turnwise-results";

/** The largest file of results. Units: bytes, packed. */
export const MAX_RESULTS_BYTES = 25_000_000;

/** The longest name that is looked at. Units: UTF-16 code units. */
const LONGEST_NAME = 255;

// Nothing of a path; no hidden file, as other systems lay them beside ours.
const NAME = /^[^./\\:\p{Cc}][^/\\:\p{Cc}]*\.turnwise-results$/iu;

const OWN_NAME = /^[0-9a-f]{64}\.turnwise-results$/;

/** The name of a block's file in a shared folder. Shape: `id` as of `NamedBlock`. */
export function resultsFileName(id: string): string {
  return `${id}${RESULTS_ENDING}`;
}

/** Whether a file may hold results, by its name alone. */
export function isResultsFileName(name: string): boolean {
  return name.length <= LONGEST_NAME && NAME.test(name);
}

/** Whether it is the name that a block's file is given, no copy's. */
export function isOwnResultsFileName(name: string): boolean {
  return OWN_NAME.test(name);
}

/** The id that a file is named by; undefined where its name is somebody's own. */
export function idInFileName(name: string): string | undefined {
  return /^([0-9a-f]{64})(?![0-9a-f])/i.exec(name)?.[1]?.toLowerCase();
}
