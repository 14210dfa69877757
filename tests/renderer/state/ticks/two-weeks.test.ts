import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { dayAfter } from "../../../../core/memory/local-day";
import { beginEmpty } from "../open-window";
import { kept, lastWeek, logOf, room } from "./ticks-room";

beginEmpty();

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
