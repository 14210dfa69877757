/**
 * The bridge as functions that send one known message each. Electron's two
 * ends are handed in, so that what is sent can be held against what is read.
 */
import type {
  DesktopAnswer,
  DesktopBridge,
  DesktopNews,
} from "../core/desktop-bridge";
import type { MessageKind, MessageOf, Replies } from "./messages";

/** The window's end of the wire to the main process. */
export interface Wire {
  /** Sends a message; its answer is never a rejected promise. */
  readonly ask: <Kind extends MessageKind>(
    message: MessageOf<Kind>,
  ) => DesktopAnswer<Replies[Kind]>;
  /** Hears news, until the function that comes back is called. */
  readonly hear: (listener: (news: DesktopNews) => void) => () => void;
}

/** The bridge over a wire. */
export function bridgeOver({ ask, hear }: Wire): DesktopBridge {
  return {
    info: () => ask({ kind: "info" }),
    showDataFolder: () => ask({ kind: "show-data-folder" }),
    openDeckFile: () => ask({ kind: "open-deck-file" }),
    saveDeckFile: (title, text) => ask({ kind: "save-deck-file", title, text }),
    takeDeckFile: () => ask({ kind: "take-deck-file" }),
    saveBackup: (title, bytes) => ask({ kind: "save-backup", title, bytes }),
    openBackup: () => ask({ kind: "open-backup" }),
    automaticBackup: (backup) => ask({ kind: "automatic-backup", ...backup }),
    listBackups: () => ask({ kind: "list-backups" }),
    readBackup: (name) => ask({ kind: "read-backup", name }),
    lastKnown: () => ask({ kind: "last-known" }),
    forgetLastKnown: () => ask({ kind: "forget-last-known" }),
    chooseSharedFolder: () => ask({ kind: "choose-shared-folder" }),
    sharedFolder: () => ask({ kind: "shared-folder" }),
    leaveSharedFolder: () => ask({ kind: "leave-shared-folder" }),
    listShared: () => ask({ kind: "list-shared" }),
    readShared: (name) => ask({ kind: "read-shared", name }),
    writeShared: (name, bytes) => ask({ kind: "write-shared", name, bytes }),
    removeShared: (name) => ask({ kind: "remove-shared", name }),
    printToPdf: (title) => ask({ kind: "print-to-pdf", title }),
    setFullScreen: (on) => ask({ kind: "set-full-screen", on }),
    onNews: (listener) => hear(listener),
  };
}
