import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import {
  errorText,
  keepLog,
  keptLog,
  type Trouble,
  troubleLog,
  withoutPersonal,
} from "../../electron/trouble-log";
import { temporaryFolder } from "./page-folder";

const TROUBLE: Trouble = { kind: "error", text: "it broke" };

describe("the log of an error", () => {
  it("says what went wrong, when, and in which versions", () => {
    const facts = { at: 0, versions: { turnwise: "1.2.3" }, personal: [] };
    expect(troubleLog(TROUBLE, facts)).toBe(
      "Turnwise: the log of an error\n1970-01-01T00:00:00.000Z\nturnwise 1.2.3\nerror\nit broke\n",
    );
  });

  it("holds nothing of the person", () => {
    const trouble = {
      ...TROUBLE,
      text: "at /home/ann/a.js, open '/x/Bob.json'",
    };
    const facts = { at: 0, versions: {}, personal: ["/home/ann"] };
    expect(troubleLog(trouble, facts)).toContain("at …/a.js, open '…'");
    expect(troubleLog(trouble, facts)).not.toMatch(/ann|bob/i);
  });

  it("is cut short", () => {
    const trouble = { ...TROUBLE, text: "x".repeat(1e6) };
    const facts = { at: 0, versions: {}, personal: [] };
    expect(troubleLog(trouble, facts).length).toBeLessThan(21_000);
  });

  it("holds an error's stack and its cause, and whatever else was thrown", () => {
    const cause = new Error("below");
    const text = errorText(new TypeError("above", { cause }));
    expect(text).toMatch(/^TypeError: above\n +at [^]*caused by Error: below/);
    expect(errorText("a word")).toBe("Thrown: a word");
    expect(errorText(undefined)).toBe("Thrown: undefined");
    const bare = new Error("bare");
    delete bare.stack;
    expect(errorText(bare)).toBe("Error: bare");
  });
});

describe("a text without what is personal", () => {
  it("loses the person's folders and name in every form they take", () => {
    const home = "C:\\Users\\Ann Lee";
    const text = [
      "at f (file:///C:/Users/Ann%20Lee/x/main.js:1:2)",
      "at C:\\Users\\Ann Lee\\main.js",
      "at c:/users/ann lee/main.js",
      String.raw`{"path":"C:\\Users\\Ann Lee"}`,
      "hello Ann Lee",
    ].join("\n");
    const left = withoutPersonal(text, [home, "Ann Lee"]);
    expect(left).not.toMatch(/ann/i);
    expect(left).toContain("main.js:1:2");
  });

  it("loses every quoted path", () => {
    for (const path of ["/media/stick/Bob's deck.json", "D:\\Bob's deck.json"])
      for (const quote of ["'", '"'])
        expect(
          withoutPersonal(`ENOENT: open ${quote}${path}${quote}\nat f`, []),
        ).toBe("ENOENT: open '…'\nat f");
    expect(withoutPersonal("Cannot read 'length'", [])).toBe(
      "Cannot read 'length'",
    );
  });

  it("keeps its sense: a name of two letters is left, and is no pattern", () => {
    expect(withoutPersonal("an error at main", ["an", ""])).toBe(
      "an error at main",
    );
    expect(withoutPersonal("a+b a.b (x)", ["a.b", "(x)"])).toBe("a+b … …");
  });
});

describe("a kept log", () => {
  it("is there at the next start", async () => {
    const file = join(temporaryFolder({}), "last-error.txt");
    expect(keptLog(file)).toBeUndefined();
    await keepLog(file, "a log");
    expect(keptLog(file)).toBe("a log");
    expect(readFileSync(file, "utf8")).toBe("a log");
  });

  it("that cannot be written or read is said on the console", async () => {
    const warn = vi.spyOn(console, "warn").mockReturnValue();
    const file = join(temporaryFolder({}), "last-error.txt");
    mkdirSync(file);
    await keepLog(file, "a log");
    expect(keptLog(file)).toBeUndefined();
    expect(warn.mock.calls).toEqual([
      ["The log was not kept (not-written)."],
      ["The log was not read (EISDIR)."],
    ]);
    warn.mockRestore();
  });
});
