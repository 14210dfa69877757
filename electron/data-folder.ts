/**
 * Where this person's data lives outside the checkout, by each system's own
 * rule (XDG base directories, Application Support, roaming application data).
 */
import { posix, win32 } from "node:path";

/** The environment as Node gives it. */
export type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Turnwise's folder for this person: `browser` in it is the browser window's
 * profile, `electron` is Electron's; each holds a database of its own.
 *
 * Shape: `home` is the person's home folder, an absolute path.
 */
export function dataFolder(
  platform: NodeJS.Platform,
  environment: Environment,
  home: string,
): string {
  if (platform === "win32") {
    return win32.join(
      environment["APPDATA"] ?? win32.join(home, "AppData", "Roaming"),
      "Turnwise",
    );
  }
  if (platform === "darwin") {
    return posix.join(home, "Library", "Application Support", "Turnwise");
  }
  const base = environment["XDG_DATA_HOME"];
  // The XDG rule: a relative path is to be ignored.
  return base !== undefined && posix.isAbsolute(base)
    ? posix.join(base, "turnwise")
    : posix.join(home, ".local", "share", "turnwise");
}
