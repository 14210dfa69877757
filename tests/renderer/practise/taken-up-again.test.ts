import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, practising, stored } from "./practising";

beginEmpty();

describe("practising", () => {
  it("takes up the same position after the window was closed, and says so in the log", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const before = attemptOf(practise);
    practise.close();
    const again = await practising(await openWindow());
    const after = attemptOf(again);
    expect(after.item.asking).toBe("helped");
    expect(after.position).toEqual(before.position);
    await answer(again);
    expect(await stored(app)).toHaveLength(2);
    expect((await stored(app)).at(-1)?.interrupted).toBe(true);
  });

  it("counts an answer as interrupted whose way was changed after the case was shown, at once and for good", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const before = attemptOf(practise);
    await practise.chooseWay("write-it");
    const after = attemptOf(practise);
    expect(after.answerWay).toBe("write-it");
    expect(after.position).toEqual(before.position);
    expect(after.item.interrupted).toBe(true);
    practise.close();
    const reopened = await practising(await openWindow());
    expect(attemptOf(reopened).item).toEqual(after.item);
  });
});
