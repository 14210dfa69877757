/**
 * What may be served, and nothing else: a map from address to file, made once.
 *
 * A request is looked up in the map and never joined to a path, so there is no
 * path to escape from. The files are held in memory (a few megabytes), so a
 * build that runs meanwhile cannot mix two versions in one page.
 */
import { readdir, readFile, stat } from "node:fs/promises";
import { extname, join, relative, sep } from "node:path";
import { present } from "../core/invariant";
import { PROTECTING_HEADERS } from "./content-policy";

const CONTENT_TYPES: Readonly<Record<string, string>> = {
  ".css": "text/css; charset=utf-8",
  ".gz": "application/gzip",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".woff2": "font/woff2",
};

interface ServedFile {
  readonly body: Uint8Array<ArrayBuffer>;
  readonly contentType: string;
  readonly caching: string;
}

/** Every address that has an answer, as a path that begins with a slash. */
export type ServedFiles = ReadonlyMap<string, ServedFile>;

/** A whole answer, ready for the server or for Electron's scheme. */
export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array<ArrayBuffer>;
}

/**
 * The built page as a map; "/" is its index.
 *
 * Errors: throws where the folder is missing or holds a kind of file without a
 *         content type, which is a fault of the build.
 */
export async function servedFilesFrom(folder: string): Promise<ServedFiles> {
  const files = new Map<string, ServedFile>();
  for (const path of await filesUnder(folder)) {
    const address = `/${relative(folder, path).split(sep).join("/")}`;
    files.set(address, {
      body: new Uint8Array(await readFile(path)),
      contentType: present(
        CONTENT_TYPES[extname(path)],
        `there is a content type for ${address}`,
      ),
      // The build puts a digest into the names of assets, and only of those.
      caching: address.startsWith("/assets/")
        ? "public, max-age=31536000, immutable"
        : "no-cache",
    });
  }
  files.set("/", present(files.get("/index.html"), "the page has an index"));
  return files;
}

/**
 * One folder at a time, by names alone: in a packed app this reads Electron's
 * archive, whose stand-in for the file system has not always known the
 * recursive listing, nor an entry's parent.
 */
async function filesUnder(folder: string): Promise<string[]> {
  const found: string[] = [];
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    const isFolder = (await stat(path)).isDirectory();
    found.push(...(isFolder ? await filesUnder(path) : [path]));
  }
  return found;
}

/** An answer of one line of text. */
export function textAnswer(
  status: number,
  text: string,
  headers: Readonly<Record<string, string>> = {},
): Answer {
  return {
    status,
    headers: {
      ...PROTECTING_HEADERS,
      "Content-Type": "text/plain; charset=utf-8",
      "Cache-Control": "no-store",
      ...headers,
    },
    body: new TextEncoder().encode(`${text}\n`),
  };
}

/**
 * The answer to a request of our own origin.
 *
 * Shape: `target` is what stands in the request line, `/path?query`, taken as
 *        it is: nothing in it is decoded or resolved.
 */
export function answerRequest(
  files: ServedFiles,
  method: string,
  target: string,
): Answer {
  if (method !== "GET" && method !== "HEAD") {
    return textAnswer(405, "Only GET and HEAD are answered.", {
      Allow: "GET, HEAD",
    });
  }
  const file = files.get(target.split("?", 1)[0] ?? "");
  if (file === undefined) return textAnswer(404, "There is nothing here.");
  return {
    status: 200,
    headers: {
      ...PROTECTING_HEADERS,
      "Content-Type": file.contentType,
      "Cache-Control": file.caching,
    },
    body: file.body,
  };
}
