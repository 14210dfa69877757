/**
 * A desk in a temporary folder: real files and backups, a person whose choices
 * are laid down, and notes of what only Electron could do.
 */
import { type Desk } from "../../electron/answer-message";
import { backupFolder } from "../../electron/backup-folder";
import { deckInbox, readDeckFile } from "../../electron/deck-files";
import { sharedFolder } from "../../electron/shared-folder";
import { temporaryFolder } from "./page-folder";
import { standInDialogs } from "./stand-in-dialogs";

/** The desk's choices, and parts of it to be another way. */
interface Given {
  readonly choices?: Parameters<typeof standInDialogs>[0];
  readonly parts?: Partial<Desk>;
}

/** A desk, with what was done on it. */
export function standInDesk({ choices = {}, parts = {} }: Given = {}): {
  readonly desk: Desk;
  readonly done: string[];
} {
  const done: string[] = [];
  const desk: Desk = {
    version: "1.2.3",
    dataFolder: "/data",
    dialogs: standInDialogs(choices),
    inbox: deckInbox(() => done.push("told")),
    backups: backupFolder(temporaryFolder({}), () => ({
      at: 1_700_000_000_000,
      utcOffset: 0,
    })),
    shared: sharedFolder(temporaryFolder({})),
    readDeck: readDeckFile,
    rememberDeck: (path) => done.push(`remember ${path}`),
    showFolder: (path) => {
      done.push(`show ${path}`);
      return Promise.resolve("");
    },
    printPage: () => Promise.resolve(new TextEncoder().encode("%PDF")),
    setFullScreen: (on) => done.push(`full screen ${on}`),
    ...parts,
  };
  return { desk, done };
}
