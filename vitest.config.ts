import { svelte } from "@sveltejs/vite-plugin-svelte";
import { svelteTesting } from "@testing-library/svelte/vite";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    retry: 0,
    coverage: { include: ["core/**", "renderer/**", "electron/**"] },
    projects: [
      {
        test: {
          name: "plain",
          environment: "node",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/renderer/**"],
        },
      },
      {
        plugins: [svelte(), svelteTesting()],
        test: {
          name: "renderer",
          environment: "happy-dom",
          include: ["tests/renderer/**/*.test.ts"],
        },
      },
    ],
  },
});
