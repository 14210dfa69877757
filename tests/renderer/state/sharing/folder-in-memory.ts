import { err, ok } from "../../../../core/result";
import type {
  FolderError,
  ResultsFolder,
} from "../../../../renderer/platform/results-folder";

/** A shared folder in memory, which can be made to fail. */
export function folderInMemory() {
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  const state: { trouble: FolderError | undefined } = { trouble: undefined };
  function answer<T>(act: () => T) {
    const { trouble } = state;
    return Promise.resolve(trouble === undefined ? ok(act()) : err(trouble));
  }
  const folder: ResultsFolder = {
    name: "class",
    list: () => answer(() => [...files.keys()]),
    read: (name) => {
      const bytes = files.get(name);
      return Promise.resolve(
        bytes === undefined ? err({ code: "folder-gone" }) : ok(bytes),
      );
    },
    write: (name, bytes) => answer(() => void files.set(name, bytes)),
    remove: (name) => answer(() => void files.delete(name)),
  };
  return { folder, files, state };
}
