import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  type FileKind,
  fileDialogs,
  fileNameOf,
  hasEndingOf,
  saveByDialog,
  type SystemDialog,
} from "../../electron/file-dialogs";
import { temporaryFolder } from "./page-folder";
import { standInDialogs } from "./stand-in-dialogs";

const KIND: FileKind = { words: "Decks", endings: ["turnwise-deck", "json"] };
const BYTES = new TextEncoder().encode("text");

describe("saving by dialog", () => {
  it("writes where the person says", async () => {
    const path = join(temporaryFolder({}), "mine.json");
    const dialogs = standInDialogs({ save: path });
    expect(await saveByDialog(dialogs, KIND, "A deck", BYTES)).toEqual({
      ok: true,
      value: path,
    });
    expect(readFileSync(path, "utf8")).toBe("text");
    expect(dialogs.asked).toEqual(["save Decks as A deck.turnwise-deck"]);
  });

  it("writes nothing where the person says none", async () => {
    expect(await saveByDialog(standInDialogs({}), KIND, "A", BYTES)).toEqual({
      ok: true,
      value: null,
    });
  });

  it("adds the ending, and asks before that replaces another file", async () => {
    const folder = temporaryFolder({ "there.turnwise-deck": "old" });
    const fresh = await saveByDialog(
      standInDialogs({ save: join(folder, "fresh") }),
      ...([KIND, "A", BYTES] as const),
    );
    expect(fresh).toMatchObject({ ok: true });
    expect(existsSync(join(folder, "fresh.turnwise-deck"))).toBe(true);

    for (const replace of [false, true]) {
      const dialogs = standInDialogs({ save: join(folder, "there"), replace });
      const path = join(folder, "there.turnwise-deck");
      expect(await saveByDialog(dialogs, KIND, "A", BYTES)).toEqual({
        ok: true,
        value: replace ? path : null,
      });
      expect(dialogs.asked).toContain("replace there.turnwise-deck");
      expect(readFileSync(path, "utf8")).toBe(replace ? "text" : "old");
    }
  });

  it("says why it could not", async () => {
    const save = join(temporaryFolder({}), "missing", "a.json");
    expect(
      await saveByDialog(standInDialogs({ save }), KIND, "A", BYTES),
    ).toEqual({
      ok: false,
      error: { code: "not-written", name: "a.json", reason: "ENOENT" },
    });
  });
});

describe("the system's dialogs", () => {
  const window = "the window" as never;

  /** Answers every dialog alike and notes what it was given. */
  function system(canceled: boolean, path: string, response = 0) {
    const given: unknown[] = [];
    const answer = (...words: unknown[]) => {
      given.push(...words);
      return Promise.resolve({
        ...{ canceled, filePaths: canceled ? [] : [path], filePath: path },
        ...{ response, checkboxChecked: false },
      });
    };
    const dialog: SystemDialog = {
      showOpenDialog: answer,
      showSaveDialog: answer,
      showMessageBox: answer,
    };
    return { dialogs: fileDialogs(dialog, window, "/documents"), given };
  }

  it("give the place that was chosen", async () => {
    const { dialogs, given } = system(false, "/a.json");
    expect(await dialogs.placeToOpen(KIND)).toBe("/a.json");
    expect(await dialogs.placeToSave(KIND, "b.turnwise-deck")).toBe("/a.json");
    const filters = [{ name: "Decks", extensions: ["turnwise-deck", "json"] }];
    expect(given).toMatchObject([
      window,
      { properties: ["openFile"], filters },
      window,
      { defaultPath: join("/documents", "b.turnwise-deck"), filters },
    ]);
  });

  it("give the folder that was chosen", async () => {
    const { dialogs, given } = system(false, "/class");
    expect(await dialogs.folderToShare()).toBe("/class");
    expect(given).toMatchObject([
      window,
      { properties: ["openDirectory", "createDirectory"] },
    ]);
  });

  it("give none where they were closed", async () => {
    const { dialogs } = system(true, "");
    expect(await dialogs.folderToShare()).toBeUndefined();
    expect(await dialogs.placeToOpen(KIND)).toBeUndefined();
    expect(await dialogs.placeToSave(KIND, "b")).toBeUndefined();
  });

  it("replace a file only by the button that says so", async () => {
    expect(await system(false, "", 0).dialogs.mayReplace("a")).toBe(true);
    const { dialogs, given } = system(false, "", 1);
    expect(await dialogs.mayReplace("a")).toBe(false);
    // Escape and Enter leave the file alone.
    expect(given[1]).toMatchObject({ defaultId: 1, cancelId: 1 });
  });
});

describe("a kind's endings", () => {
  it("are looked for at the end of the name, in any case", () => {
    for (const path of ["/a.json", "a.JSON", "/a b.x.Turnwise-Deck"])
      expect(hasEndingOf(KIND, path), path).toBe(true);
    for (const path of ["/a.json/b", "json", ".json", "a.json5", "a.json ", ""])
      expect(hasEndingOf(KIND, path), path).toBe(false);
  });
});

describe("a file's name for a title", () => {
  it.each([
    ["First layer, week 2", "First layer, week 2"],
    ['a/b\\c:d*e?f"g<h>i|j', "a b c d e f g h i j"],
    ["../../etc/passwd", "etc passwd"],
    [" ..a.. ", "a"],
    ["tab\tand\nline\u0000", "tab and line"],
    ["nosj.\u202Ea", "nosj. a"],
    ["Würfel für Zoë 🧩", "Würfel für Zoë 🧩"],
    ["", "Turnwise"],
    ["...", "Turnwise"],
    ["con", "file con"],
    ["con.a", "file con.a"],
    ["condition", "condition"],
    ["LPT1", "file LPT1"],
    ["🧩".repeat(200), "🧩".repeat(80)],
  ])("for %j is %j", (title, name) => {
    expect(fileNameOf(title)).toBe(name);
  });
});
