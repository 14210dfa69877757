import { svelte } from "@sveltejs/vite-plugin-svelte";
import { svelteTesting } from "@testing-library/svelte/vite";
import { defineConfig } from "vitest/config";

const NOT_UNIT_TESTS = [
  "tests/end-to-end/**",
  "tests/soak/**",
  "tests/bench/**",
  "node_modules/**",
];

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
          exclude: [...NOT_UNIT_TESTS, "tests/renderer/**"],
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
