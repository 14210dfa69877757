import { execFileSync } from "node:child_process";
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { open, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import {
  type Disk,
  isUnfinishedFile,
  readWholeFile,
  removeIfThere,
  systemCode,
  writeWholeFile,
} from "../../electron/whole-files";
import { temporaryFolder } from "./page-folder";

const NEW = new TextEncoder().encode("new");

function systemError(code: string): Error {
  return Object.assign(new Error(code), { code });
}

/** The real disk, failing where it is told to, and what was done on it. */
function failingDisk(fails: Record<string, string>): Disk & { done: string[] } {
  const done: string[] = [];
  const step = (what: string): void => {
    done.push(what);
    const code = fails[what];
    if (code !== undefined) throw systemError(code);
  };
  return {
    done,
    open: async (path, flags) => {
      const what = flags === "r" ? "folder" : "file";
      step(`open ${what}`);
      const file = await open(path, flags);
      return {
        writeFile: async (bytes) => {
          await file.writeFile(bytes.subarray(0, 1));
          step(`write ${what}`);
          await file.writeFile(bytes.subarray(1));
        },
        sync: async () => {
          step(`sync ${what}`);
          await file.sync();
        },
        close: () => file.close(),
      };
    },
    rename: async (from, to) => {
      step("rename");
      await rename(from, to);
    },
    rm: async (path, options) => {
      step("remove");
      await rm(path, options);
    },
  };
}

describe("writing a whole file", () => {
  it("makes a new one and takes the place of an old one", async () => {
    const folder = temporaryFolder({ "old.json": "old" });
    for (const name of ["old.json", "fresh.json"]) {
      const path = join(folder, name);
      expect(await writeWholeFile(path, NEW)).toEqual({
        ok: true,
        value: null,
      });
      expect(readFileSync(path, "utf8")).toBe("new");
    }
    expect(readdirSync(folder).sort()).toEqual(["fresh.json", "old.json"]);
  });

  it("brings the file to the disk before it moves it, and the folder after", async () => {
    const disk = failingDisk({});
    const path = join(temporaryFolder({}), "a.json");
    expect((await writeWholeFile(path, NEW, disk)).ok).toBe(true);
    expect(disk.done).toEqual([
      "open file",
      "write file",
      "sync file",
      "rename",
      "open folder",
      "sync folder",
    ]);
  });

  it.each(["open file", "write file", "sync file", "rename"])(
    "leaves the old file and nothing else when it fails to %s",
    async (step) => {
      for (const [code, expected] of [
        ["ENOSPC", { code: "no-room", name: "a.json" }],
        ["EDQUOT", { code: "no-room", name: "a.json" }],
        ["EACCES", { code: "not-written", name: "a.json", reason: "EACCES" }],
      ] as const) {
        const folder = temporaryFolder({ "a.json": "old" });
        const disk = failingDisk({ [step]: code });
        expect(await writeWholeFile(join(folder, "a.json"), NEW, disk)).toEqual(
          { ok: false, error: expected },
        );
        expect(readdirSync(folder)).toEqual(["a.json"]);
        expect(readFileSync(join(folder, "a.json"), "utf8")).toBe("old");
      }
    },
  );

  it.each(["open folder", "sync folder"])(
    "does without where no folder can be brought to the disk (%s), and says a real fault",
    async (step) => {
      const path = join(temporaryFolder({}), "a.json");
      const windows = failingDisk({ [step]: "EPERM" });
      expect((await writeWholeFile(path, NEW, windows)).ok).toBe(true);
      const broken = failingDisk({ [step]: "EIO" });
      expect(await writeWholeFile(path, NEW, broken)).toMatchObject({
        error: { code: "not-written", reason: "EIO" },
      });
    },
  );

  it("is refused where the folder is missing or a folder has its place", async () => {
    const folder = temporaryFolder({});
    mkdirSync(join(folder, "taken.json", "in"), { recursive: true });
    for (const path of ["missing/a.json", "taken.json"]) {
      expect(await writeWholeFile(join(folder, path), NEW)).toMatchObject({
        error: { code: "not-written" },
      });
    }
    expect(readdirSync(folder)).toEqual(["taken.json"]);
  });

  it("says on the console what it could not clear away, and nothing more", async () => {
    const warn = vi.spyOn(console, "warn").mockReturnValue();
    const disk = failingDisk({ "sync file": "EIO", remove: "EBUSY" });
    const folder = temporaryFolder({});
    expect(
      await writeWholeFile(join(folder, "a.json"), NEW, disk),
    ).toMatchObject({ error: { reason: "EIO" } });
    expect(warn).toHaveBeenCalledOnce();
    warn.mockRestore();
    const [left] = readdirSync(folder);
    expect(isUnfinishedFile(left ?? "")).toBe(true);
    expect(isUnfinishedFile("a.part")).toBe(false);
    await removeIfThere(join(folder, left ?? ""));
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe("reading a whole file", () => {
  const folder = temporaryFolder({ "a.json": "12345", "empty.json": "" });
  const at = (name: string) => join(folder, name);

  it("gives its bytes, up to the limit", async () => {
    expect(await readWholeFile(at("a.json"), 5)).toEqual({
      ok: true,
      value: new TextEncoder().encode("12345"),
    });
    expect(await readWholeFile(at("empty.json"), 5)).toEqual({
      ok: true,
      value: new Uint8Array(),
    });
    expect(await readWholeFile(at("a.json"), 4)).toEqual({
      ok: false,
      error: { code: "file-too-large", name: "a.json", most: 4 },
    });
  });

  it("gives all of a file that comes in many parts", async () => {
    const bytes = Uint8Array.from({ length: 300_000 }, (_, i) => i % 251);
    expect((await writeWholeFile(at("long.json"), bytes)).ok).toBe(true);
    const read = await readWholeFile(at("long.json"), 300_000);
    expect(read.ok && Buffer.compare(read.value, bytes)).toBe(0);
  });

  it("refuses a huge file by its size, without reading it", async () => {
    writeFileSync(at("huge.json"), "");
    // A hole: a terabyte by its size, nothing on the disk.
    truncateSync(at("huge.json"), 2 ** 40);
    expect(await readWholeFile(at("huge.json"), 10)).toMatchObject({
      error: { code: "file-too-large" },
    });
  });

  it.skipIf(process.platform !== "linux")(
    "reads no more than the limit of a file that says it is empty",
    async () => {
      // The kernel's own files have no size; this one is longer than 10 bytes.
      expect(await readWholeFile("/proc/self/status", 10)).toEqual({
        ok: false,
        error: { code: "file-too-large", name: "status", most: 10 },
      });
    },
  );

  it("refuses what is no file, a pipe too, which it does not wait for", async () => {
    const refused = { ok: false, error: { code: "not-a-file" } };
    mkdirSync(at("folder.json"));
    expect(await readWholeFile(at("folder.json"), 9)).toMatchObject(refused);
    if (process.platform === "win32") return;
    execFileSync("mkfifo", [at("pipe.json")]);
    expect(await readWholeFile(at("pipe.json"), 9)).toMatchObject(refused);
    symlinkSync("/dev/zero", at("zero.json"));
    expect(await readWholeFile(at("zero.json"), 9)).toMatchObject(refused);
  });

  it("says why one cannot be read", async () => {
    expect(await readWholeFile(at("gone.json"), 9)).toEqual({
      ok: false,
      error: { code: "not-read", name: "gone.json", reason: "ENOENT" },
    });
  });
});

describe("the system's code for an error", () => {
  it("is its code, or unknown where it has none", () => {
    expect(systemCode(systemError("EIO"))).toBe("EIO");
    for (const error of [new Error("a"), "EIO", { code: "EIO" }, undefined])
      expect(systemCode(error)).toBe("unknown");
  });
});
