/**
 * What Chromium's folders can do beyond what the language's own library of
 * types knows. Source: WICG, "File System Access".
 */
interface FileSystemHandle {
  queryPermission(wish: {
    readonly mode: "read" | "readwrite";
  }): Promise<PermissionState>;
  requestPermission(wish: {
    readonly mode: "read" | "readwrite";
  }): Promise<PermissionState>;
}

interface Window {
  /** Absent where the browser has no such dialog. */
  readonly showDirectoryPicker?: (wish: {
    readonly id: string;
    readonly mode: "readwrite";
  }) => Promise<FileSystemDirectoryHandle>;
}
