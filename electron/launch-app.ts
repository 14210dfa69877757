/**
 * What `npm start` does: builds what is stale, then opens Electron, or a
 * browser's app window on the local server, or prints the address.
 *
 * Everything it needs of the machine is an argument, so that tests can start
 * it with a folder, a port and a browser of their own.
 */
import { spawn, type ChildProcess } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import * as v from "valibot";
import {
  findBrowser,
  windowCommand,
  type Command,
  type Machine,
} from "./app-window";
import { parseLaunchOptions, type LaunchOptionError } from "./launch-options";
import {
  addressOf,
  DEFAULT_PORT,
  startLocalServer,
  turnwiseVersionAt,
  type LocalServer,
  type ServeError,
} from "./local-server";
import { servedFilesFrom } from "./served-files";

/** The exit codes of `npm start`; Ctrl-C is an ordinary end. */
export const EXIT = { done: 0, failed: 1, usage: 2 } as const;

/** What a launch may touch. */
export interface Surroundings extends Machine {
  /** The checkout's root. */
  readonly root: string;
  readonly words: readonly string[];
  readonly isRoot: boolean;
  /** Aborted when the person presses Ctrl-C or the system ends the program. */
  readonly stop: AbortSignal;
  readonly say: (line: string) => void;
  readonly complain: (line: string) => void;
  /** Builds what is stale. */
  readonly build: () => Promise<void>;
}

/**
 * Runs the app until its window is closed or it is stopped.
 *
 * Shape: the answer is the exit code, one of `EXIT`.
 */
export async function launch(at: Surroundings): Promise<number> {
  const options = parseLaunchOptions(at.words);
  if (!options.ok) {
    at.complain(optionSentence(options.error));
    return EXIT.usage;
  }
  const { open, port, buildOnly } = options.value;

  try {
    await at.build();
  } catch (error) {
    at.complain(`The build failed: ${String(error)}`);
    return EXIT.failed;
  }
  if (buildOnly || at.stop.aborted) return EXIT.done;

  const wantsWindow = open && !at.isRoot;
  if (wantsWindow && port === undefined) {
    const electron = electronProgram(at);
    if (electron !== undefined) {
      return runElectron({ program: electron, words: [at.root] }, at);
    }
    at.say(missingElectronSentence(at.root));
  }
  return serve(port ?? DEFAULT_PORT, wantsWindow, at);
}

async function serve(
  port: number,
  wantsWindow: boolean,
  at: Surroundings,
): Promise<number> {
  const version = ownVersion(at.root);
  const files = await servedFilesFrom(join(at.root, "dist", "renderer"));
  const server = await startLocalServer(files, port, version);
  if (!server.ok) {
    const other =
      server.error.code === "port-in-use"
        ? await turnwiseVersionAt(port)
        : undefined;
    if (other !== undefined) return joinRunning(port, other, wantsWindow, at);
    at.complain(serveErrorSentence(server.error));
    return EXIT.failed;
  }
  return runServed(server.value, wantsWindow, at);
}

function serveErrorSentence(error: ServeError): string {
  const { port } = error;
  switch (error.code) {
    case "port-in-use":
      return `Port ${port} is taken by another program. Close that program and start again; Turnwise keeps to this port because your data belongs to it.`;
    case "port-refused":
      return `The system does not let Turnwise listen on port ${port}. Choose another with --port.`;
    case "cannot-listen":
      return `Turnwise cannot listen on this machine's own address 127.0.0.1, port ${port} (${error.reason}). Check its network settings and start again.`;
  }
}

function joinRunning(
  port: number,
  version: string,
  wantsWindow: boolean,
  at: Surroundings,
): number {
  const address = addressOf(port);
  const own = ownVersion(at.root);
  if (version !== own) {
    at.say(
      `The running Turnwise is version ${version}; stop it and start again to use version ${own}.`,
    );
  }
  const browser = wantsWindow ? findBrowser(at) : undefined;
  if (browser === undefined) {
    at.say(`Turnwise is already running at ${address}`);
    return EXIT.done;
  }
  at.say(`Turnwise is already running at ${address} Opening another window.`);
  const child = start(windowCommand(browser, address, at));
  child.on("error", (error) =>
    at.complain(`${browser} could not be started: ${error.message}`),
  );
  child.unref();
  return EXIT.done;
}

async function runServed(
  server: LocalServer,
  wantsWindow: boolean,
  at: Surroundings,
): Promise<number> {
  const { address } = server;
  at.say(`Turnwise is at ${address} Press Ctrl-C to stop it.`);
  const browser = wantsWindow ? findBrowser(at) : undefined;
  if (browser !== undefined) {
    const ended = await runWindow(windowCommand(browser, address, at), at);
    if (ended === "closed") {
      await server.close();
      at.say("The window is closed and Turnwise has stopped.");
      return EXIT.done;
    }
    if (ended === "failed") {
      at.complain(`${browser} did not open. Open ${address} in a browser.`);
    }
  } else if (wantsWindow) {
    at.say("Open that address in a browser.");
  }
  await aborted(at.stop);
  await server.close();
  at.say("Turnwise has stopped.");
  return EXIT.done;
}

type WindowEnd = "closed" | "failed" | "handed over" | "stopped";

/**
 * A browser that runs already with this profile takes the window over and its
 * second process ends at once; nobody opens and closes a window that fast.
 */
const HANDED_OVER_WITHIN_MS = 3000;

async function runWindow(
  command: Command,
  at: Surroundings,
): Promise<WindowEnd> {
  const began = performance.now();
  const child = start(command);
  const code = await exitCode(child, at.stop);
  if (at.stop.aborted) return "stopped";
  if (code !== 0) return "failed";
  return performance.now() - began < HANDED_OVER_WITHIN_MS
    ? "handed over"
    : "closed";
}

async function runElectron(
  command: Command,
  at: Surroundings,
): Promise<number> {
  const child = spawn(command.program, command.words, { stdio: "inherit" });
  const code = await exitCode(child, at.stop);
  if (at.stop.aborted) {
    at.say("Turnwise has stopped.");
    return EXIT.done;
  }
  if (code === 0) return EXIT.done;
  at.complain(`Electron ended with ${code ?? "a signal"}.`);
  return EXIT.failed;
}

/** In its own process group, so that Ctrl-C reaches it through us only. */
function start(command: Command): ChildProcess {
  return spawn(command.program, command.words, {
    stdio: "ignore",
    detached: true,
  });
}

/** The exit code; -1 where it did not start, `undefined` after a signal. */
function exitCode(
  child: ChildProcess,
  stop: AbortSignal,
): Promise<number | undefined> {
  return new Promise((resolve) => {
    const end = (): void => void child.kill();
    if (stop.aborted) end();
    else stop.addEventListener("abort", end, { once: true });
    child.once("error", () => resolve(-1));
    child.once("exit", (code) => {
      stop.removeEventListener("abort", end);
      resolve(code ?? undefined);
    });
  });
}

function aborted(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve();
    else signal.addEventListener("abort", () => resolve(), { once: true });
  });
}

/**
 * Electron's program, or `undefined` where its binary is not installed. Only
 * looking is safe: asking Electron's own command would start a download.
 */
function electronProgram({ root, platform }: Surroundings): string | undefined {
  const name = {
    darwin: "Electron.app/Contents/MacOS/Electron",
    win32: "electron.exe",
  }[platform as string];
  const path = join(
    ...[root, "node_modules", "electron", "dist", name ?? "electron"],
  );
  return existsSync(path) ? path : undefined;
}

const packageSchema = v.object({
  version: v.string(),
  engines: v.optional(v.object({ node: v.optional(v.string()) })),
});

function ownVersion(root: string): string {
  return readPackage(root).version;
}

function readPackage(folder: string): v.InferOutput<typeof packageSchema> {
  return v.parse(
    packageSchema,
    JSON.parse(readFileSync(join(folder, "package.json"), "utf8")),
  );
}

function missingElectronSentence(root: string): string {
  const { engines } = readPackage(join(root, "node_modules", "electron"));
  return `Electron's program is not installed, so a browser is used; "npx install-electron" installs it and needs Node ${engines?.node ?? "of its own version"}.`;
}

function optionSentence(error: LaunchOptionError): string {
  const known = "Known are --no-open, --port N and --build-only.";
  switch (error.code) {
    case "unknown-option":
      return `There is no option "${error.text}". ${known}`;
    case "port-missing":
      return `${error.text} needs a number behind it, such as --port ${DEFAULT_PORT}.`;
    case "port-invalid":
      return `"${error.text}" is not a port; a port is a number from 0 to 65535, and 0 takes any free one.`;
  }
}
