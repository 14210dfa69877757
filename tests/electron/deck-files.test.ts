import { truncateSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it, vi } from "vitest";
import {
  deckFilesIn,
  deckInbox,
  MAX_DECK_FILE_BYTES,
  MOST_WAITING,
  readDeckFile,
} from "../../electron/deck-files";
import { temporaryFolder } from "./page-folder";

const folder = temporaryFolder({
  "a.json": '{"a":"é"}',
  "b.turnwise-deck": "\uFEFFb",
  "c.txt": "c",
});
const at = (name: string) => join(folder, name);

describe("a deck file", () => {
  it("is read as text, with the mark at its beginning", async () => {
    expect(await readDeckFile(at("a.json"))).toEqual({
      ok: true,
      value: { name: "a.json", text: '{"a":"é"}' },
    });
    expect(await readDeckFile(at("b.turnwise-deck"))).toEqual({
      ok: true,
      value: { name: "b.turnwise-deck", text: "\uFEFFb" },
    });
  });

  it("is refused by its ending, its size and its bytes", async () => {
    expect(await readDeckFile(at("c.txt"))).toEqual({
      ok: false,
      error: { code: "wrong-ending", name: "c.txt" },
    });
    writeFileSync(at("huge.json"), "");
    truncateSync(at("huge.json"), MAX_DECK_FILE_BYTES + 1);
    expect(await readDeckFile(at("huge.json"))).toEqual({
      ok: false,
      error: {
        code: "file-too-large",
        name: "huge.json",
        most: MAX_DECK_FILE_BYTES,
      },
    });
    writeFileSync(at("latin.json"), Buffer.from([0x22, 0xe9, 0x22]));
    expect(await readDeckFile(at("latin.json"))).toEqual({
      ok: false,
      error: { code: "not-text", name: "latin.json" },
    });
    expect(await readDeckFile(at("gone.json"))).toMatchObject({
      error: { code: "not-read", reason: "ENOENT" },
    });
  });
});

describe("the deck files of a command line", () => {
  it("are the words with a deck's ending, from where it was given", () => {
    const words = [
      "/usr/bin/turnwise",
      "--flag=a.json",
      "-a.json",
      "a.json",
      "../b.turnwise-deck",
      at("c.json"),
      "d.txt",
      ".",
      "",
    ];
    expect(deckFilesIn(words, folder)).toEqual([
      at("a.json"),
      resolve(folder, "../b.turnwise-deck"),
      at("c.json"),
    ]);
  });

  it("may be addresses of this machine's files", () => {
    const path = at("a b é.json");
    expect(deckFilesIn([pathToFileURL(path).href], "/")).toEqual([path]);
    // A file of another machine is at best a strange path of this one.
    for (const word of ["file://host/a.json", "https://a.example/a.json"])
      for (const found of deckFilesIn([word], folder))
        expect(found.startsWith(folder)).toBe(true);
    expect(
      deckFilesIn(["file:///a%2Fb.json", "file:///%00%.json"], "/"),
    ).toEqual([]);
  });
});

describe("the inbox", () => {
  it("tells of files and hands them over in turn, unreadable ones as well", async () => {
    const told = vi.fn();
    const inbox = deckInbox(told);
    inbox.add([]);
    expect(told).not.toHaveBeenCalled();
    inbox.add([at("a.json"), at("gone.json")]);
    inbox.add([at("b.turnwise-deck")]);
    expect(told).toHaveBeenCalledTimes(2);
    expect(await inbox.take()).toMatchObject({ value: { name: "a.json" } });
    expect(await inbox.take()).toMatchObject({ error: { name: "gone.json" } });
    expect(await inbox.take()).toMatchObject({ value: { text: "\uFEFFb" } });
    expect(await inbox.take()).toEqual({ ok: true, value: null });
  });

  it("holds no more than so many", async () => {
    const inbox = deckInbox(() => undefined);
    inbox.add(Array<string>(MOST_WAITING - 1).fill(at("a.json")));
    inbox.add([at("b.turnwise-deck"), at("a.json")]);
    inbox.add([at("a.json")]);
    const taken: unknown[] = [];
    for (;;) {
      const next = await inbox.take();
      if (next.ok && next.value === null) break;
      taken.push(next);
    }
    expect(taken).toHaveLength(MOST_WAITING);
    expect(taken.at(-1)).toMatchObject({ value: { name: "b.turnwise-deck" } });
  });
});
