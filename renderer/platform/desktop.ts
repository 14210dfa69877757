/**
 * The desktop shell's bridge, where this window is the desktop app's.
 *
 * Every question comes back with an answer: whatever the wire throws (a value
 * it cannot carry, a shell that is gone) is the code `not-done`. What the
 * shell would refuse for its size is refused before it is copied there.
 */
import { MAX_DECK_FILE_LENGTH } from "../../core/deck/deck-file";
import {
  DESKTOP_BRIDGE_NAME,
  type DesktopAnswer,
  type DesktopBridge,
  MAX_BACKUP_BYTES,
} from "../../core/desktop-bridge";
import { err } from "../../core/result";
import { MAX_RESULTS_BYTES } from "../../core/sharing/results-file-name";

declare global {
  interface Window {
    readonly [DESKTOP_BRIDGE_NAME]?: DesktopBridge;
  }
}

/** The bridge, or undefined in a plain browser. No call to it throws or is rejected. */
export function desktopBridge(): DesktopBridge | undefined {
  const bridge = window[DESKTOP_BRIDGE_NAME];
  return bridge === undefined ? undefined : steadyBridge(bridge);
}

function steadyBridge(bridge: DesktopBridge): DesktopBridge {
  return {
    info: () => answered(() => bridge.info()),
    showDataFolder: () => answered(() => bridge.showDataFolder()),
    openDeckFile: () => answered(() => bridge.openDeckFile()),
    saveDeckFile: (title, text) =>
      within(title, text.length, MAX_DECK_FILE_LENGTH, () =>
        bridge.saveDeckFile(title, text),
      ),
    takeDeckFile: () => answered(() => bridge.takeDeckFile()),
    saveBackup: (title, bytes) =>
      within(title, bytes.byteLength, MAX_BACKUP_BYTES, () =>
        bridge.saveBackup(title, bytes),
      ),
    openBackup: () => answered(() => bridge.openBackup()),
    automaticBackup: (backup) =>
      within("", backup.bytes.byteLength, MAX_BACKUP_BYTES, () =>
        bridge.automaticBackup(backup),
      ),
    listBackups: () => answered(() => bridge.listBackups()),
    readBackup: (name) => answered(() => bridge.readBackup(name)),
    lastKnown: () => answered(() => bridge.lastKnown()),
    forgetLastKnown: () => answered(() => bridge.forgetLastKnown()),
    chooseSharedFolder: () => answered(() => bridge.chooseSharedFolder()),
    sharedFolder: () => answered(() => bridge.sharedFolder()),
    leaveSharedFolder: () => answered(() => bridge.leaveSharedFolder()),
    listShared: () => answered(() => bridge.listShared()),
    readShared: (name) => answered(() => bridge.readShared(name)),
    writeShared: (name, bytes) =>
      within(name, bytes.byteLength, MAX_RESULTS_BYTES, () =>
        bridge.writeShared(name, bytes),
      ),
    removeShared: (name) => answered(() => bridge.removeShared(name)),
    printToPdf: (title) => answered(() => bridge.printToPdf(title)),
    setFullScreen: (on) => answered(() => bridge.setFullScreen(on)),
    onNews: (listener) => bridge.onNews(listener),
  };
}

async function answered<T>(ask: () => DesktopAnswer<T>): DesktopAnswer<T> {
  try {
    return await ask();
  } catch (error) {
    return err({ code: "not-done", reason: String(error) });
  }
}

function within<T>(
  name: string,
  size: number,
  most: number,
  ask: () => DesktopAnswer<T>,
): DesktopAnswer<T> {
  return size > most
    ? Promise.resolve(err({ code: "file-too-large", name, most }))
    : answered(ask);
}
