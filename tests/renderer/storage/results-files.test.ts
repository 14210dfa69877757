// @vitest-environment node
import "fake-indexeddb/auto";
import { createHash } from "node:crypto";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { NamedBlock } from "../../../core/sharing/results-block";
import { resultsFileName } from "../../../core/sharing/results-file-name";
import { writeResults } from "../../../core/sharing/results-writer";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import {
  packResults,
  readResultsFile,
} from "../../../renderer/storage/results-files";
import { takeIn } from "../../../renderer/storage/take-in";
import { ANN, answersOf, BEN } from "../../core/backup/sample-backup";
import { answersBlock, withdrawnBlock } from "../../core/sharing/sample-block";
import { tellSoak, tries } from "../../soak/times";
import { packed } from "./backup-files";
import { forgetDatabases, openTestDatabase } from "./fresh-database";

const BLOCK = answersBlock(5, answersOf(ANN, 3), { part: "turns" });

const utf8 = (text: string) => new Uint8Array(new TextEncoder().encode(text));

describe("a file of results", () => {
  it("is named by the SHA-256 of its bytes and read by what is in it, under any name", async () => {
    const { id, bytes } = await packResults(BLOCK);
    // Source: Node's own digest.
    expect(id).toBe(createHash("sha256").update(bytes).digest("hex"));
    for (const name of [
      resultsFileName(id),
      `${id} (conflicted copy).turnwise-results`,
      "Mia.turnwise-results",
    ])
      expect(await readResultsFile(name, bytes)).toEqual({
        ok: true,
        value: { id, block: BLOCK },
      });
  });

  it("that some system has unpacked is read as well, where a person named it", async () => {
    const bytes = utf8(writeResults(BLOCK).text);
    expect(await readResultsFile("mia.turnwise-results", bytes)).toMatchObject({
      value: { block: BLOCK },
    });
  });

  it("cut off anywhere, or changed, is not whole", async () => {
    const { id, bytes } = await packResults(BLOCK);
    const cuts = fc.nat(bytes.length - 1);
    await fc.assert(
      fc.asyncProperty(cuts, fc.boolean(), async (at, isNamed) => {
        const changed = bytes.slice();
        changed[at] = (changed[at] ?? 0) ^ 1;
        const name = isNamed ? resultsFileName(id) : "mia.turnwise-results";
        for (const wrong of [bytes.slice(0, at), changed]) {
          const read = await readResultsFile(name, wrong);
          if (isNamed)
            expect(read).toEqual({ ok: false, error: { code: "not-whole" } });
          // Under another name the packing's own checksum is what tells; a
          // change in its header's flags or time changes nothing that is read.
          else if (read.ok) expect(read.value.block).toEqual(BLOCK);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("of another kind, too large, or that unpacks without end is refused", async () => {
    const name = "a.turnwise-results";
    const limits = { packed: 5000, unpacked: 100_000 };
    const read = (bytes: Uint8Array<ArrayBuffer>) =>
      readResultsFile(name, bytes, limits);
    const error = (error: object) => ({ ok: false, error });
    expect(await read(packed("hello"))).toEqual(error({ code: "not-results" }));
    expect(await read(utf8(""))).toEqual(error({ code: "not-results" }));
    expect(await read(new Uint8Array(5001))).toEqual(
      error({ code: "packed-too-large", limit: 5000 }),
    );
    const [header = "", answer = ""] = writeResults(BLOCK).text.split("\n");
    const endless = `${header}\n${`${answer}\n`.repeat(300)}`;
    expect(await read(packed(endless))).toEqual(
      error({ code: "unpacked-too-large", limit: 100_000 }),
    );
    expect(await read(packed(endless).slice(0, 300))).toEqual(
      error({ code: "bad-gzip" }),
    );
    expect(
      await read(packed(new Uint8Array(Buffer.from("\xe9\n", "latin1")))),
    ).toEqual(error({ code: "not-text", line: 1 }));
  });
});

const UNIONS = tries(60);

describe("a folder of files", () => {
  let database: TurnwiseDatabase;
  beforeAll(async () => {
    database = await openTestDatabase();
  });
  afterAll(async () => {
    database.close();
    await forgetDatabases();
  });

  /** Reads the files in an order and takes in those that are whole. */
  async function lookThrough(
    files: readonly (readonly [string, Uint8Array<ArrayBuffer>])[],
  ) {
    for (const [name, bytes] of files) {
      const read = await readResultsFile(name, bytes);
      if (read.ok) await takeIn(database, read.value);
    }
  }

  async function everything() {
    return {
      heard: await database.heard.orderBy("id").toArray(),
      classmates: await database.classmates.orderBy("id").toArray(),
    };
  }

  it("is a union of what is whole in it: in any order, repeated, cut off, copied, with foreign files", async () => {
    const blocks: NamedBlock["block"][] = [
      answersBlock(1, answersOf(ANN, 2)),
      answersBlock(3, answersOf(ANN, 4), { part: "turns", name: "Owl" }),
      withdrawnBlock(2),
      answersBlock(2, answersOf(BEN, 3), { learner: BEN.id, name: "Ben" }),
      withdrawnBlock(9, { learner: BEN.id }),
      answersBlock(11, answersOf(BEN, 1), { learner: BEN.id, name: "Ben" }),
    ];
    const files = await Promise.all(blocks.map((block) => packResults(block)));
    const noise = files.flatMap(({ id, bytes }) => [
      [resultsFileName(id), bytes.slice(0, bytes.length / 2)] as const,
      [`${id} (1).turnwise-results`, bytes] as const,
      [resultsFileName(id), bytes] as const,
      ["photo.turnwise-results", packed(id)] as const,
    ]);
    const whole = fc.subarray(files, { minLength: 1 });
    await fc.assert(
      fc.asyncProperty(
        whole.chain((some) => fc.tuple(fc.constant(some), fc.gen())),
        async ([some, draw]) => {
          const clean = some.map(
            ({ id, bytes }) => [resultsFileName(id), bytes] as const,
          );
          for (const table of database.tables) await table.clear();
          await lookThrough(clean);
          const once = await everything();

          const ids = some.map(({ id }) => id);
          const isOf = ([name]: (typeof noise)[number]) =>
            ids.some((id) => name.startsWith(id)) || name.startsWith("photo");
          const laid = draw(fc.shuffledSubarray, [
            ...clean,
            ...noise.filter(isOf),
          ]);
          const rest = draw(fc.shuffledSubarray, clean, {
            minLength: clean.length,
          });
          for (const table of database.tables) await table.clear();
          await lookThrough([...laid, ...rest]);
          expect(await everything()).toEqual(once);
        },
      ),
      { numRuns: UNIONS },
    );
    tellSoak(`${UNIONS} folders of results read twice`);
  });
});
