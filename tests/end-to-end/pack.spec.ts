/**
 * Packs the app with electron-builder itself, around a stand-in for Electron's
 * program, and looks into what came out. Neither Electron's program nor the
 * network is needed; what they alone could show is listed in DEVELOPERS.md.
 */
import { extractAll, listPackage } from "@electron/asar";
import { execFileSync } from "node:child_process";
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { builtinModules } from "node:module";
import { tmpdir } from "node:os";
import { join, relative, sep } from "node:path";
import { compileFunction } from "node:vm";
import { DESKTOP_BRIDGE_NAME } from "../../core/desktop-bridge";
import { startLocalServer } from "../../electron/local-server";
import { servedFilesFrom } from "../../electron/served-files";
import { BUILD_PARTS } from "../../electron/stale-build";
import { expect, test } from "./app";

const ROOT = join(import.meta.dirname, "../..");
const MOST_BYTES = 3_000_000;

// Source: Electron's documentation, tutorial "Electron Fuses", and the package
// @electron/fuses: this text, the version 1, the count, then "0" or "1" a fuse.
const FUSES_BEGIN = "dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX";

// Only named here: this file is also read by processes that run no test.
const folder = join(tmpdir(), `turnwise-pack-${process.pid}`);
const packed = join(folder, "packages", "linux-unpacked");
const archive = join(packed, "resources", "app.asar");
const opened = join(folder, "opened");

// One pack serves all tests of this file.
test.describe.configure({ mode: "default" });

test.beforeAll(() => {
  execFileSync(
    process.execPath,
    [
      join(ROOT, "node_modules/electron-builder/cli.js"),
      ...["--config", "electron/packing/electron-builder.config.ts"],
      ...["--linux", "--dir", "--x64"],
      `-c.electronDist=${standInElectron()}`,
      `-c.directories.output=${join(folder, "packages")}`,
    ],
    // Otherwise it asks the registry for a newer version of itself.
    { cwd: ROOT, env: { ...process.env, NO_UPDATE_NOTIFIER: "1" } },
  );
  extractAll(archive, opened);
});

test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A folder that has what the packer looks for in Electron's. */
function standInElectron(): string {
  const at = join(folder, "electron");
  mkdirSync(join(at, "resources"), { recursive: true });
  const fuses = `program ${FUSES_BEGIN}\x01\x08${"0".repeat(8)} program`;
  writeFileSync(join(at, "electron"), fuses, { mode: 0o755 });
  writeFileSync(join(at, "LICENSE"), "Electron's licence");
  writeFileSync(join(at, "LICENSES.chromium.html"), "Chromium's licences");
  return at;
}

/** The files under a folder, by their path from it, with slashes. */
function filesUnder(at: string): string[] {
  return readdirSync(at, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(at, join(entry.parentPath, entry.name)))
    .map((path) => path.split(sep).join("/"))
    .sort();
}

function builtFiles(): string[] {
  return BUILD_PARTS.flatMap(({ result }) =>
    statSync(join(ROOT, result)).isDirectory()
      ? filesUnder(join(ROOT, result)).map((path) => `${result}/${path}`)
      : [result],
  ).sort();
}

test("the archive holds the built files, byte for byte, and nothing else", () => {
  const files = filesUnder(opened);
  expect(files).toEqual([...builtFiles(), "package.json"].sort());
  expect(files.filter((path) => /\.map$|node_modules/.test(path))).toEqual([]);
  // What is extracted is what is listed: nothing lies beside the archive.
  const listed = listPackage(archive, { isPack: false }).map((path) =>
    path.split(sep).join("/"),
  );
  expect(listed).toEqual(expect.arrayContaining(files.map((f) => `/${f}`)));
  for (const path of builtFiles()) {
    const same = readFileSync(join(opened, path)).equals(
      readFileSync(join(ROOT, path)),
    );
    expect(same, path).toBe(true);
  }
});

test("the packed program needs nothing but Electron and Node", () => {
  const packedJson: unknown = JSON.parse(
    readFileSync(join(opened, "package.json"), "utf8"),
  );
  expect(packedJson).toMatchObject({
    name: "turnwise",
    main: "dist/electron/main.js",
    desktopName: "turnwise.desktop",
  });
  expect(packedJson).not.toHaveProperty("dependencies");
  expect(packedJson).not.toHaveProperty("devDependencies");
  for (const path of ["dist/electron/main.js", "dist/electron/preload.cjs"]) {
    const text = readFileSync(join(opened, path), "utf8");
    const named = text.matchAll(
      /(?:\bfrom|\bimport|\brequire\(|\bimport\()\s*["']([^"']+)["']/g,
    );
    const needed = [...named].map((match) => match[1] ?? "");
    expect(needed, path).toContain("electron");
    const missing = needed.filter(
      (name) =>
        name !== "electron" &&
        !builtinModules.includes(name.replace(/^node:/, "")),
    );
    expect(missing, path).toEqual([]);
  }
});

test("the packed preload gives the page functions of ours and nothing of Electron's", () => {
  const given: unknown[][] = [];
  const electron = {
    contextBridge: {
      exposeInMainWorld: (...words: unknown[]) => void given.push(words),
    },
    ipcRenderer: { invoke: () => undefined, on: () => undefined },
  };
  const file = join(opened, "dist/electron/preload.cjs");
  const run = compileFunction(readFileSync(file, "utf8"), ["require"]);
  const answer = (name: string): unknown =>
    name === "electron" ? electron : undefined;
  Reflect.apply(run, undefined, [answer]);
  expect(given.map(([name]) => name)).toEqual([DESKTOP_BRIDGE_NAME]);
  const values = Object.values(given[0]?.[1] ?? {});
  expect(values.length).toBeGreaterThan(0);
  for (const value of values) {
    expect(value).toBeInstanceOf(Function);
    expect(Object.values(electron.ipcRenderer)).not.toContain(value);
  }
});

test("the packed files, served by the local server, are the app", async ({
  page,
}) => {
  const files = await servedFilesFrom(join(opened, "dist/renderer"));
  const server = await startLocalServer(files, 0, "packed");
  if (!server.ok) throw new Error(server.error.code);
  const { address } = server.value;
  try {
    const index = await (await fetch(`${address}index.html`)).text();
    const named = [...index.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(
      (match) => match[1] ?? "",
    );
    // The script, the style sheet and the icon.
    expect(named.length).toBeGreaterThanOrEqual(3);
    const assets = [...files.keys()].filter((path) => path !== "/");
    for (const path of ["index.html", ...named, ...assets]) {
      const response = await fetch(new URL(path, address));
      expect(response.status, path).toBe(200);
      const own = readFileSync(
        join(ROOT, "dist/renderer", new URL(path, address).pathname),
      );
      expect(own.equals(Buffer.from(await response.arrayBuffer()))).toBe(true);
    }
    await page.goto(address);
    await expect(page).toHaveTitle(/Turnwise/);
    await page.goto(`${address}#/settings`);
    await expect(page.getByText(/^0 answers/)).toBeVisible();
  } finally {
    await server.value.close();
  }
});

test("the app is under 3 MB without the runtime", () => {
  const own = filesUnder(join(packed, "resources"));
  // All that the app adds to the stand-in's folder lies in the archive.
  expect(own).toEqual(["app.asar"]);
  const size = statSync(archive).size;
  expect(size).toBeGreaterThan(100_000);
  expect(size).toBeLessThan(MOST_BYTES);
});

test("the packed program's fuses are set, and Electron's licences are with it", () => {
  const program = readFileSync(join(packed, "turnwise"), "latin1");
  const at = program.indexOf(FUSES_BEGIN) + FUSES_BEGIN.length + 2;
  expect([...program.slice(at, at + 8)].map((fuse) => fuse === "1")).toEqual([
    false, // run as Node
    true, // cookie encryption
    false, // NODE_OPTIONS
    false, // --inspect
    true, // the archive's integrity
    true, // only from the archive
    false, // a V8 snapshot of its own
    false, // file:'s extra privileges
  ]);
  expect(filesUnder(packed)).toEqual(
    expect.arrayContaining(["LICENSE.electron.txt", "LICENSES.chromium.html"]),
  );
});
