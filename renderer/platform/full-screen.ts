/** The whole screen for the page: by the desktop app's shell where there is one, else by the browser. */
import type { DesktopBridge } from "../../core/desktop-bridge";
import { desktopBridge } from "./desktop";

/** Whether the browser lets a page fill the screen; not every telephone's does. */
export function canFillScreen(
  bridge: DesktopBridge | undefined = desktopBridge(),
): boolean {
  return bridge !== undefined || document.fullscreenEnabled;
}

/**
 * Fills the screen, or gives it back. A browser wants a press for it.
 *
 * Shape: resolves with whether that was done. Never rejects.
 */
export async function fillScreen(
  on: boolean,
  bridge: DesktopBridge | undefined = desktopBridge(),
): Promise<boolean> {
  if (bridge !== undefined) return (await bridge.setFullScreen(on)).ok;
  try {
    if (on) await document.documentElement.requestFullscreen();
    else if (document.fullscreenElement !== null)
      await document.exitFullscreen();
    return true;
  } catch {
    // The browser's own reason ("Permissions check failed") helps nobody.
    return false;
  }
}

/** Hears that the browser gave the screen back: Escape does so without telling the page of the key. Returns how to stop. */
export function onScreenGivenBack(listener: () => void): () => void {
  const heard = () => {
    if (document.fullscreenElement === null) listener();
  };
  document.addEventListener("fullscreenchange", heard);
  return () => document.removeEventListener("fullscreenchange", heard);
}
