/**
 * Serves the built page to a browser on this machine, where Electron is not
 * there or not wanted.
 *
 * It answers on 127.0.0.1 under exactly one name. `localhost` would be another
 * origin with another database, and a foreign name that resolves to this
 * machine would be an attack, so both get 421 and the right address.
 */
import {
  createServer,
  type IncomingMessage,
  type Server,
  type ServerResponse,
} from "node:http";
import type { AddressInfo } from "node:net";
import * as v from "valibot";
import { err, ok, type Result } from "../core/result";
import { PROTECTING_HEADERS } from "./content-policy";
import {
  answerRequest,
  textAnswer,
  type Answer,
  type ServedFiles,
} from "./served-files";

/**
 * The port that owns a browser user's data, because it is part of the origin.
 * Never change it: below the ephemeral ports (32768 on Linux) so that nothing
 * takes it by chance, above the highest port that browsers refuse (10080).
 */
export const DEFAULT_PORT = 28417;

const HOST = "127.0.0.1";
const ABOUT_PATH = "/turnwise.json";

/** A server at work. */
export interface LocalServer {
  readonly address: string;
  close(): Promise<void>;
}

/** Why the server could not begin. */
export type ServeError =
  | { readonly code: "port-in-use"; readonly port: number }
  | { readonly code: "port-refused"; readonly port: number }
  /** Anything else; `reason` is the system's own code. */
  | {
      readonly code: "cannot-listen";
      readonly port: number;
      readonly reason: string;
    };

/** The one address of the page. */
export function addressOf(port: number): string {
  return `http://${HOST}:${port}/`;
}

/**
 * Serves the files until it is closed.
 *
 * Units:  `port` 0 takes any free one; the answer's address says which.
 * Errors: `port-in-use` by another program, `port-refused` by the system,
 *         `cannot-listen` for anything else.
 */
export async function startLocalServer(
  files: ServedFiles,
  port: number,
  version: string,
): Promise<Result<LocalServer, ServeError>> {
  // Node would answer a request without a host itself, without our headers.
  const server = createServer({ requireHostHeader: false });
  const failure = await listen(server, port);
  if (failure === "EADDRINUSE") return err({ code: "port-in-use", port });
  if (failure === "EACCES") return err({ code: "port-refused", port });
  if (failure !== undefined)
    return err({ code: "cannot-listen", port, reason: failure });

  const { port: actualPort } = server.address() as AddressInfo;
  const host = `${HOST}:${actualPort}`;
  const about = new TextEncoder().encode(
    JSON.stringify({ app: "turnwise", version }),
  );
  const served: ServedFiles = new Map([
    ...files,
    [
      ABOUT_PATH,
      {
        body: about,
        contentType: "application/json; charset=utf-8",
        caching: "no-store",
      },
    ],
  ]);

  const handle = (request: IncomingMessage, response: ServerResponse): void => {
    const answer =
      request.headers.host === host
        ? answerRequest(served, request.method ?? "", request.url ?? "")
        : textAnswer(421, `Turnwise is at ${addressOf(actualPort)} only.`);
    send(answer, request, response);
  };
  server.on("request", handle);
  // Otherwise Node answers `Expect:` itself, without our headers.
  server.on("checkContinue", handle);
  server.on("checkExpectation", handle);
  server.on("clientError", (_error, socket) => {
    if (socket.writable) socket.end(malformedRequestAnswer());
  });

  return ok({
    address: addressOf(actualPort),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  });
}

const aboutSchema = v.object({
  app: v.literal("turnwise"),
  version: v.pipe(v.string(), v.maxLength(40)),
});

/**
 * Asks who holds a port: the version of the Turnwise that answers there, or
 * `undefined` where something else does or nothing answers in two seconds.
 */
export async function turnwiseVersionAt(
  port: number,
): Promise<string | undefined> {
  try {
    const response = await fetch(new URL(ABOUT_PATH, addressOf(port)), {
      redirect: "error",
      signal: AbortSignal.timeout(2000),
    });
    const about = v.safeParse(aboutSchema, await response.json());
    return about.success ? about.output.version : undefined;
  } catch {
    // Whatever cannot be asked, or does not answer in JSON, is something else.
    return undefined;
  }
}

function listen(server: Server, port: number): Promise<string | undefined> {
  return new Promise((resolve) => {
    server.once("error", (error: NodeJS.ErrnoException) =>
      resolve(error.code ?? error.message),
    );
    server.listen({ host: HOST, port }, () => resolve(undefined));
  });
}

function send(
  answer: Answer,
  request: IncomingMessage,
  response: ServerResponse,
): void {
  response.writeHead(answer.status, {
    ...answer.headers,
    "Content-Length": answer.body.byteLength,
    // A body that we did not ask for must not be read as the next request.
    ...(answer.status === 200 ? {} : { Connection: "close" }),
  });
  response.end(request.method === "HEAD" ? undefined : answer.body);
}

function malformedRequestAnswer(): string {
  const headers = Object.entries({
    ...PROTECTING_HEADERS,
    Connection: "close",
    "Content-Length": "0",
  }).map(([name, value]) => `${name}: ${value}`);
  return ["HTTP/1.1 400 Bad Request", ...headers, "", ""].join("\r\n");
}
