import { describe, expect, it } from "vitest";
import { quartersToGoal } from "../../../core/cases/case-goal";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import { goalOf } from "../../../core/cases/constraint";
import { randomPosition } from "../../../core/cases/random-position";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import { isLastLayerStage } from "../../../core/cases/stage";
import { stageShown } from "../../../core/cases/stages-shown";
import { HOLDS, HOME_INDICES } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import { turnsToAnswer } from "../../../core/cases/way-for-position";
import {
  type CaseStep,
  LAST_LAYER_COURSE_NAMES,
  type LastLayerCourse,
  stagesOfSolve,
  stepToAnswer,
  type WholeSolve,
  wholeSolve,
} from "../../../core/cases/whole-solve";
import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import {
  applyTurn,
  applyTurns,
  type HeldCube,
} from "../../../core/cube/held-cube";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { isWholeCubeTurn } from "../../../core/cube/turns";
import { NO_ROTATION, ROTATIONS } from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import { pick, randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";
import { carried, sourcesOf } from "./seen-by-oracle";

const SEED = 31;
const STATES = 1000;

function randomCubes(count: number): readonly HeldCube<Cubies>[] {
  const random = randomSource(SEED);
  return Array.from({ length: count }, () => ({
    cubies: sampleState(random, ANY_STATE),
    hold: pick(random, ROTATIONS),
  }));
}

/** The solve of one of many cubes, the holds and hands by turns. */
function solveOf(
  start: HeldCube<Cubies>,
  i: number,
  course: LastLayerCourse,
): WholeSolve {
  const hold = HOLDS[i % 2] ?? "up";
  const hand = HANDS[Math.floor(i / 2) % 2] ?? "right";
  return wholeSolve(start, { hold, course, way: { school: "first", hand } });
}

function casesIn({ steps }: WholeSolve): readonly CaseStep<Cubies>[] {
  return steps.filter((step) => step.kind === "case");
}

/** Checks that a step answers what it names, and keeps what its stage has placed. */
function expectAnswered({ stage, case: id, home, before, after }: CaseStep) {
  const shown = recognise(before.cubies, stage, home);
  expect(shown?.case).toBe(id);
  const placed = isLastLayerStage(stage)
    ? []
    : HOME_INDICES.filter(
        (one) => recognise(before.cubies, stage, one) === undefined,
      );
  const variant = { home, placed, turnedAway: 0 } as const;
  const goal = goalOf({ case: id, variant });
  expect(quartersToGoal(after.cubies, goal)).toBeDefined();
}

describe("the first two layers of a whole solve", () => {
  it(`are done for ${STATES} random cubes, held in any way, seed ${SEED}`, () => {
    randomCubes(STATES).forEach((start, i) => {
      const solve = solveOf(start, i, "one-look-each");
      const steps = casesIn(solve).filter(
        ({ stage }) => !isLastLayerStage(stage),
      );
      const end = steps.at(-1)?.after ?? start;
      const { state } = stageShown(end.cubies, "second-layer-edges");
      expect(state).toBe("done");
      expect(steps.length).toBeLessThanOrEqual(12);
    });
  });

  it("are made of steps that follow on each other, answer what they name and lose nothing", () => {
    randomCubes(STATES / 5).forEach((start, i) => {
      let cube = start;
      for (const step of casesIn(solveOf(start, i, "one-look-each"))) {
        expect(step.before).toBe(cube);
        expect(step.after).toEqual(applyTurns(cube, step.turns));
        expectAnswered(step);
        cube = step.after;
      }
    });
  });

  it("bring two corners in each other's homes home one after the other", () => {
    const random = randomSource(SEED);
    for (const id of ["S1", "S2"] as const) {
      const variant = {
        home: 1,
        placed: [],
        turnedAway: 0,
        seenFrom: 0,
      } as const;
      const { cubies } = randomPosition(random, id, variant, "up");
      const solve = wholeSolve(
        { cubies, hold: NO_ROTATION },
        { hold: "up", course: "one-look-each" },
      );
      const corners = casesIn(solve).filter(
        ({ stage }) => stage === "first-layer-corners",
      );
      expect(corners).toHaveLength(4);
      corners.forEach(expectAnswered);
    }
  });
});

describe.each(LAST_LAYER_COURSE_NAMES)(
  "a whole solve, its last layer %s",
  (course) => {
    it(`solves ${STATES} random cubes, as a cube without tables sees it, seed ${SEED}`, () => {
      randomCubes(STATES).forEach((start, i) => {
        const solve = solveOf(start, i, course);
        expect(solve.unsolved).toBeUndefined();
        casesIn(solve).forEach(expectAnswered);
        if (i >= 100) return;
        const turns = solve.steps.flatMap((step) => step.turns);
        const end = carried(
          formatFacelets(start),
          sourcesOf(formatTurns(turns)),
        );
        // Nine of one letter, six times.
        expect(end).toMatch(
          /^(.)\1{8}(.)\2{8}(.)\3{8}(.)\4{8}(.)\5{8}(.)\6{8}$/,
        );
      });
    });
  },
);

describe("a whole solve", () => {
  it("of a solved cube has no steps", () => {
    for (const course of LAST_LAYER_COURSE_NAMES)
      for (const hold of ROTATIONS)
        expect(
          wholeSolve({ cubies: SOLVED, hold }, { hold: "up", course }),
        ).toEqual({ steps: [], unsolved: undefined });
  });

  it("of a cube on which one layer is turned is to turn it back, however it is held", () => {
    const held = { cubies: SOLVED, hold: NO_ROTATION };
    const [bottom] = turnsOf("D'");
    if (bottom === undefined) throw new Error("D' is one turn");
    for (const [whole, written] of [
      ["", "D"],
      ["z2", "U"],
      ["x", "F"],
    ] as const) {
      const start = applyTurns(applyTurn(held, bottom), turnsOf(whole));
      const { steps } = wholeSolve(start, {
        hold: "up",
        course: "beginners-steps",
      });
      expect(steps.map(({ kind }) => kind)).toEqual(["last-turn"]);
      const [last] = steps;
      expect(formatTurns(last?.turns ?? [])).toBe(written);
    }
  });

  it("takes the home whose answer is the least to do", () => {
    for (const [i, start] of randomCubes(100).entries()) {
      const [first] = casesIn(solveOf(start, i, "one-look-each"));
      if (first === undefined) continue;
      for (const home of HOME_INDICES) {
        const other = stepToAnswer(start, first.stage, home, first.hold);
        if (other !== undefined && i % 4 < 2)
          expect(other.turns.length).toBeGreaterThanOrEqual(first.turns.length);
      }
    }
  });
});

describe("a step to answer", () => {
  it("is told apart into what brings the cube to where the way begins, and the way", () => {
    // The edge of home 0 in the free layer, a quarter turn from lined up.
    const start = applyTurns(
      { cubies: SOLVED, hold: NO_ROTATION },
      turnsOf("F2 D"),
    );
    const step = stepToAnswer(start, "first-layer-edges", 0, "up");
    expect(formatTurns(step?.turns ?? [])).toBe("D' F2");
    expect(step?.lineUp).toBe(1);
  });

  it("turns the whole cube once, also where its way begins with such a turn", () => {
    // White on the right under its home: the usual way is the left hand's.
    const random = randomSource(SEED);
    for (const id of FIRST_LAYER_IDS.filter((one) => !one.startsWith("S"))) {
      const variant = randomVariant(random, id, { turnedAway: true });
      const { cubies } = randomPosition(random, id, variant, "up");
      const { stage } = caseEntry(id);
      for (const hold of ROTATIONS) {
        const cube = { cubies, hold };
        const step = stepToAnswer(cube, stage, variant.home, "up");
        const whole = step?.turns.filter(isWholeCubeTurn) ?? [];
        expect(whole.length).toBeLessThanOrEqual(2);
        const usual = turnsToAnswer(cube, stage, variant.home, "up") ?? [];
        expect(step?.after.cubies).toEqual(applyTurns(cube, usual).cubies);
        expect(step?.turns.length).toBeLessThanOrEqual(usual.length);
      }
    }
  });

  it("turns no layer twice in a row, in any stage", () => {
    randomCubes(200).forEach((start, i) => {
      for (const course of LAST_LAYER_COURSE_NAMES)
        for (const { turns } of casesIn(solveOf(start, i, course)))
          for (const [n, { layer }] of turns.entries())
            expect(turns[n + 1]?.layer, formatTurns(turns)).not.toBe(layer);
    });
  });

  it("lines a piece up where it is seen to be, and takes a turn that goes further as the way's", () => {
    randomCubes(100).forEach((start, i) => {
      for (const course of LAST_LAYER_COURSE_NAMES)
        for (const { stage, hold, home, before, turns, lineUp } of casesIn(
          solveOf(start, i, course),
        )) {
          const free = isLastLayerStage(stage) || hold === "down" ? "U" : "D";
          const lined = turns.slice(0, lineUp);
          const linedUp = applyTurns(before, lined);
          if (isLastLayerStage(stage))
            expect(turns.at(lineUp)?.layer).not.toBe(free);
          const freely = lined.filter((turn) => !isWholeCubeTurn(turn));
          if (!isLastLayerStage(stage) && freely.length > 0)
            expect(recognise(linedUp.cubies, stage, home)?.turnedAway).toBe(0);
          expect(freely.length).toBeLessThanOrEqual(1);
          for (const { layer } of freely) expect(layer).toBe(free);
        }
    });
  });

  it("has the cube as the case is named: lined up, its home in front", () => {
    randomCubes(50).forEach((start, i) => {
      for (const step of casesIn(solveOf(start, i, "one-look-each"))) {
        const { asNamed, stage, home, hold } = step;
        expect(recognise(asNamed.cubies, stage, home)).toEqual({
          case: step.case,
          turnedAway: 0,
        });
        expect(asNamed.hold).toBe(
          holdInStage(stage, { home, seenFrom: 0 }, hold),
        );
      }
    });
  });

  it("is none where nothing is left to do", () => {
    const cube = { cubies: SOLVED, hold: NO_ROTATION };
    for (const stage of stagesOfSolve("two-looks-each"))
      expect(stepToAnswer(cube, stage, 0, "up")).toBeUndefined();
  });
});
