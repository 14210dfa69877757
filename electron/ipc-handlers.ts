/**
 * Answers the window's messages, after `messages.ts` has checked them.
 */
import { BrowserWindow, ipcMain, type WebFrameMain } from "electron";
import type { DesktopAnswer } from "../core/desktop-bridge";
import { err } from "../core/result";
import { answerMessage, type Desk } from "./answer-message";
import { MESSAGE_CHANNEL } from "./channels";
import {
  parseMessage,
  type MessageKind,
  type Replies,
  type Sender,
} from "./messages";

/** Begins to answer messages, each with the desk of the window it came from. */
export function handleMessages(
  deskOf: (window: Electron.BrowserWindow) => Desk,
  unforeseen: (error: unknown) => void,
): void {
  ipcMain.handle(
    MESSAGE_CHANNEL,
    async (event, body): DesktopAnswer<Replies[MessageKind]> => {
      const message = parseMessage(senderOf(event.senderFrame), body);
      if (!message.ok) return message;
      const window = BrowserWindow.fromWebContents(event.sender);
      if (window === null) return err({ code: "foreign-sender" });
      return answerMessage(deskOf(window), message.value, unforeseen);
    },
  );
}

function senderOf(frame: WebFrameMain | null): Sender | undefined {
  if (frame === null) return undefined;
  return { url: frame.url, isTopFrame: frame.parent === null };
}
