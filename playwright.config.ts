import { defineConfig } from "@playwright/test";
import { chromiumOptions } from "./tests/runner/chromium";

export default defineConfig({
  testDir: "tests/end-to-end",
  outputDir: "test-results",
  globalSetup: "./tests/end-to-end/global-setup.ts",
  fullyParallel: true,
  workers: 2,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  reporter: "line",
  use: {
    browserName: "chromium",
    launchOptions: chromiumOptions(),
    viewport: { width: 1280, height: 800 },
    screenshot: "only-on-failure",
  },
});
