import { afterEach, describe, expect, it, vi } from "vitest";
import { MAX_DECK_FILE_LENGTH } from "../../../core/deck/deck-file";
import {
  DESKTOP_BRIDGE_NAME,
  type DesktopBridge,
  MAX_BACKUP_BYTES,
} from "../../../core/desktop-bridge";
import { ok } from "../../../core/result";
import { desktopBridge } from "../../../renderer/platform/desktop";
import { standInDesktop } from "./stand-in-desktop";

function bridgeOf(given: Partial<DesktopBridge>): DesktopBridge {
  vi.stubGlobal(DESKTOP_BRIDGE_NAME, standInDesktop(given));
  const bridge = desktopBridge();
  if (bridge === undefined) throw new Error("there is no bridge");
  return bridge;
}

afterEach(() => {
  vi.unstubAllGlobals();
});

/** One call of every question. */
function everyQuestion(bridge: DesktopBridge) {
  const bytes = new Uint8Array(2);
  return {
    info: bridge.info(),
    showDataFolder: bridge.showDataFolder(),
    openDeckFile: bridge.openDeckFile(),
    saveDeckFile: bridge.saveDeckFile("a", "b"),
    takeDeckFile: bridge.takeDeckFile(),
    saveBackup: bridge.saveBackup("a", bytes),
    openBackup: bridge.openBackup(),
    automaticBackup: bridge.automaticBackup({ reviews: 1, bytes }),
    listBackups: bridge.listBackups(),
    readBackup: bridge.readBackup("a"),
    lastKnown: bridge.lastKnown(),
    forgetLastKnown: bridge.forgetLastKnown(),
    chooseSharedFolder: bridge.chooseSharedFolder(),
    sharedFolder: bridge.sharedFolder(),
    leaveSharedFolder: bridge.leaveSharedFolder(),
    listShared: bridge.listShared(),
    readShared: bridge.readShared("a"),
    writeShared: bridge.writeShared("a", bytes),
    removeShared: bridge.removeShared("a"),
    printToPdf: bridge.printToPdf("a"),
    setFullScreen: bridge.setFullScreen(true),
  };
}

const QUESTIONS = Object.keys(everyQuestion(standInDesktop({})));

describe("the desktop bridge", () => {
  it("is not there in a plain browser", () => {
    expect(desktopBridge()).toBeUndefined();
  });

  it("asks what it was asked, and hands on the answer", async () => {
    const saveDeckFile = vi.fn(() => Promise.resolve(ok({ name: "a.json" })));
    const automaticBackup = vi.fn(() =>
      Promise.resolve(ok({ written: true, fewerThan: null })),
    );
    const bridge = bridgeOf({ saveDeckFile, automaticBackup });
    expect(await bridge.saveDeckFile("title", "text")).toEqual({
      ok: true,
      value: { name: "a.json" },
    });
    expect(saveDeckFile).toHaveBeenCalledWith("title", "text");
    const bytes = new Uint8Array(3);
    await bridge.automaticBackup({ reviews: 7, bytes });
    expect(automaticBackup).toHaveBeenCalledWith({ reviews: 7, bytes });
  });

  it.each(QUESTIONS)("asks %s and no other by that name", async (name) => {
    const asked: string[] = [];
    const noting = Object.fromEntries(
      QUESTIONS.map((question) => [
        question,
        () => {
          asked.push(question);
          return Promise.resolve(ok(null));
        },
      ]),
    );
    const questions: Record<string, Promise<unknown>> = everyQuestion(
      bridgeOf(noting),
    );
    await Promise.all(Object.values(questions));
    expect(asked[QUESTIONS.indexOf(name)]).toBe(name);
  });

  it("turns whatever the wire throws into a code", async () => {
    for (const fail of [
      () => {
        throw new Error("An object could not be cloned.");
      },
      () => Promise.reject(new Error("An object could not be cloned.")),
    ]) {
      const failing = Object.fromEntries(QUESTIONS.map((name) => [name, fail]));
      const answers = Object.values(everyQuestion(bridgeOf(failing)));
      for (const answer of await Promise.all(answers)) {
        expect(answer).toEqual({
          ok: false,
          error: {
            code: "not-done",
            reason: "Error: An object could not be cloned.",
          },
        });
      }
    }
  });

  it("refuses what is too large before it is sent", async () => {
    const sent = vi.fn();
    const bridge = bridgeOf({
      saveDeckFile: sent,
      saveBackup: sent,
      automaticBackup: sent,
    });
    const large = new Uint8Array(MAX_BACKUP_BYTES + 1);
    const text = "x".repeat(MAX_DECK_FILE_LENGTH + 1);
    for (const [name, most, answer] of [
      ["a", MAX_DECK_FILE_LENGTH, bridge.saveDeckFile("a", text)],
      ["a", MAX_BACKUP_BYTES, bridge.saveBackup("a", large)],
      [
        "",
        MAX_BACKUP_BYTES,
        bridge.automaticBackup({ reviews: 1, bytes: large }),
      ],
    ] as const) {
      expect(await answer).toEqual({
        ok: false,
        error: { code: "file-too-large", name, most },
      });
    }
    expect(sent).not.toHaveBeenCalled();
  });

  it("hears news until it is told not to", () => {
    const stop = vi.fn();
    const listener = vi.fn();
    const bridge = bridgeOf({
      onNews: (hear) => {
        hear({ kind: "menu", command: "open-deck" });
        return stop;
      },
    });
    bridge.onNews(listener)();
    expect(listener).toHaveBeenCalledWith({
      kind: "menu",
      command: "open-deck",
    });
    expect(stop).toHaveBeenCalledOnce();
  });
});
