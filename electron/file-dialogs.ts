/**
 * Choosing a file to open or a place to save to, in the system's own dialogs.
 *
 * Electron's dialogs are handed in, so that what follows a choice can be
 * tested. Not every system's dialog adds the ending that a name lacks, and
 * none has asked about the file that then stands in the way.
 */
import type { Dialog } from "electron";
import { existsSync } from "node:fs";
import { basename, extname, join } from "node:path";
import type { DesktopFileError } from "../core/desktop-bridge";
import { ok, type Result } from "../core/result";
import { writeWholeFile } from "./whole-files";

/** A kind of file, as a dialog names it. */
export interface FileKind {
  /** For the dialog, in the plural. */
  readonly words: string;
  /** The endings that such files may have, without the dot; the first is ours. */
  readonly endings: readonly [string, ...string[]];
}

/** A person's choices; undefined where they closed the dialog without one. */
export interface FileDialogs {
  placeToOpen(kind: FileKind): Promise<string | undefined>;
  placeToSave(kind: FileKind, name: string): Promise<string | undefined>;
  mayReplace(name: string): Promise<boolean>;
  /** A folder, as an absolute path. */
  folderToShare(): Promise<string | undefined>;
}

/** As much of Electron's dialogs as choosing needs. */
export type SystemDialog = Pick<
  Dialog,
  "showOpenDialog" | "showSaveDialog" | "showMessageBox"
>;

/** The dialogs of a window; a place to save to is first proposed in the folder. */
export function fileDialogs(
  dialog: SystemDialog,
  window: Electron.BaseWindow,
  folder: string,
): FileDialogs {
  const filters = ({ words, endings }: FileKind) => [
    { name: words, extensions: [...endings] },
  ];
  return {
    async placeToOpen(kind) {
      const { canceled, filePaths } = await dialog.showOpenDialog(window, {
        properties: ["openFile"],
        filters: filters(kind),
      });
      return canceled ? undefined : filePaths[0];
    },
    async placeToSave(kind, name) {
      const { canceled, filePath } = await dialog.showSaveDialog(window, {
        defaultPath: join(folder, name),
        properties: ["createDirectory", "showOverwriteConfirmation"],
        filters: filters(kind),
      });
      return canceled || filePath === "" ? undefined : filePath;
    },
    async folderToShare() {
      const { canceled, filePaths } = await dialog.showOpenDialog(window, {
        properties: ["openDirectory", "createDirectory"],
      });
      return canceled ? undefined : filePaths[0];
    },
    async mayReplace(name) {
      const { response } = await dialog.showMessageBox(window, {
        type: "question",
        message: `There is a file “${name}” already.`,
        buttons: ["Replace it", "Leave it"],
        defaultId: 1,
        cancelId: 1,
      });
      return response === 0;
    },
  };
}

/** Has the file's name one of the kind's endings? */
export function hasEndingOf(kind: FileKind, path: string): boolean {
  const ending = extname(path).slice(1).toLowerCase();
  return kind.endings.includes(ending);
}

/**
 * Writes a file where the person says, and gives its path; null where they do
 * not say one.
 *
 * Errors: those of `writeWholeFile`.
 */
export async function saveByDialog(
  dialogs: FileDialogs,
  kind: FileKind,
  title: string,
  bytes: Uint8Array,
): Promise<Result<string | null, DesktopFileError>> {
  const proposed = `${fileNameOf(title)}.${kind.endings[0]}`;
  const chosen = await dialogs.placeToSave(kind, proposed);
  if (chosen === undefined) return ok(null);
  let path = chosen;
  if (!hasEndingOf(kind, chosen)) {
    path = `${chosen}.${kind.endings[0]}`;
    if (existsSync(path) && !(await dialogs.mayReplace(basename(path))))
      return ok(null);
  }
  const written = await writeWholeFile(path, bytes);
  return written.ok ? ok(path) : written;
}

/** Names that Windows keeps for devices, whatever their ending. */
const DEVICE_NAME = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i;

const LONGEST_NAME = 80;

/**
 * A file's name, without its ending, for something that has a title: what one
 * of the systems does not allow in a name is left out.
 */
export function fileNameOf(title: string): string {
  const allowed = title
    // Left-to-right marks and the like (Cf) can make a name look like another.
    .replace(/[\\/:*?"<>|\p{Cc}\p{Cf}\p{Cs}]/gu, " ")
    .replace(/\s+/g, " ");
  const short = [...allowed].slice(0, LONGEST_NAME).join("");
  const name = short.replace(/^[. ]+|[. ]+$/g, "");
  if (name === "") return "Turnwise";
  return DEVICE_NAME.test(name) ? `file ${name}` : name;
}
