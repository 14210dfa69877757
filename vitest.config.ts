import { svelte } from "@sveltejs/vite-plugin-svelte";
import { svelteTesting } from "@testing-library/svelte/vite";
import { defineConfig } from "vitest/config";

/** A hang is noticed, and a busy machine is not taken for one. */
const PATIENCE = { testTimeout: 60_000, hookTimeout: 60_000 };

export default defineConfig({
  test: {
    globalSetup: "tests/temporary-files.ts",
    retry: 0,
    allowOnly: false,
    coverage: { include: ["core/**", "renderer/**", "electron/**"] },
    projects: [
      {
        test: {
          ...PATIENCE,
          name: "plain",
          environment: "node",
          // Core keeps no state between files: reading it once a worker
          // instead of once a file halves the work (129 s of processor to 62).
          isolate: false,
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/renderer/**"],
        },
      },
      {
        plugins: [svelte(), svelteTesting()],
        // Planted faults run in a copy, whose packages lie further up.
        server: { fs: { strict: false } },
        test: {
          ...PATIENCE,
          name: "renderer",
          environment: "happy-dom",
          include: ["tests/renderer/**/*.test.ts"],
        },
      },
    ],
  },
});
