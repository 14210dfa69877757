/**
 * When something goes wrong that nothing else has caught: a plain dialog, a
 * log that can be saved, and a way on.
 *
 * The log is for whoever repairs the app. It holds what went wrong and the
 * versions, and nothing of the person: no answers, no names, no paths.
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

/** What a person may choose when something went wrong. */
export type TroubleChoice = "go-on" | "load-again" | "save-log" | "quit";

/** A plain dialog: what happened, and the choices in the order of its buttons. */
export interface TroubleDialog {
  readonly message: string;
  readonly detail: string;
  readonly choices: readonly TroubleChoice[];
}

/** The words on the buttons. */
export const CHOICE_WORDS: Readonly<Record<TroubleChoice, string>> = {
  "go-on": "Go on",
  "load-again": "Load the page again",
  "save-log": "Save the log…",
  quit: "Quit",
};

const KEPT =
  "Answers that were shown as kept are kept. The log says what went wrong, and nothing about you.";

/** What a person is told; the first choice is the one that Enter takes. */
export const TROUBLE_DIALOGS: Readonly<Record<TroubleKind, TroubleDialog>> = {
  error: {
    message: "Something in Turnwise went wrong.",
    detail: `You can go on. If something does not work any more, load the page again. ${KEPT}`,
    choices: ["go-on", "load-again", "save-log", "quit"],
  },
  "page-gone": {
    message: "The page of Turnwise has stopped.",
    detail: `Load it again to go on. ${KEPT}`,
    choices: ["load-again", "save-log", "quit"],
  },
  "page-stuck": {
    message: "Turnwise does not answer at the moment.",
    detail: `Wait a little, or load the page again. ${KEPT}`,
    choices: ["go-on", "load-again", "save-log", "quit"],
  },
};

/** What reporting trouble needs of the app. */
export interface TroubleDeeds {
  readonly log: (trouble: Trouble) => string;
  /** Keeps the log for the next start. */
  readonly keep: (log: string) => Promise<void>;
  readonly ask: (dialog: TroubleDialog) => Promise<TroubleChoice>;
  readonly saveLog: (log: string) => Promise<void>;
  readonly loadAgain: () => void;
  readonly quit: () => void;
}

/** Reports trouble. */
export interface TroubleDesk {
  /** Keeps the log, and shows the dialog unless one is open already: errors that come in swarms are asked about once. */
  report(trouble: Trouble): Promise<void>;
}

/** The desk; nothing it does throws, or its own errors would come back to it. */
export function troubleDesk(deeds: TroubleDeeds): TroubleDesk {
  let isOpen = false;
  async function ask(kind: TroubleKind, log: string): Promise<void> {
    for (;;) {
      switch (await deeds.ask(TROUBLE_DIALOGS[kind])) {
        case "save-log":
          await deeds.saveLog(log);
          continue;
        case "load-again":
          return deeds.loadAgain();
        case "quit":
          return deeds.quit();
        case "go-on":
          return;
      }
    }
  }
  return {
    async report(trouble) {
      const first = !isOpen;
      isOpen = true;
      try {
        const log = deeds.log(trouble);
        await deeds.keep(log);
        if (first) await ask(trouble.kind, log);
      } catch (error) {
        console.error("An error could not be shown:", error);
      } finally {
        if (first) isOpen = false;
      }
    },
  };
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

/** Why the page's process is gone, as Electron says it. */
interface PageGone {
  readonly reason: string;
  readonly exitCode: number;
}

/** As much of Electron's `WebContents` and `BrowserWindow` as noticing trouble needs. */
interface TroubledContents {
  on(
    event: "render-process-gone",
    listener: (event: unknown, details: PageGone) => void,
  ): unknown;
}
interface TroubledWindow {
  readonly webContents: TroubledContents;
  on(event: "unresponsive", listener: () => void): unknown;
}

/** Notices when the window's page stops or hangs. */
export function watchWindow(
  window: TroubledWindow,
  report: (trouble: Trouble) => void,
): void {
  window.webContents.on("render-process-gone", (_event, details) => {
    // A page that ended as it should: the window was closed.
    if (details.reason === "clean-exit") return;
    const text = `${details.reason}, exit code ${details.exitCode}`;
    report({ kind: "page-gone", text });
  });
  window.on("unresponsive", () =>
    report({ kind: "page-stuck", text: "unresponsive" }),
  );
}

/** As much of Node's process as noticing trouble needs. */
interface TroubledProcess {
  on(
    event: "uncaughtException" | "unhandledRejection",
    listener: (error: unknown) => void,
  ): unknown;
}

/** Notices errors of the main process that nothing caught. */
export function watchProcess(
  process: TroubledProcess,
  report: (trouble: Trouble) => void,
): void {
  for (const event of ["uncaughtException", "unhandledRejection"] as const)
    process.on(event, (error) =>
      report({ kind: "error", text: `${event}: ${errorText(error)}` }),
    );
}
