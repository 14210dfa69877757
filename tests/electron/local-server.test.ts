import { request, type IncomingHttpHeaders } from "node:http";
import { connect, createServer, type AddressInfo, type Server } from "node:net";
import { networkInterfaces } from "node:os";
import { afterAll, describe, expect, it } from "vitest";
import { PROTECTING_HEADERS } from "../../electron/content-policy";
import {
  addressOf,
  DEFAULT_PORT,
  startLocalServer,
  turnwiseVersionAt,
} from "../../electron/local-server";
import { servedFilesFrom } from "../../electron/served-files";
import { SMALL_PAGE, temporaryFolder } from "./page-folder";

const files = await servedFilesFrom(temporaryFolder(SMALL_PAGE));
const started = await startLocalServer(files, 0, "1.2.3");
if (!started.ok) throw new Error(started.error.code);
const server = started.value;
const port = Number(new URL(server.address).port);
const HOST = `127.0.0.1:${port}`;

afterAll(() => server.close());

interface Reply {
  readonly status: number | undefined;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

function ask(
  path: string,
  options: { method?: string; headers?: Record<string, string> } = {},
): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: "127.0.0.1", port, path, agent: false, ...options },
      (response) => {
        let text = "";
        response.setEncoding("utf8");
        response.on("data", (chunk: string) => (text += chunk));
        response.on("end", () =>
          resolve({
            status: response.statusCode,
            headers: response.headers,
            text,
          }),
        );
      },
    );
    sent.on("error", reject);
    sent.end();
  });
}

/** Sends bytes as they are and reads until the server closes. */
function askRaw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let reply = "";
    const socket = connect(port, "127.0.0.1", () => socket.write(text));
    socket.setEncoding("utf8");
    socket.on("data", (chunk: string) => (reply += chunk));
    socket.on("end", () => resolve(reply));
    socket.on("error", reject);
  });
}

function withLowerCaseNames(
  headers: Readonly<Record<string, string>>,
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(headers).map(([name, value]) => [name.toLowerCase(), value]),
  );
}

function listening(plain: Server): Promise<number> {
  return new Promise((resolve) =>
    plain.listen(0, "127.0.0.1", () =>
      resolve((plain.address() as AddressInfo).port),
    ),
  );
}

describe("the local server", () => {
  it("serves the page under its own address", async () => {
    const reply = await ask("/");
    expect(reply.status).toBe(200);
    expect(reply.text).toBe(SMALL_PAGE["index.html"]);
    expect(reply.headers["content-type"]).toBe("text/html; charset=utf-8");
  });

  it("answers HEAD with the headers of GET and no body", async () => {
    const [get, head] = [
      await ask("/"),
      await ask("/", { method: "HEAD" }),
    ] as const;
    expect(head.status).toBe(200);
    expect(head.text).toBe("");
    expect(head.headers["content-length"]).toBe(get.headers["content-length"]);
    expect(head.headers["content-type"]).toBe(get.headers["content-type"]);
  });

  it.each(["POST", "PUT", "DELETE", "OPTIONS", "PATCH"])(
    "answers %s with 405",
    async (method) => {
      const reply = await ask("/", { method });
      expect(reply.status).toBe(405);
      expect(reply.headers.allow).toBe("GET, HEAD");
    },
  );

  it.each([
    `localhost:${port}`,
    `127.0.0.1`,
    `127.0.0.1:${port + 1}`,
    `[::1]:${port}`,
    `evil.example:${port}`,
    `127.0.0.1:${port}.`,
    `127.1:${port}`,
  ])("answers the host %s with 421 and the right address", async (host) => {
    const reply = await ask("/", { headers: { host } });
    expect(reply.status).toBe(421);
    expect(reply.text).toContain(server.address);
    expect(reply.text).not.toContain(SMALL_PAGE["index.html"]);
  });

  it("answers 421 before it looks at method or path", async () => {
    const headers = { host: "evil.example" };
    for (const [path, method] of [
      ["/nothing", "GET"],
      ["/", "POST"],
    ] as const) {
      expect((await ask(path, { method, headers })).status).toBe(421);
    }
  });

  it("answers a request without a host with 421", async () => {
    const reply = await askRaw("GET / HTTP/1.1\r\nConnection: close\r\n\r\n");
    expect(reply).toMatch(/^HTTP\/1\.1 421 /);
    expect(reply).toContain(PROTECTING_HEADERS["Content-Security-Policy"]);
  });

  it.each(["/../package.json", "/assets/../../package.json", "/%2e%2e/x"])(
    "answers the path %s, sent as it is, with 404",
    async (path) => {
      const reply = await askRaw(
        `GET ${path} HTTP/1.1\r\nHost: ${HOST}\r\nConnection: close\r\n\r\n`,
      );
      expect(reply).toMatch(/^HTTP\/1\.1 404 /);
    },
  );

  it("sends the protecting headers and no CORS header on every answer", async () => {
    const replies = [
      await ask("/"),
      await ask("/assets/index-abc123.js"),
      await ask("/turnwise.json"),
      await ask("/nothing"),
      await ask("/", { method: "POST" }),
      await ask("/", { method: "OPTIONS", headers: { origin: "http://x" } }),
      await ask("/", { headers: { host: "evil.example" } }),
      await ask("/", { headers: { expect: "something" } }),
    ];
    expect(replies.map(({ status }) => status)).toEqual([
      200, 200, 200, 404, 405, 405, 421, 200,
    ]);
    for (const { headers } of replies) {
      expect(headers).toMatchObject(withLowerCaseNames(PROTECTING_HEADERS));
      const cors = Object.keys(headers).filter((name) =>
        name.startsWith("access-control-"),
      );
      expect(cors).toEqual([]);
    }
  });

  it("sends the protecting headers on what is no request at all", async () => {
    const reply = await askRaw("this is not a request\r\n\r\n");
    expect(reply).toMatch(/^HTTP\/1\.1 400 /);
    for (const [name, value] of Object.entries(PROTECTING_HEADERS)) {
      expect(reply).toContain(`${name}: ${value}`);
    }
  });

  const outside = Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter(({ internal, family }) => !internal && family === "IPv4")
    .map(({ address }) => address);
  it("listens on no address but 127.0.0.1", async () => {
    for (const address of ["127.0.0.2", "::1", ...outside]) {
      await expect(
        new Promise((resolve, reject) => {
          const socket = connect(port, address, () => resolve(socket.end()));
          socket.on("error", reject);
        }),
        address,
      ).rejects.toThrow();
    }
  });

  it("says which version it is to a second start", async () => {
    expect(await turnwiseVersionAt(port)).toBe("1.2.3");
  });

  it("reports a port that is in use", async () => {
    expect(await startLocalServer(files, port, "1.2.3")).toEqual({
      ok: false,
      error: { code: "port-in-use", port },
    });
  });
});

describe("asking who holds a port", () => {
  it.each([
    ["closes without an answer", ""],
    ["answers something else", "HTTP/1.0 200 OK\r\n\r\n{}"],
    ["answers no JSON", "HTTP/1.0 200 OK\r\n\r\n<p>"],
    [
      "sends elsewhere",
      "HTTP/1.0 302 Found\r\nLocation: http://127.0.0.1/\r\n\r\n",
    ],
  ])("knows that a program which %s is not Turnwise", async (_what, bytes) => {
    const other = createServer((socket) => socket.resume().end(bytes));
    const otherPort = await listening(other);
    expect(await turnwiseVersionAt(otherPort)).toBeUndefined();
    await new Promise((resolve) => other.close(resolve));
  });
});

describe("the usual port", () => {
  it("is below the ephemeral ports of Linux (32768; its own documentation)", () => {
    expect(DEFAULT_PORT).toBeLessThan(32768);
    expect(DEFAULT_PORT).toBeGreaterThan(1023);
  });

  // Source: the Fetch standard's "bad ports", as Node's own fetch has them;
  // Chromium refuses the same ones.
  it("is not one that browsers refuse", async () => {
    const refusal = async (asked: number): Promise<string> => {
      try {
        await fetch(addressOf(asked));
        return "answered";
      } catch (error) {
        return String((error as Error).cause);
      }
    };
    expect(await refusal(6000)).toContain("bad port");
    expect(await refusal(DEFAULT_PORT)).not.toContain("bad port");
  });
});
