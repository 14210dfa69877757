/**
 * The app under test: the built page on the real local server, started through
 * the real launcher on a free port, one for each Playwright worker.
 *
 * Use its `test` and `expect` instead of Playwright's. A test fails when its
 * page wrote an error or a warning of Svelte's to the console, or threw one, unless it says which it
 * expects with `test.use({ expectedErrors: [/.../] })`.
 */
import { test as base, expect } from "@playwright/test";
import { spawn, type ChildProcess } from "node:child_process";
import { join } from "node:path";

/** The built launcher. */
export const LAUNCHER = join(
  import.meta.dirname,
  "../../dist/electron/launch.js",
);

/** A running launcher. */
export interface RunningApp {
  /** The page's address, with the slash at its end. */
  readonly address: string;
  /** Stops it as Ctrl-C does; answers its exit code. */
  stop(): Promise<number | null>;
}

/** Starts the app's server on a free port, without a window. */
export async function startApp(): Promise<RunningApp> {
  const child = spawn(
    process.execPath,
    [LAUNCHER, "--no-open", "--port", "0"],
    { stdio: ["ignore", "pipe", "inherit"] },
  );
  const exited = new Promise<number | null>((resolve) =>
    child.once("exit", (code) => resolve(code)),
  );
  return {
    address: await saidAddress(child),
    stop: () => {
      child.kill("SIGINT");
      return exited;
    },
  };
}

function saidAddress(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = "";
    child.stdout?.setEncoding("utf8").on("data", (chunk: string) => {
      text += chunk;
      const address = /http:\S+/.exec(text)?.[0];
      if (address !== undefined) resolve(address);
    });
    child.once("error", reject);
    child.once("exit", (code) =>
      reject(new Error(`the app ended with ${code ?? "a signal"}: ${text}`)),
    );
  });
}

interface PerTest {
  /** Console errors that a test provokes on purpose. */
  expectedErrors: RegExp[];
  quietConsole: undefined;
}

/** Playwright's `test` with the app running and its address as the base. */
export const test = base.extend<PerTest, { app: RunningApp }>({
  app: [
    // Playwright insists on a pattern here, even where nothing is needed.
    async ({}, use) => {
      const app = await startApp();
      await use(app);
      await app.stop();
    },
    { scope: "worker" },
  ],
  baseURL: async ({ app }, use) => use(app.address),
  expectedErrors: [[], { option: true }],
  quietConsole: [
    async ({ context, expectedErrors }, use) => {
      const errors: string[] = [];
      const note = (text: string): void => {
        if (!expectedErrors.some((expected) => expected.test(text))) {
          errors.push(text);
        }
      };
      context.on("console", (message) => {
        // Svelte warns of what goes wrong in silence, such as a value that stands still.
        const isOfSvelte = message.text().includes("svelte.dev/e/");
        if (message.type() === "error" || isOfSvelte) note(message.text());
      });
      context.on("weberror", (error) => note(error.error().message));
      await use(undefined);
      expect(errors, "errors in the page's console").toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
