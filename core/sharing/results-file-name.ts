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

const OWN_NAME = /^[0-9a-f]{64}(?:-back-[0-9a-f]{16})?\.turnwise-results$/;

/** The name of a block's file in a shared folder. Shape: `id` as of `NamedBlock`. */
export function resultsFileName(id: string): string {
  return `${id}${RESULTS_ENDING}`;
}

/**
 * The name of a withdrawal's file in a shared folder: it tells whose it is, so
 * that a learner's other machines find it and need not read anybody else's.
 *
 * Shape: `id` as of `NamedBlock`; `mark` 16 hexadecimal digits that stand for
 *        the learner.
 */
export function withdrawalFileName(id: string, mark: string): string {
  return `${id}-back-${mark}${RESULTS_ENDING}`;
}

/** The mark of whoever took everything back, as a file's name or a copy's has it; undefined where it is no withdrawal's. */
export function markInFileName(name: string): string | undefined {
  return /^[0-9a-f]{64}-back-([0-9a-f]{16})(?![0-9a-f])/i
    .exec(name)?.[1]
    ?.toLowerCase();
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
