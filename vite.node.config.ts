/**
 * Bundles one Node-side program per `--mode` into `dist/`.
 *
 * `preload` is CommonJS because a sandboxed preload must be. Everything but
 * Node, Electron and the tools is bundled, so that the packed app needs no
 * `node_modules`.
 */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const PROGRAMS: Readonly<
  Record<string, { entry: string; out: string; format: "es" | "cjs" }>
> = {
  launch: {
    entry: "electron/launch.ts",
    out: "dist/electron/launch.js",
    format: "es",
  },
  main: {
    entry: "electron/main.ts",
    out: "dist/electron/main.js",
    format: "es",
  },
  preload: {
    entry: "electron/preload.ts",
    out: "dist/electron/preload.cjs",
    format: "cjs",
  },
  "test-runner": {
    entry: "tests/runner/run-all.ts",
    out: "dist/tools/run-all.js",
    format: "es",
  },
  bench: {
    entry: "tests/bench/run.ts",
    out: "dist/tools/bench.js",
    format: "es",
  },
  "draw-icon": {
    entry: "tests/runner/draw-icon.ts",
    out: "dist/tools/draw-icon.js",
    format: "es",
  },
  "compute-ways": {
    entry: "core/cases/computed-ways.generate.ts",
    out: "dist/tools/compute-ways.js",
    format: "es",
  },
  simulate: {
    entry: "tests/simulate/run.ts",
    out: "dist/tools/simulate.js",
    format: "es",
  },
  soak: {
    entry: "tests/soak/run.ts",
    out: "dist/tools/soak.js",
    format: "es",
  },
};

function here(path: string): string {
  return fileURLToPath(new URL(path, import.meta.url));
}

export default defineConfig(({ mode }) => {
  const program = PROGRAMS[mode];
  if (program === undefined) {
    // Said when something is built: tools that only read this file give no mode.
    const modes = Object.keys(PROGRAMS).join(", ");
    const needsMode = {
      name: "needs-mode",
      buildStart() {
        throw new Error(`--mode must be one of ${modes}`);
      },
    };
    return { plugins: [needsMode] };
  }
  const slash = program.out.lastIndexOf("/");
  return {
    ssr: {
      noExternal: true,
      external: [
        "electron",
        "vite",
        "prettier",
        "typescript",
        "@playwright/test",
        "cubejs",
        "fsrs-browser",
        // Looks for its worker beside itself.
        "pdfjs-dist",
      ],
    },
    build: {
      ssr: here(program.entry),
      outDir: here(program.out.slice(0, slash)),
      emptyOutDir: false,
      copyPublicDir: false,
      target: "node20",
      minify: false,
      rolldownOptions: {
        checks: { bundlerTimings: false },
        output: {
          format: program.format,
          entryFileNames: program.out.slice(slash + 1),
          codeSplitting: false,
        },
      },
    },
  };
});
