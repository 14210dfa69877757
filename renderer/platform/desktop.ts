/** The desktop shell's bridge, where this window is the desktop app's. */
import {
  DESKTOP_BRIDGE_NAME,
  type DesktopBridge,
} from "../../core/desktop-bridge";

declare global {
  interface Window {
    readonly [DESKTOP_BRIDGE_NAME]?: DesktopBridge;
  }
}

/** The bridge, or undefined in a plain browser. */
export function desktopBridge(): DesktopBridge | undefined {
  return window[DESKTOP_BRIDGE_NAME];
}
