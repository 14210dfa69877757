import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { applyTurns } from "../../../../core/cube/held-cube";
import type { HeldCube } from "../../../../core/cube/held-cube";
import { type Cubies, isSameState, SOLVED } from "../../../../core/cube/cubies";
import { err, ok } from "../../../../core/result";
import type { Run } from "../../../../core/runs/run";
import { openApp } from "../../../../renderer/state/app-state.svelte";
import type { LearnerState } from "../../../../renderer/state/learner.svelte";
import type { SolutionFinder } from "../../../../renderer/state/practise/show-my-cube.svelte";
import {
  RunDesk,
  runDeskOf,
} from "../../../../renderer/state/runs/run-desk.svelte";
import { turnsOf } from "../../../core/notation/turns-of";
import { forgetDatabases } from "../../storage/fresh-database";
import { windowLocks } from "../../storage/window-locks";

const SOLUTION = turnsOf("R U2 F'");

const solves: SolutionFinder = () => Promise.resolve(ok(SOLUTION));

beforeEach(async () => {
  await forgetDatabases();
  sessionStorage.clear();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

async function learnerAtDesk(): Promise<LearnerState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value.current;
}

/** A run from its first tap at 1,000 to its last, and what was kept of it. */
function runBetween(desk: RunDesk, ...taps: readonly number[]): void {
  desk.mixed(false);
  for (const at of taps) desk.tap(at);
}

async function rowsOf({ database }: LearnerState) {
  return database.runs.toArray();
}

function keptRun({ stage }: RunDesk): Run {
  if (stage.kind !== "kept") throw new Error(stage.kind);
  return stage.run;
}

describe("mixing", () => {
  it("takes a solved cube, turn by turn, to the one that was solved, held as the learner holds it", async () => {
    const learner = await learnerAtDesk();
    await learner.changeSettings({ hold: "down" });
    let asked: HeldCube<Cubies> | undefined;
    const desk = new RunDesk(learner, (cube) => {
      asked = cube;
      return solves(cube);
    });
    await desk.tellMix();
    const { stage } = desk;
    if (stage.kind !== "mixing" || asked === undefined) throw new Error();
    expect(stage.walk.start.cubies).toEqual(SOLVED);
    expect(stage.walk.start.hold).toEqual(asked.hold);
    const mixed = applyTurns(stage.walk.start, stage.walk.turns);
    expect(
      isSameState(applyTurns(mixed, SOLUTION).cubies as Cubies, SOLVED),
    ).toBe(true);
  });

  it("comes back after a reload at the same turn, with what was chosen", async () => {
    const learner = await learnerAtDesk();
    const before = new RunDesk(learner, solves);
    before.kind = "solve";
    before.withParts = true;
    await before.tellMix();
    before.mixOn(1000);
    const after = new RunDesk(learner, solves);
    await after.read();
    expect(after.stage).toEqual(before.stage);
    expect(after.kind).toBe("solve");
    expect(after.parts).toBe(4);
    expect(after.wasInterrupted).toBe(false);
  });

  it("may be left, and is: a solution that comes later changes nothing", async () => {
    const learner = await learnerAtDesk();
    let found: (() => void) | undefined;
    const desk = new RunDesk(
      learner,
      () =>
        new Promise((resolve) => {
          found = () => resolve(ok(SOLUTION));
        }),
    );
    const telling = desk.tellMix();
    desk.mixed(false);
    found?.();
    await telling;
    expect(desk.stage.kind).toBe("ready");
  });

  it("that finds no turns says why", async () => {
    const error = { code: "solver-failed", reason: "gone" } as const;
    const desk = new RunDesk(await learnerAtDesk(), () =>
      Promise.resolve(err(error)),
    );
    await desk.tellMix();
    expect(desk.stage).toEqual({ kind: "no-mix", error });
  });
});

describe("a run", () => {
  it("is kept as its taps were, with the turns that mixed the cube", async () => {
    const learner = await learnerAtDesk();
    const desk = new RunDesk(learner, solves);
    desk.kind = "cross";
    desk.withParts = true;
    await desk.tellMix();
    desk.mixOn(0, true);
    desk.mixed(true);
    for (const at of [1000, 3000, 4500, 7000, 9000.5]) desk.tap(at);
    expect((await desk.keep("done", 10_000)).ok).toBe(true);
    const run = keptRun(desk);
    expect(run).toMatchObject({
      learner: learner.learner.id,
      kind: "cross",
      rules: "plain",
      mix: "F U2 R'",
      time: 8000.5,
      splits: [2000, 3500, 6000],
      ending: "done",
    });
    expect(await rowsOf(learner)).toEqual([run]);
    expect(desk.history.best).toBe(8000);
  });

  it("lasts as long as the page ran, though the device's clock is set back meanwhile", async () => {
    const learner = await learnerAtDesk();
    const desk = new RunDesk(learner, solves);
    vi.useFakeTimers({ now: 1_800_000_000_000, toFake: ["Date"] });
    try {
      runBetween(desk, 1000);
      vi.setSystemTime(1_700_000_000_000);
      desk.tap(31_000);
      await desk.keep("done", 32_000);
    } finally {
      vi.useRealTimers();
    }
    expect(keptRun(desk)).toMatchObject({
      time: 30_000,
      at: 1_700_000_000_000,
    });
  });

  it("of which the window closes in the middle is told and not counted", async () => {
    const learner = await learnerAtDesk();
    runBetween(new RunDesk(learner, solves), 1000);
    const after = new RunDesk(learner, solves);
    await after.read();
    expect(after.wasInterrupted).toBe(true);
    expect(after.stage.kind).toBe("choose");
    expect(await rowsOf(learner)).toEqual([]);
    // Said once.
    expect(new RunDesk(learner, solves).wasInterrupted).toBe(false);
  });

  it("goes on while another place is looked at", async () => {
    const learner = await learnerAtDesk();
    runBetween(runDeskOf(learner), 1000);
    expect(runDeskOf(learner).stage.kind).toBe("running");
  });

  it("that a tap ended too early goes on", async () => {
    const desk = new RunDesk(await learnerAtDesk(), solves);
    runBetween(desk, 1000, 3000);
    desk.takeTapBack();
    desk.tap(9000);
    await desk.keep("done", 10_000);
    expect(keptRun(desk).time).toBe(8000);
  });

  it("hears no report from the finger that stopped the clock", async () => {
    const learner = await learnerAtDesk();
    const desk = new RunDesk(learner, solves);
    runBetween(desk, 1000, 9000);
    await desk.keep("not-done", 9300);
    expect(desk.stage.kind).toBe("running");
    expect(await rowsOf(learner)).toEqual([]);
  });

  it("notes that the window was out of sight during it, and not before or after", async () => {
    const desk = new RunDesk(await learnerAtDesk(), solves);
    desk.hidden();
    runBetween(desk, 1000, 9000);
    await desk.keep("done", 10_000);
    expect(keptRun(desk).wasHidden).toBeUndefined();
    desk.leave();
    runBetween(desk, 11_000);
    desk.hidden();
    desk.tap(19_000);
    await desk.keep("done", 20_000);
    expect(keptRun(desk).wasHidden).toBe(true);
  });

  it("by competition rules begins with a look, which is measured", async () => {
    const desk = new RunDesk(await learnerAtDesk(), solves);
    desk.rules = "competition";
    desk.mixed(false);
    desk.tap(500);
    expect(desk.stage.kind).toBe("ready");
    desk.look(1000);
    desk.tap(1100);
    expect(desk.stage.kind).toBe("looking");
    desk.tap(17_000);
    desk.tap(30_000);
    await desk.keep("one-turn-off", 31_000);
    expect(keptRun(desk)).toMatchObject({
      rules: "competition",
      inspection: 16_000,
      time: 13_000,
      ending: "one-turn-off",
    });
    // 13.00 s, 2 for looking too long, 2 for the turn.
    expect(desk.history.best).toBe(17_000);
  });

  it("is struck out by a row of its own, and stays as it was", async () => {
    const learner = await learnerAtDesk();
    const desk = new RunDesk(learner, solves);
    runBetween(desk, 1000, 9000);
    await desk.keep("done", 10_000);
    const run = keptRun(desk);
    await desk.strike(run.id);
    expect(desk.stage.kind).toBe("choose");
    expect(desk.history.runs).toEqual([]);
    expect(await learner.database.runs.get(run.id)).toEqual(run);
    const again = new RunDesk(learner, solves);
    await again.read();
    expect(again.history.runs).toEqual([]);
  });

  it("that cannot be kept waits, and is kept once when it is tried again", async () => {
    const learner = await learnerAtDesk();
    const desk = new RunDesk(learner, solves);
    runBetween(desk, 1000, 9000);
    const row = await learner.database.learners.get(learner.learner.id);
    await learner.database.learners.delete(learner.learner.id);
    expect(await desk.keep("done", 10_000)).toEqual({
      ok: false,
      error: { code: "learner-gone" },
    });
    expect(desk.stage.kind).toBe("running");
    await learner.database.learners.put({ ...row });
    await desk.keep("done", 11_000);
    expect(await rowsOf(learner)).toHaveLength(1);
  });
});

describe("the desk", () => {
  it("goes on with what the last run was, until something else is chosen", async () => {
    const learner = await learnerAtDesk();
    const desk = new RunDesk(learner, solves);
    desk.kind = "solve";
    desk.withParts = true;
    runBetween(desk, 1000, 5000);
    desk.allDone(9000);
    await desk.keep("done", 10_000);
    const next = new RunDesk(learner, solves);
    await next.read();
    expect([next.kind, next.rules, next.withParts]).toEqual([
      "solve",
      "plain",
      true,
    ]);
    next.kind = "cross";
    await next.read();
    expect(next.kind).toBe("cross");
  });

  it("says how many runs cannot be read", async () => {
    const learner = await learnerAtDesk();
    await learner.database.runs.put({ id: "x", learner: learner.learner.id });
    const desk = new RunDesk(learner, solves);
    await desk.read();
    expect(desk.damaged).toBe(1);
  });

  it("suggests a pause after 20 minutes of taps", async () => {
    const desk = new RunDesk(await learnerAtDesk(), solves);
    for (let minute = 0; minute <= 20; minute += 1) desk.tap(minute * 60_000);
    expect(desk.wantsPause).toBe(true);
    desk.rested();
    expect(desk.wantsPause).toBe(false);
  });
});
