import { createHash } from "node:crypto";
import { describe, expect, it, vi } from "vitest";
import type { DesktopBridge } from "../../core/desktop-bridge";
import { answerMessage } from "../../electron/answer-message";
import { bridgeOver, type Wire } from "../../electron/bridge";
import { type Message, parseMessage } from "../../electron/messages";
import { temporaryFolder } from "./page-folder";
import { standInDesk } from "./stand-in-desk";

const OWN = { url: "turnwise://app/", isTopFrame: true };
const GZIP = new Uint8Array([0x1f, 0x8b, 8, 0]);
const RESULTS = `${createHash("sha256").update(GZIP).digest("hex")}.turnwise-results`;

/** One call of each function that asks something. */
const CALLS = {
  info: (bridge) => bridge.info(),
  showDataFolder: (bridge) => bridge.showDataFolder(),
  openDeckFile: (bridge) => bridge.openDeckFile(),
  saveDeckFile: (bridge) => bridge.saveDeckFile("a", "b"),
  takeDeckFile: (bridge) => bridge.takeDeckFile(),
  saveBackup: (bridge) => bridge.saveBackup("a", GZIP),
  openBackup: (bridge) => bridge.openBackup(),
  automaticBackup: (bridge) =>
    bridge.automaticBackup({ reviews: 1, bytes: GZIP }),
  listBackups: (bridge) => bridge.listBackups(),
  readBackup: (bridge) => bridge.readBackup("a"),
  lastKnown: (bridge) => bridge.lastKnown(),
  forgetLastKnown: (bridge) => bridge.forgetLastKnown(),
  chooseSharedFolder: (bridge) => bridge.chooseSharedFolder(),
  sharedFolder: (bridge) => bridge.sharedFolder(),
  listShared: (bridge) => bridge.listShared(),
  writeShared: (bridge) => bridge.writeShared(RESULTS, GZIP),
  readShared: (bridge) => bridge.readShared(RESULTS),
  removeShared: (bridge) => bridge.removeShared(RESULTS),
  leaveSharedFolder: (bridge) => bridge.leaveSharedFolder(),
  printToPdf: (bridge) => bridge.printToPdf("a"),
  setFullScreen: (bridge) => bridge.setFullScreen(true),
} satisfies Partial<
  Record<keyof DesktopBridge, (bridge: DesktopBridge) => Promise<unknown>>
>;

/** A wire that reads each message as the main process does, after the copy that a wire makes. */
function readingWire(sent: Message[]): Wire {
  const { desk } = standInDesk({ choices: { folder: temporaryFolder({}) } });
  return {
    ask: async (message) => {
      const read = parseMessage(OWN, structuredClone(message));
      if (!read.ok) return read;
      sent.push(read.value);
      const answer: unknown = await answerMessage(desk, read.value, () => {
        throw new Error("nothing here is unforeseen");
      });
      return answer as never;
    },
    hear: () => () => undefined,
  };
}

describe("the bridge", () => {
  it("sends one message for each function, all different, which is read and answered", async () => {
    const sent: Message[] = [];
    const bridge = bridgeOver(readingWire(sent));
    for (const [name, call] of Object.entries(CALLS)) {
      const answer: unknown = await call(bridge);
      if (name === "readBackup")
        expect(answer).toMatchObject({ error: { code: "no-such-backup" } });
      else expect(answer, name).toMatchObject({ ok: true });
    }
    expect(new Set(sent.map(({ kind }) => kind)).size).toBe(sent.length);
    expect([...Object.keys(CALLS), "onNews"].sort()).toEqual(
      Object.keys(bridge).sort(),
    );
  });

  it("hears news until it is told not to", () => {
    const stop = vi.fn();
    const hear = vi.fn<Wire["hear"]>(() => stop);
    const bridge = bridgeOver({ ...readingWire([]), hear });
    const listener = vi.fn();
    bridge.onNews(listener)();
    expect(hear).toHaveBeenCalledWith(listener);
    expect(stop).toHaveBeenCalledOnce();
  });
});
