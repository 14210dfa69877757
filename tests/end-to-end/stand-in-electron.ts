/**
 * As much of Electron's module as the main process uses, for running the built
 * main process in plain Node: nothing is shown, what is asked of the system is
 * noted, and a test plays the system's part. It is handed to Node as a file of
 * its own (compiled by the test), so it imports nothing of ours.
 */
import { EventEmitter } from "node:events";

/** What the main process asked of the system, in order. */
export const asked: unknown[][] = [];

/** The handlers that the main process gave, by channel or scheme. */
export const handlers = new Map<string, (...words: never[]) => unknown>();

/** The answers of dialogs, by the dialog's name. */
export const answers: Record<string, unknown> = {};

function note(...words: unknown[]): void {
  asked.push(words);
}

class App extends EventEmitter {
  readonly isPackaged = true;
  isFirst = true;
  ready = false;
  setPath(name: string, path: string): void {
    note("path", name, path);
  }
  getPath(name: string): string {
    return `/${name}`;
  }
  getVersion(): string {
    return "1.2.3";
  }
  enableSandbox(): void {
    note("sandbox");
  }
  requestSingleInstanceLock(): boolean {
    return this.isFirst;
  }
  isReady(): boolean {
    return this.ready;
  }
  async whenReady(): Promise<void> {
    await new Promise((resolve) => setImmediate(resolve));
    this.ready = true;
  }
  addRecentDocument(path: string): void {
    note("recent", path);
  }
  clearRecentDocuments(): void {
    note("no recent");
  }
  quit(): void {
    note("quit");
  }
  exit(code: number): void {
    note("exit", code);
  }
}

/** Electron's `app`. */
export const app = new App();

class WebContents extends EventEmitter {
  readonly mainFrame = { url: "turnwise://app/", parent: null };
  setWindowOpenHandler(): void {
    note("shut in");
  }
  send(...words: unknown[]): void {
    note("news", ...words);
  }
  reload(): void {
    note("reload");
  }
  printToPDF(): Promise<Uint8Array> {
    return Promise.resolve(new TextEncoder().encode("%PDF"));
  }
}

const windows: BrowserWindow[] = [];

/** Electron's `BrowserWindow`; a plain object on an emitter. */
export class BrowserWindow extends EventEmitter {
  readonly webContents = new WebContents();
  constructor(options: unknown) {
    super();
    note("window", options);
    windows.push(this);
    app.emit("web-contents-created", {}, this.webContents);
  }
  static getAllWindows(): readonly BrowserWindow[] {
    return windows;
  }
  static fromWebContents(contents: WebContents): BrowserWindow | null {
    return windows.find((one) => one.webContents === contents) ?? null;
  }
  loadURL(address: string): Promise<void> {
    note("load", address);
    return Promise.resolve();
  }
  isMinimized(): boolean {
    return true;
  }
  restore(): void {
    note("restore");
  }
  focus(): void {
    note("focus");
  }
  setFullScreen(on: boolean): void {
    note("full screen", on);
  }
}

function dialogAnswer(name: string): () => Promise<unknown> {
  return () => {
    note("dialog", name);
    return Promise.resolve(answers[name]);
  };
}

/** Electron's `dialog`. */
export const dialog = {
  showOpenDialog: dialogAnswer("showOpenDialog"),
  showSaveDialog: dialogAnswer("showSaveDialog"),
  showMessageBox: dialogAnswer("showMessageBox"),
  showMessageBoxSync: (): unknown => answers["showMessageBoxSync"],
  showErrorBox: (...words: unknown[]): void => note("error box", ...words),
};

/** Electron's `Menu`: a menu is its template. */
export const Menu = {
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu: (template: unknown): void => note("menu", template),
};

/** Electron's `session`. */
export const session = {
  defaultSession: {
    setPermissionRequestHandler: (): void => note("permissions"),
    setPermissionCheckHandler: (): void => note("permissions"),
    setDevicePermissionHandler: (): void => note("permissions"),
  },
};

/** Electron's `shell`. */
export const shell = {
  openPath: (path: string): Promise<string> => {
    note("show", path);
    return Promise.resolve("");
  },
};

/** Electron's `protocol`. */
export const protocol = {
  registerSchemesAsPrivileged: (): void => note("scheme"),
  handle: (scheme: string, handler: (...words: never[]) => unknown): void =>
    void handlers.set(scheme, handler),
};

/** Electron's `ipcMain`. */
export const ipcMain = {
  handle: (channel: string, handler: (...words: never[]) => unknown): void =>
    void handlers.set(channel, handler),
};

/** Electron's `nativeTheme` and `screen`. */
export const nativeTheme = { shouldUseDarkColors: false };
/** See `nativeTheme`. */
export const screen = { getAllDisplays: (): readonly unknown[] => [] };
