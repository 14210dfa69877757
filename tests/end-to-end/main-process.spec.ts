/**
 * Runs the built main process in plain Node around a stand-in for Electron, and
 * plays the system's part. It shows how the parts are put together; what only
 * Electron can show is in `electron.spec.ts` and in DEVELOPERS.md's list.
 */
import { expect, test } from "@playwright/test";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import ts from "typescript";
import type { Message } from "../../electron/messages";
import type * as standIn from "./stand-in-electron";

type StandIn = typeof standIn;

const ROOT = join(import.meta.dirname, "../..");
const ERRORS = ["uncaughtException", "unhandledRejection"] as const;

// One process, whose state goes on from test to test.
test.describe.configure({ mode: "serial" });

let folder: string;
let electron: StandIn;
const before = {
  environment: { ...process.env },
  words: [...process.argv],
  listeners: ERRORS.map((event) => process.listeners(event as "exit")),
};

/** The file system as an installed app's, with the stand-in for Electron. */
function install(): void {
  for (const part of ["electron/main.js", "renderer"])
    cpSync(join(ROOT, "dist", part), join(folder, "app/dist", part), {
      recursive: true,
    });
  const module = join(folder, "app/node_modules/electron");
  mkdirSync(module, { recursive: true });
  const isModule = JSON.stringify({ type: "module", main: "index.js" });
  writeFileSync(join(folder, "app/package.json"), isModule);
  writeFileSync(join(module, "package.json"), isModule);
  const source = join(import.meta.dirname, "stand-in-electron.ts");
  const { outputText } = ts.transpileModule(readFileSync(source, "utf8"), {
    compilerOptions: {
      module: ts.ModuleKind.ESNext,
      target: ts.ScriptTarget.ES2022,
    },
  });
  writeFileSync(join(module, "index.js"), outputText);
}

function load(path: string): Promise<unknown> {
  return import(pathToFileURL(join(folder, "app", path)).href);
}

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "turnwise-main-"));
  install();
  writeFileSync(join(folder, "a.json"), "{}");
  const data = { HOME: folder, APPDATA: folder, XDG_DATA_HOME: folder };
  Object.assign(process.env, data);
  process.argv = ["turnwise", join(folder, "a.json")];
  electron = (await load("node_modules/electron/index.js")) as StandIn;
  await load("dist/electron/main.js");
  await expect
    .poll(() => electron.BrowserWindow.getAllWindows())
    .toHaveLength(1);
});

test.afterAll(() => {
  process.env = before.environment;
  process.argv = before.words;
  // The app's own; the test runner's stay.
  ERRORS.forEach((event, i) => {
    for (const listener of process.listeners(event as "exit"))
      if (before.listeners[i]?.includes(listener) !== true)
        process.removeListener(event, listener);
  });
  rmSync(folder, { recursive: true });
});

function theWindow() {
  const [window] = electron.BrowserWindow.getAllWindows();
  if (window === undefined) throw new Error("there is no window");
  return window;
}

function ask(message: Message, url = "turnwise://app/"): unknown {
  const { webContents } = theWindow();
  const event = { sender: webContents, senderFrame: { url, parent: null } };
  const handler = electron.handlers.get("turnwise");
  return handler?.(...([event, message] as never[]));
}

/** The menus as they were last set. */
let lastMenu: readonly Item[] = [];

/** What was asked of the system since the last look, by its name. */
function since(name: string): unknown[][] {
  const found = electron.asked.filter(([what]) => what === name);
  for (const [what, template] of electron.asked)
    if (what === "menu") lastMenu = template as readonly Item[];
  electron.asked.length = 0;
  return found;
}

interface Item {
  readonly label?: string;
  readonly submenu?: readonly Item[];
  readonly click?: () => void;
}

function everyItem(items: readonly Item[]): readonly Item[] {
  return items.flatMap((item) => [item, ...everyItem(item.submenu ?? [])]);
}

function news(): unknown[] {
  return since("news").map(([, , told]) => told);
}

test("it shuts its window in, with menus, before it loads the page", () => {
  const steps = electron.asked.map(([what]) => what);
  for (const step of ["sandbox", "scheme", "permissions", "menu", "shut in"]) {
    expect(steps).toContain(step);
    expect(steps.indexOf(step)).toBeLessThan(steps.indexOf("load"));
  }
  expect(electron.handlers.has("turnwise")).toBe(true);
});

test("the deck file it was started with waits for the page, and is recent then", async () => {
  since("");
  expect(await ask({ kind: "take-deck-file" })).toEqual({
    ok: true,
    value: { name: "a.json", text: "{}" },
  });
  expect(since("recent")).toEqual([["recent", join(folder, "a.json")]]);
  expect(await ask({ kind: "take-deck-file" })).toEqual({
    ok: true,
    value: null,
  });
});

test("a message from elsewhere is refused", async () => {
  const elsewhere = "https://evil.example/";
  expect(await ask({ kind: "info" }, elsewhere)).toEqual({
    ok: false,
    error: { code: "foreign-sender" },
  });
});

test("a second start brings the window forward and hands over its files", async () => {
  writeFileSync(join(folder, "b.turnwise-deck"), "b");
  since("");
  const words = ["turnwise", "b.turnwise-deck"];
  electron.app.emit("second-instance", {}, words, folder);
  expect(electron.asked.map(([what]) => what)).toEqual([
    "restore",
    "focus",
    "news",
  ]);
  expect(news()).toEqual([{ kind: "deck-file-waiting" }]);
  expect(await ask({ kind: "take-deck-file" })).toMatchObject({
    value: { name: "b.turnwise-deck" },
  });
});

test("backups lie in the data folder, and so does what is recent", async () => {
  const bytes = new Uint8Array([0x1f, 0x8b, 8, 0]);
  expect(
    await ask({ kind: "automatic-backup", reviews: 3, bytes }),
  ).toMatchObject({ ok: true, value: { written: true } });
  expect(await ask({ kind: "last-known" })).toMatchObject({
    value: { reviews: 3 },
  });
  const { value } = (await ask({ kind: "info" })) as {
    value: { dataFolder: string };
  };
  const own = join(value.dataFolder, "electron");
  expect(readdirSync(join(own, "backups"))).toHaveLength(1);
  await expect
    .poll(() => readFileSync(join(own, "recent-decks.json"), "utf8"))
    .toContain("b.turnwise-deck");
});

test("the page is written on paper, and fills the screen", async () => {
  const filePath = join(folder, "sheet.pdf");
  electron.answers["showSaveDialog"] = { canceled: false, filePath };
  expect(await ask({ kind: "print-to-pdf", title: "Sheet" })).toEqual({
    ok: true,
    value: { name: "sheet.pdf" },
  });
  expect(readFileSync(filePath, "utf8")).toBe("%PDF");
  since("");
  await ask({ kind: "set-full-screen", on: true });
  expect(since("full screen")).toEqual([["full screen", true]]);
  theWindow().emit("enter-full-screen");
  theWindow().emit("leave-full-screen");
  expect(news()).toEqual([
    { kind: "full-screen", on: true },
    { kind: "full-screen", on: false },
  ]);
});

test("the menus send their commands to the window", () => {
  const items = everyItem(lastMenu);
  const click = (label: string): void => {
    const item = items.find((one) => one.label === label);
    if (item?.click === undefined) throw new Error(`no item ${label}`);
    item.click();
  };
  expect(items.map(({ label }) => label)).toContain("b.turnwise-deck");
  since("");
  click("&Open deck…");
  click("&Print to PDF…");
  click("b.turnwise-deck");
  expect(news()).toEqual([
    { kind: "menu", command: "open-deck" },
    { kind: "menu", command: "print" },
    { kind: "deck-file-waiting" },
  ]);
  click("&Load the page again");
  expect(since("reload")).toHaveLength(1);
  click("Show where your data is kept");
  expect(since("show")).toHaveLength(1);
});

test("an error that nothing caught is shown once, and its log is kept", async () => {
  electron.answers["showMessageBox"] = { response: 1, checkboxChecked: false };
  since("");
  theWindow().webContents.emit(
    "render-process-gone",
    {},
    { reason: "clean-exit", exitCode: 0 },
  );
  expect(electron.asked).toEqual([]);
  theWindow().emit("unresponsive");
  // The second button: the page is loaded again.
  await expect.poll(() => since("reload")).toHaveLength(1);
  const { value } = (await ask({ kind: "info" })) as {
    value: { dataFolder: string };
  };
  const log = readFileSync(
    join(value.dataFolder, "electron", "last-error.txt"),
    "utf8",
  );
  expect(log).toContain("page-stuck");
  expect(log).toContain("turnwise 1.2.3");
  expect(log).not.toContain(folder);
});
