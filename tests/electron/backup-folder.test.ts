import fc from "fast-check";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it } from "vitest";
import { KEPT_BACKUP_DAYS } from "../../core/backup/retention";
import { MAX_BACKUP_BYTES } from "../../core/desktop-bridge";
import { dayNumber } from "../../core/memory/local-day";
import { err } from "../../core/result";
import {
  type BackupFolder,
  backupFileName,
  backupFolder,
  parseBackupFileName,
  parseLastKnown,
} from "../../electron/backup-folder";
import { temporaryFolder } from "./page-folder";

const DAY = 86_400_000;
/** Noon of day 20000. */
const NOON = 20_000 * DAY + DAY / 2;

interface Kept {
  readonly folder: string;
  readonly backups: BackupFolder;
  /** Moves the clock. */
  readonly setNow: (at: number) => void;
}

function emptyFolder(): Kept {
  const folder = temporaryFolder({});
  let at = NOON;
  return {
    folder,
    backups: backupFolder(folder, () => ({ at, utcOffset: 0 })),
    setNow: (next) => (at = next),
  };
}

function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

function filesIn(folder: string): string[] {
  return readdirSync(join(folder, "backups")).sort();
}

describe("an automatic backup", () => {
  it("is kept under its day, answers and time, and read back", async () => {
    const { folder, backups } = emptyFolder();
    expect(await backups.list()).toEqual([]);
    expect(await backups.keep(12, bytesOf("twelve"))).toEqual({
      ok: true,
      value: { written: true, fewerThan: null },
    });
    const name = `turnwise-2024-10-04-day-20000-with-12-answers-${NOON}.turnwise-backup`;
    expect(filesIn(folder)).toEqual([name]);
    expect(await backups.list()).toEqual([
      { name, day: 20_000, reviews: 12, madeAt: NOON },
    ]);
    expect(await backups.read(name)).toEqual({
      ok: true,
      value: { name, bytes: bytesOf("twelve") },
    });
  });

  it("takes the place of the day's last one, and of the fifteenth day's", async () => {
    const { backups, setNow } = emptyFolder();
    for (let day = 0; day < 20; day += 1) {
      for (const hour of [1, 2]) {
        setNow(NOON + day * DAY + hour);
        await backups.keep(100 + day, bytesOf(`${day} ${hour}`));
      }
    }
    const list = await backups.list();
    expect(list.map(({ reviews }) => reviews)).toEqual(
      Array.from({ length: KEPT_BACKUP_DAYS }, (_, i) => 119 - i),
    );
    expect(await backups.read(list[0]?.name ?? "")).toMatchObject({
      value: { bytes: bytesOf("19 2") },
    });
  });

  it("with fewer answers takes no one's place, and is told of", async () => {
    const { backups, setNow } = emptyFolder();
    await backups.keep(500, bytesOf("full"));
    const [full] = await backups.list();
    setNow(NOON + 1);
    expect(await backups.keep(3, bytesOf("poor"))).toEqual({
      ok: true,
      value: { written: true, fewerThan: full },
    });
    expect((await backups.list()).map(({ reviews }) => reviews)).toEqual([
      3, 500,
    ]);
  });

  it("of an empty store is not made", async () => {
    const { folder, backups } = emptyFolder();
    await backups.keep(500, bytesOf("full"));
    const [full] = await backups.list();
    expect(await backups.keep(0, bytesOf("empty"))).toEqual({
      ok: true,
      value: { written: false, fewerThan: full },
    });
    expect(filesIn(folder)).toHaveLength(1);
  });

  it("of whole runs alone is made, under a name that every version reads, and its runs are told", async () => {
    const { folder, backups, setNow } = emptyFolder();
    expect(await backups.keep(0, bytesOf("many"), 20)).toMatchObject({
      value: { written: true },
    });
    const [name = ""] = filesIn(folder);
    expect(parseBackupFileName(name)).toMatchObject({ reviews: 0 });
    const many = { name, day: 20_000, reviews: 0, runs: 20, madeAt: NOON };
    expect(await backups.list()).toEqual([many]);
    expect(await backups.lastKnown()).toEqual({
      reviews: 0,
      runs: 20,
      at: NOON,
    });
    // The one with more runs stays, however many come after it that day.
    for (const hour of [1, 2, 3]) {
      setNow(NOON + hour);
      await backups.keep(0, bytesOf("poor"), hour);
    }
    expect(await backups.list()).toEqual([
      expect.objectContaining({ runs: 3 }),
      many,
    ]);
    await backups.forget();
    expect(await backups.lastKnown()).toBeNull();
    expect(await backups.list()).toHaveLength(2);
    expect((await backups.list())[1]).toEqual(many);
  });

  it("is one more even within a millisecond, and two at a time see each other", async () => {
    const { backups } = emptyFolder();
    await Promise.all(
      ["a", "b", "c"].map((text) => backups.keep(5, bytesOf(text))),
    );
    const list = await backups.list();
    expect(list).toHaveLength(1);
    expect(await backups.read(list[0]?.name ?? "")).toMatchObject({
      value: { bytes: bytesOf("c") },
    });
  });

  it("clears away what a crash left unfinished, and leaves what is not ours", async () => {
    const { folder, backups } = emptyFolder();
    mkdirSync(join(folder, "backups"));
    const unfinished = `.turnwise-${"0".repeat(8)}-0000-4000-8000-${"0".repeat(12)}.part`;
    for (const name of [unfinished, "notes.txt", "x.turnwise-backup"])
      writeFileSync(join(folder, "backups", name), "");
    await backups.keep(5, bytesOf("a"));
    const left = filesIn(folder);
    expect(left).toHaveLength(3);
    expect(left).not.toContain(unfinished);
    expect(await backups.list()).toHaveLength(1);
  });

  it("for which there is no room removes none, and the mark stays", async () => {
    const { folder, backups } = emptyFolder();
    await backups.keep(5, bytesOf("a"));
    const before = filesIn(folder);
    const full = backupFolder(
      folder,
      () => ({ at: NOON + 1, utcOffset: 0 }),
      (path) => Promise.resolve(err({ code: "no-room", name: basename(path) })),
    );
    expect(await full.keep(6, bytesOf("b"))).toMatchObject({
      error: { code: "no-room" },
    });
    expect(filesIn(folder)).toEqual(before);
    expect(await full.lastKnown()).toEqual({ reviews: 5, at: NOON });
  });

  it("that cannot be written is an error, and the mark stays", async () => {
    const { folder, backups } = emptyFolder();
    await backups.keep(5, bytesOf("a"));
    rmSync(join(folder, "backups"), { recursive: true });
    writeFileSync(join(folder, "backups"), "a file in the folder's place");
    expect(await backups.keep(7, bytesOf("b"))).toEqual({
      ok: false,
      error: { code: "not-written", name: "backups", reason: "EEXIST" },
    });
    await expect(backups.list()).rejects.toThrow("ENOTDIR");
    expect(await backups.lastKnown()).toEqual({ reviews: 5, at: NOON });
    rmSync(join(folder, "backups"));
    expect(await backups.keep(7, bytesOf("b"))).toMatchObject({ ok: true });
  });

  it("is read by a name of the list only", async () => {
    const { folder, backups } = emptyFolder();
    writeFileSync(join(folder, "secret"), "secret");
    await backups.keep(5, bytesOf("a"));
    for (const name of ["../secret", "..", "", "x.turnwise-backup"]) {
      expect(await backups.read(name)).toEqual({
        ok: false,
        error: { code: "no-such-backup", name },
      });
    }
  });

  it("is not read where it grew beyond every limit", async () => {
    const { folder, backups } = emptyFolder();
    await backups.keep(5, bytesOf("a"));
    const [name = ""] = filesIn(folder);
    truncateSync(join(folder, "backups", name), MAX_BACKUP_BYTES + 1);
    expect(await backups.read(name)).toMatchObject({
      error: { code: "file-too-large", most: MAX_BACKUP_BYTES },
    });
  });
});

describe("what the store held last", () => {
  it("is nothing at first, then what the last backup that was made held", async () => {
    const { backups, setNow } = emptyFolder();
    expect(await backups.lastKnown()).toBeNull();
    await backups.keep(5, bytesOf("a"));
    setNow(NOON + 9);
    await backups.keep(6, bytesOf("b"));
    await backups.keep(0, bytesOf(""));
    expect(await backups.lastKnown()).toEqual({ reviews: 6, at: NOON + 9 });
  });

  it("is known from the backups where the mark is gone or damaged", async () => {
    const { folder, backups } = emptyFolder();
    await backups.keep(5, bytesOf("a"));
    for (const spoil of [
      () => rmSync(join(folder, "last-known.json")),
      () => writeFileSync(join(folder, "last-known.json"), "{"),
    ]) {
      spoil();
      expect(await backups.lastKnown()).toEqual({ reviews: 5, at: NOON });
    }
  });

  it("is forgotten when it is right that the store is empty, until the next backup", async () => {
    const { backups } = emptyFolder();
    await backups.keep(5, bytesOf("a"));
    expect(await backups.forget()).toEqual({ ok: true, value: null });
    expect(await backups.lastKnown()).toBeNull();
    expect(await backups.list()).toHaveLength(1);
    await backups.keep(1, bytesOf("b"));
    expect(await backups.lastKnown()).toMatchObject({ reviews: 1 });
  });

  it("is told even where the mark cannot be written, and the backup is there", async () => {
    const { folder, backups } = emptyFolder();
    mkdirSync(join(folder, "last-known.json", "in"), { recursive: true });
    expect(await backups.keep(5, bytesOf("a"))).toMatchObject({
      error: { code: "not-written", name: "last-known.json" },
    });
    expect(await backups.list()).toHaveLength(1);
    expect(await backups.lastKnown()).toEqual({ reviews: 5, at: NOON });
    expect(existsSync(join(folder, "last-known.json", "in"))).toBe(true);
  });

  it.each(["", "1", "[]", "{}", '{"reviews":-1,"at":1}', '{"reviews":1}'])(
    "is not read from %j",
    (text) => {
      expect(parseLastKnown(text)).toBeUndefined();
    },
  );

  it("is read as it is written", async () => {
    const { folder, backups } = emptyFolder();
    await backups.keep(5, bytesOf("a"));
    const text = readFileSync(join(folder, "last-known.json"), "utf8");
    expect(parseLastKnown(text)).toEqual({
      reviews: 5,
      runsIn: {},
      at: NOON,
    });
  });

  it("is read as a version before whole runs wrote it", () => {
    expect(parseLastKnown('{"reviews":5,"at":7}')).toEqual({
      reviews: 5,
      at: 7,
    });
  });
});

describe("a backup's file name", () => {
  it("says what is in it", () => {
    fc.assert(
      fc.property(
        fc.record({
          day: fc.nat(99_999).map(dayNumber),
          reviews: fc.nat(999_999_999),
          madeAt: fc.nat(Number.MAX_SAFE_INTEGER).map((n) => n % 1e15),
        }),
        (backup) => {
          const name = backupFileName(backup);
          expect(parseBackupFileName(name)).toEqual({ name, ...backup });
        },
      ),
    );
  });

  it.each([
    "turnwise-2024-10-04-day-20001-with-12-answers-1.turnwise-backup",
    "turnwise-2024-10-04-day-020000-with-12-answers-1.turnwise-backup",
    "turnwise-2024-10-04-day-20000-with-1e9-answers-1.turnwise-backup",
    "a/turnwise-2024-10-04-day-20000-with-12-answers-1.turnwise-backup",
    "turnwise-2024-10-04-day-20000-with-12-answers-1.turnwise-backup.part",
    "",
  ])("is not %j", (name) => {
    expect(parseBackupFileName(name)).toBeUndefined();
  });
});
