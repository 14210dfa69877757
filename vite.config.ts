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

export default defineConfig({
  root: fileURLToPath(new URL("./renderer", import.meta.url)),
  base: "./",
  plugins: [
    svelte({
      // The plugin would look for it in the page's folder.
      configFile: fileURLToPath(new URL("./svelte.config.js", import.meta.url)),
    }),
  ],
  worker: { format: "es", plugins: () => [zipCompiledCode()] },
  build: {
    outDir: fileURLToPath(new URL("./dist/renderer", import.meta.url)),
    emptyOutDir: true,
    target: "chrome120",
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    // Everything lies on this machine: one file starts as fast as several.
    // What the page weighs is held by size-limit in package.json.
    chunkSizeWarningLimit: 800,
    rolldownOptions: { checks: { bundlerTimings: false } },
  },
});
