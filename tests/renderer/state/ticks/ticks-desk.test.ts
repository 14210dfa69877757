import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import type { Learner } from "../../../../core/memory/learner";
import { dayAfter, localDay } from "../../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../../core/memory/review";
import type { KeptSheet } from "../../../../core/paper/kept-sheet";
import { mondayOf } from "../../../../core/paper/sheet-days";
import { type CodedSheet, sheetCode } from "../../../../core/paper/sheet-code";
import { now } from "../../../../renderer/platform/clock";
import {
  type AppState,
  openApp,
} from "../../../../renderer/state/app-state.svelte";
import { formatPosition } from "../../../../renderer/state/practise/position-of-item";
import { ticksDeskFor } from "../../../../renderer/state/ticks/open-desks";
import { TicksDesk } from "../../../../renderer/state/ticks/ticks-desk.svelte";
import {
  readClassLog,
  readEnrolled,
} from "../../../../renderer/state/class/class-log";
import { readLog } from "../../../../renderer/storage/reviews";
import { takeIn } from "../../../../renderer/storage/take-in";
import { answersBlock, named } from "../../../core/sharing/sample-block";
import { forgetDatabases } from "../../storage/fresh-database";
import { sampleReview } from "../../storage/sample-review";
import { windowLocks } from "../../storage/window-locks";

const DECK = present(STARTER_DECKS[1], "there are starter decks");

function sheetOf(kind: CodedSheet["kind"], number = 48213): KeptSheet {
  const coded: CodedSheet = {
    kind,
    cases: DECK.cases.slice(0, 4).map(({ case: id, target }) => ({
      case: id,
      target,
    })),
    hold: "up",
    number,
    count: 6,
    opening: "anywhere",
  };
  return {
    ...coded,
    code: sheetCode(coded),
    deck: DECK.id,
    deckName: DECK.name,
    printedAt: now(),
  };
}

interface Room {
  readonly app: AppState;
  readonly ann: Learner;
  readonly ben: Learner;
}

/** A machine with two learners; the second is at the desk. */
async function room(): Promise<Room> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  const app = opened.value;
  expect((await app.addLearner("Ben")).ok).toBe(true);
  const [ann, ben] = app.learners;
  return {
    app,
    ann: present(ann, "the first"),
    ben: present(ben, "the one added"),
  };
}

/** A desk for last week's sheet, whose days have all come. */
async function lastWeek(app: AppState, kind: CodedSheet["kind"] = "cases") {
  const desk = new TicksDesk(app, sheetOf(kind));
  const day = dayAfter(mondayOf(app.current.today), -7);
  await desk.setFirstDay(day);
  return desk;
}

async function logOf({ app }: Room, { id }: Learner) {
  const log = await readLog(app.database, id);
  if (!log.ok) throw new Error(log.error.code);
  return log.value.reviews;
}

async function kept(desk: TicksDesk): Promise<number> {
  const done = await desk.keep();
  if (!done.ok) throw new Error(done.error.code);
  return done.value;
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("a case sheet", () => {
  it("becomes answers on paper in the last minute of their days, with the cases shown on it", async () => {
    const here = await room();
    const desk = await lastWeek(here.app);
    await desk.choose(here.ann);
    desk.tick(0, 0, "right");
    desk.tick(2, 3, "missed");
    expect(await logOf(here, here.ann)).toEqual([]);
    expect(await kept(desk)).toBe(2);
    const [first, second] = await logOf(here, here.ann);
    const row = present(desk.rows[2], "a sheet of four");
    expect(second).toMatchObject({
      learner: here.ann.id,
      case: DECK.cases[2]?.case,
      position: formatPosition(row.position),
      variant: row.position.variant,
      answerWay: "on-paper",
      asking: "alone",
      verdict: "missed",
      localDay: desk.firstDay + 3,
      total: 0,
      untimed: true,
      reported: true,
      deck: DECK.id,
      target: DECK.cases[2]?.target,
    });
    const { at, utcOffset } = present(first, "two");
    expect(localDay(at, utcOffset)).toBe(desk.firstDay);
    expect(localDay(at + 60_000, utcOffset)).toBe(desk.firstDay + 1);
    expect(first?.localDay).toBe(desk.firstDay);
    expect(first?.verdict).toBe("right");
    expect(first?.id).toMatch(
      /^[\da-f]{8}-[\da-f]{4}-8[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/,
    );
  });

  it("entered twice is entered once, and shows what is in", async () => {
    const here = await room();
    const desk = await lastWeek(here.app);
    await desk.choose(here.ann);
    desk.tick(0, 0, "right");
    await kept(desk);
    expect(desk.known(0, 0)?.verdict).toBe("right");
    expect(desk.canTick(0, 0)).toBe(false);
    const before = await logOf(here, here.ann);
    // Another window, another day: nothing of this desk is known there.
    const other = await lastWeek(here.app);
    await other.choose(here.ann);
    expect(other.known(0, 0)?.id).toBe(before[0]?.id);
    other.tick(0, 0, "missed");
    expect(other.hasUnkept).toBe(false);
    other.tick(0, 1, "right");
    expect(await kept(other)).toBe(1);
    expect(await logOf(here, here.ann)).toHaveLength(2);
    // Whoever opens the sheet again sees whose is in.
    const later = await lastWeek(here.app);
    expect(later.stateOf(here.ann.id)).toBe("in");
    expect(later.stateOf(here.ben.id)).toBe("waiting");
    await later.setFirstDay(dayAfter(later.firstDay, -7));
    expect(later.stateOf(here.ann.id)).toBe("waiting");
    // The same sheet handed out for another week is new.
    await other.setFirstDay(dayAfter(other.firstDay, -7));
    expect(other.known(0, 0)).toBeUndefined();
    other.tick(0, 0, "missed");
    expect(await kept(other)).toBe(1);
  });

  it("with nothing in it is not taken to be in", async () => {
    const { app, ann } = await room();
    const desk = await lastWeek(app);
    await desk.choose(ann);
    expect(await kept(desk)).toBe(0);
    expect(desk.stateOf(ann.id)).toBe("waiting");
    expect(desk.keptOf(ann.id)).toBeUndefined();
  });

  it("has boxes only for days that have come", async () => {
    const { app, ann } = await room();
    const desk = new TicksDesk(app, sheetOf("cases"));
    const monday = mondayOf(app.current.today);
    await desk.setFirstDay(monday);
    await desk.choose(ann);
    for (let n = 0; n < 7; n++) {
      desk.tick(0, n, "right");
      const has = desk.typed(0).ticks[n] !== undefined;
      expect(has).toBe(monday + n <= app.current.today);
    }
    // A week typed in one step too early is not kept as days to come.
    const answers = desk.answers();
    await desk.setFirstDay(dayAfter(monday, 7));
    expect(answers.ok && answers.value.length).toBeGreaterThan(0);
    expect(desk.answers()).toEqual({ ok: true, value: [] });
  });

  it("of the learner at the desk plans their days anew at once", async () => {
    const { app, ben } = await room();
    const desk = await lastWeek(app);
    const id = present(DECK.cases[0], "it has cases").case;
    await desk.choose(ben);
    expect(app.current.memoryOf(id, "up")).toBeUndefined();
    desk.tick(0, 1, "right");
    await kept(desk);
    expect(app.current.memoryOf(id, "up")?.lastDay).toBe(desk.firstDay + 1);
    await desk.takeBack(ben);
    expect(app.current.memoryOf(id, "up")).toBeUndefined();
  });

  it("entered for the Monday before a Tuesday's answer counts both days, each once, whichever came first", async () => {
    const { app, ben } = await room();
    const desk = await lastWeek(app);
    const id = present(DECK.cases[0], "it has cases").case;
    const tuesday: Review = sampleReview({
      learner: ben.id,
      case: id,
      at: ((desk.firstDay + 1) * 86_400_000 + 15 * 3_600_000) as Milliseconds,
      localDay: dayAfter(desk.firstDay, 1),
    });
    expect((await app.current.acknowledge({ review: tuesday })).ok).toBe(true);
    await desk.choose(ben);
    desk.tick(0, 0, "missed");
    desk.tick(0, 1, "right");
    expect(await kept(desk)).toBe(2);
    const graded = app.current.answersTo(id, "up");
    expect(graded.map(({ recall }) => recall !== undefined)).toEqual([
      true,
      true,
      false,
    ]);
    expect(graded[0]?.recall).toBe("missed");
    expect(app.current.memoryOf(id, "up")?.days).toBe(2);
  });
});

describe("a box and a measured answer of one day", () => {
  it("leave the day and the usual times to the measured one", async () => {
    const { app, ben } = await room();
    const desk = await lastWeek(app);
    const id = present(DECK.cases[0], "it has cases").case;
    // At three in the afternoon of each day, the fourth one missed.
    for (let day = 0; day < 5; day += 1) {
      const review = sampleReview({
        learner: ben.id,
        case: id,
        at: ((desk.firstDay + day) * 86_400_000 +
          15 * 3_600_000) as Milliseconds,
        localDay: dayAfter(desk.firstDay, day),
        verdict: day === 3 ? "missed" : "right",
      });
      expect((await app.current.acknowledge({ review })).ok).toBe(true);
    }
    const usualNow = () =>
      app.current.usualFor(sampleReview({ case: id, learner: ben.id }));
    const usual = usualNow();
    expect(usual).toBeGreaterThan(0);
    const told = () =>
      app.current
        .answersTo(id, "up")
        .flatMap(({ recall, review }) =>
          recall === undefined ? [] : [[review.answerWay, recall]],
        );
    const before = told();
    expect(before).toHaveLength(5);
    await desk.choose(ben);
    for (let day = 0; day < 5; day += 1) desk.tick(0, day, "right");
    expect(await kept(desk)).toBe(5);
    expect(told()).toEqual(before);
    expect(usualNow()).toBe(usual);
  });
});

describe("a practice sheet", () => {
  it("keeps its positions as they were drawn, with times, and tries after the first asked again", async () => {
    const here = await room();
    const desk = await lastWeek(here.app, "practice");
    await desk.choose(here.ann);
    desk.writeTime(1, 0, "4,5");
    desk.tick(4, 0, "missed");
    desk.writeTime(4, 2, "9");
    expect(desk.typed(1).ticks).toEqual(["right"]);
    expect(await kept(desk)).toBe(3);
    const log = await logOf(here, here.ann);
    expect(
      log.map(({ asking, verdict, total, untimed }) => [
        asking,
        verdict,
        total,
        untimed,
      ]),
    ).toEqual([
      ["alone", "right", 4500, undefined],
      ["alone", "missed", 0, true],
      ["again", "right", 9000, undefined],
    ]);
    expect(log.map(({ position }) => position)).toEqual(
      [1, 4, 4].map((row) =>
        formatPosition(present(desk.rows[row], "six").position),
      ),
    );
    // Drawn again from the number, by another desk.
    expect(
      (await lastWeek(here.app, "practice")).rows.map(({ position }) =>
        formatPosition(position),
      ),
    ).toEqual(desk.rows.map(({ position }) => formatPosition(position)));
  });

  it("with a time that is none keeps nothing, and says where", async () => {
    const here = await room();
    const desk = await lastWeek(here.app, "practice");
    await desk.choose(here.ann);
    desk.tick(0, 0, "right");
    desk.writeTime(3, 1, "junk\n\t=1+1");
    expect(await desk.keep()).toEqual({
      ok: false,
      error: { code: "not-a-time", time: 1, row: 3 },
    });
    desk.writeTime(3, 1, "11:00");
    expect(await desk.keep()).toEqual({
      ok: false,
      error: { code: "too-long", time: 1, row: 3 },
    });
    expect(await logOf(here, here.ann)).toEqual([]);
    expect(desk.stateOf(here.ann.id)).toBe("begun");
  });
});

describe("somebody who is known only by results they shared", () => {
  const CAM = "0b6f4c1e-8a3d-4f5e-9b7a-2c1d0e9f8a7b";

  async function roomWithCam(name = "Cam") {
    const here = await room();
    const { database } = here.app;
    const answers = [sampleReview({ learner: CAM })];
    await takeIn(
      database,
      named(1, answersBlock(1, answers, { learner: CAM, name })),
    );
    const desk = await lastWeek(here.app);
    expect((await desk.readChildren()).ok).toBe(true);
    const cam = present(
      desk.children.find(({ id }) => id === CAM),
      "who shared results is offered",
    );
    return { here, desk, cam };
  }

  it("becomes a learner of this machine under the same id when ticks are kept, and not before", async () => {
    const { here, desk, cam } = await roomWithCam();
    const { app } = here;
    expect(desk.children.map(({ name }) => name)).toEqual([
      ...app.learners.map(({ name }) => name),
      "Cam",
    ]);
    expect((await desk.choose(cam)).ok).toBe(true);
    expect(desk.isNewHere(CAM)).toBe(true);
    desk.tick(0, 0, "right");
    expect(app.learners.map(({ id }) => id)).not.toContain(CAM);
    expect(await app.database.learners.get(CAM)).toBeUndefined();
    expect(await kept(desk)).toBe(1);
    expect(app.learners.find(({ id }) => id === CAM)?.name).toBe("Cam");
    expect(app.current.learner.id).toBe(here.ben.id);
    expect(desk.isNewHere(CAM)).toBe(false);
    expect(desk.children.filter(({ id }) => id === CAM)).toHaveLength(1);
    expect(await logOf(here, cam)).toHaveLength(1);
    const enrolled = await readEnrolled(app.database, app.learners);
    const ofCam = enrolled.ok
      ? enrolled.value.filter(({ id }) => id === CAM)
      : [];
    expect(ofCam).toMatchObject([{ name: "Cam", isHere: true }]);
    const all = await readClassLog(app.database, { id: CAM, isHere: true });
    expect(all.ok && all.value).toHaveLength(2);
  });

  it("is no learner again when the entry that made them one is taken back, and keeps what they shared", async () => {
    const { here, desk, cam } = await roomWithCam();
    await desk.choose(cam);
    desk.tick(0, 0, "right");
    await kept(desk);
    expect((await desk.takeBack(cam)).ok).toBe(true);
    expect(here.app.learners.map(({ id }) => id)).not.toContain(CAM);
    expect(await logOf(here, cam)).toEqual([]);
    const heard = await readClassLog(here.app.database, {
      id: CAM,
      isHere: false,
    });
    expect(heard.ok && heard.value).toHaveLength(1);
    expect(desk.typed(0).ticks[0]).toBe("right");
    expect(await kept(desk)).toBe(1);
  });

  it("stays a learner where they have done something here since", async () => {
    const { here, desk, cam } = await roomWithCam();
    const { app } = here;
    await desk.choose(cam);
    desk.tick(0, 0, "right");
    await kept(desk);
    await app.switchTo(CAM);
    await app.current.acknowledge({ review: sampleReview({ learner: CAM }) });
    await desk.takeBack(cam);
    expect(app.learners.map(({ id }) => id)).toContain(CAM);
    expect(await logOf(here, cam)).toHaveLength(1);
  });

  it("is told apart from a learner of the same name, and becomes one under their own", async () => {
    const { here, desk, cam } = await roomWithCam("Ben");
    expect(
      desk.children.map(({ name }) => name).filter((name) => /^Ben/.test(name)),
    ).toHaveLength(2);
    expect(new Set(desk.children.map(({ name }) => name)).size).toBe(3);
    await desk.choose(cam);
    desk.tick(0, 0, "right");
    await kept(desk);
    expect(here.app.learners.find(({ id }) => id === CAM)?.name).toBe("Ben");
  });
});

describe("two weeks of one sheet", () => {
  it("are taken back each by itself, into the boxes of its own week", async () => {
    const here = await room();
    const { ann } = here;
    const desk = await lastWeek(here.app);
    const second = desk.firstDay;
    const first = dayAfter(second, -7);
    await desk.setFirstDay(first);
    await desk.choose(ann);
    desk.tick(0, 0, "right");
    expect(await kept(desk)).toBe(1);
    await desk.setFirstDay(second);
    expect(desk.stateOf(ann.id)).toBe("waiting");
    desk.tick(1, 2, "missed");
    expect(await kept(desk)).toBe(1);
    expect(desk.keptOf(ann.id)).toBe(1);
    expect((await desk.takeBack(ann)).ok).toBe(true);
    expect((await logOf(here, ann)).map((one) => one.localDay)).toEqual([
      first,
    ]);
    expect(desk.typed(0).ticks[0]).toBeUndefined();
    expect(desk.typed(1).ticks[2]).toBe("missed");
    // The other week is in the log: what was just taken back does not mix with it.
    await desk.setFirstDay(first);
    expect(desk.typed(1).ticks[2]).toBeUndefined();
    expect(desk.stateOf(ann.id)).toBe("in");
    expect(desk.unkeptDay).toBe(second);
    await desk.takeBack(ann);
    expect(desk.typed(0).ticks[0]).toBe("right");
    expect(desk.typed(1).ticks[2]).toBeUndefined();
    expect(await kept(desk)).toBe(1);
    await desk.setFirstDay(second);
    expect(await kept(desk)).toBe(1);
    expect(
      (await logOf(here, ann)).map(({ localDay, verdict }) => [
        localDay - first,
        verdict,
      ]),
    ).toEqual([
      [0, "right"],
      [9, "missed"],
    ]);
    expect(desk.unkeptDay).toBeUndefined();
    expect(desk.hasUnkept).toBe(false);
  });

  it("keep what was typed for another child in its own week; the open sheet goes along", async () => {
    const { app, ann, ben } = await room();
    const desk = await lastWeek(app);
    const second = desk.firstDay;
    await desk.choose(ann);
    desk.tick(0, 0, "right");
    await desk.choose(ben);
    desk.tick(0, 1, "right");
    await desk.setFirstDay(dayAfter(second, -7));
    expect(desk.typed(0).ticks[1]).toBe("right");
    await desk.choose(ann);
    expect(desk.typed(0).ticks[0]).toBeUndefined();
    expect(desk.unkeptDay).toBe(second);
    expect(desk.hasUnkept).toBe(true);
  });
});

describe("an entry under the wrong name", () => {
  it("is taken back whole and stands in the boxes again, for whoever it belongs to", async () => {
    const here = await room();
    const { ann, ben } = here;
    const desk = await lastWeek(here.app);
    await desk.choose(ann);
    desk.tick(0, 0, "right");
    await kept(desk);
    desk.tick(1, 6, "missed");
    expect(desk.stateOf(ann.id)).toBe("begun");
    await kept(desk);
    expect(desk.stateOf(ann.id)).toBe("in");
    expect(desk.keptOf(ann.id)).toBe(2);
    expect((await desk.takeBack(ann)).ok).toBe(true);
    expect(await logOf(here, ann)).toEqual([]);
    expect(desk.stateOf(ann.id)).toBe("begun");
    expect(desk.typed(0).ticks[0]).toBe("right");
    expect(desk.typed(1).ticks[6]).toBe("missed");
    desk.carry();
    expect(desk.child).toBeUndefined();
    expect(desk.stateOf(ann.id)).toBe("waiting");
    await desk.choose(ben);
    expect(desk.isCarrying).toBe(false);
    expect(await kept(desk)).toBe(2);
    expect(await logOf(here, ann)).toEqual([]);
    expect((await logOf(here, ben)).map(({ verdict }) => verdict)).toEqual([
      "right",
      "missed",
    ]);
  });

  it("leaves everything else of the log", async () => {
    const here = await room();
    const desk = await lastWeek(here.app);
    const own = sampleReview({ learner: here.ben.id });
    await here.app.current.acknowledge({ review: own });
    await desk.choose(here.ben);
    desk.tick(0, 0, "right");
    await kept(desk);
    await desk.takeBack(here.ben);
    expect(await logOf(here, here.ben)).toEqual([own]);
    expect(here.app.current.reviews).toEqual([own]);
  });

  it("is kept apart for each child until it is stored, and is not lost to a look at another", async () => {
    const { app, ann, ben } = await room();
    const desk = ticksDeskFor(app, sheetOf("cases"));
    await desk.setFirstDay(dayAfter(mondayOf(app.current.today), -7));
    await desk.choose(ann);
    desk.tick(0, 0, "right");
    await desk.choose(ben);
    expect(desk.typed(0).ticks[0]).toBeUndefined();
    expect(desk.hasUnkept).toBe(true);
    expect(ticksDeskFor(app, sheetOf("cases"))).toBe(desk);
    expect(ticksDeskFor(app, sheetOf("cases", 7))).not.toBe(desk);
    await desk.choose(ann);
    expect(desk.typed(0).ticks[0]).toBe("right");
    desk.clear();
    expect(desk.hasUnkept).toBe(false);
  });

  it("of a learner who was deleted meanwhile is refused", async () => {
    const { app, ann } = await room();
    const desk = await lastWeek(app);
    await desk.choose(ann);
    desk.tick(0, 0, "right");
    await app.database.learners.delete(ann.id);
    expect(await desk.keep()).toEqual({
      ok: false,
      error: { code: "learner-gone" },
    });
  });
});
