/**
 * The menus, as a function from the system to what Electron builds them of.
 *
 * Every key is spelt out, the roles' own too, so that a test sees them all:
 * each holds Ctrl or Command or is a function key, since plain letters, the
 * arrows and the like turn the cube.
 */
import type { MenuItemConstructorOptions } from "electron";
import { basename, dirname } from "node:path";
import type { MenuCommand } from "../core/desktop-bridge";

/** What the menus are made for. */
export interface MenuFacts {
  readonly platform: NodeJS.Platform;
  /** The recent decks' paths, the newest first. */
  readonly recent: readonly string[];
  /** Adds the developer tools. */
  readonly isDevelopment: boolean;
}

/** What the menus do. */
export interface MenuDeeds {
  /** Hands a command to the window. */
  readonly command: (command: MenuCommand) => void;
  readonly openRecent: (path: string) => void;
  readonly clearRecent: () => void;
  readonly reload: () => void;
  readonly showData: () => void;
  readonly saveLog: () => void;
}

type Item = MenuItemConstructorOptions;

const LINE: Item = { type: "separator" };

/** The menu bar. */
export function menuTemplate(facts: MenuFacts, deeds: MenuDeeds): Item[] {
  const isMac = facts.platform === "darwin";
  return [
    ...(isMac ? [appMenu()] : []),
    fileMenu(facts, deeds, isMac),
    editMenu(facts.platform),
    viewMenu(facts, deeds, isMac),
    windowMenu(isMac),
    helpMenu(deeds, isMac),
  ];
}

/** macOS's own first menu. */
function appMenu(): Item {
  return {
    label: "Turnwise",
    submenu: [
      { role: "about" },
      LINE,
      { role: "services" },
      LINE,
      { role: "hide", accelerator: "Command+H" },
      { role: "hideOthers", accelerator: "Command+Alt+H" },
      { role: "unhide" },
      LINE,
      { role: "quit", accelerator: "Command+Q" },
    ],
  };
}

function fileMenu(facts: MenuFacts, deeds: MenuDeeds, isMac: boolean): Item {
  const { command } = deeds;
  return {
    label: "&File",
    submenu: [
      {
        label: "&Open deck…",
        accelerator: "CmdOrCtrl+O",
        click: () => command("open-deck"),
      },
      recentMenu(facts.recent, deeds),
      {
        label: "&Save deck as…",
        accelerator: "CmdOrCtrl+S",
        click: () => command("save-deck"),
      },
      LINE,
      {
        label: "&Back up…",
        accelerator: "CmdOrCtrl+Shift+B",
        click: () => command("back-up"),
      },
      { label: "&Restore…", click: () => command("restore") },
      LINE,
      {
        label: "&Print to PDF…",
        accelerator: "CmdOrCtrl+P",
        click: () => command("print"),
      },
      LINE,
      isMac
        ? { role: "close", accelerator: "Command+W" }
        : { role: "quit", label: "&Quit", accelerator: "Ctrl+Q" },
    ],
  };
}

function recentMenu(recent: readonly string[], deeds: MenuDeeds): Item {
  return {
    label: "Open r&ecent",
    enabled: recent.length > 0,
    submenu: [
      ...recent.map((path) => ({
        label: plainLabel(recentLabel(path, recent)),
        click: () => deeds.openRecent(path),
      })),
      LINE,
      { label: "Clear this list", click: () => deeds.clearRecent() },
    ],
  };
}

/** The file's name; with its folder where another has the same. */
function recentLabel(path: string, recent: readonly string[]): string {
  const name = basename(path);
  const alike = recent.filter((other) => basename(other) === name);
  return alike.length > 1 ? `${name} (${dirname(path)})` : name;
}

/** A label in which `&` marks no letter. */
function plainLabel(text: string): string {
  return text.replaceAll("&", "&&");
}

function editMenu(platform: NodeJS.Platform): Item {
  return {
    label: "&Edit",
    submenu: [
      { role: "undo", accelerator: "CmdOrCtrl+Z" },
      {
        role: "redo",
        accelerator: platform === "win32" ? "Ctrl+Y" : "CmdOrCtrl+Shift+Z",
      },
      LINE,
      { role: "cut", accelerator: "CmdOrCtrl+X" },
      { role: "copy", accelerator: "CmdOrCtrl+C" },
      { role: "paste", accelerator: "CmdOrCtrl+V" },
      // Its key, Delete alone, stays the page's.
      { role: "delete" },
      { role: "selectAll", accelerator: "CmdOrCtrl+A" },
    ],
  };
}

function viewMenu(facts: MenuFacts, deeds: MenuDeeds, isMac: boolean): Item {
  return {
    label: "&View",
    submenu: [
      {
        label: "&Load the page again",
        accelerator: "CmdOrCtrl+R",
        click: () => deeds.reload(),
      },
      LINE,
      { role: "zoomIn", accelerator: "CmdOrCtrl+Plus" },
      // The same key without Shift, where plus is written with it.
      { role: "zoomIn", accelerator: "CmdOrCtrl+=", visible: false },
      { role: "zoomOut", accelerator: "CmdOrCtrl+-" },
      { role: "resetZoom", accelerator: "CmdOrCtrl+0" },
      LINE,
      {
        role: "togglefullscreen",
        accelerator: isMac ? "Ctrl+Command+F" : "F11",
      },
      ...(facts.isDevelopment
        ? [
            LINE,
            {
              role: "toggleDevTools" as const,
              accelerator: isMac ? "Command+Alt+I" : "Ctrl+Shift+I",
            },
          ]
        : []),
    ],
  };
}

function windowMenu(isMac: boolean): Item {
  return {
    label: "&Window",
    ...(isMac ? { role: "window" as const } : {}),
    submenu: [
      { role: "minimize", accelerator: "CmdOrCtrl+M" },
      ...(isMac
        ? [{ role: "zoom" as const }, LINE, { role: "front" as const }]
        : [{ role: "close" as const, accelerator: "Ctrl+W" }]),
    ],
  };
}

function helpMenu(deeds: MenuDeeds, isMac: boolean): Item {
  return {
    label: "&Help",
    ...(isMac ? { role: "help" as const } : {}),
    submenu: [
      { label: "Show where your data is kept", click: () => deeds.showData() },
      {
        label: "Save the log of the last error…",
        click: () => deeds.saveLog(),
      },
      ...(isMac ? [] : [LINE, { role: "about" as const }]),
    ],
  };
}
