/**
 * The messages between the window and the shell: how one is recognised and
 * read before anything is done for it. Nothing here needs Electron, so every
 * refusal can be tested.
 */
import * as v from "valibot";
import type { DesktopError } from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";

/** The one channel that messages travel on. */
export const MESSAGE_CHANNEL = "turnwise";

/** The scheme and host of the page inside Electron. */
export const APP_ORIGIN = "turnwise://app";

const messageSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("info") }),
  v.strictObject({ kind: v.literal("show-data-folder") }),
]);

/** A message that was read and may be acted on. */
export type Message = v.InferOutput<typeof messageSchema>;

/** The frame that a message came from, as Electron describes it. */
export interface Sender {
  readonly url: string;
  readonly isTopFrame: boolean;
}

/**
 * Reads a message from the window.
 *
 * Errors: `foreign-sender` unless it comes from the top frame of our own page;
 *         `unreadable-message` with the field that is not as it should be.
 */
export function parseMessage(
  sender: Sender | undefined,
  body: unknown,
): Result<Message, DesktopError> {
  if (sender === undefined || !sender.isTopFrame || !isOwnAddress(sender.url)) {
    return err({ code: "foreign-sender" });
  }
  const message = v.safeParse(messageSchema, body);
  if (message.success) return ok(message.output);
  return err({
    code: "unreadable-message",
    field: v.getDotPath(message.issues[0]) ?? "",
  });
}

/** Is this an address of our own page? */
export function isOwnAddress(address: string): boolean {
  return address.startsWith(`${APP_ORIGIN}/`);
}
