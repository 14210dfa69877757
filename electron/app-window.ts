/**
 * An installed browser as the app's window, where Electron is not there: the
 * Chromium family opens a page without its own controls (`--app`).
 */
import { existsSync } from "node:fs";
import { posix, win32 } from "node:path";
import { dataFolder, type Environment } from "./data-folder";

/** A program and its arguments. */
export interface Command {
  readonly program: string;
  readonly words: readonly string[];
}

/** The machine, as far as finding a browser needs it. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly environment: Environment;
  readonly home: string;
}

/** Names a browser to use instead of looking for one. */
export const BROWSER_VARIABLE = "TURNWISE_BROWSER";

const LINUX_NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "microsoft-edge",
  "brave-browser",
];

const MAC_NAMES = [
  "Chromium",
  "Google Chrome",
  "Microsoft Edge",
  "Brave Browser",
];

const WINDOWS_PATHS = [
  "Chromium\\Application\\chrome.exe",
  "Google\\Chrome\\Application\\chrome.exe",
  "Microsoft\\Edge\\Application\\msedge.exe",
  "BraveSoftware\\Brave-Browser\\Application\\brave.exe",
];

/**
 * The installed browser to use, or `undefined` where there is none, or no
 * screen to open it on.
 */
export function findBrowser(
  machine: Machine,
  exists: (path: string) => boolean = existsSync,
): string | undefined {
  const chosen = machine.environment[BROWSER_VARIABLE];
  if (chosen !== undefined) return exists(chosen) ? chosen : undefined;
  return candidates(machine).find((path) => exists(path));
}

function candidates({ platform, environment, home }: Machine): string[] {
  if (platform === "win32") {
    return ["ProgramFiles", "ProgramFiles(x86)", "LOCALAPPDATA"]
      .flatMap((name) => environment[name] ?? [])
      .flatMap((base) => WINDOWS_PATHS.map((path) => win32.join(base, path)));
  }
  if (platform === "darwin") {
    return ["/Applications", posix.join(home, "Applications")].flatMap((base) =>
      MAC_NAMES.map((name) => `${base}/${name}.app/Contents/MacOS/${name}`),
    );
  }
  const hasScreen =
    Boolean(environment["DISPLAY"]) || Boolean(environment["WAYLAND_DISPLAY"]);
  if (!hasScreen) return [];
  const folders = (environment["PATH"] ?? "").split(":").filter(Boolean);
  return LINUX_NAMES.flatMap((name) =>
    folders.map((folder) => posix.join(folder, name)),
  );
}

/**
 * The command that opens the page in a window of its own, with a profile that
 * belongs to Turnwise alone, so that clearing a browser's history does not
 * clear a learner's.
 */
export function windowCommand(
  browser: string,
  address: string,
  machine: Machine,
): Command {
  const { platform, environment, home } = machine;
  const path = platform === "win32" ? win32 : posix;
  // A browser from a snap may not write to hidden folders of the home folder.
  const folder = browser.startsWith("/snap/")
    ? posix.join(home, "snap", "chromium", "common", "turnwise")
    : dataFolder(platform, environment, home);
  return {
    program: browser,
    words: [
      `--app=${address}`,
      `--user-data-dir=${path.join(folder, "browser")}`,
      "--no-first-run",
      "--no-default-browser-check",
    ],
  };
}
