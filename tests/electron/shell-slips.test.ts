import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { slipsOf } from "./shell-slips";

const FOLDER = join(import.meta.dirname, "../../electron");

describe("the shell's sources", () => {
  it("keep what Electron's security checklist asks of a source", () => {
    const names = readdirSync(FOLDER).filter((name) => name.endsWith(".ts"));
    expect(names).toContain("main.ts");
    const slips = names.flatMap((name) => {
      const path = `electron/${name}`;
      const text = readFileSync(join(FOLDER, name), "utf8");
      return slipsOf(path, text).map((slip) => `${path}: ${slip}`);
    });
    expect(slips).toEqual([]);
  });

  // Read off the text: main.ts itself runs in Electron only.
  it("sandbox every page, shut each in, refuse permissions, and watch what goes wrong", () => {
    const main = readFileSync(join(FOLDER, "main.ts"), "utf8");
    for (const call of [
      "app.enableSandbox();",
      `app.on("web-contents-created", (_event, contents) => shutIn(contents));`,
      "refuseEveryPermission(session.defaultSession);",
      "askBeforeLeaving(window.webContents, dialog);",
      "watchWindow(window,",
      "watchProcess(process,",
      "takeGivenFiles(app, inbox, start, toFront);",
    ]) {
      expect(main).toContain(call);
    }
  });
});

describe("the checker", () => {
  it.each([
    `shell.openExternal(url);`,
    `window.loadFile("index.html");`,
    `window.loadURL("file:///index.html");`,
    "window.loadURL(`file:///index.html`);",
    `const settings = { enableBlinkFeatures: "X" };`,
    `const privileges = { bypassCSP: true };`,
    `contents.executeJavaScript(text);`,
    `const view = new WebContentsView();`,
    `const view = new BrowserView();`,
    `ipcMain.on("a", act);`,
    `contextBridge.exposeInMainWorld("a", ipcRenderer);`,
    `import { autoUpdater } from "electron";`,
    `const { autoUpdater } = await import("electron-updater");`,
    `import updater from "electron-updater";`,
    `new BrowserWindow();`,
    `new BrowserWindow(options);`,
    `new BrowserWindow({ title: "a" });`,
    `new BrowserWindow({ webPreferences: { sandbox: true } });`,
    `new BrowserWindow({ webPreferences: { ...SHUT_IN_PREFERENCES, sandbox: false } });`,
  ])("refuses %s", (text) => {
    expect(slipsOf("electron/a.ts", text)).not.toEqual([]);
  });

  it.each([
    `new BrowserWindow({ webPreferences: SHUT_IN_PREFERENCES });`,
    `new BrowserWindow({ webPreferences: { preload, ...SHUT_IN_PREFERENCES } });`,
    `// shell.openExternal(url); new BrowserWindow();`,
    `window.loadURL("turnwise://app/");`,
  ])("takes %s for no slip", (text) => {
    expect(slipsOf("electron/a.ts", text)).toEqual([]);
  });

  it("lets the bridge's two ends be where they belong", () => {
    const main = `ipcMain.handle("a", act);`;
    expect(slipsOf("electron/ipc-handlers.ts", main)).toEqual([]);
    const page = `contextBridge.exposeInMainWorld("a", ipcRenderer);`;
    expect(slipsOf("electron/preload.ts", page)).toEqual([]);
  });
});
