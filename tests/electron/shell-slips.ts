/**
 * What no source of the shell may do, from Electron's security checklist, as a
 * function from a source text to a list of slips. Read off the compiler's
 * tree, so that a word in a comment is never taken for code.
 */
import ts from "typescript";

/** Names that the shell does without, and the checklist's reason. */
const FORBIDDEN: ReadonlyMap<string, string> = new Map([
  ["openExternal", "opens what a page names outside the app"],
  ["loadFile", "loads a page from file:"],
  ["enableBlinkFeatures", "switches on what browsers leave off"],
  ["allowpopups", "lets an embedded page open windows"],
  ["bypassCSP", "frees a scheme from the content policy"],
  ["executeJavaScript", "runs text as code in the page"],
  ["WebContentsView", "is a page that no window's settings shut in"],
  ["BrowserView", "is a page that no window's settings shut in"],
  ["autoUpdater", "fetches programs: updates are left to the system"],
  ["electron-updater", "fetches programs: updates are left to the system"],
]);

/** Names that belong to one file each. */
const AT_HOME: ReadonlyMap<string, string> = new Map([
  ["ipcMain", "electron/ipc-handlers.ts"],
  ["ipcRenderer", "electron/preload.ts"],
  ["contextBridge", "electron/preload.ts"],
]);

/**
 * The slips of one source, each in a few words.
 *
 * Shape: `path` is from the checkout's root, with slashes.
 */
export function slipsOf(path: string, text: string): string[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const slips: string[] = [];
  const see = (node: ts.Node): void => {
    slips.push(...slipsAt(node, path));
    ts.forEachChild(node, see);
  };
  see(source);
  return [...new Set(slips)];
}

function slipsAt(node: ts.Node, path: string): string[] {
  if (ts.isIdentifier(node) || ts.isStringLiteralLike(node)) {
    const why = FORBIDDEN.get(node.text);
    if (why !== undefined) return [`${node.text} ${why}`];
    const home = AT_HOME.get(node.text) ?? path;
    if (home !== path) return [`${node.text} belongs to ${home}`];
    if (node.text.startsWith("file:")) return ["file: is not our scheme"];
  }
  if (ts.isNewExpression(node) && node.expression.getText() === "BrowserWindow")
    return isShutIn(node) ? [] : ["a window without SHUT_IN_PREFERENCES, last"];
  return [];
}

/** Nothing may stand behind the spread, or it could take a setting back. */
function isShutIn(made: ts.NewExpression): boolean {
  const options = made.arguments?.[0];
  if (options === undefined || !ts.isObjectLiteralExpression(options)) {
    return false;
  }
  const preferences = options.properties.find(
    (property) => property.name?.getText() === "webPreferences",
  );
  if (preferences === undefined || !ts.isPropertyAssignment(preferences)) {
    return false;
  }
  const { initializer } = preferences;
  if (initializer.getText() === "SHUT_IN_PREFERENCES") return true;
  return (
    ts.isObjectLiteralExpression(initializer) &&
    initializer.properties.at(-1)?.getText() === "...SHUT_IN_PREFERENCES"
  );
}
