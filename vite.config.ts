/**
 * Builds the window's page into `dist/renderer`.
 *
 * One build serves both Electron's scheme and the local server, so every
 * address in it is relative. Nothing is inlined: the content policy allows
 * scripts, styles and fonts only as files of the same origin.
 */
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

export default defineConfig({
  root: fileURLToPath(new URL("./renderer", import.meta.url)),
  base: "./",
  plugins: [
    svelte({
      // The plugin would look for it in the page's folder.
      configFile: fileURLToPath(new URL("./svelte.config.js", import.meta.url)),
    }),
  ],
  worker: { format: "es" },
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
