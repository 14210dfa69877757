/**
 * The app's window: shut in, and back where it was.
 */
import { BrowserWindow, nativeTheme, screen } from "electron";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { APP_ORIGIN } from "./messages";
import { SHUT_IN_PREFERENCES } from "./shut-in";
import {
  FIRST_SIZE,
  formatWindowState,
  LEAST_SIZE,
  parseWindowState,
  usableBounds,
  type WindowState,
} from "./window-state";

/** The page's ground, shown before the page is (the look's tokens). */
const GROUND = { light: "#e8e5df", dark: "#191c1d" } as const;

/** Opens the window; its place is kept in the folder. */
export function openWindow(folder: string): BrowserWindow {
  const file = join(folder, "window.json");
  const kept = readState(file);
  const bounds =
    kept &&
    usableBounds(
      kept.bounds,
      screen.getAllDisplays().map((display) => display.workArea),
    );
  const window = new BrowserWindow({
    ...(bounds ?? FIRST_SIZE),
    minWidth: LEAST_SIZE.width,
    minHeight: LEAST_SIZE.height,
    show: false,
    title: "Turnwise",
    backgroundColor: nativeTheme.shouldUseDarkColors
      ? GROUND.dark
      : GROUND.light,
    webPreferences: {
      preload: join(import.meta.dirname, "preload.cjs"),
      ...SHUT_IN_PREFERENCES,
    },
  });
  if (kept?.maximized === true) window.maximize();
  window.once("ready-to-show", () => window.show());
  window.on("close", () => keepState(file, window));
  void window.loadURL(`${APP_ORIGIN}/`);
  return window;
}

function readState(file: string): WindowState | undefined {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    // The first start has no file; one that cannot be read is as good as none.
    return undefined;
  }
  const state = parseWindowState(text);
  if (state.ok) return state.value;
  console.warn(`${file} is not used (${state.error.code}).`);
  return undefined;
}

function keepState(file: string, window: BrowserWindow): void {
  const state = {
    bounds: window.getNormalBounds(),
    maximized: window.isMaximized(),
  };
  try {
    writeFileSync(file, formatWindowState(state));
  } catch (error) {
    // A full or read-only disk must not keep the window from closing.
    console.warn(`The window's place was not kept: ${String(error)}`);
  }
}
