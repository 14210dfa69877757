import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { memberSummary } from "../../../../core/class/member-summary";
import { FIRST_COURSE } from "../../../../core/deck/starter-decks";
import type { Deck } from "../../../../core/deck/deck";
import type { Learner } from "../../../../core/memory/learner";
import type { Milliseconds } from "../../../../core/memory/review";
import { dayNumber } from "../../../../core/memory/local-day";
import { unpacked } from "../../../../core/progress/packed-log";
import { ok } from "../../../../core/result";
import type { News } from "../../../../renderer/platform/other-windows";
import {
  ClassDesk,
  type ClassDeskApp,
} from "../../../../renderer/state/class/class-desk.svelte";
import type { TurnwiseDatabase } from "../../../../renderer/storage/database";
import {
  learnerSettingsKey,
  saveLearner,
} from "../../../../renderer/storage/learners";
import { acknowledgeReview } from "../../../../renderer/storage/reviews";
import { saveSetting } from "../../../../renderer/storage/settings";
import type { LogReader } from "../../../../renderer/workers/class-client";
import {
  forgetDatabases,
  openTestDatabase,
} from "../../storage/fresh-database";
import { sampleReview, TUESDAY_NINE } from "../../storage/sample-review";

const ANN = { id: "ann", name: "Ann", createdAt: 1 };
const BEN = { id: "ben", name: "Ben", createdAt: 2 };
const TODAY = dayNumber(TUESDAY_NINE / 86_400_000);

const CORNERS: Deck = {
  id: "corners",
  name: "Corners",
  description: "",
  cases: [{ case: "C5", target: 9 }],
  newPerRound: 2,
};

let database: TurnwiseDatabase;

beforeEach(async () => {
  await forgetDatabases();
  database = await openTestDatabase();
});

const reader = (): LogReader => ({
  summaryOf: ({ log, settings }) =>
    Promise.resolve(ok(memberSummary(unpacked(log), settings))),
  end: () => undefined,
});

function deskFor(
  learners: readonly Learner[],
  decks: readonly Deck[] = [],
  read = reader,
) {
  const app: ClassDeskApp = {
    learners,
    decks: { all: decks },
    current: { today: TODAY },
    database,
    isGuest: false,
  };
  return new ClassDesk(app, read);
}

/** The desk once it has read the class; it goes on listening until the test's end. */
async function read(desk: ClassDesk) {
  const deaf = desk.follow();
  await vi.waitUntil(() => desk.isRead);
  return deaf;
}

const names = ({ members }: ClassDesk) => members.map(({ name }) => name);

describe("the class on the desk", () => {
  it("takes what another window chose meanwhile, and adds its own choice", async () => {
    const [one, other] = [deskFor([ANN, BEN]), deskFor([ANN, BEN])];
    const deaf = [await read(one), await read(other)];
    await other.setIn("ann", false);
    await one.setIn("ben", false);
    const third = deskFor([ANN, BEN]);
    deaf.push(await read(third));
    expect(names(third)).toEqual([]);
    await third.setIn("ann", true);
    expect(names(third)).toEqual(["Ann"]);
    for (const stop of deaf) stop();
  });

  it.each<News>([
    { changed: "learners" },
    { changed: "decks" },
    { changed: "learner", id: "ben" },
  ])("reads again when another window says $changed", async (news) => {
    const learners: Learner[] = [ANN];
    const desk = deskFor(learners);
    const deaf = await read(desk);
    expect(names(desk)).toEqual(["Ann"]);
    learners.push(BEN);
    const window = new BroadcastChannel("turnwise");
    window.postMessage(news);
    await vi.waitUntil(() => names(desk).length === 2);
    window.close();
    deaf();
  });

  it("tells the other windows who is in it", async () => {
    const heard: unknown[] = [];
    const window = new BroadcastChannel("turnwise");
    window.onmessage = ({ data }) => heard.push(data);
    await deskFor([ANN]).setIn("ann", false);
    await vi.waitUntil(() => heard.length > 0);
    expect(heard).toEqual([{ changed: "learner", id: "ann" }]);
    window.close();
  });

  it("names somebody whose answers cannot be read, until they are left out, and shows the others", async () => {
    for (const learner of [ANN, BEN]) await saveLearner(database, learner);
    for (const learner of ["ann", "ben", "ben"])
      await acknowledgeReview(database, {
        review: sampleReview({ learner, localDay: TODAY }),
      });
    const failing = (): LogReader => ({
      ...reader(),
      summaryOf: (request) =>
        request.log.columns.days.length === 2
          ? Promise.reject(new Error("torn"))
          : reader().summaryOf(request),
    });
    const desk = deskFor([ANN, BEN], [], failing);
    const deaf = await read(desk);
    expect(desk.trouble).toBeUndefined();
    expect(names(desk)).toEqual(["Ann"]);
    expect(desk.unreadable).toEqual([
      {
        name: "Ben",
        error: { code: "progress-failed", reason: "Error: torn" },
      },
    ]);
    await desk.setIn("ben", false);
    expect(desk.unreadable).toEqual([]);
    deaf();
  });

  it("goes by the decks of those who are in it, and not of those left out", async () => {
    await saveSetting(database, learnerSettingsKey("ben"), {
      decks: ["corners"],
    });
    await acknowledgeReview(database, {
      review: sampleReview({ learner: "ann", case: "E1", localDay: TODAY }),
    });
    const desk = deskFor([ANN, BEN], [CORNERS]);
    const deaf = await read(desk);
    const isOrdered = () => desk.ordered.map((one) => one.case);
    expect(isOrdered()).toContain("C5");
    await desk.setIn("ann", false);
    expect(isOrdered()).toEqual(["C5"]);
    await desk.setIn("ann", true);
    await desk.setIn("ben", false);
    const first = FIRST_COURSE.flatMap(({ cases }) => cases);
    expect(isOrdered()).toEqual([
      ...new Set([...first.map((one) => one.case), "C5"]),
    ]);
    deaf();
  });

  it("keeps the lesson as its coach changed it while the window is open, and says what was proposed", async () => {
    await saveLearner(database, ANN);
    for (const id of ["E1", "E3"] as const)
      for (const days of [4, 2]) {
        const stored = await acknowledgeReview(database, {
          review: sampleReview({
            learner: "ann",
            case: id,
            verdict: "missed",
            at: (TUESDAY_NINE - days * 86_400_000) as Milliseconds,
          }),
        });
        expect(stored.ok).toBe(true);
      }
    const app: ClassDeskApp = {
      learners: [ANN],
      decks: { all: [CORNERS] },
      current: { today: TODAY },
      database,
      isGuest: false,
    };
    const idsOf = ({ cases }: ClassDesk["lesson"]) =>
      cases.map((one) => one.case);
    const desk = new ClassDesk(app, reader);
    const deaf = await read(desk);
    expect(idsOf(desk.lesson)).toEqual(["E1", "E3"]);
    desk.takeOut("E3");
    expect(desk.candidates[0]).toMatchObject({ case: "E3" });
    desk.putIn("E2a");
    expect(idsOf(desk.lesson)).toEqual(["E1", "E2a"]);
    expect(idsOf(desk.proposed)).toEqual(["E1", "E3"]);
    // A look at other cases has a lesson of its own; this one is there again after it.
    desk.filter = { kind: "deck", deck: "corners" };
    expect(desk.isLessonChanged).toBe(false);
    deaf();
    const again = new ClassDesk(app, reader);
    const stop = await read(again);
    expect(idsOf(again.lesson)).toEqual(["E1", "E2a"]);
    expect(again.isLessonChanged).toBe(true);
    again.propose();
    expect(idsOf(again.lesson)).toEqual(["E1", "E3"]);
    again.takeOut("E1");
    again.putIn("E1");
    expect(again.isLessonChanged).toBe(false);
    stop();
  });
});
