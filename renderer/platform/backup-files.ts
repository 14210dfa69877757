/**
 * Backup files between the app and the person: through the browser's chooser
 * and downloads, or the desktop app's dialogs where this is it.
 */
import type { DesktopError } from "../../core/desktop-bridge";
import { ok, type Result } from "../../core/result";
import { desktopBridge } from "./desktop";
import { chooseFile, offerFile } from "./file-exchange";

/** A file's bytes, as a backup is read from them. */
export type BackupBytes = ReadableStream<Uint8Array<ArrayBuffer>>;

/** Lets a person choose a backup; undefined where they chose none. */
export async function chooseBackup(): Promise<
  Result<BackupBytes | undefined, DesktopError>
> {
  const desktop = desktopBridge();
  if (desktop === undefined) {
    const file = await chooseFile([".turnwise-backup", ".gz"]);
    return ok(file?.stream());
  }
  const opened = await desktop.openBackup();
  if (!opened.ok) return opened;
  return ok(
    opened.value === null ? undefined : new Blob([opened.value.bytes]).stream(),
  );
}

/** Hands a backup over; false where the person closed the dialog without a choice. */
export async function handOverBackup(
  name: string,
  file: Blob,
): Promise<Result<boolean, DesktopError>> {
  const desktop = desktopBridge();
  if (desktop === undefined) {
    await offerFile(name, file);
    return ok(true);
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  const saved = await desktop.saveBackup(name, bytes);
  return saved.ok ? ok(saved.value !== null) : saved;
}
