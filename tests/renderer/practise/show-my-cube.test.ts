import { describe, expect, it } from "vitest";
import { LAST_LAYER_COURSE_NAMES } from "../../../core/cases/whole-solve";
import type { HomeIndex } from "../../../core/cases/variant";
import { type Cubies, isSameState, SOLVED } from "../../../core/cube/cubies";
import { stickersOf } from "../../../core/cube/facelets";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { inverseTurns } from "../../../core/notation/inverse";
import { formatTurns } from "../../../core/notation/format";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";
import { createHeldCubeSolver } from "../../../core/solver/solve-held-cube";
import { err } from "../../../core/result";
import { runToEnd } from "../../../core/steps";
import {
  ShowMyCube,
  type SolutionFinder,
} from "../../../renderer/state/practise/show-my-cube.svelte";
import { ToldPiece } from "../../../renderer/state/practise/told-piece.svelte";
import { seatAt } from "../../../renderer/state/practise/seats";
import {
  cubeInWords,
  piecesOfStep,
  reachedInWords,
  stepPrompt,
} from "../../../renderer/state/practise/solve-step-words";
import { turnsOf } from "../../core/notation/turns-of";

const WAY = { school: "first", hand: "right" } as const;
const solver = createHeldCubeSolver();
const findSolution: SolutionFinder = (cube) =>
  Promise.resolve(runToEnd(solver.solve(cube)));

function shown(hold: "up" | "down" = "up"): ShowMyCube {
  return new ShowMyCube({ scheme: USUAL_SCHEME, hold, way: WAY }, findSolution);
}

function randomCube(seed: number): HeldCube<Cubies> {
  return {
    cubies: sampleState(randomSource(seed), ANY_STATE),
    hold: NO_ROTATION,
  };
}

/** What is left of a solve is found in a moment that a test can wait for. */
const settled = () => new Promise<void>((resolve) => setTimeout(resolve));

describe("a whole cube that is shown", () => {
  it("is led to the end in every course, and every step begins where the last one ended", async () => {
    for (const course of LAST_LAYER_COURSE_NAMES) {
      const state = shown();
      const cube = randomCube(4);
      state.show(cube);
      state.takeCourse(course);
      await settled();
      expect(state.page).toBe("shown");
      let now = cube;
      state.open(0);
      while (state.page === "step") {
        const { step } = state;
        expect(step?.before).toEqual(now);
        now = applyTurns(now, step?.turns ?? []);
        state.open(state.at + 1);
      }
      expect(state.page).toBe("solved");
      expect(isSameState(now.cubies, SOLVED)).toBe(true);
      state.open(state.steps.length - 1);
      expect(state.page).toBe("step");
    }
  }, 60_000);

  it("has its stages: what is done, what is open, what comes later", () => {
    const state = shown();
    const start = { cubies: SOLVED, hold: NO_ROTATION };
    // Two corners are taken out, and the cross stays.
    state.show(applyTurns(start, turnsOf("F D F'")));
    expect(state.stages[0]).toMatchObject({
      stage: "first-layer-edges",
      state: "done",
    });
    expect(state.stages[1]?.state).toBe("open");
    expect(state.stages.at(-1)?.state).toBe("not-reached");
    expect(
      reachedInWords("first-layer-corners", state.step, USUAL_SCHEME),
    ).toBe("The white edges are home.");
  });

  it("with a case that has no way is solved as a whole from there, or says why it is not", async () => {
    let isBroken = true;
    const state = new ShowMyCube(
      { scheme: USUAL_SCHEME, hold: "up", way: WAY },
      (cube) =>
        isBroken
          ? Promise.resolve(
              err({ code: "solver-failed", reason: "out of order" }),
            )
          : findSolution(cube),
      // No case has a way: whatever is to be done is left.
      (cube) => ({ steps: [], unsolved: cube }),
    );
    const cube = randomCube(4);
    state.show(cube);
    state.open(0);
    expect(state.step).toBeUndefined();
    expect(state.page).toBe("step");
    await settled();
    expect(state.trouble).toEqual({
      code: "solver-failed",
      reason: "out of order",
    });
    isBroken = false;
    state.searchAgain();
    await settled();
    expect(state.trouble).toBeUndefined();
    expect(state.steps.map(({ kind }) => kind)).toEqual(["rest"]);
    const end = applyTurns(cube, state.step?.turns ?? []);
    expect(isSameState(end.cubies, SOLVED)).toBe(true);
    state.open(1);
    expect(state.page).toBe("solved");
  });

  it("that is solved has nothing left to do", () => {
    const state = shown();
    state.show({ cubies: SOLVED, hold: NO_ROTATION });
    expect(state.steps).toEqual([]);
    expect(reachedInWords(undefined, state.step, USUAL_SCHEME)).toBe(
      "Your cube is solved.",
    );
  });

  it("is told again from what it should look like, held as it is then", () => {
    const state = shown();
    state.show(randomCube(4));
    state.open(2);
    const before = state.step?.before;
    if (before === undefined) throw new Error("there is a third step");
    state.tellAgain(before);
    expect(state.page).toBe("stickers");
    expect(state.entry.stickers).toEqual(
      stickersOf(before).map((face) => face && USUAL_SCHEME[face]),
    );
    expect(state.entry.cube).toEqual(before);
    expect(state.isToldAgain).toBe(true);
    state.tellAnew();
    expect(state.entry.cube).toBeUndefined();
    expect(state.isToldAgain).toBe(false);
    expect(state.cube).toBeUndefined();
  });
});

describe("one piece that is told", () => {
  /** Tells the pieces of a home as they are on a cube held as is asked. */
  function tell(told: ToldPiece, home: HomeIndex, on: Cubies): void {
    told.choose(home);
    for (let n = 0; n < 2 && told.asked !== undefined; n++) {
      const { asked, cube } = told;
      const stickers = stickersOf({ cubies: on, hold: cube.hold });
      const facelet = stickers.findIndex((_, at) => {
        const seat = seatAt(cube, asked.kind, at);
        if (typeof seat === "string") return false;
        return asked.kind === "corner"
          ? on.cornerPermutation[seat.position] === asked.piece &&
              on.cornerOrientation[seat.position] === seat.orientation
          : on.edgePermutation[seat.position] === asked.piece &&
              on.edgeOrientation[seat.position] === seat.orientation;
      });
      const seat = seatAt(cube, asked.kind, facelet);
      if (typeof seat !== "string") told.found(seat.position, seat.orientation);
    }
  }

  it("has a way that brings it home, from how the cube is asked to be held", () => {
    for (const hold of ["up", "down"] as const) {
      for (const [stage, moves] of [
        ["first-layer-edges", "R U F' D2 L B"],
        ["first-layer-corners", "R' D' R D2"],
        ["second-layer-edges", "R' D R D F D' F'"],
      ] as const) {
        const start = { cubies: SOLVED, hold: NO_ROTATION };
        const { cubies } = applyTurns(start, inverseTurns(turnsOf(moves)));
        const told = new ToldPiece(hold, WAY);
        told.takeStage(stage);
        expect(told.outcome).toBeUndefined();
        for (const home of [0, 1, 2, 3] as const) {
          tell(told, home, cubies);
          const { outcome } = told;
          if (outcome?.kind !== "way") {
            expect(outcome?.kind).toBe("home");
            continue;
          }
          const { step } = outcome;
          const after = applyTurns(
            { cubies, hold: step.before.hold },
            step.turns,
          );
          tell(told, home, after.cubies);
          expect([stage, home, told.outcome?.kind]).toEqual([
            stage,
            home,
            "home",
          ]);
        }
      }
    }
  });

  it("is one that a home in the picture belongs to", () => {
    const told = new ToldPiece("up", WAY);
    // Front, top middle; top, bottom middle: the home of white and green.
    expect(told.homeOfFacelet(19)).toBe(0);
    expect(told.homeOfFacelet(7)).toBe(0);
    expect(told.homeOfFacelet(22)).toBeUndefined();
    told.takeStage("first-layer-corners");
    expect(told.homeOfFacelet(20)).toBe(0);
    expect(told.homeOfFacelet(19)).toBeUndefined();
  });

  it("is asked for again, and forgotten", () => {
    const told = new ToldPiece("up", WAY);
    told.choose(0);
    expect(told.asked).toEqual({ kind: "edge", piece: 1 });
    told.found(5, 0);
    expect(told.outcome?.kind).toBe("way");
    told.tellAgain();
    expect(told.outcome).toBeUndefined();
    expect(told.home).toBe(0);
    told.forget();
    expect(told.home).toBeUndefined();
    expect(told.asked).toBeUndefined();
  });

  it("tells both pieces of a pair one after the other", () => {
    const told = new ToldPiece("up", WAY);
    told.takeStage("pairs");
    told.choose(1);
    expect(told.asked?.kind).toBe("edge");
    told.found(8, 0);
    expect(told.asked?.kind).toBe("corner");
  });
});

describe("the steps in words", () => {
  it("say what to bring home, and where it is for somebody who does not see it", () => {
    const state = shown();
    const start = { cubies: SOLVED, hold: NO_ROTATION };
    state.show(applyTurns(start, turnsOf("F2 D")));
    const { step } = state;
    if (step === undefined) throw new Error("the front edge is out");
    expect(stepPrompt(step, USUAL_SCHEME)).toBe(
      "Bring the white and green edge home.",
    );
    expect(formatTurns(step.turns)).toBe("D' F2");
    expect(cubeInWords(step.before, piecesOfStep(step), USUAL_SCHEME)).toBe(
      "White on top, green in front and red on the right. The white and green edge: bottom right; white is on the bottom. Its home is top front.",
    );
  });

  it("name the last layer by its colour where it is turned last: a way may end with it on any side", () => {
    const state = shown();
    state.show(
      applyTurns({ cubies: SOLVED, hold: NO_ROTATION }, turnsOf("D x")),
    );
    const [step] = state.steps;
    if (step === undefined) throw new Error("a turn is left");
    expect(stepPrompt(step, USUAL_SCHEME)).toBe(
      "Turn the yellow layer until all sides match.",
    );
    expect(formatTurns(step.turns)).toBe("F'");
  });

  it("read out all sides where the whole layer is asked about", () => {
    const words = cubeInWords(
      { cubies: SOLVED, hold: NO_ROTATION },
      { corners: [], edges: [] },
      USUAL_SCHEME,
    );
    for (const side of ["top", "front", "right", "left", "back", "bottom"])
      expect(words).toContain(side);
  });
});
