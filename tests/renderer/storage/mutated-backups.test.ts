// @vitest-environment node
import "fake-indexeddb/auto";
import { expect, it, describe } from "vitest";
import type { BackupError } from "../../../core/backup/backup-error";
import { randomSource, seedFrom } from "../../../core/random-source";
import { areJsonLines, mutatedLines } from "../../core/backup/mutated-backup";
import {
  ANN,
  answersOf,
  readLines,
  sampleLines,
} from "../../core/backup/sample-backup";
import { undoRestore } from "../../../renderer/storage/last-restore";
import {
  BACKUP_FILE_LIMITS,
  type BackupFileError,
  readBackup,
} from "../../../renderer/storage/read-backup";
import { previewRestore, restore } from "../../../renderer/storage/restore";
import { readLog } from "../../../renderer/storage/reviews";
import { dumpOf, packed, streamOf } from "./backup-files";
import { openTestDatabase } from "./fresh-database";
import { tellSoak, tries } from "../../soak/times";

const LINE_CODES: Readonly<Record<BackupError["code"], true>> = {
  "not-a-backup": true,
  "newer-backup": true,
  truncated: true,
  "lines-after-end": true,
  "unknown-line": true,
  "too-many-lines": true,
  "too-many-reviews": true,
  "wrong-counts": true,
  "line-not-json": true,
  "line-too-deep": true,
  "line-too-long": true,
  "forbidden-key": true,
  "wrong-field": true,
};

const LIMITS = { lines: 22, reviews: 8 };

/** A store with a learner who is in the file, and some of the file's answers. */
async function filledStore() {
  const database = await openTestDatabase();
  await database.learners.put({ ...ANN });
  await database.decks.put({ id: "club", name: "other" });
  const [first, second] = answersOf(ANN, 2);
  await database.reviews.put({ ...first });
  await database.blocks.put({ learner: ANN.id, number: 0, reviews: [second] });
  await database.runs.put({ id: "run", learner: ANN.id });
  return database;
}

const LINE_FILES = tries(10_000);

const PACKED_FILES = tries(600);

describe("10,000 backups with mistakes", () => {
  it("are read or refused with a code; what is read can be restored and taken back, and loses nothing", async () => {
    const database = await filledStore();
    const before = await dumpOf(database);
    const stored = await readLog(database, ANN.id);
    const seen = new Map<string, number>();
    let json = 0;
    let read = 0;
    for (let seed = 1; seed <= LINE_FILES; seed += 1) {
      const lines = mutatedLines(randomSource(seedFrom(1, seed)));
      if (areJsonLines(lines)) json += 1;
      const outcome = readLines(lines, LIMITS);
      const code = outcome.ok ? "read" : outcome.error.code;
      seen.set(code, (seen.get(code) ?? 0) + 1);
      if (!outcome.ok) continue;
      read += 1;
      if (read % 10 !== 0) continue;
      const said = `seed ${seed}`;
      const plan = await previewRestore(database, outcome.value);
      expect(plan.ok, said).toBe(true);
      const done = await restore(database, outcome.value, {
        learners: plan.ok ? plan.value.learners.map(({ id }) => id) : [],
        decks: "new-and-changed",
        ofClass: true,
        nameless: "Somebody",
        now: 1,
      });
      expect(done.ok, said).toBe(true);
      const log = await readLog(database, ANN.id);
      if (!log.ok || !stored.ok) throw new Error(said);
      for (const review of stored.value.reviews)
        expect(log.value.reviews, said).toContainEqual(review);
      await undoRestore(database);
      expect(await dumpOf(database), said).toEqual(before);
    }
    tellSoak(
      `${LINE_FILES} mutated backups, ${json} still JSON lines, ${read} read, ${seen.size} different outcomes`,
    );
    expect(json).toBeGreaterThan(0.3 * LINE_FILES);
    expect(read).toBeGreaterThan(0.05 * LINE_FILES);
    for (const code of Object.keys(LINE_CODES))
      expect(seen.get(code) ?? 0, code).toBeGreaterThan(0);
    database.close();
  });
});

describe("600 packed backups with changed bytes", () => {
  it("are read or refused with a code, and change nothing in the store", async () => {
    const text = `${sampleLines(true).join("\n")}\n`;
    const whole = packed(text);
    const plain = new Uint8Array(new TextEncoder().encode(text));
    const seen = new Set<BackupFileError["code"] | "read">();
    const database = await filledStore();
    const before = await dumpOf(database);
    for (let seed = 1; seed <= PACKED_FILES; seed += 1) {
      const random = randomSource(seedFrom(2, seed));
      let bytes = (random.below(3) === 0 ? plain : whole).slice();
      for (let n = random.below(4); n > 0; n -= 1)
        bytes[random.below(bytes.length)] = random.below(256);
      if (random.below(4) === 0)
        bytes = bytes.slice(0, random.below(bytes.length));
      const limits = {
        ...BACKUP_FILE_LIMITS,
        packed: random.below(10) === 0 ? 500 : 1_000_000,
        unpacked: random.below(10) === 0 ? 1000 : 1_000_000,
      };
      const { stream } = streamOf(bytes, 1 + random.below(400));
      const outcome = await readBackup(stream, limits);
      seen.add(outcome.ok ? "read" : outcome.error.code);
    }
    expect(await dumpOf(database)).toEqual(before);
    for (const code of [
      "read",
      "bad-gzip",
      "not-text",
      "packed-too-large",
      "unpacked-too-large",
      "not-a-backup",
      "truncated",
      "line-not-json",
    ] as const)
      expect(seen, code).toContain(code);
    database.close();
  });
});

it("the samples that the mistakes are made in can be read", () => {
  expect(readLines(sampleLines(true), LIMITS).ok).toBe(true);
});
