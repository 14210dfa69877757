import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { present } from "../../../../core/invariant";
import { formatPosition } from "../../../../renderer/state/practise/position-of-item";
import { beginEmpty } from "../open-window";
import { kept, lastWeek, logOf, room } from "./ticks-room";

beginEmpty();

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
