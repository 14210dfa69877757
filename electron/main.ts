/**
 * Electron's main process: one instance, one shut-in window, one scheme. Only
 * what must have Electron stands here; what it decides is in the files it
 * puts together, where it is tested.
 */
import { app, BrowserWindow, dialog, Menu, session, shell } from "electron";
import { mkdirSync } from "node:fs";
import { homedir, release } from "node:os";
import { basename, join } from "node:path";
import type { DesktopNews } from "../core/desktop-bridge";
import type { Desk } from "./answer-message";
import { registerAppScheme, serveAppScheme } from "./app-protocol";
import { backupFolder } from "./backup-folder";
import { NEWS_CHANNEL } from "./channels";
import { dataFolder } from "./data-folder";
import { deckInbox, readDeckFile } from "./deck-files";
import {
  type FileDialogs,
  fileDialogs,
  type FileKind,
  saveByDialog,
} from "./file-dialogs";
import { takeGivenFiles } from "./given-files";
import { handleMessages } from "./ipc-handlers";
import { askBeforeLeaving } from "./leaving";
import { menuTemplate } from "./menu-template";
import { recentDecks } from "./recent-decks";
import { servedFilesFrom } from "./served-files";
import { sharedFolder } from "./shared-folder";
import { refuseEveryPermission, shutIn } from "./shut-in";
import { askByDialog, troubleDesk, watchProcess, watchWindow } from "./trouble";
import { errorText, keepLog, keptLog, troubleLog } from "./trouble-log";
import { openWindow } from "./window";

/** What the page's own print styles do not say. */
const PRINTING = {
  pageSize: "A4",
  preferCSSPageSize: true,
  printBackground: true,
} as const;

const LOG_KIND: FileKind = { words: "Text", endings: ["txt"] };

const folder = dataFolder(process.platform, process.env, homedir());
const ownFolder = join(folder, "electron");
const logFile = join(ownFolder, "last-error.txt");
mkdirSync(ownFolder, { recursive: true });
app.setPath("userData", ownFolder);
app.enableSandbox();
registerAppScheme();
// Every page there ever is, the developer tools' too.
app.on("web-contents-created", (_event, contents) => shutIn(contents));

let hasBegun = false;
const inbox = deckInbox(() => tell({ kind: "deck-file-waiting" }), readDeck);
const recent = recentDecks(join(ownFolder, "recent-decks.json"), () => {
  if (app.isReady()) showMenus();
});
const backups = backupFolder(ownFolder, () => ({
  at: Date.now(),
  utcOffset: -new Date().getTimezoneOffset(),
}));
const shared = sharedFolder(ownFolder);
const trouble = troubleDesk({
  log: (seen) =>
    troubleLog(seen, {
      at: Date.now(),
      versions: {
        turnwise: app.getVersion(),
        electron: process.versions.electron,
        chrome: process.versions.chrome,
        node: process.versions.node,
        [process.platform]: `${release()} ${process.arch}`,
      },
      personal: [folder, homedir(), basename(homedir())],
    }),
  keep: (log) => keepLog(logFile, log),
  ask: (words) => askByDialog(dialog, words),
  saveLog,
  loadAgain: () => theWindow()?.webContents.reload(),
  quit: () => app.quit(),
});

if (app.requestSingleInstanceLock()) {
  const start = { words: process.argv, folder: process.cwd() };
  takeGivenFiles(app, inbox, start, toFront);
  app.on("window-all-closed", () => {
    if (process.platform !== "darwin") app.quit();
  });
  begin().catch((error: unknown) => {
    dialog.showErrorBox("Turnwise could not start", String(error));
    app.exit(1);
  });
} else {
  console.log("Turnwise is already running; its window comes to the front.");
  app.exit(0);
}

async function begin(): Promise<void> {
  await app.whenReady();
  // Not before: until now an error ends in the dialog above, or in Electron's.
  watchProcess(process, (seen) => void trouble.report(seen));
  refuseEveryPermission(session.defaultSession);
  showMenus();
  // The built file is `dist/electron/main.js`.
  serveAppScheme(
    await servedFilesFrom(join(import.meta.dirname, "..", "renderer")),
  );
  handleMessages(deskOf, (error) => {
    // The window says that it was not done; here it is only kept.
    void trouble.note({ kind: "error", text: errorText(error) });
  });
  openOwnWindow();
  hasBegun = true;
  app.on("activate", () => {
    if (theWindow() === undefined) openOwnWindow();
  });
}

function theWindow(): Electron.BrowserWindow | undefined {
  return BrowserWindow.getAllWindows()[0];
}

function openOwnWindow(): void {
  const window = openWindow(ownFolder);
  watchWindow(window, (seen) => void trouble.report(seen));
  askBeforeLeaving(window.webContents, dialog);
  window.on("enter-full-screen", () => tell({ kind: "full-screen", on: true }));
  window.on("leave-full-screen", () =>
    tell({ kind: "full-screen", on: false }),
  );
}

function toFront(): void {
  const window = theWindow();
  if (window?.isMinimized() === true) window.restore();
  window?.focus();
}

/** Without a window (macOS) one is opened; it asks for what waits by itself. */
function tell(news: DesktopNews): void {
  const window = theWindow();
  if (window !== undefined) window.webContents.send(NEWS_CHANNEL, news);
  else if (hasBegun) openOwnWindow();
}

function dialogsOf(window: Electron.BrowserWindow): FileDialogs {
  return fileDialogs(dialog, window, app.getPath("documents"));
}

function deskOf(window: Electron.BrowserWindow): Desk {
  return {
    version: app.getVersion(),
    dataFolder: folder,
    dialogs: dialogsOf(window),
    inbox,
    backups,
    shared,
    readDeck,
    rememberDeck,
    showFolder: (path) => shell.openPath(path),
    printPage: () => window.webContents.printToPDF(PRINTING),
    setFullScreen: (on) => window.setFullScreen(on),
  };
}

async function readDeck(path: string): ReturnType<typeof readDeckFile> {
  const deck = await readDeckFile(path);
  if (deck.ok) rememberDeck(path);
  return deck;
}

function rememberDeck(path: string): void {
  app.addRecentDocument(path);
  void recent.add(path);
}

function showMenus(): void {
  const { platform } = process;
  const template = menuTemplate(
    { platform, recent: recent.list(), isDevelopment: !app.isPackaged },
    {
      command: (command) => tell({ kind: "menu", command }),
      openRecent: (path) => inbox.add([path]),
      clearRecent: () => {
        app.clearRecentDocuments();
        void recent.clear();
      },
      reload: () => theWindow()?.webContents.reload(),
      showData: () => void shell.openPath(folder),
      saveLog: () => void saveLog(keptLog(logFile) ?? "No error was kept.\n"),
    },
  );
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

async function saveLog(log: string): Promise<void> {
  const window = theWindow();
  if (window === undefined) return;
  const saved = await saveByDialog(
    dialogsOf(window),
    LOG_KIND,
    "Turnwise error log",
    new TextEncoder().encode(log),
  );
  if (!saved.ok) dialog.showErrorBox("The log was not saved", saved.error.code);
}
