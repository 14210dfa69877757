/**
 * Drives the real desktop app. The only test that may skip itself: Electron's
 * binary is downloaded apart from its package and is not there everywhere.
 */
import { _electron, expect, test } from "@playwright/test";
import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DESKTOP_BRIDGE_NAME } from "../../core/desktop-bridge";
import { bridgeOver } from "../../electron/bridge";

const ROOT = join(import.meta.dirname, "../..");

// Only looking is safe: asking Electron for its path starts a download.
const BINARY = join(
  ...[ROOT, "node_modules", "electron", "dist"],
  process.platform === "darwin"
    ? "Electron.app/Contents/MacOS/Electron"
    : process.platform === "win32"
      ? "electron.exe"
      : "electron",
);

const BRIDGE_FUNCTIONS = Object.keys(
  bridgeOver({
    ask: () => Promise.reject(new Error("nothing is asked here")),
    hear: () => () => undefined,
  }),
).sort();

test("the desktop app opens its one shut-in window", async () => {
  test.skip(!existsSync(BINARY), "Electron's binary is not installed");

  const data = mkdtempSync(join(tmpdir(), "turnwise-electron-"));
  const isRoot = process.getuid?.() === 0;
  const desktop = await _electron.launch({
    executablePath: BINARY,
    args: [ROOT, ...(isRoot ? ["--no-sandbox"] : [])],
    env: { ...definedEnvironment(), XDG_DATA_HOME: data, APPDATA: data },
  });
  const page = await desktop.firstWindow();
  await expect(page).toHaveTitle(/Turnwise/);
  expect(page.url()).toMatch(/^turnwise:\/\/app\//);

  const seen = await page.evaluate(async (bridgeName) => {
    const bridge: unknown = Reflect.get(window, bridgeName);
    const response = await fetch("/index.html");
    return {
      bridge: Object.keys(bridge as object).sort(),
      node: "require" in window || "process" in window,
      policy: response.headers.get("content-security-policy"),
      opened: window.open("/"),
      permission: await navigator.permissions
        .query({ name: "geolocation" })
        .then(({ state }) => state),
    };
  }, DESKTOP_BRIDGE_NAME);
  expect(seen).toMatchObject({
    bridge: BRIDGE_FUNCTIONS,
    node: false,
    opened: null,
    permission: "denied",
  });
  expect(seen.policy).toContain("default-src 'none'");

  const visible = await desktop.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows().map((window) => window.isVisible()),
  );
  expect(visible).toEqual([true]);
  await desktop.close();
});

function definedEnvironment(): Record<string, string> {
  return Object.fromEntries(
    Object.entries(process.env).flatMap(([name, value]) =>
      value === undefined ? [] : [[name, value]],
    ),
  );
}
