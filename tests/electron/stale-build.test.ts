import { mkdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  buildStale,
  staleParts,
  type BuildPart,
} from "../../electron/stale-build";
import { temporaryFolder } from "./page-folder";

const PART: BuildPart = {
  name: "program",
  sources: ["source", "build.config.mjs"],
  result: "dist/program.js",
  configFile: "build.config.mjs",
  mode: "program",
};

const CONFIG = `export default {
  root: import.meta.dirname,
  logLevel: "silent",
  build: { ssr: "source/program.js", outDir: "dist", emptyOutDir: false },
};`;

function smallCheckout(): string {
  return temporaryFolder({
    "package.json": `{"type":"module"}`,
    "source/program.js": "console.log(1);",
    "source/deep/other.js": "console.log(2);",
    "build.config.mjs": CONFIG,
  });
}

async function built(): Promise<string> {
  const root = smallCheckout();
  await buildStale(root, () => undefined, [PART]);
  return root;
}

describe("what is stale", () => {
  it("is everything before the first build, and nothing after it", async () => {
    const root = smallCheckout();
    expect(staleParts(root, [PART])).toEqual([PART]);
    const said: string[] = [];
    await buildStale(root, (line) => said.push(line), [PART]);
    expect(said).toEqual(["Building program …"]);
    expect(staleParts(root, [PART])).toEqual([]);
    await buildStale(root, (line) => said.push(line), [PART]);
    expect(said).toHaveLength(1);
  });

  it("is a part whose source was changed, added, renamed or removed", async () => {
    const changes: ((root: string) => void)[] = [
      (root) =>
        writeFileSync(join(root, "source/program.js"), "console.log(3)"),
      (root) => writeFileSync(join(root, "source/deep/new.js"), ""),
      (root) => rmSync(join(root, "source/deep/other.js")),
      (root) => writeFileSync(join(root, "build.config.mjs"), `${CONFIG}\n`),
      (root) => writeFileSync(join(root, "package-lock.json"), "{}"),
      (root) => {
        rmSync(join(root, "source/deep"), { recursive: true });
        mkdirSync(join(root, "source/deeper"));
        writeFileSync(join(root, "source/deeper/other.js"), "console.log(2);");
      },
    ];
    const root = await built();
    for (const change of changes) {
      change(root);
      expect(staleParts(root, [PART]), change.toString()).toEqual([PART]);
      await buildStale(root, () => undefined, [PART]);
      expect(staleParts(root, [PART]), change.toString()).toEqual([]);
    }
  });

  it("is a part whose result is gone", async () => {
    const root = await built();
    rmSync(join(root, PART.result));
    expect(staleParts(root, [PART])).toEqual([PART]);
  });

  it("is no part whose sources only got a new time", async () => {
    const root = await built();
    utimesSync(join(root, "source/program.js"), 1e9, 1e9);
    expect(staleParts(root, [PART])).toEqual([]);
  });

  it("stays stale when the build fails", async () => {
    const root = smallCheckout();
    writeFileSync(join(root, "source/program.js"), "a missing (");
    await expect(buildStale(root, () => undefined, [PART])).rejects.toThrow();
    expect(staleParts(root, [PART])).toEqual([PART]);
  });
});
