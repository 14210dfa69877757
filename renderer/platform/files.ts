/**
 * Files that a person hands over: one they choose, one they drop on the
 * window, one that is written for them. Everything else in the app knows a
 * file as a name and a text.
 */
import type { DesktopError, OpenedDeckFile } from "../../core/desktop-bridge";
import { err, ok, type Result } from "../../core/result";
import { desktopBridge } from "./desktop";
import { chooseFile, offerFile } from "./file-exchange";

/** A file as the app sees it. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Why a file was not read. */
export type TextFileError =
  | { readonly code: "file-too-large"; readonly name: string }
  | { readonly code: "file-not-text"; readonly name: string }
  | { readonly code: "file-not-read"; readonly name: string }
  /** The desktop app's own dialog did not give one. */
  | {
      readonly code: "desktop-refused";
      readonly name: string;
      readonly error: DesktopError;
    };

/** A file that was read, or why not. */
export type ReadTextFile = Result<TextFile, TextFileError>;

/**
 * Reads a file as UTF-8; its size is looked at before anything of it is read.
 *
 * Units: `most` in bytes.
 */
export async function readTextFile(
  file: File,
  most: number,
): Promise<ReadTextFile> {
  const { name } = file;
  if (file.size > most) return err({ code: "file-too-large", name });
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    // A folder, or a file that went away since it was chosen.
    return err({ code: "file-not-read", name });
  }
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return ok({ name, text });
  } catch {
    return err({ code: "file-not-text", name });
  }
}

/**
 * Lets a person choose a file and reads it; undefined where they chose none.
 *
 * Shape: `endings` with their dots. Units: `most` in bytes.
 */
export async function chooseTextFile(
  endings: readonly string[],
  most: number,
): Promise<ReadTextFile | undefined> {
  const file = await chooseFile(endings);
  return file === undefined ? undefined : readTextFile(file, most);
}

/** What the desktop app's shell answered, as a file that was read; undefined where none was chosen. */
export function fromDesktop(
  answer: Result<OpenedDeckFile | null, DesktopError>,
): ReadTextFile | undefined {
  if (answer.ok) return answer.value === null ? undefined : ok(answer.value);
  const { error } = answer;
  return err({ code: "desktop-refused", name: "", error });
}

/** Lets a person choose a deck file, in the desktop app's own dialog where this is it. */
export async function chooseDeckFile(
  endings: readonly string[],
  most: number,
): Promise<ReadTextFile | undefined> {
  const desktop = desktopBridge();
  return desktop === undefined
    ? chooseTextFile(endings, most)
    : fromDesktop(await desktop.openDeckFile());
}

/** The file that is being dropped; undefined where it is something else, or more than one. */
export function droppedFile(event: DragEvent): File | undefined {
  const files = event.dataTransfer?.files;
  return files?.length === 1 ? files[0] : undefined;
}

/** Whether what is dragged over the window holds a file. */
export function holdsFile(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes("Files") ?? false;
}

/** Reserved by one system or another, or not to be seen. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}<>:"/\\|?*]+/gu;

/** The longest name before its ending. Units: UTF-16 units; systems allow 255 bytes. */
const LONGEST = 60;

/**
 * A name that every system takes for a file: without reserved characters,
 * dots or spaces at its ends, and not one of Windows's devices.
 */
export function safeFileName(name: string, ending: string): string {
  const safe = name
    .replace(UNSAFE, " ")
    .replace(/\s+/gu, " ")
    .slice(0, LONGEST)
    .replace(/^[. ]+|[. ]+$/gu, "");
  const isDevice = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/iu.test(safe);
  return `${safe === "" ? "deck" : isDevice ? `deck ${safe}` : safe}${ending}`;
}

/**
 * Hands a deck's file over: to the browser's downloads, or to where a person
 * chooses in the desktop app, which writes it whole or not at all.
 */
export async function writeDeckFile({
  name,
  text,
}: TextFile): Promise<Result<void, DesktopError>> {
  const desktop = desktopBridge();
  if (desktop === undefined) {
    await offerFile(name, new Blob([text], { type: "application/json" }));
    return ok(undefined);
  }
  const saved = await desktop.saveDeckFile(name, text);
  return saved.ok ? ok(undefined) : saved;
}
