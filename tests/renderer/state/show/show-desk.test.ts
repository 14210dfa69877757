import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import { casesOfStage } from "../../../../core/cases/case-table";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { randomSource } from "../../../../core/random-source";
import { err, ok } from "../../../../core/result";
import { createSetUpFinder } from "../../../../core/solver/set-up";
import { runToEnd } from "../../../../core/steps";
import { openApp } from "../../../../renderer/state/app-state.svelte";
import type { LearnerState } from "../../../../renderer/state/learner.svelte";
import type { SetUpFinder } from "../../../../renderer/state/practise/my-cube-stage";
import { ShowDesk } from "../../../../renderer/state/show/show-desk.svelte";
import { forgetDatabases } from "../../storage/fresh-database";
import { windowLocks } from "../../storage/window-locks";

const finder = createSetUpFinder();
const findSetUp: SetUpFinder = (from, to, seed) => {
  const found = runToEnd(finder.find(from, to, randomSource(seed)));
  return Promise.resolve(found.ok ? ok(found.value.turns) : found);
};

async function learner(): Promise<LearnerState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value.current;
}

async function showing(
  id: CaseId,
  find: SetUpFinder = findSetUp,
): Promise<ShowDesk> {
  const desk = new ShowDesk(
    () => ({ case: id, deck: STARTER_DECKS[1] }),
    await learner(),
    find,
  );
  desk.follow();
  return desk;
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("a case that is shown to a class", () => {
  it("is shown alone, then brought there by its shortest way backwards, then answered by its deck's way", async () => {
    const desk = await showing("C1");
    expect(desk.station.kind).toBe("case");
    expect(desk.turns).toEqual([]);
    desk.reveal();
    expect(desk.turns.map(({ move }) => move)).toEqual(["F", "D'", "F'"]);
    desk.reveal();
    expect(desk.turns.map(({ move }) => move)).toEqual(["D'"]);
    desk.revealPage();
    expect(desk.turns.map(({ move }) => move)).toEqual(["D'", "R'", "D", "R"]);
    expect(desk.isAllShown).toBe(true);
    desk.reveal();
    expect(desk.turns).toHaveLength(4);
    desk.begin();
    expect(desk.isFresh).toBe(true);
  });

  it("tells the same turns whatever the cubes have, and in signs or in colours", async () => {
    const desk = await showing("C1");
    desk.reveal();
    const told = () => desk.turns.map(({ words }) => words);
    const before = told();
    expect(desk.starts).toEqual(["cross", "layer", "solved"]);
    for (const start of desk.starts) {
      desk.startFrom(start);
      expect(desk.start).toBe(start);
      expect(told()).toEqual(before);
    }
    expect(desk.colours.palette.signs).toMatchObject({
      U: "disc",
      F: "plus",
    });
    desk.look = "class";
    expect(desk.colours.names.U).toBe("white");
    expect(desk.colours.palette.signs).toBeUndefined();
    expect(told()).toEqual(before);
  });

  it("takes a start that a case has not for the least it has", async () => {
    const [edge] = casesOfStage("second-layer-edges");
    const desk = await showing(edge?.id ?? "E1");
    desk.startFrom("cross");
    expect(desk.start).toBe("layer");
  });

  it("is set up by the solver where no short way is known", async () => {
    const desk = await showing("S1");
    desk.reveal();
    await expect.poll(() => desk.isSearching).toBe(false);
    expect(desk.lengths.setUp).toBeGreaterThan(3);
    expect(desk.turns.length).toBeGreaterThan(3);
    expect(desk.trouble).toBeUndefined();
  });

  it("says why where the solver finds none, and shows the way all the same", async () => {
    const refusing: SetUpFinder = () =>
      Promise.resolve(err({ code: "solver-failed", reason: "gone" } as const));
    const desk = await showing("S1", refusing);
    await expect.poll(() => desk.isSearching).toBe(false);
    expect(desk.trouble?.code).toBe("solver-failed");
    desk.reveal();
    desk.reveal();
    expect(desk.station.kind).toBe("way");
  });
});
