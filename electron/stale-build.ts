/**
 * Builds what is stale.
 *
 * A part is stale when the digest of what goes into it is not the one noted at
 * its last build. Digests and not file times, because a checkout or a copy
 * gives every file a new time; reading all sources takes some milliseconds.
 */
import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";

/** A part of the app that is built on its own. */
export interface BuildPart {
  readonly name: string;
  /** Files and folders that go into it, from the checkout's root. */
  readonly sources: readonly string[];
  /** What the build leaves, from the checkout's root. */
  readonly result: string;
  readonly configFile: string;
  readonly mode: string;
}

const ALWAYS = ["package.json", "package-lock.json", "tsconfig.json"];

/** The parts of the app, in the order in which they are built. */
export const BUILD_PARTS: readonly BuildPart[] = [
  {
    name: "window",
    sources: ["core", "renderer", "vite.config.ts", "svelte.config.js"],
    result: "dist/renderer",
    configFile: "vite.config.ts",
    mode: "production",
  },
  {
    name: "main",
    sources: ["core", "electron", "vite.node.config.ts"],
    result: "dist/electron/main.js",
    configFile: "vite.node.config.ts",
    mode: "main",
  },
  {
    name: "preload",
    sources: ["core", "electron", "vite.node.config.ts"],
    result: "dist/electron/preload.cjs",
    configFile: "vite.node.config.ts",
    mode: "preload",
  },
];

/** The parts of a checkout whose sources changed since they were built. */
export function staleParts(
  root: string,
  parts: readonly BuildPart[] = BUILD_PARTS,
): BuildPart[] {
  return parts.filter(
    (part) =>
      !existsSync(join(root, part.result)) ||
      notedDigest(root, part) !== sourceDigest(root, part),
  );
}

/**
 * Builds what is stale and notes what it was built from.
 *
 * Errors: throws what the bundler throws; nothing is noted then.
 */
export async function buildStale(
  root: string,
  say: (line: string) => void,
  parts: readonly BuildPart[] = BUILD_PARTS,
): Promise<void> {
  const stale = staleParts(root, parts);
  if (stale.length === 0) return;
  say(`Building ${stale.map((part) => part.name).join(", ")} …`);
  const { build } = await import("vite");
  for (const part of stale) {
    // Taken before the build: a file that changes meanwhile stays stale.
    const digest = sourceDigest(root, part);
    const result = join(root, part.result);
    const isFolder = part.mode === "production";
    // A folder is built aside and swapped in, so that a second start at the
    // same moment never finds half a page.
    const aside = `${result}.${process.pid}`;
    await build({
      configFile: join(root, part.configFile),
      mode: part.mode,
      logLevel: "warn",
      ...(isFolder ? { build: { outDir: aside } } : {}),
    });
    if (isFolder) swapIn(aside, result);
    const note = notePath(root, part);
    mkdirSync(join(note, ".."), { recursive: true });
    writeFileSync(note, digest);
  }
}

function swapIn(aside: string, result: string): void {
  const old = `${aside}.old`;
  for (const [from, to] of [
    [result, old],
    [aside, result],
  ] as const) {
    try {
      renameSync(from, to);
    } catch (error) {
      // The first build has nothing to move away; a second start at the same
      // moment may have swapped its own result in, which is as good as ours.
      if (!isCode(error, ["ENOENT", "ENOTEMPTY", "EEXIST"])) throw error;
    }
  }
  for (const left of [old, aside]) {
    rmSync(left, { recursive: true, force: true });
  }
}

function isCode(error: unknown, codes: readonly string[]): boolean {
  return (
    error instanceof Error &&
    "code" in error &&
    codes.some((code) => code === error.code)
  );
}

function notePath(root: string, part: BuildPart): string {
  return join(root, "dist", "built-from", part.name);
}

function notedDigest(root: string, part: BuildPart): string | undefined {
  const note = notePath(root, part);
  return existsSync(note) ? readFileSync(note, "utf8") : undefined;
}

function sourceDigest(root: string, part: BuildPart): string {
  const hash = createHash("sha256");
  for (const source of [...ALWAYS, ...part.sources]) {
    for (const path of filesUnder(root, source)) {
      const content = readFileSync(join(root, path));
      hash.update(`${path}\0${content.byteLength}\0`).update(content);
    }
  }
  return hash.digest("hex");
}

function filesUnder(root: string, path: string): string[] {
  const full = join(root, path);
  if (!existsSync(full)) return [];
  if (!statSync(full).isDirectory()) return [path];
  return readdirSync(full)
    .sort()
    .flatMap((name) => filesUnder(root, `${path}/${name}`));
}
