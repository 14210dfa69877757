import type { MenuItemConstructorOptions } from "electron";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { MENU_COMMANDS } from "../../core/desktop-bridge";
import {
  type MenuDeeds,
  type MenuFacts,
  menuTemplate,
} from "../../electron/menu-template";
import {
  isCubeKey,
  type KeyPress,
} from "../../renderer/state/practise/turn-keys";

const PLATFORMS = ["linux", "win32", "darwin"] as const;

const A = join("/decks", "a.json");

function facts(platform: NodeJS.Platform, more: Partial<MenuFacts> = {}) {
  return { platform, recent: [A], isDevelopment: true, ...more };
}

function standInDeeds() {
  return {
    command: vi.fn<MenuDeeds["command"]>(),
    openRecent: vi.fn<MenuDeeds["openRecent"]>(),
    clearRecent: vi.fn<MenuDeeds["clearRecent"]>(),
    reload: vi.fn<MenuDeeds["reload"]>(),
    showData: vi.fn<MenuDeeds["showData"]>(),
    saveLog: vi.fn<MenuDeeds["saveLog"]>(),
  };
}

/** Every item, those of the menus within menus too. */
function everyItem(
  items: readonly MenuItemConstructorOptions[],
): readonly MenuItemConstructorOptions[] {
  return items.flatMap((item) => [
    item,
    ...(Array.isArray(item.submenu) ? everyItem(item.submenu) : []),
  ]);
}

function itemsOf(platform: NodeJS.Platform, more?: Partial<MenuFacts>) {
  return everyItem(menuTemplate(facts(platform, more), standInDeeds()));
}

function keysOf(items: readonly MenuItemConstructorOptions[]): string[] {
  return items.flatMap(({ accelerator }) => accelerator ?? []);
}

/** The menu key as the page would see it pressed. */
function pressOf(accelerator: string): KeyPress {
  const parts = accelerator.split("+");
  const key = parts.at(-1) ?? "";
  const holds = (...names: string[]) => names.some((n) => parts.includes(n));
  return {
    key: holds("Shift") ? key.toUpperCase() : key.toLowerCase(),
    code: `Key${key.toUpperCase()}`,
    shiftKey: holds("Shift"),
    ctrlKey: holds("Ctrl", "CmdOrCtrl"),
    altKey: holds("Alt"),
    metaKey: holds("Command"),
    repeat: false,
  };
}

/** Does a menu key leave the page its keys, the turning keys first of all? */
function leavesThePageItsKeys(accelerator: string): boolean {
  const press = pressOf(accelerator);
  const isFunctionKey = /^F\d\d?$/.test(accelerator);
  const isHeld = press.ctrlKey || press.metaKey;
  // Ctrl with these works in text boxes.
  const belongsToText =
    /^(up|down|left|right|home|end|backspace|delete|return|enter|space|tab|escape|esc|\?)$/i.test(
      accelerator.split("+").at(-1) ?? "",
    );
  return (isFunctionKey || isHeld) && !belongsToText && !isCubeKey(press);
}

describe.each(PLATFORMS)("the menus on %s", (platform) => {
  it("leave the page its keys", () => {
    const keys = keysOf(itemsOf(platform));
    expect(keys.length).toBeGreaterThan(10);
    expect(keys.filter((key) => !leavesThePageItsKeys(key))).toEqual([]);
  });

  it("have no two keys alike", () => {
    const keys = keysOf(itemsOf(platform))
      .map((key) =>
        key
          .replace("CmdOrCtrl", platform === "darwin" ? "Command" : "Ctrl")
          .split("+")
          .sort()
          .join("+"),
      )
      .sort();
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("spell out the key of every role that brings one of its own", () => {
    // From memory: these roles bring none.
    const keyless = /^(about|services|unhide|delete|zoom|front|window|help)$/;
    const silent = itemsOf(platform).filter(
      ({ role, accelerator }) =>
        role !== undefined && accelerator === undefined && !keyless.test(role),
    );
    expect(silent).toEqual([]);
  });

  it("have every command once, and every deed", () => {
    const deeds = standInDeeds();
    for (const item of everyItem(menuTemplate(facts(platform), deeds)))
      item.click?.(undefined as never, undefined, undefined as never);
    expect(deeds.command.mock.calls.flat().sort()).toEqual(
      [...MENU_COMMANDS].sort(),
    );
    expect(deeds.openRecent.mock.calls).toEqual([[A]]);
    for (const [name, deed] of Object.entries(deeds))
      if (name !== "command") expect(deed, name).toHaveBeenCalledOnce();
  });

  it("have a way out and a way to type, copy and paste", () => {
    const roles = itemsOf(platform).map(({ role }) => role);
    expect(roles).toEqual(
      expect.arrayContaining(["quit", "close", "copy", "paste", "undo"]),
    );
    expect(roles).toContain("togglefullscreen");
  });

  it("have the developer tools in development only, and never a forced reload", () => {
    const roles = itemsOf(platform).map(({ role }) => role);
    expect(roles).toContain("toggleDevTools");
    expect(roles).not.toContain("forceReload");
    expect(roles).not.toContain("reload");
    const packed = itemsOf(platform, { isDevelopment: false });
    expect(packed.map(({ role }) => role)).not.toContain("toggleDevTools");
  });
});

describe("the recent decks in the menu", () => {
  function recentLabels(recent: readonly string[]) {
    const items = itemsOf("linux", { recent });
    const menu = items.find(({ label }) => label === "Open r&ecent");
    const submenu = Array.isArray(menu?.submenu) ? menu.submenu : [];
    return {
      enabled: menu?.enabled,
      labels: submenu.flatMap(({ label }) => label ?? []),
    };
  }

  it("cannot be opened where there are none", () => {
    expect(recentLabels([])).toEqual({
      enabled: false,
      labels: ["Clear this list"],
    });
  });

  it("are named by their file, by their folder where two are alike", () => {
    const one = join("/x", "a.json");
    const other = join("/y", "a.json");
    const { enabled, labels } = recentLabels([one, other, "/z/R&D.json"]);
    expect(enabled).toBe(true);
    expect(labels).toEqual([
      "a.json (/x)",
      "a.json (/y)",
      "R&&D.json",
      "Clear this list",
    ]);
  });
});

describe("the check of the keys", () => {
  it.each(["R", "Shift+R", "W", "Backspace", "Ctrl+Backspace", "Alt+F", "?"])(
    "takes %s for the page's",
    (key) => {
      expect(leavesThePageItsKeys(key)).toBe(false);
    },
  );

  it.each(["CmdOrCtrl+R", "F11", "Command+Alt+I"])("lets %s pass", (key) => {
    expect(leavesThePageItsKeys(key)).toBe(true);
  });
});
