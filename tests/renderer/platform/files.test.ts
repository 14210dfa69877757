import { describe, expect, it } from "vitest";
import {
  droppedFile,
  readTextFile,
  safeFileName,
} from "../../../renderer/platform/files";

const ENDING = ".turnwise-deck";

describe("a file's name", () => {
  // Source: Microsoft's "Naming Files, Paths, and Namespaces": reserved
  // characters, device names, no dot or space at the end; POSIX forbids "/".
  it.each([
    ["Ten for Tuesday", "Ten for Tuesday"],
    ["a/b\\c:d*e?f", "a b c d e f"],
    ["  ..secret.. ", "secret"],
    ["CON", "deck CON"],
    ["lpt1.x", "deck lpt1.x"],
    ["control", "control"],
    ["???", "deck"],
    ["two\nlines\u202Eabc", "two lines abc"],
    ["Ecken für Zoë 角", "Ecken für Zoë 角"],
  ])("of the deck %j is %j", (name, safe) => {
    expect(safeFileName(name, ENDING)).toBe(safe + ENDING);
  });

  it("is cut so that every system takes it", () => {
    const name = safeFileName("角".repeat(200), ENDING);
    expect(new TextEncoder().encode(name).length).toBeLessThan(255);
  });
});

describe("a file that is read", () => {
  it("is its name and its text, without a byte order mark", async () => {
    const file = new File(["\uFEFF{ ü }"], "a.json");
    expect(await readTextFile(file, 100)).toEqual({
      ok: true,
      value: { name: "a.json", text: "{ ü }" },
    });
  });

  it("is refused by its size before anything of it is read", async () => {
    const file = new File(["four"], "a.json");
    file.arrayBuffer = () => Promise.reject(new Error("was read"));
    expect(await readTextFile(file, 3)).toEqual({
      ok: false,
      error: { code: "file-too-large", name: "a.json" },
    });
  });

  it("is refused where its bytes are no text", async () => {
    const file = new File([new Uint8Array([0xc3, 0x28])], "a.bin");
    expect(await readTextFile(file, 100)).toEqual({
      ok: false,
      error: { code: "file-not-text", name: "a.bin" },
    });
  });

  it("is refused where the system does not give it, as for a folder", async () => {
    const file = new File([], "folder");
    file.arrayBuffer = () => Promise.reject(new DOMException("", "NotFound"));
    expect(await readTextFile(file, 100)).toEqual({
      ok: false,
      error: { code: "file-not-read", name: "folder" },
    });
  });
});

describe("what is dropped", () => {
  it("is a file only where it is one file", () => {
    const file = new File([], "a");
    const drop = (files: readonly File[]) =>
      droppedFile({ dataTransfer: { files } } as unknown as DragEvent);
    expect(drop([file])).toBe(file);
    expect(drop([file, file])).toBeUndefined();
    expect(drop([])).toBeUndefined();
  });
});
