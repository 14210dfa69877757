/**
 * The Chromium that tests and benchmarks use: where it is, how it is started,
 * and how it is installed where it is missing.
 */
import { chromium } from "@playwright/test";
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Names a Chromium to use instead of looking for one. */
const CHROMIUM_VARIABLE = "TURNWISE_CHROMIUM";

const SYSTEM_NAMES = ["chromium", "chromium-browser", "google-chrome"];

/**
 * The path of a Chromium: the one named in the environment, Playwright's own,
 * or the system's, in this order; `undefined` where there is none.
 */
export function findChromium(): string | undefined {
  const named = process.env[CHROMIUM_VARIABLE];
  const onPath = SYSTEM_NAMES.flatMap((name) =>
    (process.env["PATH"] ?? "")
      .split(delimiter)
      .filter(Boolean)
      .map((folder) => join(folder, name)),
  );
  return [named, chromium.executablePath(), ...onPath].find(
    (path) => path !== undefined && path !== "" && existsSync(path),
  );
}

/** What Playwright needs to start that Chromium. */
export function chromiumOptions(): { executablePath: string; args: string[] } {
  const executablePath = findChromium();
  if (executablePath === undefined) {
    throw new Error(
      `No Chromium was found. Install one, or name one in ${CHROMIUM_VARIABLE}.`,
    );
  }
  const isRoot = process.getuid?.() === 0;
  return {
    executablePath,
    args: [
      // Chromium refuses to sandbox what root runs.
      ...(isRoot ? ["--no-sandbox"] : []),
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
  };
}

/**
 * Installs a Chromium where there is none: Debian's package for root, else
 * Playwright's own build. Says whether there is one afterwards.
 */
export function installChromium(): boolean {
  if (findChromium() !== undefined) return true;
  const isRoot = process.getuid?.() === 0;
  const commands =
    isRoot && existsSync("/etc/debian_version")
      ? [
          "apt-get update",
          "apt-get install -y --no-install-recommends chromium",
        ]
      : ["npx playwright install chromium"];
  console.log(`No Chromium was found: ${commands.join(" && ")}`);
  for (const command of commands) {
    const { status } = spawnSync(command, { shell: true, stdio: "inherit" });
    if (status !== 0) break;
  }
  return findChromium() !== undefined;
}
