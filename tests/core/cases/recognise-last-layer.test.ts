import { describe, expect, it } from "vitest";
import {
  type LastLayerCase,
  lastLayerCases,
} from "../../../core/cases/last-layer-cases";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
  LOOK_PARTS,
  lookIn,
  PART_TEXTS,
  stateOfLook,
} from "../../../core/cases/last-layer-look";
import { lastLayerPositionSampler } from "../../../core/cases/last-layer-position";
import {
  LAST_LAYER_COURSES,
  LAST_LAYER_RULES,
  LAST_LAYER_STAGES,
  type LastLayerRule,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { recogniseLastLayer } from "../../../core/cases/recognise-last-layer";
import { compose, type Cubies, SOLVED } from "../../../core/cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../../../core/cube/face-turns";
import { applyTurns } from "../../../core/cube/held-cube";
import { emptyCubies } from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { validateCubies } from "../../../core/cube/validity";
import { randomSource } from "../../../core/random-source";
import { chiSquare, evenly } from "../cube/chi-square";
import { turnsOf } from "../notation/turns-of";

const SEED = 14;

const BOTTOM_TURNS: readonly Cubies[] = [1, 2, 3].map(
  (quarters) => FACE_TURNS[faceTurnIndex("D", quarters)] ?? SOLVED,
);

/** Calls back with random positions of a case, one at a time in the same state. */
function forPositionsOf(
  one: LastLayerCase,
  count: number,
  see: (state: Cubies) => void,
): void {
  const random = randomSource(SEED + one.index);
  const sampler = lastLayerPositionSampler(one);
  const state = emptyCubies();
  for (let i = 0; i < count; i++) {
    sampler.drawInPlace(random, state);
    see(state);
  }
}

describe("recognising the last layer", () => {
  // 1,000 of each, 100 in the two largest stages: 2 s in all, on one core.
  it.each(LAST_LAYER_STAGES)(
    "finds every case of %s again in random positions of it, all of which can be reached",
    (stage) => {
      const cases = lastLayerCases(stage);
      const missed = new Set<string>();
      for (const one of cases)
        forPositionsOf(one, cases.length > 100 ? 100 : 1_000, (state) => {
          if (recogniseLastLayer(state, stage) !== one) missed.add(one.code);
        });
      for (const one of cases)
        forPositionsOf(one, 3, (state) => {
          if (!validateCubies(state).ok) missed.add(`${one.code} impossible`);
        });
      expect([...missed]).toEqual([]);
    },
  );

  it.each(LAST_LAYER_STAGES)(
    "finds the same case of %s however the layer is turned before and after",
    (stage) => {
      const strays: string[] = [];
      for (const one of lastLayerCases(stage).slice(0, 100))
        forPositionsOf(one, 3, (state) => {
          for (const turn of BOTTOM_TURNS)
            for (const turned of [compose(state, turn), compose(turn, state)])
              if (recogniseLastLayer(turned, stage) !== one)
                strays.push(one.code);
        });
      expect(strays).toEqual([]);
    },
  );

  it("says that every stage is answered on a solved cube, also with the layer turned away", () => {
    for (const stage of LAST_LAYER_STAGES)
      for (const state of [SOLVED, ...BOTTOM_TURNS])
        expect(recogniseLastLayer(state, stage), stage).toBe("answered");
  });

  it("says of no stage that it is reached while a piece of the first two layers is missing", () => {
    for (const text of ["R D R'", "L2", "R2 D2 R2", "F D F' D' R' D' R"]) {
      const { cubies } = applyTurns(
        { cubies: SOLVED, hold: NO_ROTATION },
        turnsOf(text),
      );
      for (const stage of LAST_LAYER_STAGES)
        expect(recogniseLastLayer(cubies, stage), text).toBeUndefined();
    }
  });

  it.each(Object.entries(LAST_LAYER_COURSES))(
    "goes through %s: a stage is reached exactly when those before it are answered",
    (_, stages) => {
      for (const one of lastLayerCases("last-layer-whole"))
        forPositionsOf(one, 2, (state) => {
          const shown = stages.map((stage) => recogniseLastLayer(state, stage));
          const open = shown.findIndex((which) => which !== "answered");
          expect(open).toBeGreaterThanOrEqual(0);
          expect(shown[open]).toBeDefined();
          expect(
            shown.slice(open + 1).filter((which) => which !== undefined),
          ).toEqual([]);
        });
    },
  );
});

describe("a position of the last layer", () => {
  const FEW: readonly LastLayerStage[] = [
    "last-layer-edges-turned",
    "last-layer-corners-placed",
    "last-layer-corners",
  ];
  const n = 4_000;

  function textsDrawn(one: LastLayerCase, part: keyof typeof PART_TEXTS) {
    const texts: string[] = [];
    forPositionsOf(one, n, (state) => texts.push(lookIn(state)[part]));
    return texts;
  }

  it.each(FEW)("of %s has the parts that it does not see free", (stage) => {
    const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
    const unseen = LOOK_PARTS.filter(
      (part) => !done.includes(part) && !asks.includes(part),
    );
    expect(unseen.length).toBeGreaterThan(0);
    for (const one of lastLayerCases(stage).slice(0, 4))
      for (const part of unseen)
        expect(
          chiSquare(textsDrawn(one, part), evenly(PART_TEXTS[part])),
          `${one.code} ${part}`,
        ).toMatchObject({ passes: true });
  });

  it("shows each look of its case as often as the others", () => {
    const drawnLooks = (one: LastLayerCase, look?: number) => {
      const random = randomSource(SEED);
      const sampler = lastLayerPositionSampler(one, look);
      const state = emptyCubies();
      return Array.from({ length: n }, () => {
        sampler.drawInPlace(random, state);
        return JSON.stringify(lookIn(state));
      });
    };
    for (const one of lastLayerCases("last-layer-whole").slice(100, 104)) {
      const looks = evenly(
        Array.from({ length: one.size }, (_, i) =>
          JSON.stringify(lookIn(stateOfLook(one.lookAt(i)))),
        ),
      );
      expect(chiSquare(drawnLooks(one), looks).passes).toBe(true);
      // Control: one look alone.
      expect(chiSquare(drawnLooks(one, 0), looks).passes).toBe(false);
    }
  });

  it("of one look has what the case's code names", () => {
    const random = randomSource(SEED);
    const state = emptyCubies();
    for (const one of lastLayerCases("last-layer-turned")) {
      lastLayerPositionSampler(one, 0).drawInPlace(random, state);
      const { cornerTwists, edgeFlips } = lookIn(state);
      expect(`${cornerTwists}-${edgeFlips}`).toBe(one.code);
    }
  });

  it("is refused for a look that its case does not have", () => {
    const [one] = lastLayerCases("last-layer-turned");
    if (one === undefined) throw new Error("there are 57");
    expect(() => lastLayerPositionSampler(one, one.size)).toThrow(
      "broken invariant",
    );
  });
});

describe("a look of the last layer", () => {
  it("is read from the state that has it", () => {
    for (const part of LOOK_PARTS)
      for (const text of PART_TEXTS[part])
        expect(lookIn(stateOfLook({ [part]: text }))).toEqual({
          ...lookIn(SOLVED),
          [part]: text,
        });
  });

  // Turned over about the front–back axis, the front right corner of the top
  // is the body's at the bottom front left, and right is left.
  it("goes around the layer as it is seen with the last layer on top", () => {
    expect(LAST_LAYER_CORNERS).toEqual([5, 4, 7, 6]);
    expect(LAST_LAYER_EDGES).toEqual([6, 5, 4, 7]);
  });
});
