import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  writeFileSync,
} from "node:fs";
import { createServer, Server, type AddressInfo } from "node:net";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { EXIT, launch, type Surroundings } from "../../electron/launch-app";
import { SMALL_PAGE, temporaryFolder } from "./page-folder";

/** A checkout as small as a launch needs it. */
function smallCheckout(): string {
  return temporaryFolder({
    "package.json": `{"version":"1.2.3"}`,
    "node_modules/electron/package.json": `{"version":"4.5.6","engines":{"node":">= 99"}}`,
    ...Object.fromEntries(
      Object.entries(SMALL_PAGE).map(([path, text]) => [
        `dist/renderer/${path}`,
        text,
      ]),
    ),
  });
}

/** A program that notes its arguments and ends as told, for a browser. */
function standInBrowser(root: string, ending: string): string {
  const path = join(root, "browser");
  writeFileSync(
    path,
    `#!/bin/sh\nprintf '%s\\n' "$@" > "${path}.words"\n${ending}\n`,
  );
  chmodSync(path, 0o755);
  return path;
}

interface Started {
  readonly code: Promise<number>;
  readonly said: string[];
  readonly complained: string[];
  readonly stop: () => void;
  /** The address once it is said. */
  readonly address: Promise<string>;
}

function start(
  root: string,
  words: readonly string[],
  changes: Partial<Surroundings> = {},
): Started {
  const said: string[] = [];
  const complained: string[] = [];
  const stop = new AbortController();
  const { promise: address, resolve } = promiseOfString();
  const code = launch({
    root,
    words,
    platform: "linux",
    environment: {},
    home: join(root, "home"),
    isRoot: false,
    stop: stop.signal,
    say: (line) => {
      said.push(line);
      const match = /http:\S+/.exec(line);
      if (match !== null) resolve(match[0]);
    },
    complain: (line) => complained.push(line),
    build: () => Promise.resolve(),
    ...changes,
  });
  return { code, said, complained, stop: () => stop.abort(), address };
}

function promiseOfString(): {
  promise: Promise<string>;
  resolve: (text: string) => void;
} {
  let resolve: (text: string) => void = () => undefined;
  const promise = new Promise<string>((settle) => (resolve = settle));
  return { promise, resolve };
}

function portOf(address: string): string {
  return new URL(address).port;
}

describe("npm start", () => {
  it("serves the page, says where, and ends with 0 when it is stopped", async () => {
    const app = start(smallCheckout(), ["--no-open", "--port", "0"]);
    const address = await app.address;
    const page = await fetch(address);
    expect(await page.text()).toBe(SMALL_PAGE["index.html"]);
    app.stop();
    expect(await app.code).toBe(EXIT.done);
    expect(app.said.at(-1)).toBe("Turnwise has stopped.");
    await expect(fetch(address)).rejects.toThrow();
  });

  it.each([
    [["--prot"], `There is no option "--prot".`],
    [["--port"], "--port needs a number behind it"],
    [["--port", "x"], `"x" is not a port`],
  ])(
    "refuses %j with a sentence and 2, before it builds",
    async (words, text) => {
      let built = false;
      const app = start(smallCheckout(), words, {
        build: () => {
          built = true;
          return Promise.resolve();
        },
      });
      expect(await app.code).toBe(EXIT.usage);
      expect(app.complained).toEqual([expect.stringContaining(text)]);
      expect(built).toBe(false);
    },
  );

  it("ends with 1 and the reason when the build fails", async () => {
    const app = start(smallCheckout(), ["--no-open", "--port", "0"], {
      build: () => Promise.reject(new Error("a missing brace")),
    });
    expect(await app.code).toBe(EXIT.failed);
    expect(app.complained).toEqual([
      expect.stringContaining("a missing brace"),
    ]);
  });

  it("does not begin to serve when it was stopped during the build", async () => {
    const app = start(smallCheckout(), ["--no-open", "--port", "0"], {
      build: async () => {
        await Promise.resolve();
        app.stop();
      },
    });
    expect(await app.code).toBe(EXIT.done);
    expect(app.said).toEqual([]);
  });

  it("ends with 1 and the system's reason where it cannot listen at all", async () => {
    vi.spyOn(Server.prototype, "listen").mockImplementationOnce(function (
      this: Server,
    ) {
      const error = Object.assign(new Error("no"), { code: "EADDRNOTAVAIL" });
      queueMicrotask(() => this.emit("error", error));
      return this;
    });
    const app = start(smallCheckout(), ["--no-open", "--port", "0"]);
    expect(await app.code).toBe(EXIT.failed);
    expect(app.complained).toEqual([expect.stringContaining("EADDRNOTAVAIL")]);
  });

  it("only builds when only that is asked", async () => {
    const app = start(smallCheckout(), ["--build-only"]);
    expect(await app.code).toBe(EXIT.done);
    expect(app.said).toEqual([]);
  });

  it("ends with 1 and a sentence where another program has the port", async () => {
    const other = createServer((socket) => socket.resume().end());
    const port = await new Promise<number>((resolve) =>
      other.listen(0, "127.0.0.1", () =>
        resolve((other.address() as AddressInfo).port),
      ),
    );
    const app = start(smallCheckout(), ["--no-open", "--port", `${port}`]);
    expect(await app.code).toBe(EXIT.failed);
    expect(app.complained).toEqual([
      expect.stringContaining(`Port ${port} is taken by another program.`),
    ]);
    await new Promise((resolve) => other.close(resolve));
  });

  it("says that it runs already, and ends with 0, at a second start", async () => {
    const root = smallCheckout();
    const first = start(root, ["--no-open", "--port", "0"]);
    const address = await first.address;
    const port = portOf(address);
    const second = start(root, ["--no-open", "--port", port]);
    expect(await second.code).toBe(EXIT.done);
    expect(second.said).toEqual([`Turnwise is already running at ${address}`]);
    expect((await fetch(address)).status).toBe(200);
    first.stop();
    await first.code;
  });

  it("opens another window at a second start", async () => {
    const root = smallCheckout();
    const first = start(root, ["--no-open", "--port", "0"]);
    const address = await first.address;
    const browser = standInBrowser(root, "exit 0");
    const second = start(root, ["--port", portOf(address)], {
      environment: { TURNWISE_BROWSER: browser },
    });
    expect(await second.code).toBe(EXIT.done);
    expect(second.said[0]).toContain("Opening another window.");
    await expect
      .poll(() => existsSync(`${browser}.words`) && wordsOf(browser))
      .toContain(`--app=${address}`);
    first.stop();
    await first.code;
  });

  it("says at a second start that the running one is another version", async () => {
    const first = start(smallCheckout(), ["--no-open", "--port", "0"]);
    const port = portOf(await first.address);
    const newer = smallCheckout();
    writeFileSync(join(newer, "package.json"), `{"version":"1.3.0"}`);
    const second = start(newer, ["--no-open", "--port", port]);
    expect(await second.code).toBe(EXIT.done);
    expect(second.said[0]).toContain("version 1.2.3");
    expect(second.said[0]).toContain("version 1.3.0");
    first.stop();
    await first.code;
  });

  it("opens a browser's app window with a profile of its own and ends it when stopped", async () => {
    const root = smallCheckout();
    const browser = standInBrowser(root, "exec sleep 60");
    const app = start(root, ["--port", "0"], {
      environment: { TURNWISE_BROWSER: browser, XDG_DATA_HOME: `${root}/data` },
    });
    const address = await app.address;
    await expect
      .poll(() => existsSync(`${browser}.words`) && wordsOf(browser))
      .toEqual([
        `--app=${address}`,
        `--user-data-dir=${root}/data/turnwise/browser`,
        "--no-first-run",
        "--no-default-browser-check",
      ]);
    app.stop();
    expect(await app.code).toBe(EXIT.done);
  });

  it("goes on serving where a running browser takes the window over", async () => {
    const root = smallCheckout();
    const browser = standInBrowser(root, "exit 0");
    const app = start(root, ["--port", "0"], {
      environment: { TURNWISE_BROWSER: browser },
    });
    const address = await app.address;
    await expect.poll(() => existsSync(`${browser}.words`)).toBe(true);
    expect((await fetch(address)).status).toBe(200);
    app.stop();
    expect(await app.code).toBe(EXIT.done);
    expect(app.complained).toEqual([]);
  });

  it.each([
    ["fails", "exit 3"],
    ["cannot be run", undefined],
  ])("gives the address where the browser %s", async (_what, ending) => {
    const root = smallCheckout();
    const browser = standInBrowser(root, ending ?? "");
    if (ending === undefined) chmodSync(browser, 0o644);
    const app = start(root, ["--port", "0"], {
      environment: { TURNWISE_BROWSER: browser },
    });
    const address = await app.address;
    await expect
      .poll(() => app.complained)
      .toEqual([`${browser} did not open. Open ${address} in a browser.`]);
    app.stop();
    expect(await app.code).toBe(EXIT.done);
  });

  it("only prints the address for root", async () => {
    const root = smallCheckout();
    const browser = standInBrowser(root, "exit 0");
    const app = start(root, ["--port", "0"], {
      isRoot: true,
      environment: { TURNWISE_BROWSER: browser },
    });
    const address = await app.address;
    app.stop();
    await app.code;
    expect(app.said).toEqual([
      `Turnwise is at ${address} Press Ctrl-C to stop it.`,
      "Turnwise has stopped.",
    ]);
    expect(existsSync(`${browser}.words`)).toBe(false);
  });

  it("runs Electron on the checkout where its program is installed", async () => {
    const root = smallCheckout();
    const folder = join(root, "node_modules/electron/dist");
    mkdirSync(folder);
    const program = join(folder, "electron");
    writeFileSync(program, `#!/bin/sh\necho "$@" > "${root}/electron.words"\n`);
    chmodSync(program, 0o755);
    const app = start(root, []);
    expect(await app.code).toBe(EXIT.done);
    expect(readFileSync(`${root}/electron.words`, "utf8").trim()).toBe(root);
    expect(app.said).toEqual([]);

    writeFileSync(program, "#!/bin/sh\nexit 7\n");
    const failing = start(root, []);
    expect(await failing.code).toBe(EXIT.failed);
    expect(failing.complained).toEqual(["Electron ended with 7."]);
  });

  it("says in one line how to install Electron where its program is missing", async () => {
    const root = smallCheckout();
    const app = start(root, []);
    await expect
      .poll(() => app.said[0])
      .toBe(
        `Electron's program is not installed, so a browser is used; "npx install-electron" installs it and needs Node >= 99.`,
      );
    app.stop();
    await app.code;
  });
});

function wordsOf(browser: string): string[] {
  return readFileSync(`${browser}.words`, "utf8").trim().split("\n");
}
