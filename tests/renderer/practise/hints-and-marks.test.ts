import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, practising, stored } from "./practising";

beginEmpty();

describe("practising", () => {
  it("keeps the help that was asked for through another way of answering and a reload", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    for (let n = 0; n < 2; n++) {
      await answer(practise);
      await practise.next();
    }
    attemptOf(practise).caseShown(0);
    attemptOf(practise).hint(100);
    await practise.chooseWay("write-it");
    expect(attemptOf(practise).hints).toEqual(["piece"]);
    attemptOf(practise).caseShown(0);
    attemptOf(practise).hint(200);
    await practise.chooseWay("on-screen");
    practise.close();
    const again = await practising(await openWindow());
    expect(attemptOf(again).hints).toEqual(["piece", "home"]);
    await answer(again);
    expect((await stored(app)).at(-1)).toMatchObject({
      verdict: "right",
      hints: ["piece", "home"],
    });
    // Nobody is helped from the start who tries the case once more.
    again.retry();
    expect(attemptOf(again).hints).toEqual([]);
  });

  it("leaves finding the piece to those who want no marks, but for what is shown", async () => {
    const app = await openWindow();
    await app.current.changeSettings({ marks: false });
    const practise = await practising(app);
    expect(attemptOf(practise).isMarked).toBe(true);
    await answer(practise);
    await practise.next();
    expect(attemptOf(practise).item.asking).toBe("helped");
    expect(attemptOf(practise).isMarked).toBe(false);
    practise.close();
  });

  it("gives three hints and no more: the whole way is asked for by itself", async () => {
    const practise = await practising(await openWindow());
    await answer(practise);
    await practise.next();
    const attempt = attemptOf(practise);
    for (let n = 0; n < 5; n++) attempt.hint(1000 * n);
    expect(attempt.hints).toEqual(["piece", "home", "first-turn"]);
    expect(attempt.isHintedOut).toBe(true);
    attempt.showMe(9000);
    expect(practise.phase.kind).toBe("answered");
    practise.close();
  });
});
