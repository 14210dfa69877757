import { describe, expect, it } from "vitest";
import { PROTECTING_HEADERS } from "../../electron/content-policy";
import {
  answerRequest,
  servedFilesFrom,
  textAnswer,
} from "../../electron/served-files";
import { SMALL_PAGE, temporaryFolder } from "./page-folder";

const folder = temporaryFolder(SMALL_PAGE);
const files = await servedFilesFrom(folder);

function textOf(method: string, target: string): string {
  return new TextDecoder().decode(answerRequest(files, method, target).body);
}

describe("the map of served files", () => {
  it("holds exactly the built files, and the index under /", () => {
    expect([...files.keys()].sort()).toEqual([
      "/",
      "/assets/deep/search-def456.wasm",
      "/assets/fit-789abc.wasm.gz",
      "/assets/index-abc123.js",
      "/favicon.svg",
      "/index.html",
    ]);
    expect(textOf("GET", "/")).toBe(SMALL_PAGE["index.html"]);
  });

  it("gives each file its content type", () => {
    const types = [...files].map(([address, file]) => [
      address,
      file.contentType,
    ]);
    expect(Object.fromEntries(types)).toEqual({
      "/": "text/html; charset=utf-8",
      "/index.html": "text/html; charset=utf-8",
      "/favicon.svg": "image/svg+xml; charset=utf-8",
      "/assets/index-abc123.js": "text/javascript; charset=utf-8",
      "/assets/deep/search-def456.wasm": "application/wasm",
      "/assets/fit-789abc.wasm.gz": "application/gzip",
    });
  });

  it("refuses at once a kind of file without a content type", async () => {
    const strange = temporaryFolder({ ...SMALL_PAGE, "a.strange": "" });
    await expect(servedFilesFrom(strange)).rejects.toThrow("/a.strange");
  });

  it("refuses at once a folder without an index", async () => {
    const empty = temporaryFolder({ "favicon.svg": "" });
    await expect(servedFilesFrom(empty)).rejects.toThrow("index");
  });
});

describe("an answer", () => {
  it("lets assets be kept for ever, and nothing else", () => {
    const caching = (target: string): string | undefined =>
      answerRequest(files, "GET", target).headers["Cache-Control"];
    expect(caching("/assets/index-abc123.js")).toContain("immutable");
    expect(caching("/")).toBe("no-cache");
    expect(caching("/favicon.svg")).toBe("no-cache");
    expect(caching("/nothing")).toBe("no-store");
  });

  it("ignores a query", () => {
    expect(textOf("GET", "/?place=cases")).toBe(SMALL_PAGE["index.html"]);
  });

  it.each([
    "/../package.json",
    "/assets/../index.html",
    "/%2e%2e/package.json",
    "/assets%2findex-abc123.js",
    "//index.html",
    "/assets/",
    "/assets",
    "/..\\package.json",
    "index.html",
    "",
    "*",
    "/index.html\0",
    "/constructor",
  ])("is 404 for %j, which is no key of the map", (target) => {
    expect(answerRequest(files, "GET", target).status).toBe(404);
  });

  it.each(["POST", "PUT", "DELETE", "OPTIONS", "TRACE", "get", ""])(
    "is 405 to the method %j and names what is allowed",
    (method) => {
      const answer = answerRequest(files, method, "/");
      expect(answer.status).toBe(405);
      expect(answer.headers["Allow"]).toBe("GET, HEAD");
    },
  );

  it("carries the policy whatever its status", () => {
    for (const answer of [
      answerRequest(files, "GET", "/"),
      answerRequest(files, "GET", "/nothing"),
      answerRequest(files, "POST", "/"),
      textAnswer(421, "elsewhere"),
    ]) {
      expect(answer.headers).toMatchObject(PROTECTING_HEADERS);
    }
  });
});
