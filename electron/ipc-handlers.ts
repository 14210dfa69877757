/**
 * Answers the window's messages, after `messages.ts` has checked them.
 */
import { app, ipcMain, shell, type WebFrameMain } from "electron";
import type { DesktopError, DesktopInfo } from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";
import {
  MESSAGE_CHANNEL,
  parseMessage,
  type Message,
  type Sender,
} from "./messages";

type Reply = Result<DesktopInfo | null, DesktopError>;

/** Begins to answer messages; the folder is where this person's data lives. */
export function handleMessages(dataFolder: string): void {
  ipcMain.handle(MESSAGE_CHANNEL, async (event, body): Promise<Reply> => {
    const message = parseMessage(senderOf(event.senderFrame), body);
    return message.ok ? act(message.value, dataFolder) : message;
  });
}

async function act(message: Message, dataFolder: string): Promise<Reply> {
  switch (message.kind) {
    case "info":
      return ok({ version: app.getVersion(), dataFolder });
    case "show-data-folder": {
      const reason = await shell.openPath(dataFolder);
      return reason === "" ? ok(null) : err({ code: "not-done", reason });
    }
  }
}

function senderOf(frame: WebFrameMain | null): Sender | undefined {
  if (frame === null) return undefined;
  return { url: frame.url, isTopFrame: frame.parent === null };
}
