/**
 * A small built page in a temporary folder, for tests of what serves it.
 */
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

/** Writes files into a new temporary folder and says where that is. */
export function temporaryFolder(files: Record<string, string>): string {
  const folder = mkdtempSync(join(tmpdir(), "turnwise-test-"));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** The files of a small page. */
export const SMALL_PAGE = {
  "index.html": "<title>page</title>",
  "favicon.svg": "<svg/>",
  "assets/index-abc123.js": "export {};",
  "assets/deep/search-def456.wasm": "wasm",
  "assets/fit-789abc.wasm.gz": "zipped",
};
