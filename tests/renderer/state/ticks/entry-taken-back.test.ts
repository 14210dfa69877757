import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { dayAfter } from "../../../../core/memory/local-day";
import { mondayOf } from "../../../../core/paper/sheet-days";
import { ticksDeskFor } from "../../../../renderer/state/ticks/open-desks";
import { sampleReview } from "../../storage/sample-review";
import { beginEmpty } from "../open-window";
import { kept, lastWeek, logOf, room, sheetOf } from "./ticks-room";

beginEmpty();

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
