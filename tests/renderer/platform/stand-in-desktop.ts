/**
 * A desktop shell for tests: it does nothing but what a test gives it.
 */
import type { DesktopBridge } from "../../../core/desktop-bridge";
import { err } from "../../../core/result";

/** A bridge on which everything that is not given is not done. */
export function standInDesktop(given: Partial<DesktopBridge>): DesktopBridge {
  const notDone = () =>
    Promise.resolve(err({ code: "not-done", reason: "a stand-in" } as const));
  return {
    info: notDone,
    showDataFolder: notDone,
    openDeckFile: notDone,
    saveDeckFile: notDone,
    takeDeckFile: notDone,
    saveBackup: notDone,
    openBackup: notDone,
    automaticBackup: notDone,
    listBackups: notDone,
    readBackup: notDone,
    lastKnown: notDone,
    forgetLastKnown: notDone,
    chooseSharedFolder: notDone,
    sharedFolder: notDone,
    leaveSharedFolder: notDone,
    listShared: notDone,
    readShared: notDone,
    writeShared: notDone,
    removeShared: notDone,
    printToPdf: notDone,
    setFullScreen: notDone,
    onNews: () => () => undefined,
    ...given,
  };
}
