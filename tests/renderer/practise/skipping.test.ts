import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { present } from "../../../core/invariant";
import {
  marksThatFit,
  roundRow,
} from "../../../renderer/state/practise/round-words";
import { beginEmpty, openWindow } from "../state/open-window";
import { answer, attemptOf, practising, stored } from "./practising";

beginEmpty();

describe("practising", () => {
  it("leaves a skipped case without a review", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await practise.skip();
    expect(attemptOf(practise).item.asking).toBe("helped");
    expect(await stored(app)).toEqual([]);
    const row = roundRow(
      present(practise.round, "a round is under way"),
      "current",
    );
    expect(row.marks.slice(0, 2)).toEqual(["skipped", "current"]);
    expect(marksThatFit(row.marks, 5)).toContain("current");
  });

  it("counts a skip as missed once a turn that commits was made", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const attempt = attemptOf(practise);
    expect(attempt.item.asking).toBe("helped");
    attempt.caseShown(0);
    attempt.turn({ layer: "R", quarters: 1 }, 500);
    await practise.skip(900);
    await practise.storeAgain();
    expect((await stored(app)).at(-1)).toMatchObject({
      asking: "helped",
      verdict: "missed",
      total: 900,
    });
    expect(practise.phase.kind).toBe("answered");
  });

  it("counts a skip as missed once help was asked for", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    attemptOf(practise).hint(400);
    await practise.skip(900);
    await practise.storeAgain();
    expect((await stored(app)).at(-1)).toMatchObject({
      verdict: "missed",
      hints: ["piece"],
    });
  });

  it("passes a question over that was only looked at and lined up", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    attempt.looking.from("underneath", 200);
    attempt.turn({ layer: "y", quarters: 1 }, 400);
    attempt.turn({ layer: "D", quarters: 1 }, 600);
    await practise.skip(900);
    expect(practise.round?.results.at(-1)?.outcome).toBe("skipped");
    expect(await stored(app)).toHaveLength(1);
  });

  it("counts a skip as missed in writing too, whatever is written", async () => {
    const app = await openWindow();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    await practise.chooseWay("write-it");
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    attempt.write("R X9", 500);
    await practise.skip(900);
    await practise.storeAgain();
    expect((await stored(app)).at(-1)).toMatchObject({
      answerWay: "write-it",
      verdict: "missed",
    });
  });
});
