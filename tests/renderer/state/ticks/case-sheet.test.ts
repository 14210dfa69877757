import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { present } from "../../../../core/invariant";
import { dayAfter, localDay } from "../../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../../core/memory/review";
import { mondayOf } from "../../../../core/paper/sheet-days";
import { formatPosition } from "../../../../renderer/state/practise/position-of-item";
import { TicksDesk } from "../../../../renderer/state/ticks/ticks-desk.svelte";
import { sampleReview } from "../../storage/sample-review";
import { beginEmpty } from "../open-window";
import { DECK, kept, lastWeek, logOf, room, sheetOf } from "./ticks-room";

beginEmpty();

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
