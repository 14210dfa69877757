/**
 * The log of an error, for whoever repairs the app. It holds what went wrong
 * and the versions, and nothing of the person: no answers, no names, no paths.
 */
import { readFileSync } from "node:fs";
import { systemCode, writeWholeFile } from "./whole-files";

/** What can go wrong unseen. */
export type TroubleKind =
  /** An error in the main process that nothing caught. */
  | "error"
  /** The page's process is gone. */
  | "page-gone"
  /** The page does not answer. */
  | "page-stuck";

/** Something that went wrong. */
export interface Trouble {
  readonly kind: TroubleKind;
  /** The error's own text, or the system's reason. */
  readonly text: string;
}

/** What a log says beside the error. */
export interface LogFacts {
  /** When. Units: milliseconds since 1970. */
  readonly at: number;
  /** Versions by name. */
  readonly versions: Readonly<Record<string, string>>;
  /** What must not be in a log: folders, the person's name. */
  readonly personal: readonly string[];
}

const LONGEST_LOG = 20_000;

/** An error as text, with where it happened. */
export function errorText(error: unknown): string {
  if (!(error instanceof Error)) return `Thrown: ${String(error)}`;
  const cause =
    error.cause === undefined ? "" : `\ncaused by ${errorText(error.cause)}`;
  return `${error.stack ?? String(error)}${cause}`;
}

/** The log of something that went wrong. */
export function troubleLog(trouble: Trouble, facts: LogFacts): string {
  const versions = Object.entries(facts.versions).map(
    ([name, version]) => `${name} ${version}`,
  );
  const text = withoutPersonal(trouble.text, facts.personal);
  return [
    "Turnwise: the log of an error",
    new Date(facts.at).toISOString(),
    versions.join(", "),
    trouble.kind,
    text.slice(0, LONGEST_LOG),
    "",
  ].join("\n");
}

/**
 * A text without what is personal: quoted paths, which system errors bring,
 * then every personal word, in each form that a path may have in an address.
 */
export function withoutPersonal(
  text: string,
  personal: readonly string[],
): string {
  const words = personal
    // A word of one or two letters would be found in anything.
    .filter((word) => word.length >= 3)
    .flatMap((word) => [
      word,
      word.replaceAll("\\", "/"),
      word.replaceAll("\\", "\\\\"),
      encodeURI(word.replaceAll("\\", "/")),
    ])
    // The longest first, so that a folder goes before the name in it.
    .sort((a, b) => b.length - a.length);
  return words.reduce(
    (rest, word) => rest.replaceAll(new RegExp(escaped(word), "gi"), "…"),
    text.replaceAll(/'[^'\n]*[\\/][^\n]*'|"[^"\n]*[\\/][^"\n]*"/g, "'…'"),
  );
}

function escaped(word: string): string {
  return word.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

/** Keeps a log in a file; where that fails it is said on the console. */
export async function keepLog(file: string, log: string): Promise<void> {
  const kept = await writeWholeFile(file, new TextEncoder().encode(log));
  if (!kept.ok) console.warn(`The log was not kept (${kept.error.code}).`);
}

/** The log that was kept last; undefined where there is none. */
export function keptLog(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8").slice(0, LONGEST_LOG * 2);
  } catch (error) {
    if (systemCode(error) !== "ENOENT")
      console.warn(`The log was not read (${systemCode(error)}).`);
    return undefined;
  }
}
