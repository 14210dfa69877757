/**
 * Gives the page the bridge of `core/desktop-bridge.ts` and nothing else of
 * Electron. Built as CommonJS, as a sandboxed preload must be.
 */
import { contextBridge, ipcRenderer } from "electron";
import { DESKTOP_BRIDGE_NAME, type DesktopNews } from "../core/desktop-bridge";
import { err } from "../core/result";
import { bridgeOver, type Wire } from "./bridge";
import { MESSAGE_CHANNEL, NEWS_CHANNEL } from "./channels";

// What comes back is our own main process's, so it is not parsed again.
const wire: Wire = {
  ask: (message) =>
    ipcRenderer
      .invoke(MESSAGE_CHANNEL, message)
      // The main process answers with errors and throws none: the wire did.
      .catch((error: unknown) =>
        err({ code: "not-done", reason: String(error) }),
      ),
  hear: (listener) => {
    // The event itself holds Electron's own objects, and is not handed on.
    const hearOne = (_event: unknown, news: DesktopNews): void =>
      listener(news);
    ipcRenderer.on(NEWS_CHANNEL, hearOne);
    return () => void ipcRenderer.removeListener(NEWS_CHANNEL, hearOne);
  },
};

contextBridge.exposeInMainWorld(DESKTOP_BRIDGE_NAME, bridgeOver(wire));
