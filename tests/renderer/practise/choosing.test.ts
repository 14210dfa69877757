import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import { CORNER_NAMES } from "../../../core/cube/pieces";
import type { Review } from "../../../core/memory/review";
import { confusionsOf } from "../../../core/progress/confusions";
import {
  type AppState,
  openApp,
} from "../../../renderer/state/app-state.svelte";
import { PractiseState } from "../../../renderer/state/practise.svelte";
import type { ChoiceAttempt } from "../../../renderer/state/practise/choice-attempt.svelte";
import {
  type Practised,
  tellApart,
} from "../../../renderer/state/practise/practised";
import { roundRow } from "../../../renderer/state/practise/round-words";
import { readLog } from "../../../renderer/storage/reviews";
import { forgetDatabases } from "../storage/fresh-database";
import { sampleReview } from "../storage/sample-review";
import { windowLocks } from "../storage/window-locks";

const WHICH = tellApart("which-is-it");

async function openedApp(): Promise<AppState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

async function practising(
  app: AppState,
  of: Practised,
): Promise<PractiseState> {
  const practise = new PractiseState({
    learner: app.current,
    findSetUp: () => Promise.reject(new Error("nothing is set up")),
    still: () => true,
  });
  await practise.open(of);
  return practise;
}

/** The app of a learner who has answered some cases once. */
async function withMet(
  ids: readonly CaseId[],
  told: Partial<Review> = {},
): Promise<AppState> {
  const app = await openedApp();
  const learner = app.current.learner.id;
  for (const id of ids)
    await app.database.reviews.put({
      ...sampleReview({ case: id, learner, ...told }),
    });
  await app.current.reload();
  return app;
}

function questionOf(practise: PractiseState): ChoiceAttempt {
  const { phase } = practise;
  if (phase.kind !== "question") throw new Error(`no question: ${phase.kind}`);
  return phase.attempt;
}

/** Chooses right or not, two seconds after the question was shown, and waits for the store. */
async function choose(
  practise: PractiseState,
  isRight: boolean,
): Promise<number> {
  const attempt = questionOf(practise);
  const { right, choices } = attempt.question;
  attempt.caseShown(1000);
  const choice = isRight ? right : (right + 1) % choices.length;
  attempt.choose(choice, 3000);
  await practise.storeAgain();
  return choice;
}

async function answers(app: AppState): Promise<readonly Review[]> {
  const log = await readLog(app.database, app.current.learner.id);
  return (log.ok ? log.value.reviews : []).filter(
    ({ asking }) => asking === "extra",
  );
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("telling cases apart", () => {
  it("asks nothing before a case was met", async () => {
    const practise = await practising(await openedApp(), WHICH);
    expect(practise.phase.kind).toBe("today");
  });

  it("stores what was chosen with its time, and the memory hears nothing of it", async () => {
    const app = await withMet(["C1", "C2"]);
    const before = app.current.memories;
    const practise = await practising(app, WHICH);
    const { item } = questionOf(practise);
    await choose(practise, true);
    expect(await answers(app)).toMatchObject([
      {
        case: item.case,
        answerWay: "which-is-it",
        asking: "extra",
        verdict: "right",
        total: 2000,
        turns: [],
        hints: [],
        interrupted: false,
      },
    ]);
    const [review] = await answers(app);
    expect(review).not.toHaveProperty("answeredAs");
    expect(review).not.toHaveProperty("thinking");
    expect(app.current.memories).toEqual(before);
  });

  it("keeps the case that was taken for it, which counts as mixed up", async () => {
    const app = await withMet(["C1", "C2"]);
    const practise = await practising(app, WHICH);
    const { item, question } = questionOf(practise);
    const choice = await choose(practise, false);
    const taken = question.choices[choice];
    const [review] = await answers(app);
    expect(review).toMatchObject({ verdict: "missed", answeredAs: taken });
    expect(confusionsOf(app.current.reviews).pairs).toMatchObject([
      { case: item.case, answeredAs: taken, times: 1 },
    ]);
    const { phase } = practise;
    if (phase.kind !== "chosen") throw new Error(phase.kind);
    expect(phase.answered.isRight).toBe(false);
    expect(phase.answered.acknowledged).toBe(review?.id);
  });

  it("keeps which piece or home was chosen in the place of which, and nothing where it was right", async () => {
    for (const way of ["find-it", "where-is-home"] as const) {
      await forgetDatabases();
      const app = await withMet(["C1"]);
      const practise = await practising(app, tellApart(way));
      const { question } = questionOf(practise);
      if (question.way === "which-is-it") throw new Error(question.way);
      const chosen = question.choices[await choose(practise, false)];
      const mistook = {
        piece: CORNER_NAMES[question.piece.piece],
        for: chosen && CORNER_NAMES[chosen.piece],
      };
      expect(mistook.for).toBeDefined();
      await practise.next();
      await choose(practise, true);
      const [review, right] = await answers(app);
      expect(review).toMatchObject({
        answerWay: way,
        verdict: "missed",
        mistook,
      });
      expect(review).not.toHaveProperty("answeredAs");
      expect(right).toMatchObject({ verdict: "right" });
      expect(right).not.toHaveProperty("mistook");
      expect(confusionsOf(app.current.reviews)).toMatchObject({
        missed: 0,
        pieces: [{ answerWay: way, ...mistook, times: 1 }],
      });
    }
  });

  it("takes the first choice and no other, and none that is not there", async () => {
    const app = await withMet(["C1", "C2"]);
    const practise = await practising(app, WHICH);
    const attempt = questionOf(practise);
    const { right } = attempt.question;
    attempt.choose(7, 10);
    attempt.choose(-1, 10);
    expect(practise.phase.kind).toBe("question");
    attempt.choose(right, 20);
    attempt.choose((right + 1) % 4, 30);
    await practise.storeAgain();
    const verdicts = (await answers(app)).map(({ verdict }) => verdict);
    expect(verdicts).toEqual(["right"]);
  });

  it("asks the same question with the same choices after a reload, and says so in the log", async () => {
    const app = await withMet(["C1", "C2", "E2a"]);
    const practise = await practising(app, WHICH);
    await choose(practise, true);
    await practise.next();
    const before = questionOf(practise);
    practise.close();
    const again = await openedApp();
    const resumed = await practising(again, WHICH);
    const after = questionOf(resumed);
    expect(after.item.case).toBe(before.item.case);
    expect(after.position).toEqual(before.position);
    expect(after.question).toEqual(before.question);
    await choose(resumed, true);
    expect((await answers(again)).map((one) => one.interrupted)).toEqual([
      false,
      true,
    ]);
  });

  it("offers what the learner mixed up", async () => {
    // C6 is not among C1's look-alikes.
    const app = await withMet(["C1", "C6"]);
    await app.database.reviews.put({
      ...sampleReview({
        case: "C1",
        learner: app.current.learner.id,
        at: app.current.reviews[0]?.at ?? sampleReview().at,
        localDay: app.current.today,
        verdict: "missed",
        answeredAs: "C6",
      }),
    });
    await app.current.reload();
    const { item, question } = questionOf(await practising(app, WHICH));
    expect(item.case).toBe("C1");
    expect(question.choices).toContain("C6");
  });

  it("goes on to the end of the round, misses coming back, and skips", async () => {
    const app = await withMet(["C1", "C2", "E1", "E3"]);
    const practise = await practising(app, WHICH);
    const row = () =>
      roundRow(practise.round ?? expect.fail("no round"), "current").label;
    expect(row()).toBe("1 of 8");
    await choose(practise, false);
    await practise.next();
    expect(row()).toBe("2 of 9");
    await practise.skip();
    // The skipped case is left alone for this round.
    expect(row()).toBe("3 of 8");
    while (practise.phase.kind === "question") {
      await choose(practise, true);
      await practise.next();
    }
    expect(practise.phase.kind).toBe("summary");
  });

  it("waits at its own address, and is not in the way of what today brings", async () => {
    const app = await withMet(["C1", "C2", "E1", "E3"]);
    const practise = await practising(app, WHICH);
    await choose(practise, true);
    await practise.next();
    const begun = practise.round?.id;
    await practise.open(undefined);
    expect(practise.phase.kind).toBe("today");
    await practise.start(undefined);
    const ofToday = practise.round?.id;
    expect(ofToday).not.toBe(begun);
    await practise.open(WHICH);
    expect(practise.round?.id).toBe(begun);
    await practise.open(undefined);
    expect(practise.round?.id).toBe(ofToday);
    // Another address has a round of its own; the day's waits for its end.
    await practise.open(tellApart("find-it"));
    expect([begun, ofToday]).not.toContain(practise.round?.id);
    while (practise.phase.kind === "question") await practise.skip();
    expect(practise.phase).toMatchObject({ kind: "summary", waiting: true });
  });

  it("promises no round that waits where only other questions do", async () => {
    const practise = await practising(await withMet(["C1", "C2"]), WHICH);
    await practise.open(tellApart("find-it"));
    while (practise.phase.kind === "question") await practise.skip();
    expect(practise.phase).toMatchObject({ kind: "summary", waiting: false });
  });

  it("is about cases of any stage that were met, whatever deck they are in", async () => {
    const [last] = casesOfStage("last-layer-placed");
    const id = last?.id ?? "E1";
    const app = await withMet([id], { hold: "down", deck: "gone" });
    const practise = await practising(app, WHICH);
    expect(questionOf(practise).item.case).toBe(id);
    // Of the last layer no one piece is asked about.
    await practise.open(tellApart("find-it"));
    expect(practise.phase.kind).toBe("today");
  });
});
