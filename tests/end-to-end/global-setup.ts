/**
 * Builds what is stale before the browser tests, so that they can be run on
 * their own and never test an old page.
 */
import { execFileSync } from "node:child_process";

/** Runs once before all workers. */
export default function build(): void {
  execFileSync("npm", ["run", "--silent", "build"], {
    stdio: "inherit",
    shell: process.platform === "win32",
  });
}
