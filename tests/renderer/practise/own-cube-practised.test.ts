import "fake-indexeddb/auto";
import { describe, expect, it, vi } from "vitest";
import { present } from "../../../core/invariant";
import { cubeThatHas } from "../../../renderer/state/practise/own-cube";
import { beginEmpty, openWindow } from "../state/open-window";
import { myCubeOf, practising, stored } from "./practising";

beginEmpty();

describe("practising", () => {
  it("sets a cube in the hands up, and stores what the learner reports", async () => {
    const app = await openWindow();
    await app.current.changeSettings({ answerWay: "my-cube" });
    const practise = await practising(app);
    const attempt = myCubeOf(practise);
    expect(attempt.stage.kind).toBe("has");
    attempt.say(cubeThatHas("cross"));
    await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
    const { stage } = attempt;
    if (stage.kind !== "set-up") throw new Error(stage.kind);
    stage.walk.turns.forEach((_, n) => attempt.turnMade(n));
    // A new case is then walked through.
    const shown = present(
      attempt.stage.kind === "shown" ? attempt.stage : undefined,
      "the way is shown",
    );
    shown.walk.turns.forEach((_, n) => attempt.turnMade(1000 + n));
    await practise.storeAgain();
    const [review] = await stored(app);
    expect(review).toMatchObject({
      answerWay: "my-cube",
      reported: true,
      verdict: "right",
      turns: [],
    });
    // Unknown pieces are written as such.
    expect(review?.position).toContain("?");
  });

  it("forgets what it knew of the learner's cube when that gets other colours, also in what is stored", async () => {
    const app = await openWindow();
    await app.current.changeSettings({ answerWay: "my-cube" });
    const practise = await practising(app);
    const attempt = myCubeOf(practise);
    attempt.say(cubeThatHas("cross"));
    await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
    // The first layer is another colour's now: that cross need not be done.
    await app.current.changeSettings({ firstColour: "green" });
    practise.followColours(app.current.scheme);
    expect(attempt.stage.kind).toBe("has");
    attempt.say(cubeThatHas("first-layer"));
    await vi.waitFor(() => expect(attempt.stage.kind).toBe("set-up"));
    await practise.storeAgain();
    practise.close();
    await vi.waitFor(async () => {
      const again = await practising(await openWindow());
      expect(myCubeOf(again).stage.kind).toBe("set-up");
      again.close();
    });
    await app.current.changeSettings({ firstColour: "red" });
    const other = await practising(await openWindow());
    expect(myCubeOf(other).stage.kind).toBe("has");
  });
});
