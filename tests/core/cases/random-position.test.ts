import { describe, expect, it } from "vitest";
import { isAnswered } from "../../../core/answer/judge";
import {
  FIRST_LAYER_IDS,
  type CaseId,
  CORNER_SWAP_IDS,
  type FirstLayerId,
} from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import {
  allowedPlacedSets,
  markedOf,
  mostPlaced,
  firstLayerStateConstraint,
  unmarkedOf,
} from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import {
  positionSampler,
  randomPosition,
} from "../../../core/cases/random-position";
import {
  isVariantAllowed,
  randomVariant,
} from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import { recogniseSwap } from "../../../core/cases/recognise-first-layer";
import {
  cornerOfHome,
  edgeOfHome,
  FIRST_LAYER_EDGES,
  type Stage,
} from "../../../core/cases/stage";
import {
  HOME_INDICES,
  type HomeIndex,
  type Variant,
} from "../../../core/cases/variant";
import { type Cubies, type PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { isCornerPlaced, isEdgePlaced } from "../../../core/cube/partly-known";
import {
  ANY_STATE,
  emptyCubies,
  type StateConstraint,
  stateSampler,
} from "../../../core/cube/sample-state";
import { validateCubies } from "../../../core/cube/validity";
import { pick, randomSource } from "../../../core/random-source";
import { type Bias, drawBiased } from "../cube/biased-samplers";
import { chiSquare, evenly } from "../cube/chi-square";
import { turnsOf } from "../notation/turns-of";
import { everyVariant } from "./every-variant";
import { unevenPieces } from "./piece-places";

const SEED = 7;
const COUNTS = [0, 1, 2, 3] as const;

/** Ten positions of every variant of a case with 0 to 3 others placed. */
function positionsOf(id: CaseId): Position<Cubies>[] {
  const random = randomSource(SEED);
  return COUNTS.flatMap((count) => everyVariant(id, count))
    .filter(({ seenFrom }) => seenFrom === 0)
    .flatMap((variant) =>
      Array.from({ length: 10 }, () =>
        randomPosition(random, id, variant, "up"),
      ),
    );
}

function isSwap(id: CaseId): boolean {
  return CORNER_SWAP_IDS.some((swap) => swap === id);
}

function placedIn(
  state: PartlyKnownCubies,
  { corners, edges }: ReturnType<typeof markedOf>,
): number {
  return (
    corners.filter((piece) => isCornerPlaced(state, piece)).length +
    edges.filter((piece) => isEdgePlaced(state, piece)).length
  );
}

describe("every position", () => {
  it.each(FIRST_LAYER_IDS)(
    "of %s can be reached, has its marked homes placed and its unmarked ones not, and shows the case",
    (id) => {
      const { stage } = caseEntry(id);
      const cross = { corners: [], edges: FIRST_LAYER_EDGES };
      const wrong = positionsOf(id).filter((position) => {
        const { cubies, variant } = position;
        const marked = markedOf(position);
        const shown = recognise(cubies, stage, variant.home);
        return !(
          validateCubies(cubies).ok &&
          placedIn(cubies, marked) ===
            marked.corners.length + marked.edges.length &&
          placedIn(cubies, unmarkedOf(position)) === 0 &&
          (stage === "first-layer-edges" || placedIn(cubies, cross) === 4) &&
          (isSwap(id)
            ? recogniseSwap(cubies, variant.home) === id
            : shown?.case === id && shown.turnedAway === variant.turnedAway)
        );
      });
      expect(wrong).toEqual([]);
    },
  );

  it.each(FIRST_LAYER_IDS)(
    "of %s is not answered, nor would it be by turns of the free layer alone",
    (id) => {
      const alone = ["", "D", "D2", "D'"].map(turnsOf);
      const answered = positionsOf(id).filter((position) =>
        alone.some((turns) =>
          isAnswered(position, applyTurns(startOf(position), turns)),
        ),
      );
      expect(answered).toEqual([]);
    },
  );

  it("is drawn again from the same seed", () => {
    const variant = {
      home: 2,
      placed: [0],
      turnedAway: 1,
      seenFrom: 3,
    } as const;
    const drawnOnce = randomPosition(randomSource(4), "C1", variant, "down");
    const drawnAgain = randomPosition(randomSource(4), "C1", variant, "down");
    expect(drawnAgain).toEqual(drawnOnce);
  });
});

// With as many placed as can be, no unmarked piece could be placed even by
// chance, so that each free piece is even over all that is free.
describe("where many pieces are free", () => {
  const n = 3_000;

  it.each(FIRST_LAYER_IDS)(
    "each free piece of %s is as often in each free place, turned each way",
    (id) => {
      const random = randomSource(SEED);
      const variant = randomVariant(random, id, { turnedAway: true });
      const states = Array.from(
        { length: n },
        () => randomPosition(random, id, variant, "up").cubies,
      );
      expect(
        unevenPieces(states, firstLayerStateConstraint({ case: id, variant })),
      ).toEqual([]);
    },
  );

  it.each([
    "naive-shuffle",
    "uneven-twists",
    "uneven-flips",
    "parity-mended-to-one-side",
  ] as const)("the test tells a generator with one bias: %s", (bias) => {
    const random = randomSource(SEED);
    const variant = randomVariant(random, "C1");
    const constraint = firstLayerStateConstraint({ case: "C1", variant });
    const draw = (which: "none" | typeof bias) =>
      Array.from({ length: n }, () => drawBiased(random, constraint, which));
    expect(unevenPieces(draw("none"), constraint)).toEqual([]);
    expect(unevenPieces(draw(bias), constraint)).not.toEqual([]);
  });
});

// With fewer placed, the unmarked homes push their pieces elsewhere. The limit
// is that of every chi-square test here, 4.5 standard deviations.
describe("where some homes are unmarked", () => {
  const n = 3_000;
  const FEWER = [0, 1, 2] as const;

  /** A variant of a case, and states of it drawn by another generator. */
  function oneVariant(id: FirstLayerId, placedCount: (typeof FEWER)[number]) {
    const random = randomSource(SEED);
    const variant = randomVariant(random, id, { placedCount });
    const constraint = firstLayerStateConstraint({ case: id, variant });
    return {
      constraint,
      draw: (bias: Bias) =>
        Array.from({ length: n }, () => drawBiased(random, constraint, bias)),
    };
  }

  it.each(FIRST_LAYER_IDS)(
    "each free piece of %s is as often in each place as counting says, with 0, 1 and 2 others placed",
    (id) => {
      const random = randomSource(SEED);
      for (const placedCount of FEWER) {
        const variant = randomVariant(random, id, {
          placedCount,
          turnedAway: true,
        });
        const states = Array.from(
          { length: n },
          () => randomPosition(random, id, variant, "up").cubies,
        );
        const constraint = firstLayerStateConstraint({ case: id, variant });
        expect(unevenPieces(states, constraint), `${placedCount}`).toEqual([]);
      }
    },
  );

  it.each([
    "naive-shuffle",
    "uneven-twists",
    "uneven-flips",
    "parity-mended-to-one-side",
    "unwanted-placed-pieces-kept",
    "unwanted-placed-pieces-turned",
  ] as const)("the test tells a generator with one bias: %s", (bias) => {
    for (const id of ["E1", "C1"] as const)
      for (const placedCount of FEWER) {
        const { constraint, draw } = oneVariant(id, placedCount);
        expect(
          unevenPieces(draw(bias), constraint),
          `${id}, ${placedCount} placed`,
        ).not.toEqual([]);
      }
  });

  it("a second, plainer honest generator passes the same test", () => {
    for (const id of ["E1", "C1"] as const)
      for (const placedCount of FEWER) {
        const { constraint, draw } = oneVariant(id, placedCount);
        expect(unevenPieces(draw("none"), constraint)).toEqual([]);
      }
  });

  it("the test tells positions of another number of placed homes", () => {
    const random = randomSource(SEED);
    const placing = (placed: readonly HomeIndex[]) =>
      firstLayerStateConstraint({
        case: "C1",
        variant: { home: 0, placed, turnedAway: 0 },
      });
    const states = Array.from({ length: n }, () =>
      drawBiased(random, placing([2]), "none"),
    );
    expect(unevenPieces(states, placing([]))).not.toEqual([]);
  });
});

/** How often the last piece of a stage shows each case, three others placed. */
function lastPieceConstraint(stage: Stage): StateConstraint {
  const constraint: StateConstraint = {
    cornerPermutation: Uint8Array.from(ANY_STATE.cornerPermutation),
    cornerOrientation: Uint8Array.from(ANY_STATE.cornerOrientation),
    edgePermutation: Uint8Array.from(ANY_STATE.edgePermutation),
    edgeOrientation: Uint8Array.from(ANY_STATE.edgeOrientation),
    unplacedCorners: stage === "first-layer-corners" ? [cornerOfHome(0)] : [],
    unplacedEdges: stage === "first-layer-edges" ? [edgeOfHome(0)] : [],
  };
  const edges = stage === "first-layer-edges" ? [1, 2, 3] : [0, 1, 2, 3];
  for (const home of HOME_INDICES) {
    if (edges.includes(home)) {
      constraint.edgePermutation[edgeOfHome(home)] = edgeOfHome(home);
      constraint.edgeOrientation[edgeOfHome(home)] = 0;
    }
    if (stage === "first-layer-corners" && home !== 0) {
      constraint.cornerPermutation[cornerOfHome(home)] = cornerOfHome(home);
      constraint.cornerOrientation[cornerOfHome(home)] = 0;
    }
  }
  return constraint;
}

function casesDrawn(stage: Stage, n: number): (CaseId | undefined)[] {
  const random = randomSource(SEED);
  const sampler = stateSampler(lastPieceConstraint(stage));
  const state = emptyCubies();
  return Array.from({ length: n }, () => {
    sampler.drawInPlace(random, state);
    return recognise(state, stage, 0)?.case;
  });
}

describe("the last piece of a stage", () => {
  const chances = (
    often: readonly CaseId[],
    once: readonly CaseId[],
    whole: number,
  ): ReadonlyMap<CaseId | undefined, number> =>
    new Map([
      ...often.map((id) => [id, 4 / whole] as const),
      ...once.map((id) => [id, 1 / whole] as const),
    ]);
  // Source: first-layer.md (common practice): E1 and E3 4/17 each, every other 1/17.
  const edgeChances = chances(
    ["E1", "E3"],
    ["E2a", "E2b", "E4a", "E4b", "E5a", "E5b", "E6a", "E6b", "E7"],
    17,
  );
  // Source: first-layer.md (common practice): C1, C2, C3 4/14 each, C4, C5 1/14.
  const cornerChances = chances(["C1", "C2", "C3"], ["C4", "C5"], 14);

  it("shows each edge case as often as the trade says", () => {
    expect(
      chiSquare(casesDrawn("first-layer-edges", 5_000), edgeChances),
    ).toMatchObject({ passes: true });
  });

  it("shows each corner case as often as the trade says", () => {
    expect(
      chiSquare(casesDrawn("first-layer-corners", 5_000), cornerChances),
    ).toMatchObject({ passes: true });
  });

  it("the test tells cases that are drawn evenly, and the chances of the other stage", () => {
    const random = randomSource(SEED);
    const evenEdges = Array.from({ length: 5_000 }, () =>
      pick(random, [...edgeChances.keys()]),
    );
    expect(chiSquare(evenEdges, edgeChances).passes).toBe(false);
    expect(
      chiSquare(casesDrawn("first-layer-corners", 5_000), edgeChances).passes,
    ).toBe(false);
  });
});

describe("variants", () => {
  it("draw every allowed set of placed homes of a size equally often, and homes likewise", () => {
    const random = randomSource(SEED);
    for (const id of ["E1", "E8a", "C12", "S1"] as const) {
      for (const placedCount of COUNTS) {
        const count = Math.min(placedCount, mostPlaced(id));
        const cells = HOME_INDICES.flatMap((home) =>
          allowedPlacedSets(id, home, count).map(
            (set) => `${home}: ${set.join("")}`,
          ),
        );
        const drawnCells = Array.from({ length: 100 * cells.length }, () => {
          const { home, placed } = randomVariant(random, id, { placedCount });
          return `${home}: ${placed.join("")}`;
        });
        expect(chiSquare(drawnCells, evenly(cells))).toMatchObject({
          passes: true,
        });
        // Control: the first of two homes taken twice as often.
        const biased = drawnCells.map((cell, i) =>
          i % 4 === 0 ? (cells[0] ?? "") : cell,
        );
        expect(chiSquare(biased, evenly(cells)).passes).toBe(false);
      }
    }
  });

  it("keep to home in front and lined up unless opened up, and turn away only what lies in the free layer", () => {
    const random = randomSource(SEED);
    const open = { turnedAway: true, seenFromAnywhere: true };
    for (const id of FIRST_LAYER_IDS) {
      const closed = randomVariant(random, id, { homes: [2] });
      expect(closed).toMatchObject({ home: 2, turnedAway: 0, seenFrom: 0 });
      const quarters = new Set(
        Array.from(
          { length: 60 },
          () => randomVariant(random, id, open).turnedAway,
        ),
      );
      const inFreeLayer = ["E1", "E3", "C1", "C2", "C3"].includes(id);
      expect(quarters.size, id).toBe(inFreeLayer ? 4 : 1);
    }
  });

  it("are refused where the case does not allow them", () => {
    const variant = (
      home: HomeIndex,
      placed: readonly HomeIndex[],
      turnedAway: Variant["turnedAway"] = 0,
    ): Variant => ({ home, placed, turnedAway, seenFrom: 0 });
    // E8a stands at the top right: home 3 counted from home 0, 0 from home 1.
    expect(isVariantAllowed("E8a", variant(0, [1, 2]))).toBe(true);
    expect(isVariantAllowed("E8a", variant(0, [1, 3]))).toBe(false);
    expect(isVariantAllowed("E8a", variant(1, [2, 3]))).toBe(true);
    expect(isVariantAllowed("E8a", variant(1, [0]))).toBe(false);
    expect(isVariantAllowed("E1", variant(0, [0, 1]))).toBe(false);
    expect(isVariantAllowed("E1", variant(0, [2, 1]))).toBe(false);
    expect(isVariantAllowed("E1", variant(0, [1, 2, 3], 3))).toBe(true);
    expect(isVariantAllowed("E2a", variant(0, [1, 2, 3], 3))).toBe(false);
    expect(() => positionSampler("E8a", variant(0, [3]))).toThrow(
      "broken invariant",
    );
  });
});
