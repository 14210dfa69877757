import { describe, expect, it, vi } from "vitest";
import { FREE_LAYER } from "../../../core/cases/stage";
import { SOLVED } from "../../../core/cube/cubies";
import { CORNERS } from "../../../core/cube/pieces";
import type { CaseGoal } from "../../../core/cases/case-goal";
import {
  afterSequence,
  faceOfTurn,
  normalised,
  withoutEndsOf,
} from "../../../core/solver/face-turn-sequence";
import {
  ALL_PLACED,
  answeredBy,
  LAST_LAYER_TURNED,
  pairStates,
  secondLayerEdgeStates,
  TWO_LAYERS,
} from "./case-questions";
import { answers, caseSearch, lengthOf } from "./case-answers";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

describe("the case search", () => {
  it("keeps to the faces it is given", () => {
    const from = answeredBy("R U R' U R U2 R'");
    const found = answers({ from, goal: LAST_LAYER_TURNED, faces: ["D", "L"] });
    expect(lengthOf(found)).toBe(7);
    for (const { turns } of found)
      expect(new Set(turns.map(faceOfTurn))).toEqual(new Set([3, 4]));
    const none = answers({ from, goal: LAST_LAYER_TURNED, faces: ["L"] });
    expect(none).toEqual([]);
  });

  it("has nothing to do where only the free layer is turned, and says how far", () => {
    const from = afterSequence(SOLVED, [9]);
    expect(answers({ from, goal: ALL_PLACED })).toEqual([
      { before: 0, turns: [], after: 3 },
    ]);
  });

  it("finds nothing where more turns are needed than allowed, and more where longer ones are asked for", () => {
    const [from] = secondLayerEdgeStates().slice(2);
    if (from === undefined) throw new Error("there are ten states");
    const goal: CaseGoal = { placed: TWO_LAYERS };
    const shortest = answers({ from, goal });
    const length = lengthOf(shortest) ?? NaN;
    expect(answers({ from, goal, mostTurns: length - 1 })).toEqual([]);
    const more = answers({ from, goal, extraTurns: 1 });
    expect(more.slice(0, shortest.length)).toEqual(shortest);
    expect(new Set(more.map(({ turns }) => turns.length))).toEqual(
      new Set([length, length + 1]),
    );
    for (const { turns } of more)
      expect(withoutEndsOf(FREE_LAYER, normalised(turns))).toEqual(turns);
  });

  it("places corners that may be turned anyhow where that is asked", () => {
    const goal: CaseGoal = {
      placed: TWO_LAYERS,
      homed: { corners: CORNERS.slice(4), edges: [] },
    };
    const from = answeredBy("R U R' U R U2 R'");
    const found = answers({ from, goal });
    expect(found.length).toBeGreaterThan(0);
    for (const { before, turns, after } of found) {
      const free = (quarters: number) => (quarters === 0 ? [] : [8 + quarters]);
      const end = afterSequence(from, [
        ...free(before),
        ...turns,
        ...free(after),
      ]);
      expect([...end.cornerPermutation]).toEqual([...CORNERS]);
    }
  });

  it("can be stopped between steps and asked something else; its progress only grows", () => {
    const hard = answeredBy("R U2 R2 F R F' U2 R' F R F'");
    const steps = caseSearch().answers({ from: hard, goal: LAST_LAYER_TURNED });
    let progress = 0;
    for (let i = 0; i < 20; i++) {
      const step = steps.next();
      if (step.done === true) throw new Error("that was quick");
      expect(step.value).toBeGreaterThanOrEqual(progress);
      expect(step.value).toBeLessThan(1);
      progress = step.value;
    }
    const from = answeredBy("R U R' U R U2 R'");
    expect(lengthOf(answers({ from, goal: LAST_LAYER_TURNED }))).toBe(7);
  });

  it("refuses a cube that cannot be, or whose pieces are not known: that is its caller's mistake", () => {
    const twisted = { ...SOLVED, cornerOrientation: new Uint8Array(8).fill(1) };
    expect(() => answers({ from: twisted, goal: ALL_PLACED })).toThrow(
      "only possible cubes",
    );
    const [from] = pairStates();
    if (from === undefined) throw new Error("there are 150 states");
    expect(() => answers({ from, goal: ALL_PLACED })).toThrow(
      "the pieces of a goal are known",
    );
  });
});
