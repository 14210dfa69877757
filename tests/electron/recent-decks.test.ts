import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import {
  formatRecentDecks,
  MOST_RECENT_DECKS,
  parseRecentDecks,
  recentDecks,
  withRecentDeck,
} from "../../electron/recent-decks";
import { temporaryFolder } from "./page-folder";

const A = "/decks/a.json";
const B = "/decks/b.turnwise-deck";

describe("a kept list of recent decks", () => {
  it("is read back as it was written", () => {
    expect(parseRecentDecks(formatRecentDecks([A, B]))).toEqual({
      ok: true,
      value: [A, B],
    });
  });

  it("is refused as no JSON", () => {
    expect(parseRecentDecks("[")).toEqual({
      ok: false,
      error: { code: "not-json" },
    });
  });

  it.each([
    ["", null],
    ["decks", {}],
    ["decks", { decks: Array<string>(MOST_RECENT_DECKS + 1).fill(A) }],
    ["decks.0", { decks: [1] }],
    ["decks.1", { decks: [A, "a.json"] }],
    ["decks.0", { decks: ["/etc/passwd"] }],
    ["decks.0", { decks: [`/${"a".repeat(5000)}.json`] }],
  ])("is refused at %j: %j", (field, value) => {
    expect(parseRecentDecks(JSON.stringify(value))).toEqual({
      ok: false,
      error: { code: "not-recent-decks", field },
    });
  });
});

describe("the recent decks", () => {
  it("have the newest first, each once, and no more than so many", () => {
    expect(withRecentDeck([A, B], B)).toEqual([B, A]);
    const many = Array.from({ length: 20 }, (_, i) => `/${i}.json`);
    const list = many.reduce(withRecentDeck, []);
    expect(list).toEqual(many.reverse().slice(0, MOST_RECENT_DECKS));
  });

  it("are there at the next start", async () => {
    const file = join(temporaryFolder({}), "recent-decks.json");
    const changed = vi.fn();
    const recent = recentDecks(file, changed);
    expect(recent.list()).toEqual([]);
    await Promise.all([recent.add(A), recent.add(B)]);
    expect(changed).toHaveBeenCalledTimes(2);
    expect(recentDecks(file, changed).list()).toEqual([B, A]);
    await recent.clear();
    expect(recentDecks(file, changed).list()).toEqual([]);
  });

  it("are none where the file is damaged, and it is made anew", async () => {
    const warn = vi.spyOn(console, "warn").mockReturnValue();
    const file = join(temporaryFolder({}), "recent-decks.json");
    writeFileSync(file, "{");
    const recent = recentDecks(file, () => undefined);
    expect(recent.list()).toEqual([]);
    await recent.add(A);
    expect(readFileSync(file, "utf8")).toBe(formatRecentDecks([A]));
    expect(warn).toHaveBeenCalledOnce();
    warn.mockRestore();
  });

  it("are in the menu even where they cannot be kept", async () => {
    const warn = vi.spyOn(console, "warn").mockReturnValue();
    const file = join(temporaryFolder({}), "recent-decks.json");
    mkdirSync(join(file, "in"), { recursive: true });
    const recent = recentDecks(file, () => undefined);
    await recent.add(A);
    expect(recent.list()).toEqual([A]);
    expect(warn.mock.calls).toEqual([
      ["Recent decks were not kept (not-written)."],
    ]);
    warn.mockRestore();
  });
});
