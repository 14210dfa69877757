import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { present } from "../../../../core/invariant";
import {
  readClassLog,
  readEnrolled,
} from "../../../../renderer/state/class/class-log";
import { takeIn } from "../../../../renderer/storage/take-in";
import { answersBlock, named } from "../../../core/sharing/sample-block";
import { sampleReview } from "../../storage/sample-review";
import { beginEmpty } from "../open-window";
import { kept, lastWeek, logOf, room } from "./ticks-room";

beginEmpty();

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
