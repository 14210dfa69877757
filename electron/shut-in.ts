/**
 * What shuts the window in, whatever its page should try. Nothing here needs
 * Electron to run, so every refusal can be tested; `DEVELOPERS.md` holds it
 * against Electron's own security checklist.
 */
import type { Session, WebPreferences } from "electron";
import { APP_ORIGIN } from "./messages";

/**
 * The settings of every window. Most are Electron's defaults; they are spelt
 * out so that neither a new version nor a slip changes one unseen.
 */
export const SHUT_IN_PREFERENCES = {
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  spellcheck: false,
} as const satisfies WebPreferences;

/**
 * Is this the page itself, whatever place in it is asked for? It may be loaded
 * again (its own buttons do that), and nothing else may be loaded in its stead.
 */
export function isOwnPage(address: string): boolean {
  return address.split(/[?#]/, 1)[0] === `${APP_ORIGIN}/`;
}

/** A page's wish to load something, which can be refused. */
interface Wish {
  readonly url: string;
  readonly isMainFrame: boolean;
  preventDefault(): void;
}

/** As much of Electron's `WebContents` as shutting it in needs. */
interface Contents {
  setWindowOpenHandler(handler: () => { action: "deny" }): void;
  on(
    event: "will-navigate" | "will-frame-navigate",
    listener: (wish: Wish) => void,
  ): unknown;
  on(
    event: "will-redirect" | "will-attach-webview",
    listener: (wish: Pick<Wish, "preventDefault">) => void,
  ): unknown;
}

/** Keeps a page from opening windows, from leaving, and from embedding. */
export function shutIn(contents: Contents): void {
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
  contents.on("will-navigate", (wish) => {
    if (!isOwnPage(wish.url)) wish.preventDefault();
  });
  contents.on("will-frame-navigate", (wish) => {
    if (!wish.isMainFrame || !isOwnPage(wish.url)) wish.preventDefault();
  });
  contents.on("will-redirect", (wish) => wish.preventDefault());
  contents.on("will-attach-webview", (wish) => wish.preventDefault());
}

/** Answers every wish of a page for the camera, a device and the like with no. */
export function refuseEveryPermission(
  session: Pick<
    Session,
    | "setPermissionRequestHandler"
    | "setPermissionCheckHandler"
    | "setDevicePermissionHandler"
  >,
): void {
  session.setPermissionRequestHandler((_page, _name, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}
