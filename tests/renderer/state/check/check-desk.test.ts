import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { turnsForPosition } from "../../../../core/cases/way-for-position";
import type { Deck } from "../../../../core/deck/deck";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import { err } from "../../../../core/result";
import { SOLVED } from "../../../../core/cube/cubies";
import { dayNumber } from "../../../../core/memory/local-day";
import type { Milliseconds } from "../../../../core/memory/review";
import {
  resultInWords,
  rowInWords,
} from "../../../../renderer/state/check/check-result";
import { CheckDesk } from "../../../../renderer/state/check/check-desk.svelte";
import { parseCheck } from "../../../../renderer/state/check/stored-check";
import {
  type AppState,
  openApp,
} from "../../../../renderer/state/app-state.svelte";
import { CaseAttempt } from "../../../../renderer/state/practise/case-attempt.svelte";
import { MyCubeAttempt } from "../../../../renderer/state/practise/my-cube-attempt.svelte";
import { checkKey } from "../../../../renderer/storage/learners";
import { readSetting } from "../../../../renderer/storage/settings";
import { readLog } from "../../../../renderer/storage/reviews";
import { forgetDatabases } from "../../storage/fresh-database";
import { sampleReview } from "../../storage/sample-review";
import { windowLocks } from "../../storage/window-locks";

const EDGES = present(STARTER_DECKS[0], "there are starter decks");

async function openedApp(): Promise<AppState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

async function checking(app: AppState, deck: Deck = EDGES): Promise<CheckDesk> {
  const desk = new CheckDesk(() => deck, {
    learner: app.current,
    // Whoever has a cube that is not set up yet waits for this.
    findSetUp: () => Promise.resolve(err({ code: "cancelled" })),
    still: () => true,
  });
  await desk.open();
  return desk;
}

function asked(desk: CheckDesk): CaseAttempt {
  const { phase } = desk;
  if (phase.kind !== "asked" || !(phase.attempt instanceof CaseAttempt))
    throw new Error(`nothing asked on the screen but ${phase.kind}`);
  return phase.attempt;
}

/** Resolves when the desk asks another case, or nothing any more. */
async function settled(desk: CheckDesk, before: unknown): Promise<void> {
  await expect
    .poll(() => desk.phase.kind === "asked" && desk.phase.attempt === before)
    .toBe(false);
}

async function answer(desk: CheckDesk): Promise<void> {
  const attempt = asked(desk);
  attempt.caseShown(0);
  turnsForPosition(attempt.position).forEach((turn, n) =>
    attempt.turn(turn, 1000 * (n + 1)),
  );
  await settled(desk, attempt);
}

async function giveUp(desk: CheckDesk): Promise<void> {
  const { phase } = desk;
  if (phase.kind !== "asked") throw new Error("nothing is asked");
  await desk.giveUp(9000);
  await settled(desk, phase.attempt);
}

async function stored(app: AppState) {
  const log = await readLog(app.database, app.current.learner.id);
  return log.ok ? log.value.reviews : [];
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("a check", () => {
  it("asks five cases once each, and then says what came of every one", async () => {
    const app = await openedApp();
    const desk = await checking(app);
    expect(desk.phase.kind).toBe("ready");
    await desk.begin();
    const cases: string[] = [];
    for (let n = 0; n < 5; n++) {
      cases.push(asked(desk).item.case);
      expect(desk.phase).toMatchObject({ kind: "asked", index: n });
      if (n === 2) await giveUp(desk);
      else await answer(desk);
    }
    expect(new Set(cases).size).toBe(5);
    const { phase } = desk;
    if (phase.kind !== "result") throw new Error(phase.kind);
    expect(phase.result).toMatchObject({ right: 4, answered: 5 });
    expect(resultInWords(phase.result)).toBe("4 of 5 right.");
    expect(phase.result.rows.map((row) => row.case)).toEqual(cases);
    const missed = present(phase.result.rows[2], "five rows");
    expect(missed.outcome).toBe("missed");
    expect(rowInWords(missed)).toBe("Not known.");
    expect(phase.result.rows[0]?.total).toBeGreaterThan(0);
    expect(await stored(app)).toHaveLength(5);
    desk.close();
  });

  it("counts for memory where the case was met, and beside the schedule where it was not", async () => {
    const app = await openedApp();
    const { current } = app;
    const [first] = EDGES.cases;
    const deck = { ...EDGES, cases: EDGES.cases.slice(0, 2) };
    await current.acknowledge({
      review: sampleReview({
        learner: current.learner.id,
        case: present(first, "a deck has cases").case,
        at: 1_000_000 as Milliseconds,
        localDay: dayNumber(0),
      }),
    });
    const desk = await checking(app, deck);
    await desk.begin();
    const askings = new Map<string, string>();
    for (let n = 0; n < 2; n++) {
      askings.set(asked(desk).item.case, asked(desk).item.asking);
      await answer(desk);
    }
    expect([...askings].sort()).toEqual(
      deck.cases
        .map(({ case: id }, n) => [id, n === 0 ? "alone" : "extra"])
        .sort(),
    );
    desk.close();
  });

  it("goes on after a reload with what was drawn, keeps what was answered, and says what was shown was interrupted", async () => {
    const app = await openedApp();
    const desk = await checking(app);
    await desk.begin();
    await answer(desk);
    const { item, position } = asked(desk);
    desk.close();

    const again = await checking(await openedApp());
    expect(again.phase).toMatchObject({ kind: "asked", index: 1 });
    expect(asked(again).item.case).toBe(item.case);
    expect(asked(again).position.cubies).toEqual(position.cubies);
    expect(asked(again).item.interrupted).toBe(true);
    expect(again.length).toBe(5);
    for (let n = 1; n < 5; n++) await answer(again);
    const { phase } = again;
    expect(phase).toMatchObject({ kind: "result", result: { right: 5 } });
    again.close();

    // The page with the result is there after a reload, too.
    const last = await checking(await openedApp());
    expect(last.phase).toMatchObject({ kind: "result", result: { right: 5 } });
    last.close();
  });

  it("draws other cases than the last time", async () => {
    const app = await openedApp();
    const deck = { ...EDGES, cases: EDGES.cases.slice(0, 6) };
    const desk = await checking(app, deck);
    const drawn: string[] = [];
    for (let n = 0; n < 4; n++) {
      await desk.begin();
      const value = await readSetting(
        app.database,
        checkKey(app.current.learner.id),
      );
      const check = parseCheck(value.ok ? value.value : undefined);
      drawn.push(
        (check?.rounds ?? [])
          .map((round) => round.current?.case)
          .sort()
          .join(),
      );
    }
    for (const [n, cases] of drawn.entries())
      if (n > 0) expect(cases).not.toBe(drawn[n - 1]);
    desk.close();
  });

  it("waits while another window has the desk", async () => {
    const app = await openedApp();
    const first = await checking(app);
    const second = await checking(app);
    expect(second.phase.kind).toBe("elsewhere");
    first.close();
    second.close();
  });

  it("leaves a case out that cannot be set up on the cube in the hands", async () => {
    const app = await openedApp();
    await app.current.changeSettings({ answerWay: "my-cube" });
    const deck = { ...EDGES, cases: EDGES.cases.slice(0, 1) };
    const desk = await checking(app, deck);
    await desk.begin();
    const { phase } = desk;
    if (phase.kind !== "asked" || !(phase.attempt instanceof MyCubeAttempt))
      throw new Error(phase.kind);
    phase.attempt.say(SOLVED);
    await giveUp(desk);
    if (desk.phase.kind !== "result") throw new Error(desk.phase.kind);
    expect(resultInWords(desk.phase.result)).toBe(
      "None was answered. One was left out.",
    );
    expect(await stored(app)).toHaveLength(0);
    desk.close();
  });

  it("that cannot be stored is said, and stored when asked again", async () => {
    const app = await openedApp();
    const desk = await checking(app);
    await desk.begin();
    const table = app.database.reviews;
    const add = table.add.bind(table);
    table.add = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    await answer(desk);
    expect(desk.phase.kind).toBe("unkept");
    table.add = add;
    await desk.storeAgain();
    expect(desk.phase).toMatchObject({ kind: "asked", index: 1 });
    expect(await stored(app)).toHaveLength(1);
    desk.close();
  });
});

describe("a stored check", () => {
  it("that cannot be read is none", () => {
    expect(parseCheck(undefined)).toBeUndefined();
    const row = { version: 1, deck: "d", rounds: [{}], leftOut: [], said: {} };
    expect(parseCheck(row)).toBeUndefined();
    expect(parseCheck({ ...row, rounds: [] })).toBeUndefined();
    expect(parseCheck({ ...row, version: 2 })).toBeUndefined();
  });
});
