/**
 * The program behind `npm start`.
 */
import { homedir } from "node:os";
import { join } from "node:path";
import { launch } from "./launch-app";
import { buildStale } from "./stale-build";

// The built file is `dist/electron/launch.js`.
const root = join(import.meta.dirname, "..", "..");
const say = (line: string): void => console.log(line);

const stop = new AbortController();
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
  process.on(signal, () => stop.abort());
}

process.exitCode = await launch({
  root,
  words: process.argv.slice(2),
  platform: process.platform,
  environment: process.env,
  home: homedir(),
  isRoot: process.getuid?.() === 0,
  stop: stop.signal,
  say,
  complain: (line) => console.error(line),
  build: () => buildStale(root, say),
});
