/**
 * Electron's main process: one instance, one shut-in window, one scheme.
 */
import { app, BrowserWindow, dialog, Menu, session } from "electron";
import { mkdirSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { registerAppScheme, serveAppScheme } from "./app-protocol";
import { dataFolder } from "./data-folder";
import { handleMessages } from "./ipc-handlers";
import { servedFilesFrom } from "./served-files";
import { refuseEveryPermission, shutIn } from "./shut-in";
import { openWindow } from "./window";

const folder = dataFolder(process.platform, process.env, homedir());
const ownFolder = join(folder, "electron");
mkdirSync(ownFolder, { recursive: true });
app.setPath("userData", ownFolder);
app.enableSandbox();
registerAppScheme();
// Every page there ever is, the developer tools' too.
app.on("web-contents-created", (_event, contents) => shutIn(contents));

if (app.requestSingleInstanceLock()) {
  app.on("second-instance", () => {
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized() === true) window.restore();
    window?.focus();
  });
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
  refuseEveryPermission(session.defaultSession);
  // The roles bring the system's own keys: editing, zoom, full screen.
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(process.platform === "darwin" ? [{ role: "appMenu" as const }] : []),
      { role: "editMenu" },
      { role: "viewMenu" },
      { role: "windowMenu" },
    ]),
  );
  // The built file is `dist/electron/main.js`.
  serveAppScheme(
    await servedFilesFrom(join(import.meta.dirname, "..", "renderer")),
  );
  handleMessages(folder);
  openWindow(ownFolder);
  app.on("activate", () => {
    if (BrowserWindow.getAllWindows().length === 0) openWindow(ownFolder);
  });
}
