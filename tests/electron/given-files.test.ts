import { EventEmitter } from "node:events";
import { join, resolve } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { takeGivenFiles } from "../../electron/given-files";

const HERE = resolve("/here");

function start(...words: string[]) {
  const app = new EventEmitter();
  const given: (readonly string[])[] = [];
  const toFront = vi.fn();
  const inbox = {
    add: (paths: readonly string[]) => void given.push(paths),
    take: () => Promise.resolve({ ok: true, value: null } as const),
  };
  takeGivenFiles(app, inbox, { words, folder: HERE }, toFront);
  return { app, given, toFront };
}

describe("files that the system gives", () => {
  it("come with the first start", () => {
    const { given } = start("/usr/bin/turnwise", "--flag", "a.json");
    expect(given).toEqual([[join(HERE, "a.json")]]);
  });

  it("come with a second start, which brings the window forward", () => {
    const { app, given, toFront } = start();
    const there = resolve("/there");
    app.emit("second-instance", {}, ["turnwise", "b.turnwise-deck"], there);
    expect(given.at(-1)).toEqual([join(there, "b.turnwise-deck")]);
    expect(toFront).toHaveBeenCalledOnce();
    app.emit("second-instance", {}, ["turnwise"], there);
    expect(given.at(-1)).toEqual([]);
    expect(toFront).toHaveBeenCalledTimes(2);
  });

  it("come with macOS's event, whatever they are called", () => {
    const { app, given } = start();
    const preventDefault = vi.fn();
    app.emit("open-file", { preventDefault }, "/a.txt");
    // A wrong one is refused where it is read, so that it is said.
    expect(given.at(-1)).toEqual(["/a.txt"]);
    expect(preventDefault).toHaveBeenCalledOnce();
  });
});
