import { readFileSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { MAX_BACKUP_BYTES } from "../../core/desktop-bridge";
import { answerMessage, type Desk } from "../../electron/answer-message";
import type { Message } from "../../electron/messages";
import { temporaryFolder } from "./page-folder";
import { standInDesk } from "./stand-in-desk";

const GZIP = new Uint8Array([0x1f, 0x8b, 8, 0]);

function answer(desk: Desk, message: Message) {
  return answerMessage(desk, message, (error) => {
    throw error;
  });
}

describe("the window is answered about the app", () => {
  it("with its version and folder", async () => {
    const { desk } = standInDesk();
    expect(await answer(desk, { kind: "info" })).toEqual({
      ok: true,
      value: { version: "1.2.3", dataFolder: "/data" },
    });
  });

  it("by showing the folder, or saying why not", async () => {
    const { desk, done } = standInDesk();
    const message = { kind: "show-data-folder" } as const;
    expect(await answer(desk, message)).toEqual({ ok: true, value: null });
    expect(done).toEqual(["show /data"]);
    const showFolder = () => Promise.resolve("no file manager");
    expect(
      await answer(standInDesk({ parts: { showFolder } }).desk, message),
    ).toEqual({
      ok: false,
      error: { code: "not-done", reason: "no file manager" },
    });
  });

  it("by filling the screen", async () => {
    const { desk, done } = standInDesk();
    await answer(desk, { kind: "set-full-screen", on: true });
    await answer(desk, { kind: "set-full-screen", on: false });
    expect(done).toEqual(["full screen true", "full screen false"]);
  });
});

describe("a dialog that is closed", () => {
  it.each<Message>([
    { kind: "open-deck-file" },
    { kind: "save-deck-file", title: "a", text: "" },
    { kind: "save-backup", title: "a", bytes: GZIP },
    { kind: "open-backup" },
    { kind: "print-to-pdf", title: "a" },
  ])("changes nothing ($kind)", async (message) => {
    const { desk, done } = standInDesk();
    expect(await answer(desk, message)).toEqual({ ok: true, value: null });
    expect(done).toEqual([]);
  });
});

describe("a deck file", () => {
  const folder = temporaryFolder({ "a.json": "{}", "b.txt": "b" });

  it("is opened where the person says", async () => {
    for (const [name, expected] of [
      ["a.json", { ok: true, value: { name: "a.json", text: "{}" } }],
      ["b.txt", { error: { code: "wrong-ending", name: "b.txt" } }],
    ] as const) {
      const { desk } = standInDesk({ choices: { open: join(folder, name) } });
      expect(await answer(desk, { kind: "open-deck-file" })).toMatchObject(
        expected,
      );
    }
  });

  it("is saved where the person says, remembered, and known to the window by its name", async () => {
    const save = join(folder, "saved.turnwise-deck");
    const { desk, done } = standInDesk({ choices: { save } });
    const message = { kind: "save-deck-file", title: "A", text: "é" } as const;
    expect(await answer(desk, message)).toEqual({
      ok: true,
      value: { name: "saved.turnwise-deck" },
    });
    expect(readFileSync(save, "utf8")).toBe("é");
    expect(done).toEqual([`remember ${save}`]);
  });

  it("that was not saved is not remembered", async () => {
    const save = join(folder, "missing", "a.json");
    const { desk, done } = standInDesk({ choices: { save } });
    const message = { kind: "save-deck-file", title: "A", text: "é" } as const;
    expect(await answer(desk, message)).toMatchObject({
      error: { code: "not-written", name: "a.json" },
    });
    expect(done).toEqual([]);
  });

  it("that waits is handed over when it is asked for", async () => {
    const { desk } = standInDesk();
    desk.inbox.add([join(folder, "a.json")]);
    const take = () => answer(desk, { kind: "take-deck-file" });
    expect(await take()).toMatchObject({ value: { name: "a.json" } });
    expect(await take()).toEqual({ ok: true, value: null });
  });
});

describe("a backup", () => {
  it("is saved and opened where the person says", async () => {
    const path = join(temporaryFolder({}), "mine.turnwise-backup");
    const { desk } = standInDesk({ choices: { save: path, open: path } });
    expect(
      await answer(desk, { kind: "save-backup", title: "a", bytes: GZIP }),
    ).toEqual({ ok: true, value: { name: "mine.turnwise-backup" } });
    expect(await answer(desk, { kind: "open-backup" })).toEqual({
      ok: true,
      value: { name: "mine.turnwise-backup", bytes: GZIP },
    });
  });

  it("is refused by its ending and its size", async () => {
    const folder = temporaryFolder({ "a.txt": "" });
    writeFileSync(join(folder, "huge.gz"), "");
    truncateSync(join(folder, "huge.gz"), MAX_BACKUP_BYTES + 1);
    for (const [name, code] of [
      ["a.txt", "wrong-ending"],
      ["huge.gz", "file-too-large"],
    ] as const) {
      const { desk } = standInDesk({ choices: { open: join(folder, name) } });
      expect(await answer(desk, { kind: "open-backup" })).toMatchObject({
        error: { code, name },
      });
    }
  });

  it("is kept by itself, listed, read, and tells what was known last", async () => {
    const { desk } = standInDesk();
    const ask = (message: Message) => answer(desk, message);
    expect(await ask({ kind: "last-known" })).toEqual({
      ok: true,
      value: null,
    });
    expect(
      await ask({ kind: "automatic-backup", reviews: 4, bytes: GZIP }),
    ).toEqual({ ok: true, value: { written: true, fewerThan: null } });
    expect(await ask({ kind: "list-backups" })).toMatchObject({
      value: [{ reviews: 4 }],
    });
    const [backup] = await desk.backups.list();
    const name = backup?.name ?? "";
    expect(await ask({ kind: "read-backup", name })).toMatchObject({
      value: { name, bytes: GZIP },
    });
    expect(
      await ask({ kind: "read-backup", name: "../last-known.json" }),
    ).toMatchObject({ error: { code: "no-such-backup" } });
    expect(await ask({ kind: "last-known" })).toMatchObject({
      value: { reviews: 4 },
    });
    await ask({ kind: "forget-last-known" });
    expect(await ask({ kind: "last-known" })).toEqual({
      ok: true,
      value: null,
    });
  });
});

describe("the page on paper", () => {
  it("is written where the person says", async () => {
    const save = join(temporaryFolder({}), "sheet");
    const { desk } = standInDesk({ choices: { save } });
    expect(await answer(desk, { kind: "print-to-pdf", title: "a" })).toEqual({
      ok: true,
      value: { name: "sheet.pdf" },
    });
    expect(readFileSync(`${save}.pdf`, "utf8")).toBe("%PDF");
  });
});

describe("whatever is thrown", () => {
  it("is an answer of its own, and is handed on", async () => {
    const printPage = () => Promise.reject(new Error("no printer"));
    const unforeseen = vi.fn();
    expect(
      await answerMessage(
        standInDesk({ parts: { printPage } }).desk,
        { kind: "print-to-pdf", title: "a" },
        unforeseen,
      ),
    ).toEqual({
      ok: false,
      error: { code: "not-done", reason: "Error: no printer" },
    });
    expect(unforeseen).toHaveBeenCalledWith(new Error("no printer"));
  });
});
