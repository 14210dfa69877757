import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { default_w } from "ts-fsrs";
import { waysOf } from "../../../core/cases/case-table";
import {
  lineUpTurns,
  turnsForPosition,
} from "../../../core/cases/way-for-position";
import { formatTurns } from "../../../core/notation/format";
import type { Deck, DeckCase } from "../../../core/deck/deck";
import { inverseTurn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import { localDay } from "../../../core/memory/local-day";
import type { Milliseconds, Review } from "../../../core/memory/review";
import { memoryState } from "../../../core/memory/schedule";
import { ok } from "../../../core/result";
import { createSetUpFinder } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/steps";
import { randomSource } from "../../../core/random-source";
import {
  openApp,
  type AppState,
} from "../../../renderer/state/app-state.svelte";
import { PractiseState } from "../../../renderer/state/practise.svelte";
import { CaseAttempt } from "../../../renderer/state/practise/case-attempt.svelte";
import { MyCubeAttempt } from "../../../renderer/state/practise/my-cube-attempt.svelte";
import type { SetUpFinder } from "../../../renderer/state/practise/my-cube-stage";
import {
  marksThatFit,
  roundRow,
} from "../../../renderer/state/practise/round-words";
import { cubeThatHas } from "../../../renderer/state/practise/own-cube";
import { todayOf } from "../../../renderer/state/practise/planned-round";
import { readLog } from "../../../renderer/storage/reviews";
import { forgetDatabases } from "../storage/fresh-database";
import { sampleReview } from "../storage/sample-review";
import { windowLocks } from "../storage/window-locks";

const finder = createSetUpFinder();
const findSetUp: SetUpFinder = (from, to, seed) => {
  const found = runToEnd(finder.find(from, to, randomSource(seed)));
  return Promise.resolve(found.ok ? ok(found.value.turns) : found);
};

async function openedApp(): Promise<AppState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

async function practising(app: AppState): Promise<PractiseState> {
  const practise = new PractiseState({
    learner: app.current,
    findSetUp,
    still: () => true,
  });
  await practise.open(undefined);
  return practise;
}

function attemptOf(practise: PractiseState): CaseAttempt {
  const { phase } = practise;
  if (phase.kind !== "case" || !(phase.attempt instanceof CaseAttempt))
    throw new Error(`no case on the screen but ${phase.kind}`);
  return phase.attempt;
}

function myCubeOf(practise: PractiseState): MyCubeAttempt {
  const { phase } = practise;
  if (phase.kind !== "case" || !(phase.attempt instanceof MyCubeAttempt))
    throw new Error(`no case on the own cube but ${phase.kind}`);
  return phase.attempt;
}

/** Answers the case on the desk by its way, a second a turn, and waits for the store. */
async function answer(practise: PractiseState): Promise<void> {
  const attempt = attemptOf(practise);
  attempt.caseShown(0);
  turnsForPosition(attempt.position).forEach((turn, n) =>
    attempt.turn(turn, 1000 * (n + 1)),
  );
  await practise.storeAgain();
}

async function stored(app: AppState): Promise<readonly Review[]> {
  const log = await readLog(app.database, app.current.learner.id);
  return log.ok ? log.value.reviews : [];
}

afterEach(() => void vi.useRealTimers());

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("practising", () => {
  it("begins a first start with the easiest edge, shown", async () => {
    const practise = await practising(await openedApp());
    expect(attemptOf(practise).item).toMatchObject({
      case: "E1",
      asking: "shown",
    });
  });

  it("plans a round by the weights that were fitted to the learner", async () => {
    const app = await openedApp();
    const learner = app.current;
    // Under these a case lasts ten times as long, and is forgotten faster once past its day.
    const weights = default_w.map((weight, i) =>
      i < 4 ? 10 * weight : i === 20 ? 0.8 : weight,
    );
    const tried = { answers: 400, isTaken: true, gain: 0.1 };
    await learner.changeSettings({
      fit: { weightsVersion: 2, weights, tried },
    });
    const at = Date.now() - 65 * 86_400_000;
    const review = sampleReview({
      learner: learner.learner.id,
      at: at as Milliseconds,
      localDay: localDay(at, 0),
    });
    await learner.acknowledge({ review });
    const memory = learner.memoryOf("E1");
    expect(memoryState(memory, learner.today)).toBe("kept");
    expect(memoryState(memory, learner.today, { weights })).toBe("fading");
    const practise = await practising(app);
    await practise.start(undefined);
    const planned = practise.round?.tracks.map((track) => track.planned);
    expect(planned?.find(({ case: id }) => id === "E1")?.memory).toBe("fading");
  });

  it("has on the desk in the end what was asked for last, however fast", async () => {
    const practise = new PractiseState({
      learner: (await openedApp()).current,
      findSetUp,
      still: () => true,
    });
    await Promise.all([practise.open(undefined), practise.open("C3")]);
    expect(attemptOf(practise).item.case).toBe("C3");
  });

  it("ends an answer by itself when the case is answered, and stores it", async () => {
    const app = await openedApp();
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

  it("takes up the same position after the window was closed, and says so in the log", async () => {
    const app = await openedApp();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const before = attemptOf(practise);
    practise.close();
    const again = await practising(await openedApp());
    const after = attemptOf(again);
    expect(after.item.asking).toBe("helped");
    expect(after.position).toEqual(before.position);
    await answer(again);
    expect(await stored(app)).toHaveLength(2);
    expect((await stored(app)).at(-1)?.interrupted).toBe(true);
  });

  it("keeps the help that was asked for through another way of answering and a reload", async () => {
    const app = await openedApp();
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
    const again = await practising(await openedApp());
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

  it("counts an answer that lay open over the day's turn for the day it is given, as interrupted, and plans anew", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openedApp();
    const practise = await practising(app);
    for (let n = 0; n < 2; n++) {
      await answer(practise);
      await practise.next();
    }
    const begun = practise.round;
    const attempt = attemptOf(practise);
    attempt.caseShown(0);
    vi.setSystemTime(new Date("2030-03-06T18:00:00Z"));
    turnsForPosition(attempt.position).forEach((turn) =>
      attempt.turn(turn, 22 * 3_600_000),
    );
    await practise.storeAgain();
    const review = present((await stored(app)).at(-1), "it is stored");
    expect(review.interrupted).toBe(true);
    expect(review.localDay).toBe((begun?.day ?? 0) + 1);
    // Six hours later still nothing is left of yesterday's round.
    vi.setSystemTime(new Date("2030-03-07T12:00:00Z"));
    await practise.next();
    expect(practise.phase.kind).toBe("today");
    await practise.start(undefined);
    expect(practise.round?.id).not.toBe(begun?.id);
    expect(practise.round?.day).toBe((begun?.day ?? 0) + 2);
    // It was right, so E1 is met, and due again after the new ones.
    expect(practise.round?.tracks.map(({ planned }) => planned.case)).toContain(
      "E2a",
    );
  });

  it("counts answers for the round's day when the time zone changes in mid-round", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const zone = vi.spyOn(Date.prototype, "getTimezoneOffset");
    zone.mockReturnValue(0);
    const app = await openedApp();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    // Twelve hours east it is the next morning: 08:01 on 6 March.
    zone.mockReturnValue(-720);
    vi.setSystemTime(new Date("2030-03-05T20:01:00Z"));
    await answer(practise);
    const [before, after] = await stored(app);
    expect([before?.utcOffset, after?.utcOffset]).toEqual([0, 720]);
    expect(after?.localDay).toBe(before?.localDay);
    await practise.next();
    expect(attemptOf(practise).item.case).toBe("E1");
    expect(practise.round?.results).toHaveLength(2);
    zone.mockRestore();
  });

  it("goes on, and loses nothing, when the clock is set back in mid-round", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openedApp();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const { round } = practise;
    vi.setSystemTime(new Date("2030-03-03T20:00:00Z"));
    await answer(practise);
    await practise.next();
    expect(practise.round?.id).toBe(round?.id);
    const answers = await stored(app);
    expect(answers).toHaveLength(2);
    expect(new Set(answers.map(({ localDay }) => localDay)).size).toBe(1);
    practise.close();
    // The same round is taken up again, under the clock as it now is.
    const again = await practising(await openedApp());
    expect(again.round?.id).toBe(round?.id);
    again.close();
  });

  it("is told what today brings by who has answered before, and asked at once who has not", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openedApp();
    const first = await practising(app);
    expect(attemptOf(first).item.asking).toBe("shown");
    while (first.phase.kind !== "summary") {
      await answer(first);
      await first.next();
    }
    first.close();
    vi.setSystemTime(new Date("2030-03-08T20:00:00Z"));
    const back = await openedApp();
    const practise = await practising(back);
    expect(practise.phase.kind).toBe("today");
    const { due } = todayOf(back.current);
    expect(due.map((one) => one.case)).toContain("E1");
    await practise.start(undefined);
    expect(due.map((one) => one.case)).toContain(attemptOf(practise).item.case);
    practise.close();
  });

  it("says that nothing is due where there is no deck, and goes on all the same where there is", async () => {
    const app = await openedApp();
    await app.current.changeSettings({ decks: [] });
    const practise = await practising(app);
    expect(practise.phase.kind).toBe("today");
    await practise.startExtra();
    expect(practise.phase.kind).toBe("today");
    await app.current.changeSettings({ decks: undefined });
    await practise.startExtra();
    expect(attemptOf(practise).item.case).toBe("E1");
  });

  it("plans no more than the learner's minutes, and less the more was practised", async () => {
    const app = await openedApp();
    await app.current.changeSettings({ minutes: 5 });
    const before = todayOf(app.current);
    expect(before.seconds).toBeLessThanOrEqual(300);
    expect(before.freshHeldBy).toBe("minutes");
    const practise = await practising(app);
    await answer(practise);
    const after = todayOf(app.current);
    expect(after.seconds).toBeLessThanOrEqual(before.seconds);
  });

  it("asks weak spots beside the schedule: the memory of a case that rests stays as it was", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    vi.setSystemTime(new Date("2030-03-05T20:00:00Z"));
    const app = await openedApp();
    // E1 took forty seconds where eight are wanted.
    await app.current.acknowledge({
      review: sampleReview({
        learner: app.current.learner.id,
        case: "E1",
        at: Date.now() as Milliseconds,
        localDay: app.current.today,
        total: 40_000 as Milliseconds,
      }),
    });
    const before = app.current.memoryOf("E1");
    const practise = await practising(app);
    await practise.start("weak-spots");
    expect(attemptOf(practise).item).toMatchObject({
      case: "E1",
      asking: "extra",
    });
    vi.setSystemTime(new Date("2030-03-05T20:01:00Z"));
    await answer(practise);
    expect((await stored(app)).at(-1)).toMatchObject({ asking: "extra" });
    expect(app.current.memoryOf("E1")).toEqual(before);
    // Nothing else was ever met: nothing else is weak.
    expect(practise.round?.tracks).toHaveLength(1);
  });

  it("leaves a round of weak spots where it was begun: today can be reached past it", async () => {
    const app = await openedApp();
    await app.current.acknowledge({
      review: sampleReview({
        learner: app.current.learner.id,
        case: "E1",
        total: 40_000 as Milliseconds,
      }),
    });
    const practise = await practising(app);
    await practise.open("weak-spots");
    const begun = practise.round?.id;
    expect(attemptOf(practise).item.case).toBe("E1");
    await practise.open(undefined);
    expect(practise.phase.kind).toBe("today");
    await practise.open("weak-spots");
    expect(practise.round?.id).toBe(begun);
  });

  it("counts a turn taken back as a correction", async () => {
    const app = await openedApp();
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
    const app = await openedApp();
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

  it("leaves a skipped case without a review", async () => {
    const app = await openedApp();
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

  it("keeps which case was taken for the one shown, and nothing where it was another mistake", async () => {
    const app = await openedApp();
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

  it("counts a skip as missed once a turn that commits was made", async () => {
    const app = await openedApp();
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
    const app = await openedApp();
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
    const app = await openedApp();
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
    const app = await openedApp();
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

  it("counts an answer as interrupted whose way was changed after the case was shown, at once and for good", async () => {
    const app = await openedApp();
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
    const reopened = await practising(await openedApp());
    expect(attemptOf(reopened).item).toEqual(after.item);
  });

  it("keeps the round under way when one case is practised, and comes back to it", async () => {
    const app = await openedApp();
    const practise = await practising(app);
    await answer(practise);
    await practise.next();
    const first = practise.round?.id;
    const before = attemptOf(practise).position;
    await practise.open("C1");
    expect(practise.round?.id).not.toBe(first);
    expect(attemptOf(practise).item.case).toBe("C1");
    await practise.open(undefined);
    expect(practise.round?.id).toBe(first);
    expect(attemptOf(practise).position).toEqual(before);
    // The other one waits in its turn.
    await practise.open("C1");
    while (practise.phase.kind !== "summary")
      if (practise.phase.kind === "case") await practise.skip();
      else await practise.next();
    expect(practise.phase.waiting).toBe(true);
    await practise.open(undefined);
    expect(practise.round?.id).toBe(first);
  });

  it("sets a cube in the hands up, and stores what the learner reports", async () => {
    const app = await openedApp();
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
    const app = await openedApp();
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
      const again = await practising(await openedApp());
      expect(myCubeOf(again).stage.kind).toBe("set-up");
      again.close();
    });
    await app.current.changeSettings({ firstColour: "red" });
    const other = await practising(await openedApp());
    expect(myCubeOf(other).stage.kind).toBe("has");
  });

  it("leaves finding the piece to those who want no marks, but for what is shown", async () => {
    const app = await openedApp();
    await app.current.changeSettings({ marks: false });
    const practise = await practising(app);
    expect(attemptOf(practise).isMarked).toBe(true);
    await answer(practise);
    await practise.next();
    expect(attemptOf(practise).item.asking).toBe("helped");
    expect(attemptOf(practise).isMarked).toBe(false);
    practise.close();
  });

  describe("with a deck of the coach's own", () => {
    const ID = "0b9f6e0e-5f0a-4c1e-9d57-3f1f6f3c2a11";

    async function withDeck(
      asked: Partial<DeckCase>,
    ): Promise<readonly [AppState, PractiseState]> {
      const app = await openedApp();
      const deck: Deck = {
        id: ID,
        name: "Monday",
        description: "",
        newPerRound: 1,
        cases: [{ case: "C1", target: 20, ...asked }],
      };
      expect(await app.decks.save(deck)).toEqual(ok(undefined));
      await app.current.changeSettings({ decks: [ID] });
      return [app, await practising(app)];
    }

    it("asks its cases, says so in the log, and goes on with them after a reload", async () => {
      const [app, practise] = await withDeck({ target: 33 });
      await answer(practise);
      expect((await stored(app))[0]).toMatchObject({
        case: "C1",
        deck: ID,
        target: 33,
      });
      practise.close();
      const again = await practising(await openedApp());
      expect(attemptOf(again).item.deck).toBe(ID);
    });

    it("teaches the way that the coach typed, in the learner's hold", async () => {
      const way = { kind: "turns", turns: "F D F'" } as const;
      const [, practise] = await withDeck({ way });
      expect(formatTurns(attemptOf(practise).way)).toBe("F D F'");
      practise.close();
      const app = await openedApp();
      await app.current.changeSettings({ hold: "down" });
      const down = await practising(app);
      await down.start(undefined);
      // Source: the design's architecture, "the ways turned over, not retyped":
      // half a turn about the front-back axis takes the bottom to the top.
      expect(formatTurns(attemptOf(down).way)).toBe("F U F'");
    });

    it("does not teach a way that does not answer the case, wherever it came from", async () => {
      const way = { kind: "turns", turns: "R L U D B" } as const;
      const [, practise] = await withDeck({ way });
      expect(attemptOf(practise).way).toEqual(
        turnsForPosition(attemptOf(practise).position),
      );
    });

    it("lets a case be answered only as it allows, and goes back to the learner's choice after it", async () => {
      const [app, practise] = await withDeck({ answerWays: ["my-cube"] });
      expect(myCubeOf(practise).stage.kind).toBe("has");
      expect(practise.answerWay).toBe("my-cube");
      await practise.chooseWay("write-it");
      expect(practise.answerWay).toBe("my-cube");
      expect(app.current.settings.answerWay).toBe("on-screen");
      await practise.open("E1");
      expect(attemptOf(practise).answerWay).toBe("on-screen");
    });

    it("marks no piece where it wants none marked, but for what is shown", async () => {
      const [, practise] = await withDeck({ pieces: "unmarked" });
      expect(attemptOf(practise).isMarked).toBe(true);
      await answer(practise);
      await practise.next();
      expect(attemptOf(practise).isMarked).toBe(false);
    });
  });

  it("takes no answer in which no layer is turned, and records nothing of it", async () => {
    const app = await openedApp();
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

  it("gives three hints and no more: the whole way is asked for by itself", async () => {
    const practise = await practising(await openedApp());
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

  it("undoes a turn the learner takes back", async () => {
    const practise = await practising(await openedApp());
    const attempt = attemptOf(practise);
    const start = attempt.answer.cube;
    attempt.turn({ layer: "L", quarters: 3 }, 10);
    attempt.turn(inverseTurn({ layer: "L", quarters: 3 }), 20);
    expect(attempt.answer.cube).toEqual(start);
    practise.close();
  });
});
