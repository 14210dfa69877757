import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * Gives the tests a place of their own for temporary files, and clears it away
 * after them: they leave some two hundred small folders behind. Workers take
 * the environment over.
 */
export default function setUp(): () => void {
  const folder = mkdtempSync(join(tmpdir(), "turnwise-tests-"));
  process.env["TMPDIR"] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
