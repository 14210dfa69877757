// @vitest-environment node
import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { resultsFileName } from "../../../../core/sharing/results-file-name";
import { lookThroughFolder } from "../../../../renderer/state/sharing/intake";
import { readHeardAnswers } from "../../../../renderer/storage/classmates";
import type { TurnwiseDatabase } from "../../../../renderer/storage/database";
import { packBundle } from "../../../../renderer/storage/results-bundle";
import { packResults } from "../../../../renderer/storage/results-files";
import { ANN, answersOf, BEN } from "../../../core/backup/sample-backup";
import {
  answersBlock,
  withdrawnBlock,
} from "../../../core/sharing/sample-block";
import { tries } from "../../../soak/times";
import {
  forgetDatabases,
  openTestDatabase,
} from "../../storage/fresh-database";
import { folderInMemory } from "./folder-in-memory";

let coach: TurnwiseDatabase;

beforeAll(async () => {
  coach = await openTestDatabase();
});
afterAll(async () => {
  coach.close();
  await forgetDatabases();
});

describe("how many answers came", () => {
  it("are those given: each once, a showing none; and whether some may have been here is known", async () => {
    const [first, second, third] = answersOf(ANN, 3);
    if (first === undefined || second === undefined || third === undefined)
      throw new Error("there are three");
    const shown = { ...third, asking: "shown" as const };
    const { folder, files } = folderInMemory();
    const lay = async (block: ReturnType<typeof answersBlock>) => {
      const { id, bytes } = await packResults(block);
      files.set(resultsFileName(id), bytes);
    };
    const arrivals = async () => {
      const came = await lookThroughFolder(coach, folder);
      return came.ok ? came.value.arrivals : [];
    };
    await lay(answersBlock(1, [first, shown]));
    await lay(answersBlock(2, [first, second]));
    expect(await arrivals()).toMatchObject([{ answers: 2, wasHere: false }]);
    await lay(answersBlock(3, [second]));
    expect(await arrivals()).toMatchObject([{ answers: 1, wasHere: true }]);
    await coach.learners.put({ ...BEN });
    await lay(answersBlock(4, answersOf(BEN, 1), { learner: BEN.id }));
    expect(await arrivals()).toMatchObject([{ answers: 1, wasHere: true }]);
    for (const table of coach.tables) await table.clear();
  });
});

describe("a file whose row here is damaged", () => {
  it("is read again where the row has lost whose it was", async () => {
    const { id, bytes } = await packResults(answersBlock(1, answersOf(ANN, 2)));
    const { folder, files } = folderInMemory();
    files.set(resultsFileName(id), bytes);
    await lookThroughFolder(coach, folder);
    await coach.heard.put({ id, kind: "answers" });
    await lookThroughFolder(coach, folder);
    const heard = await readHeardAnswers(coach, ANN.id);
    expect(heard).toMatchObject({ value: { answers: { length: 2 } } });
  });
});

/** Blocks of two learners, withdrawals among them, and of each whether its own file is there and in which bundle it lies. */
const LAID = fc.array(
  fc.record({
    of: fc.constantFrom(ANN, BEN),
    madeAt: fc.integer({ min: 1, max: 12 }),
    answers: fc.subarray(answersOf(ANN, 6)),
    isWithdrawn: fc.constantFrom(false, false, false, true),
    isAlone: fc.boolean(),
    bundle: fc.integer({ min: 0, max: 2 }),
  }),
  { minLength: 1, maxLength: 10 },
);

describe("bundles", () => {
  it("say what their blocks say, in any order, cut or doubled, whatever else is there", async () => {
    await fc.assert(
      fc.asyncProperty(
        LAID,
        fc.infiniteStream(fc.nat()),
        async (laid, chance) => {
          const draw = () => {
            const [value = 0] = chance.take(1);
            return value;
          };
          const small: [string, Uint8Array<ArrayBuffer>][] = [];
          const mixed: [string, Uint8Array<ArrayBuffer>][] = [];
          const bundles = new Map<string, Uint8Array<ArrayBuffer>[]>();
          for (const { of, madeAt, answers, isWithdrawn, ...where } of laid) {
            const { id, bytes } = await packResults(
              isWithdrawn
                ? withdrawnBlock(madeAt, { learner: of.id })
                : answersBlock(madeAt, answers, { learner: of.id }),
            );
            small.push([resultsFileName(id), bytes]);
            if (isWithdrawn || where.isAlone)
              mixed.push([resultsFileName(id), bytes]);
            if (isWithdrawn) continue;
            const key = `${of.id} ${where.bundle}`;
            bundles.set(key, [...(bundles.get(key) ?? []), bytes]);
          }
          for (const parts of bundles.values()) {
            const { id, bytes } = await packBundle(parts);
            mixed.push([resultsFileName(id), bytes]);
            mixed.push([`${id} (1).turnwise-results`, bytes.slice(0, -1)]);
          }
          const shown = async (looks: (typeof small)[]) => {
            for (const table of coach.tables) await table.clear();
            for (const files of looks) {
              const { folder, files: there } = folderInMemory();
              for (const [name, bytes] of files) there.set(name, bytes);
              await lookThroughFolder(coach, folder);
            }
            return Promise.all(
              [ANN, BEN].map(({ id }) => readHeardAnswers(coach, id)),
            );
          };
          const shuffled = mixed
            .map((file) => ({ file, key: draw() }))
            .toSorted((a, b) => a.key - b.key)
            .map(({ file }) => file);
          const cut = draw() % (shuffled.length + 1);
          expect(
            await shown([shuffled.slice(0, cut), shuffled, shuffled]),
          ).toEqual(await shown([small]));
        },
      ),
      { numRuns: tries(60) },
    );
  });
});
