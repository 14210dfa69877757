import { spawn } from "node:child_process";
import { once } from "node:events";
import { LAUNCHER, startApp, test, expect } from "./app";

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
}

async function runLauncher(...words: string[]): Promise<Ended> {
  const child = spawn(process.execPath, [LAUNCHER, ...words], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  let out = "";
  let error = "";
  child.stdout.on("data", (chunk: Buffer) => (out += chunk.toString()));
  child.stderr.on("data", (chunk: Buffer) => (error += chunk.toString()));
  const [code] = (await once(child, "close")) as [number | null];
  return { code, out, error };
}

test("Ctrl-C ends the launcher with 0", async () => {
  const app = await startApp();
  expect((await fetch(app.address)).status).toBe(200);
  expect(await app.stop()).toBe(0);
  await expect(fetch(app.address)).rejects.toThrow();
});

test("a second start says so and ends with 0", async ({ app }) => {
  const { port } = new URL(app.address);
  const second = await runLauncher("--no-open", "--port", port);
  expect(second.code).toBe(0);
  expect(second.out).toContain(
    `Turnwise is already running at ${app.address}\n`,
  );
});

test("an unknown option is answered with a sentence and 2", async () => {
  const { code, error } = await runLauncher("--open-sesame");
  expect(code).toBe(2);
  expect(error).toContain(`There is no option "--open-sesame".`);
});
