/**
 * Builds the window's page into `dist/renderer`.
 *
 * One build serves both Electron's scheme and the local server, so every
 * address in it is relative. Nothing is inlined: the content policy allows
 * scripts, styles and fonts only as files of the same origin.
 */
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { defineConfig, type Plugin } from "vite";

/**
 * Compiled code goes into the page zipped, and its worker unzips it: the
 * library that fits the memory model is 1.7 MB, 0.4 MB zipped, and the whole
 * app is to stay under 3 MB.
 */
function zipCompiledCode(): Plugin {
  return {
    name: "zip-compiled-code",
    generateBundle(_, bundle) {
      for (const [name, file] of Object.entries(bundle)) {
        if (file.type !== "asset" || !name.endsWith(".wasm")) continue;
        this.emitFile({
          type: "asset",
          fileName: `${name}.gz`,
          source: gzipSync(file.source, { level: 9 }),
        });
        Reflect.deleteProperty(bundle, name);
        for (const chunk of Object.values(bundle))
          if (chunk.type === "chunk")
            chunk.code = chunk.code.replaceAll(
              name.slice(name.lastIndexOf("/") + 1),
              (found) => `${found}.gz`,
            );
      }
    },
  };
}

/** How our clients name the worker they start; Vite knows the same words. */
const WORKER_FILE = /new URL\("(\.\/[\w-]+-worker\.ts)", import\.meta\.url\)/g;

/**
 * Builds our workers among the page's own files. Vite would build each by
 * itself, with a copy of all of core that it needs; so, what the page and the
 * workers share is there once: 355 kB zipped in place of 393.
 */
function workersAmongChunks(): Plugin {
  return {
    name: "workers-among-chunks",
    // Before Vite finds them.
    enforce: "pre",
    transform: {
      filter: { code: "-worker.ts" },
      async handler(code, importer) {
        let changed = code;
        for (const [words, file = ""] of code.matchAll(WORKER_FILE)) {
          const worker = await this.resolve(file, importer);
          if (worker === null)
            this.error(`${importer} starts no file: ${file}`);
          const chunk = this.emitFile({ type: "chunk", id: worker.id });
          changed = changed.replace(
            words,
            `import.meta.ROLLUP_FILE_URL_${chunk}`,
          );
        }
        // The lines are as they were; there are no source maps to keep.
        return { code: changed, map: null };
      },
    },
  };
}

export default defineConfig({
  root: fileURLToPath(new URL("./renderer", import.meta.url)),
  base: "./",
  plugins: [
    workersAmongChunks(),
    zipCompiledCode(),
    svelte({
      // The plugin would look for it in the page's folder.
      configFile: fileURLToPath(new URL("./svelte.config.js", import.meta.url)),
    }),
  ],
  // The library's own build for browsers of today, 2 kB less than the one that
  // is found by its name, which knows no classes.
  resolve: { alias: { dexie: "dexie/dist/modern/dexie.mjs" } },
  // One that a library would start, were it asked to.
  worker: { format: "es", plugins: () => [zipCompiledCode()] },
  build: {
    outDir: fileURLToPath(new URL("./dist/renderer", import.meta.url)),
    emptyOutDir: true,
    target: "chrome120",
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    // Everything lies on this machine: a few large files start as fast as many
    // small ones. What they weigh is held by size-limit in package.json.
    chunkSizeWarningLimit: 800,
    rolldownOptions: { checks: { bundlerTimings: false } },
  },
});
