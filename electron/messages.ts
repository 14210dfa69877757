/**
 * The messages between the window and the shell: how one is recognised and
 * read before anything is done for it. Nothing here needs Electron, so every
 * refusal can be tested.
 */
import * as v from "valibot";
import { MAX_DECK_FILE_LENGTH } from "../core/deck/deck-file";
import {
  type AutomaticBackupOutcome,
  type DesktopError,
  type DesktopInfo,
  type KeptBackup,
  type LastKnown,
  MAX_BACKUP_BYTES,
  type OpenedBackup,
  type OpenedDeckFile,
  type OpenedResults,
  type SavedFile,
  type SharedFolderName,
} from "../core/desktop-bridge";
import { err, ok, type Result } from "../core/result";
import {
  isOwnResultsFileName,
  isResultsFileName,
  MAX_RESULTS_BYTES,
} from "../core/sharing/results-file-name";

/** The scheme and host of the page inside Electron. */
export const APP_ORIGIN = "turnwise://app";

/** What is proposed as a file's name; longer ones are no title. */
const title = v.pipe(v.string(), v.maxLength(1000));

/** Packed bytes: gzip, and not more than may go over the bridge. */
const packedBytes = (most: number) =>
  v.pipe(
    v.instance(Uint8Array),
    v.check(({ byteLength }) => byteLength <= most),
    // RFC 1952, section 2.3.1: every gzip file begins so.
    v.check(([first, second]) => first === 0x1f && second === 0x8b),
  );

/** How many of something a backup holds. */
const keptCount = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(0),
  v.maxValue(999_999_999),
);

const backupBytes = packedBytes(MAX_BACKUP_BYTES);

/** What a file of results may be called, copies of one too; no path. */
const resultsName = v.pipe(v.string(), v.check(isResultsFileName));

const messageSchema = v.variant("kind", [
  v.strictObject({ kind: v.literal("info") }),
  v.strictObject({ kind: v.literal("show-data-folder") }),
  v.strictObject({ kind: v.literal("open-deck-file") }),
  v.strictObject({
    kind: v.literal("save-deck-file"),
    title,
    text: v.pipe(v.string(), v.maxLength(MAX_DECK_FILE_LENGTH)),
  }),
  v.strictObject({ kind: v.literal("take-deck-file") }),
  v.strictObject({
    kind: v.literal("save-backup"),
    title,
    bytes: backupBytes,
  }),
  v.strictObject({ kind: v.literal("open-backup") }),
  v.strictObject({
    kind: v.literal("automatic-backup"),
    reviews: keptCount,
    runs: v.exactOptional(keptCount),
    bytes: backupBytes,
  }),
  v.strictObject({ kind: v.literal("list-backups") }),
  v.strictObject({
    kind: v.literal("read-backup"),
    name: v.pipe(v.string(), v.maxLength(255)),
  }),
  v.strictObject({ kind: v.literal("last-known") }),
  v.strictObject({ kind: v.literal("forget-last-known") }),
  v.strictObject({ kind: v.literal("choose-shared-folder") }),
  v.strictObject({ kind: v.literal("shared-folder") }),
  v.strictObject({ kind: v.literal("leave-shared-folder") }),
  v.strictObject({ kind: v.literal("list-shared") }),
  v.strictObject({ kind: v.literal("read-shared"), name: resultsName }),
  v.strictObject({
    kind: v.literal("write-shared"),
    name: v.pipe(v.string(), v.check(isOwnResultsFileName)),
    bytes: packedBytes(MAX_RESULTS_BYTES),
  }),
  v.strictObject({
    kind: v.literal("remove-shared"),
    name: v.pipe(v.string(), v.check(isOwnResultsFileName)),
  }),
  v.strictObject({ kind: v.literal("print-to-pdf"), title }),
  v.strictObject({ kind: v.literal("set-full-screen"), on: v.boolean() }),
]);

/** A message that was read and may be acted on. */
export type Message = v.InferOutput<typeof messageSchema>;

/** The kinds of messages. */
export type MessageKind = Message["kind"];

/** A message of one kind. */
export type MessageOf<Kind extends MessageKind> = Extract<
  Message,
  { readonly kind: Kind }
>;

/** What a message of each kind is answered with. */
export interface Replies {
  readonly info: DesktopInfo;
  readonly "show-data-folder": null;
  readonly "open-deck-file": OpenedDeckFile | null;
  readonly "save-deck-file": SavedFile | null;
  readonly "take-deck-file": OpenedDeckFile | null;
  readonly "save-backup": SavedFile | null;
  readonly "open-backup": OpenedBackup | null;
  readonly "automatic-backup": AutomaticBackupOutcome;
  readonly "list-backups": readonly KeptBackup[];
  readonly "read-backup": OpenedBackup;
  readonly "last-known": LastKnown | null;
  readonly "forget-last-known": null;
  readonly "choose-shared-folder": SharedFolderName | null;
  readonly "shared-folder": SharedFolderName | null;
  readonly "leave-shared-folder": null;
  readonly "list-shared": readonly string[];
  readonly "read-shared": OpenedResults;
  readonly "write-shared": SavedFile;
  readonly "remove-shared": null;
  readonly "print-to-pdf": SavedFile | null;
  readonly "set-full-screen": null;
}

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
