// @vitest-environment node
import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Milliseconds, Review } from "../../../core/memory/review";
import type { NamedBlock } from "../../../core/sharing/results-block";
import {
  countLeftOut,
  deleteClassmate,
  heardDigests,
  readAgain,
  readClassmates,
  readHeardAnswers,
  saveNickname,
} from "../../../renderer/storage/classmates";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { saveLearner } from "../../../renderer/storage/learners";
import { acknowledgeReview, readLog } from "../../../renderer/storage/reviews";
import { takeIn } from "../../../renderer/storage/take-in";
import { ANN, answersOf, BEN } from "../../core/backup/sample-backup";
import {
  answersBlock,
  named,
  withdrawnBlock,
} from "../../core/sharing/sample-block";
import { forgetDatabases, openTestDatabase } from "./fresh-database";
import { tellSoak, tries } from "../../soak/times";

let database: TurnwiseDatabase;

beforeAll(async () => {
  database = await openTestDatabase();
});
beforeEach(async () => {
  for (const table of database.tables) await table.clear();
});
afterAll(async () => {
  database.close();
  await forgetDatabases();
});

async function taken(...blocks: readonly NamedBlock[]) {
  const outcomes = [];
  for (const block of blocks) {
    const outcome = await takeIn(database, block);
    outcomes.push(outcome.ok ? outcome.value : outcome.error.code);
  }
  return outcomes;
}

async function heardIds(learner = ANN.id) {
  const heard = await readHeardAnswers(database, learner);
  if (!heard.ok) throw new Error(heard.error.code);
  return heard.value.answers.map(({ id }) => id);
}

async function names() {
  const read = await readClassmates(database);
  if (!read.ok) throw new Error(read.error.code);
  return read.value.map(({ name, nickname }) => nickname ?? name);
}

async function digest(learner = ANN.id) {
  const read = await heardDigests(database);
  if (!read.ok) throw new Error(read.error.code);
  return read.value.get(learner) ?? "";
}

const [FIRST, SECOND, THIRD] = answersOf(ANN, 3) as [Review, Review, Review];

/** What both tables hold, whatever the order of the rows. */
async function everything() {
  return {
    heard: await database.heard.orderBy("id").toArray(),
    classmates: await database.classmates.orderBy("id").toArray(),
  };
}

describe("blocks that are taken in", () => {
  it("are a union: each answer once, in the order of replay", async () => {
    const outcomes = await taken(
      named(2, answersBlock(20, [SECOND, THIRD])),
      named(1, answersBlock(10, [FIRST, SECOND])),
      named(2, answersBlock(20, [SECOND, THIRD])),
    );
    expect(outcomes).toEqual(["new", "new", "known"]);
    expect(await heardIds()).toEqual(["Ann-0", "Ann-1", "Ann-2"]);
    expect(await names()).toEqual(["Ann"]);
  });

  it("say of an answer that came twice what the newest says, and use the newest name", async () => {
    await taken(
      named(2, answersBlock(20, [FIRST], { name: "Annie", part: "turns" })),
      named(1, answersBlock(10, [FIRST])),
    );
    const heard = await readHeardAnswers(database, ANN.id);
    expect(heard.ok && heard.value.answers[0]?.position).toBeDefined();
    expect(await names()).toEqual(["Annie"]);
  });

  it("made before a withdrawal are emptied, whichever comes first, and what is shared later holds", async () => {
    const before = named(1, answersBlock(10, [FIRST]));
    const gone = named(2, withdrawnBlock(20));
    const after = named(3, answersBlock(30, [SECOND], { name: "A." }));
    for (const order of [
      [before, gone, after],
      [gone, before, after],
      [after, gone, before],
    ]) {
      for (const table of database.tables) await table.clear();
      await taken(...order);
      expect(await heardIds()).toEqual(["Ann-1"]);
      expect(await names()).toEqual(["A."]);
      const row = await database.heard.get(before.id);
      expect(JSON.stringify(row)).not.toContain("Ann-0");
    }
    await taken(named(4, withdrawnBlock(40)));
    expect(await names()).toEqual([]);
  });

  it("touch nobody else, and no log of this machine", async () => {
    await saveLearner(database, ANN);
    const told = await acknowledgeReview(database, { review: FIRST });
    expect(told.ok).toBe(true);
    const lie = { ...FIRST, verdict: "missed" as const };
    await taken(
      named(1, answersBlock(10, [lie, SECOND])),
      named(2, answersBlock(10, answersOf(BEN, 2), { learner: BEN.id })),
      named(3, withdrawnBlock(50)),
    );
    const log = await readLog(database, ANN.id);
    expect(log.ok && log.value.reviews).toEqual([FIRST]);
    expect(await heardIds(BEN.id)).toEqual(["Ben-0", "Ben-1"]);
  });

  it("change the digest of their learner alone", async () => {
    await taken(
      named(1, answersBlock(10, [FIRST])),
      named(2, answersBlock(10, answersOf(BEN, 1), { learner: BEN.id })),
    );
    const [ann, ben] = [await digest(), await digest(BEN.id)];
    await taken(named(3, answersBlock(11, [SECOND])));
    expect(await digest()).not.toBe(ann);
    expect(await digest(BEN.id)).toBe(ben);
    expect(await digest("nobody")).toBe("");
    const all = await heardDigests(database);
    expect(all.ok && [...all.value]).toEqual([
      [BEN.id, ben],
      [ANN.id, await digest()],
    ]);
  });

  it("that are damaged in the store are counted and cost nothing else", async () => {
    await taken(named(1, answersBlock(10, [FIRST, SECOND])));
    await database.heard.update(named(1, withdrawnBlock(1)).id, {
      "answers.0.at": "noon",
    });
    await database.heard.put({ id: "torn", learner: ANN.id, kind: "answers" });
    const heard = await readHeardAnswers(database, ANN.id);
    expect(heard.ok && heard.value.damaged).toBe(2);
    expect(await heardIds()).toEqual(["Ann-1"]);
  });
});

describe("a block whose row is damaged in the store", () => {
  const block = named(1, answersBlock(10, [FIRST, SECOND]));

  it.each<[string, Record<string, unknown>]>([
    ["no kind", { kind: undefined }],
    ["no list of answers", { answers: "many" }],
    ["an answer that cannot be read", { "answers.0.at": "noon" }],
    ["no time", { madeAt: "noon" }],
  ])("with %s, is made whole by the same block", async (_, damage) => {
    await taken(block);
    const whole = await everything();
    await database.heard.update(block.id, damage);
    await database.cache.put({ learner: ANN.id, name: "class-summary" });
    expect(await taken(block, block)).toEqual(["new", "known"]);
    expect(await everything()).toEqual(whole);
    // What was computed without it went by the same key.
    expect(await database.cache.count()).toBe(0);
  });

  it("comes back after a withdrawal made before it, and leaves nothing when it is deleted", async () => {
    const after = named(3, answersBlock(30, [THIRD]));
    await taken(after);
    await database.heard.update(after.id, { madeAt: "noon" });
    await taken(named(2, withdrawnBlock(20)));
    expect(await taken(after)).toEqual(["new"]);
    expect(await heardIds()).toEqual(["Ann-2"]);
    await database.heard.update(after.id, { kind: 7 });
    await deleteClassmate(database, ANN.id);
    expect(JSON.stringify(await everything())).not.toContain("Ann");
  });

  it("is no way back for what was withdrawn, or deleted here", async () => {
    await taken(block, named(2, withdrawnBlock(20)));
    for (const { id } of [block, named(2, withdrawnBlock(20))])
      await database.heard.update(id, { madeAt: "noon" });
    expect(await taken(block)).toEqual(["withdrawn"]);
    await deleteClassmate(database, ANN.id);
    await database.heard.update(block.id, { kind: 7 });
    expect(await taken(named(3, answersBlock(30, [THIRD])))).toEqual([
      "left-out",
    ]);
    expect(await heardIds()).toEqual([]);
  });

  it("and which this machine sent itself, stays what it was", async () => {
    await database.heard.put({ id: block.id, learner: ANN.id, kind: "sent" });
    expect(await taken(block)).toEqual(["known"]);
  });
});

describe("a person whose row is damaged in the store", () => {
  const damage = () =>
    database.classmates.put({ id: ANN.id, nickname: 7, withdrawnAt: "noon" });
  const first = named(1, answersBlock(10, [FIRST]));
  const gone = named(2, withdrawnBlock(20));
  const after = named(3, answersBlock(30, [SECOND], { name: "A." }));

  it("has not forgotten what they took back, and comes back with the next block", async () => {
    await taken(gone, after);
    await damage();
    expect(await names()).toEqual([]);
    expect(await taken(first)).toEqual(["withdrawn"]);
    await taken(named(4, answersBlock(25, [THIRD])));
    expect(await heardIds()).toEqual(["Ann-1", "Ann-2"]);
    expect(await names()).toEqual(["A."]);
  });

  it("and who is deleted then, does not get back what they took back", async () => {
    await taken(gone, after);
    await damage();
    await deleteClassmate(database, ANN.id);
    await readAgain(database);
    expect(await taken(first, after)).toEqual(["withdrawn", "new"]);
  });

  it("can withdraw though an answer of theirs is damaged as well", async () => {
    await taken(after, named(4, answersBlock(40, [THIRD])));
    await database.heard.update(named(4, gone.block).id, { answers: [null] });
    expect(await taken(named(5, withdrawnBlock(35)))).toEqual(["new"]);
    expect(await heardIds()).toEqual([]);
  });
});

describe("a coach", () => {
  it("calls a classmate by another name, which new results leave", async () => {
    await taken(named(1, answersBlock(10, [FIRST])));
    await saveNickname(database, ANN.id, "Owl");
    await taken(named(2, answersBlock(20, [SECOND])));
    expect(await names()).toEqual(["Owl"]);
    await saveNickname(database, ANN.id, undefined);
    expect(await names()).toEqual(["Ann"]);
  });

  it("deletes a classmate's results, which stay away until they are asked for again", async () => {
    const first = named(1, answersBlock(10, [FIRST]));
    const second = named(2, answersBlock(20, [SECOND]));
    await taken(first);
    await saveNickname(database, ANN.id, "Owl");
    const before = await digest();
    await deleteClassmate(database, ANN.id);
    expect(await digest()).not.toBe(before);
    expect(JSON.stringify(await everything())).not.toMatch(/Owl|Ann/);
    expect(await taken(first, second)).toEqual(["known", "left-out"]);
    expect(await heardIds()).toEqual([]);
    expect(await names()).toEqual([]);
    expect(await countLeftOut(database)).toEqual({ ok: true, value: 1 });

    await readAgain(database);
    expect(await countLeftOut(database)).toEqual({ ok: true, value: 0 });
    expect(await taken(first, second)).toEqual(["new", "new"]);
    expect(await heardIds()).toEqual(["Ann-0", "Ann-1"]);
  });

  it("a withdrawal takes what was computed of the answers with it, and nobody else's", async () => {
    await taken(named(1, answersBlock(10, [FIRST])));
    for (const learner of [ANN.id, "somebody else"])
      await database.cache.put({ learner, name: "class-summary" });
    await taken(named(2, withdrawnBlock(20)));
    expect(await database.cache.toCollection().primaryKeys()).toEqual([
      ["somebody else", "class-summary"],
    ]);
  });

  it("who deleted somebody's results does not get back what that one withdrew", async () => {
    const first = named(1, answersBlock(10, [FIRST]));
    await taken(first, named(2, withdrawnBlock(20)));
    await deleteClassmate(database, ANN.id);
    await readAgain(database);
    expect(await taken(first)).toEqual(["withdrawn"]);
    expect(await heardIds()).toEqual([]);
  });
});

/** Blocks of two learners: some share answers, some are withdrawals. */
const BLOCKS: fc.Arbitrary<readonly NamedBlock[]> = fc
  .array(
    fc.record({
      of: fc.constantFrom(ANN, BEN),
      madeAt: fc.integer({ min: 1, max: 12 }),
      name: fc.constantFrom("Ann", "Owl"),
      answers: fc.subarray(answersOf(ANN, 6)),
      isWithdrawn: fc.constantFrom(false, false, false, true),
      part: fc.constantFrom("answers" as const, "turns" as const),
      /** Two blocks may say different things of one answer. */
      total: fc.constantFrom(1000, 2000),
    }),
    { minLength: 1, maxLength: 10 },
  )
  .map((told) =>
    told.map(({ of, madeAt, name, answers, isWithdrawn, part, total }, i) =>
      named(
        i,
        isWithdrawn
          ? withdrawnBlock(madeAt, { learner: of.id })
          : answersBlock(
              madeAt,
              answers.map((one) => ({ ...one, total: total as Milliseconds })),
              { learner: of.id, name, part },
            ),
      ),
    ),
  );

/** What a set of blocks says of a learner, by the rules alone and with no store. */
function saidBy(blocks: readonly NamedBlock[], learner: string) {
  const own = blocks
    .filter(({ block }) => block.learner === learner)
    .toSorted(
      (a, b) => a.block.madeAt - b.block.madeAt || (a.id < b.id ? -1 : 1),
    );
  const withdrawn = own.findLast(({ block }) => block.kind === "withdrawn");
  const answers = new Map<string, object>();
  for (const { block } of own)
    if (
      block.kind === "answers" &&
      block.madeAt > (withdrawn?.block.madeAt ?? -1)
    )
      for (const one of block.answers) answers.set(one.id, { ...one, learner });
  // Ids rise with the time at which the samples were given.
  return [...answers.entries()]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([, answer]) => answer);
}

/** What the class page is given of a learner, and the key by which it knows that again. */
async function shownOf(learner: string) {
  const heard = await readHeardAnswers(database, learner);
  if (!heard.ok) throw new Error(heard.error.code);
  return { ...heard.value, digest: await digest(learner) };
}

/** Something that a coach does, or that befalls a row, between two looks. */
const DEEDS = fc.constantFrom(
  ...["delete Ann", "delete Ben", "read again", "tear", "spoil"],
);

async function done(deed: string) {
  if (deed === "read again") await readAgain(database);
  else if (deed === "tear" || deed === "spoil")
    await database.heard.toCollection().modify((row, place) => {
      if (row["kind"] === "answers")
        place.value = {
          ...row,
          ...(deed === "tear" ? { kind: 7 } : { answers: [7] }),
        };
    });
  else await deleteClassmate(database, deed === "delete Ann" ? ANN.id : BEN.id);
}

const UNIONS = tries(200);

describe("taking in", () => {
  it("ends at the same tables in any order and however often blocks come", async () => {
    await fc.assert(
      fc.asyncProperty(
        BLOCKS.chain((blocks) =>
          fc.tuple(
            fc.constant(blocks),
            fc.shuffledSubarray([...blocks], { minLength: blocks.length }),
            fc.array(fc.constantFrom(...blocks), { maxLength: 6 }),
          ),
        ),
        async ([blocks, shuffled, again]) => {
          for (const table of database.tables) await table.clear();
          await taken(...blocks);
          const once = await everything();
          for (const table of database.tables) await table.clear();
          await taken(...again, ...shuffled, ...again);
          expect(await everything()).toEqual(once);
        },
      ),
      { numRuns: UNIONS },
    );
    tellSoak(`${UNIONS} sets of blocks taken in twice`);
  });

  it("shows what the blocks say, whatever was deleted and read again meanwhile", async () => {
    await fc.assert(
      fc.asyncProperty(
        BLOCKS.chain((blocks) =>
          fc.tuple(
            fc.constant(blocks),
            fc.shuffledSubarray([...blocks], { minLength: blocks.length }),
            fc.array(fc.oneof(fc.constantFrom(...blocks), DEEDS), {
              maxLength: 12,
            }),
          ),
        ),
        async ([blocks, shuffled, before]) => {
          for (const table of database.tables) await table.clear();
          await taken(...blocks);
          const once = await shownOf(ANN.id);
          expect(once.answers).toEqual(saidBy(blocks, ANN.id));
          for (const table of database.tables) await table.clear();
          for (const one of before)
            if (typeof one === "string") await done(one);
            else await taken(one);
          await deleteClassmate(database, ANN.id);
          await taken(...shuffled);
          expect((await shownOf(ANN.id)).answers).toEqual([]);
          await readAgain(database);
          await taken(...shuffled);
          expect(await shownOf(ANN.id)).toEqual(once);
          expect((await shownOf(BEN.id)).answers).toEqual(
            saidBy(blocks, BEN.id),
          );
        },
      ),
      { numRuns: UNIONS },
    );
  });
});
