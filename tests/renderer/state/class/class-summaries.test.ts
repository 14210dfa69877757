import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { memberSummary } from "../../../../core/class/member-summary";
import { dayNumber } from "../../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../../core/memory/review";
import { unpacked } from "../../../../core/progress/packed-log";
import { err, ok } from "../../../../core/result";
import {
  readClassLog,
  readEnrolled,
} from "../../../../renderer/state/class/class-log";
import { readSummaries } from "../../../../renderer/state/class/class-summaries";
import type { TurnwiseDatabase } from "../../../../renderer/storage/database";
import {
  learnerSettingsKey,
  saveLearner,
} from "../../../../renderer/storage/learners";
import { acknowledgeReview } from "../../../../renderer/storage/reviews";
import { sealReviews } from "../../../../renderer/storage/sealing";
import { saveSetting } from "../../../../renderer/storage/settings";
import { takeIn } from "../../../../renderer/storage/take-in";
import type { LogReader } from "../../../../renderer/workers/class-client";
import {
  answersBlock,
  named,
  withdrawnBlock,
} from "../../../core/sharing/sample-block";
import {
  forgetDatabases,
  openTestDatabase,
} from "../../storage/fresh-database";
import {
  sampleReview,
  sampleReviews,
  TUESDAY_NINE,
} from "../../storage/sample-review";

const ANN = "3d2f7f7e-1f8e-4b8a-9a34-6b1f3a1f9c55";
const BEN = "8a1c2b34-5d6e-4f70-8a9b-0c1d2e3f4a5b";
const CANCELLED = { code: "cancelled" } as const;
const TODAY = dayNumber(TUESDAY_NINE / 86_400_000);
const HERE = [
  { id: BEN, name: "Ben", createdAt: 1 },
  { id: ANN, name: "Ann", createdAt: 2 },
];

let database: TurnwiseDatabase;

beforeEach(async () => {
  await forgetDatabases();
  database = await openTestDatabase();
  for (const one of HERE) await saveLearner(database, one);
  for (const review of [
    ...sampleReviews(3, { learner: ANN }),
    ...sampleReviews(2, { learner: BEN, case: "C1" }),
  ])
    await acknowledgeReview(database, { review });
});

/** Reads the class without a worker; says whose logs were read. */
async function read(today = TODAY, learners = HERE) {
  const asked: number[] = [];
  const reader: LogReader = {
    summaryOf({ log, settings }) {
      asked.push(log.columns.days.length);
      return Promise.resolve(ok(memberSummary(unpacked(log), settings)));
    },
    end: () => undefined,
  };
  const enrolled = await readEnrolled(database, learners);
  if (!enrolled.ok) throw new Error(enrolled.error.code);
  const { signal } = new AbortController();
  const summaries = await readSummaries(database, enrolled.value, {
    today,
    signal,
    reader,
  });
  if (!summaries.ok) throw new Error(summaries.error.code);
  return { enrolled: enrolled.value, ...summaries.value, asked };
}

describe("a class's summaries", () => {
  it("are computed once, and then found without reading a log", async () => {
    const first = await read();
    expect(first.asked).toHaveLength(2);
    expect(first.summaries.get(ANN)).toMatchObject({ answers: 3 });
    const rows = { read: 0 };
    const count = (row: unknown) => {
      rows.read += 1;
      return row;
    };
    for (const table of [database.reviews, database.blocks])
      table.hook("reading", count);
    const again = await read();
    expect(rows.read).toBe(0);
    expect(again.asked).toEqual([]);
    expect(again.summaries).toEqual(first.summaries);
    await readClassLog(database, { id: ANN, isHere: true });
    expect(rows.read).toBe(3);
  });

  it("are those of the learner alone who has practised since", async () => {
    await read();
    await acknowledgeReview(database, {
      review: sampleReview({
        learner: BEN,
        at: (TUESDAY_NINE + 9000) as Milliseconds,
      }),
    });
    const { asked, summaries } = await read();
    expect(asked).toEqual([3]);
    expect(summaries.get(BEN)).toMatchObject({ answers: 3 });
  });

  it("are computed anew after an answer that is older than all others: logs merge", async () => {
    await read();
    await acknowledgeReview(database, {
      review: sampleReview({
        learner: BEN,
        at: (TUESDAY_NINE - 86_400_000) as Milliseconds,
      }),
    });
    expect((await read()).asked).toEqual([3]);
  });

  it("follow the learner's own weights and level", async () => {
    await read();
    await saveSetting(database, learnerSettingsKey(ANN), { level: 0.8 });
    expect((await read()).asked).toEqual([3]);
  });

  it("are not kept while answers of days to come wait in the log", async () => {
    await acknowledgeReview(database, {
      review: sampleReview({
        learner: BEN,
        at: (TUESDAY_NINE + 5 * 86_400_000) as Milliseconds,
        localDay: dayNumber(TODAY + 5),
      }),
    });
    expect((await read()).summaries.get(BEN)).toMatchObject({ answers: 2 });
    expect((await read()).asked).toEqual([2]);
    expect((await read(dayNumber(TODAY + 5))).summaries.get(BEN)).toMatchObject(
      { answers: 3 },
    );
  });

  it("hold after a log was sealed into blocks, computed once more", async () => {
    for (const review of sampleReviews(1300, { learner: ANN }))
      await database.reviews.put({ ...review });
    const { summaries } = await read();
    await sealReviews(database, ANN);
    const sealed = await read();
    expect(sealed.asked).toEqual([1303]);
    expect(sealed.summaries).toEqual(summaries);
    expect((await read()).asked).toEqual([]);
  });

  /** A reader that reads Ben's log, of two answers, as a test has it, and every other well. */
  const failingForBen = (answer: LogReader["summaryOf"]): LogReader => ({
    summaryOf: (request) =>
      request.log.columns.days.length === 2
        ? answer(request)
        : Promise.resolve(
            ok(memberSummary(unpacked(request.log), request.settings)),
          ),
    end: () => undefined,
  });

  it.each<[string, LogReader["summaryOf"]]>([
    [
      "a reader that fails",
      () => Promise.resolve(err({ code: "progress-failed", reason: "a bug" })),
    ],
    [
      "a reader that throws",
      () => {
        throw new Error("a bug");
      },
    ],
  ])("of the others stand where one log meets %s", async (_, answer) => {
    const enrolled = await readEnrolled(database, HERE);
    if (!enrolled.ok) throw new Error("not read");
    const outcome = await readSummaries(database, enrolled.value, {
      today: TODAY,
      signal: new AbortController().signal,
      reader: failingForBen(answer),
    });
    if (!outcome.ok) throw new Error(outcome.error.code);
    const { summaries, unreadable } = outcome.value;
    expect([...summaries.keys()]).toEqual([ANN]);
    expect([...unreadable.keys()]).toEqual([BEN]);
    expect(unreadable.get(BEN)).toMatchObject({
      code: "progress-failed",
      reason: expect.stringContaining("a bug") as string,
    });
    // Nothing of it was kept: the next look reads that log again.
    expect((await read()).asked).toEqual([2]);
  });

  it("of the others stand where the store fails for one", async () => {
    const spoil = (row: unknown) => {
      if ((row as { learner?: string } | undefined)?.learner === BEN)
        throw new Error("torn");
      return row;
    };
    database.reviews.hook("reading", spoil);
    const { summaries, unreadable } = await read();
    expect([...summaries.keys()]).toEqual([ANN]);
    expect(unreadable.get(BEN)?.code).toBe("not-read");
    database.reviews.hook("reading").unsubscribe(spoil);
    expect((await read()).unreadable.size).toBe(0);
  });

  it("are none where the store is gone, or nobody waits for them", async () => {
    const enrolled = await readEnrolled(database, HERE);
    if (!enrolled.ok) throw new Error("not read");
    const reader = failingForBen(() => Promise.resolve(err(CANCELLED)));
    const controller = new AbortController();
    const { signal } = controller;
    database.close();
    expect(
      await readSummaries(database, enrolled.value, {
        today: TODAY,
        signal,
        reader,
      }),
    ).toEqual(err({ code: "closed" }));
    controller.abort();
    expect(
      await readSummaries(database, enrolled.value, {
        today: TODAY,
        signal,
        reader,
      }),
    ).toEqual(err({ code: "cancelled" }));
  });
});

describe("those who shared their results", () => {
  const CAM = "5f0e6d7c-8b9a-4c1d-9e2f-3a4b5c6d7e8f";
  const shared = sampleReviews(4, { learner: CAM, case: "C2" });
  const fromCam = (number: number, reviews: readonly Review[]) =>
    takeIn(
      database,
      named(
        number,
        answersBlock(number, reviews, { learner: CAM, name: "Cam" }),
      ),
    );

  it("are in the class beside those of this machine, by name, and are read once", async () => {
    await fromCam(1, shared);
    const first = await read();
    expect(first.enrolled.map(({ name, isHere }) => [name, isHere])).toEqual([
      ["Ann", true],
      ["Ben", true],
      ["Cam", false],
    ]);
    expect(first.summaries.get(CAM)).toMatchObject({ answers: 4 });
    expect((await read()).asked).toEqual([]);
  });

  it("are read again when more of theirs has come, and they alone", async () => {
    await fromCam(1, shared.slice(0, 2));
    await read();
    await fromCam(2, shared);
    const { asked, summaries } = await read();
    expect(asked).toEqual([4]);
    expect(summaries.get(CAM)).toMatchObject({ answers: 4 });
  });

  it("are gone when they took everything back", async () => {
    await fromCam(1, shared);
    await read();
    await takeIn(database, named(2, withdrawnBlock(5, { learner: CAM })));
    expect((await read()).enrolled.map(({ name }) => name)).toEqual([
      "Ann",
      "Ben",
    ]);
  });

  it("are one with the learner of the same id here, each answer once", async () => {
    const own = sampleReviews(2, { learner: ANN, case: "C3" });
    for (const review of own) await acknowledgeReview(database, { review });
    const elsewhere = sampleReview({ learner: ANN, case: "C3" });
    await takeIn(
      database,
      named(3, answersBlock(3, [...own, elsewhere], { learner: ANN })),
    );
    const { enrolled, summaries } = await read();
    expect(enrolled.map(({ name }) => name)).toEqual(["Ann", "Ben"]);
    expect(summaries.get(ANN)).toMatchObject({ answers: 6 });
    const log = await readClassLog(database, { id: ANN, isHere: true });
    const answers = log.ok ? log.value : [];
    expect(new Set(answers.map(({ id }) => id)).size).toBe(answers.length);
    expect(answers.map(({ at }) => at)).toEqual(
      answers.map(({ at }) => at).toSorted((a, b) => a - b),
    );
  });

  it("say nothing of an answer that is in the log here, though they place it at another time", async () => {
    const own = sampleReview({ learner: ANN, case: "C3" });
    await acknowledgeReview(database, { review: own });
    const at = (own.at + 60_000) as Milliseconds;
    await takeIn(
      database,
      named(5, answersBlock(5, [{ ...own, at }], { learner: ANN })),
    );
    const log = await readClassLog(database, { id: ANN, isHere: true });
    const same = (log.ok ? log.value : []).filter(({ id }) => id === own.id);
    expect(same).toEqual([own]);
    expect((await read()).summaries.get(ANN)).toMatchObject({ answers: 4 });
  });

  it("are told apart from one of the same name", async () => {
    await takeIn(
      database,
      named(4, answersBlock(4, shared, { learner: CAM, name: "Ben" })),
    );
    const { enrolled } = await read();
    expect(enrolled.map(({ name }) => name)).toEqual(["Ann", "Ben", "Ben (2)"]);
  });

  it("are told apart from somebody who calls themselves by such a number", async () => {
    const DAN = CAM.replace(/.$/, "d");
    for (const [n, learner, name] of [
      [4, CAM, "Ben"],
      [5, DAN, "Ben (2)"],
    ] as const)
      await takeIn(
        database,
        named(n, answersBlock(4, shared, { learner, name })),
      );
    const { enrolled } = await read();
    expect(enrolled.map(({ name }) => name)).toEqual([
      "Ann",
      "Ben",
      "Ben (3)",
      "Ben (2)",
    ]);
  });

  it("say nothing else of an answer that the log here holds, nor say it twice", async () => {
    const here = await readClassLog(database, { id: ANN, isHere: true });
    const [own] = here.ok ? (here.value as readonly Review[]) : [];
    const lie = { ...own, at: TUESDAY_NINE + 77, verdict: "missed" } as Review;
    await takeIn(database, named(6, answersBlock(3, [lie], { learner: ANN })));
    const log = await readClassLog(database, { id: ANN, isHere: true });
    expect(log.ok && log.value.length).toBe(3);
    expect(
      log.ok && log.value.every(({ verdict }) => verdict === "right"),
    ).toBe(true);
  });
});
