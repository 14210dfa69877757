/**
 * Gives the page the bridge of `core/desktop-bridge.ts` and nothing else of
 * Electron. Built as CommonJS, as a sandboxed preload must be.
 */
import { contextBridge, ipcRenderer } from "electron";
import {
  DESKTOP_BRIDGE_NAME,
  type DesktopBridge,
} from "../core/desktop-bridge";
import { MESSAGE_CHANNEL, type Message } from "./messages";

// What comes back is our own main process's, so it is not parsed again.
function ask<Reply>(message: Message): Promise<Reply> {
  return ipcRenderer.invoke(MESSAGE_CHANNEL, message) as Promise<Reply>;
}

const bridge: DesktopBridge = {
  info: () => ask({ kind: "info" }),
  showDataFolder: () => ask({ kind: "show-data-folder" }),
};

contextBridge.exposeInMainWorld(DESKTOP_BRIDGE_NAME, bridge);
