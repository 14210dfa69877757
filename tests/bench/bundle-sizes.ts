/**
 * How much the window loads: the built scripts and styles as a browser would
 * receive them compressed, and the whole built page as it lies on the disk.
 */
import { readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { resultFrom, WrongAnswer, type BenchResult } from "./result";
import { ROOT } from "./root";

/** Measures the built page; no speed, so one sample each. */
export function bundleSizes(): Promise<BenchResult[]> {
  const folder = join(ROOT, "dist", "renderer");
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => ({
      kind: extname(name),
      content: readFileSync(join(parentPath, name)),
    }));
  const compressed = (kind: string): number =>
    kilobytes(
      files
        .filter((file) => file.kind === kind)
        .map(({ content }) => gzipSync(content).byteLength),
    );
  const script = compressed(".js");
  if (script === 0) throw new WrongAnswer("the built page has no script");
  const one = { unit: "kB", better: "lower" } as const;
  return Promise.resolve([
    resultFrom({
      ...one,
      name: "bundle: scripts, gzip",
      samples: [script],
      target: 400,
    }),
    resultFrom({
      ...one,
      name: "bundle: styles, gzip",
      samples: [compressed(".css")],
      target: 20,
    }),
    resultFrom({
      ...one,
      name: "bundle: whole page on disk",
      samples: [kilobytes(files.map(({ content }) => content.byteLength))],
      target: 1500,
    }),
  ]);
}

function kilobytes(sizes: readonly number[]): number {
  return sizes.reduce((sum, size) => sum + size, 0) / 1000;
}
