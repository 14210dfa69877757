import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { waysOf } from "../../../core/cases/case-table";
import { lineUpTurns } from "../../../core/cases/way-for-position";
import { inverseTurn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, practising, stored } from "./practising";

beginEmpty();

describe("practising", () => {
  it("ends an answer by itself when the case is answered, and stores it", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    const { phase } = practise;
    if (phase.kind !== "answered") throw new Error(phase.kind);
    const [review] = await stored(app);
    expect(phase.answered.acknowledged).toBe(review?.id);
    expect(review).toMatchObject({
      case: "E1",
      asking: "shown",
      verdict: "right",
      interrupted: false,
      total: 1000,
    });
  });

  it("counts a turn taken back as a correction", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    for (let n = 0; n < 2; n++) {
      await answer(practise);
      await practise.next();
    }
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    attempt.turn({ layer: "R", quarters: 1 }, 500);
    attempt.takeBack(3000);
    await answer(practise);
    expect((await stored(app)).at(-1)).toMatchObject({
      verdict: "right",
      corrections: 1,
    });
  });

  it("judges what was left undone as missed, and a retry is not stored", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    for (let n = 0; n < 2; n++) {
      await answer(practise);
      await practise.next();
    }
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    attempt.turn({ layer: "R", quarters: 1 }, 1000);
    attempt.done(2000);
    await practise.storeAgain();
    const count = (await stored(app)).length;
    expect((await stored(app)).at(-1)?.verdict).toBe("missed");
    practise.retry();
    await answer(practise);
    expect(await stored(app)).toHaveLength(count);
    practise.close();
  });

  it("keeps which case was taken for the one shown, and nothing where it was another mistake", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    const asked = attemptOf(practise);
    expect(asked.item.case).toBe("E1");
    const [way] = waysOf("E4a", asked.position.hold);
    asked.caseShown(0);
    const played = [
      ...lineUpTurns(asked.position),
      ...present(way, "E4a has a way").turns,
    ];
    played.forEach((turn, n) => asked.turn(turn, 1000 * (n + 1)));
    asked.done(9000);
    await practise.storeAgain();
    expect(await stored(app)).toMatchObject([
      { case: "E1", verdict: "missed", answeredAs: "E4a" },
    ]);

    await practise.next();
    const next = attemptOf(practise);
    next.caseShown(0);
    next.turn({ layer: "F", quarters: 1 }, 1000);
    next.turn({ layer: "B", quarters: 2 }, 2000);
    next.done(3000);
    await practise.storeAgain();
    const last = (await stored(app)).at(-1);
    expect(last?.verdict).toBe("missed");
    expect(last).not.toHaveProperty("answeredAs");
  });

  it("takes no answer in which no layer is turned, and records nothing of it", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    attempt.done(1000);
    expect(attempt.refusal).toBe("nothing-turned");
    attempt.turn({ layer: "y", quarters: 1 }, 2000);
    expect(attempt.refusal).toBeUndefined();
    attempt.done(3000);
    expect(attempt.refusal).toBe("nothing-turned");
    expect(attemptOf(practise)).toBe(attempt);
    expect(await stored(app)).toHaveLength(1);
    await practise.chooseWay("write-it");
    const written = attemptOf(practise);
    written.caseShown(0);
    written.done(1000);
    expect(written.refusal).toBe("nothing-turned");
    written.write("2F", 2000);
    expect(written.refusal).toBeUndefined();
    written.done(3000);
    expect(written.refusal).toBe("unreadable");
    expect(await stored(app)).toHaveLength(1);
    practise.close();
  });

  it("undoes a turn the learner takes back", async () => {
    const practise = await practising(await openWindow());
    const attempt = attemptOf(practise);
    const start = attempt.answer.cube;
    attempt.turn({ layer: "L", quarters: 3 }, 10);
    attempt.turn(inverseTurn({ layer: "L", quarters: 3 }), 20);
    expect(attempt.answer.cube).toEqual(start);
    practise.close();
  });
});
