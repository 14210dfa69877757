/**
 * When something goes wrong that nothing else has caught: a plain dialog, a
 * log that can be saved, and a way on.
 */
import type { Dialog } from "electron";
import { errorText, type Trouble, type TroubleKind } from "./trouble-log";

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
  /** Keeps the log only: somebody else says what happened. */
  note(trouble: Trouble): Promise<void>;
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
        case "load-again": {
          deeds.loadAgain();
          return;
        }
        case "quit": {
          deeds.quit();
          return;
        }
        case "go-on":
          return;
      }
    }
  }
  async function note(trouble: Trouble): Promise<string> {
    const log = deeds.log(trouble);
    await deeds.keep(log);
    return log;
  }
  return {
    async note(trouble) {
      try {
        await note(trouble);
      } catch (error) {
        console.error("An error could not be kept:", error);
      }
    },
    async report(trouble) {
      const first = !isOpen;
      isOpen = true;
      try {
        const log = await note(trouble);
        if (first) await ask(trouble.kind, log);
      } catch (error) {
        console.error("An error could not be shown:", error);
      } finally {
        if (first) isOpen = false;
      }
    },
  };
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

/** Shows a trouble dialog as the system's own. */
export async function askByDialog(
  dialog: Pick<Dialog, "showMessageBox">,
  { message, detail, choices }: TroubleDialog,
): Promise<TroubleChoice> {
  const { response } = await dialog.showMessageBox({
    type: "error",
    message,
    detail,
    buttons: choices.map((choice) => CHOICE_WORDS[choice]),
    defaultId: 0,
    cancelId: 0,
    // Windows would make command links of the words.
    noLink: true,
  });
  return choices[response] ?? "go-on";
}
