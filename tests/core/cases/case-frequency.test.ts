import { describe, expect, it } from "vitest";
import { caseFrequency } from "../../../core/cases/case-frequency";
import { CORNER_SWAP_IDS, type CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { FIRST_LAYER_CORNER_ROWS } from "../../../core/cases/first-layer-corners";
import { FIRST_LAYER_EDGE_ROWS } from "../../../core/cases/first-layer-edges";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { lastLayerTradeTitle } from "../../../core/cases/last-layer-words";
import {
  FIRST_LAYER_STAGES,
  type FirstLayerStage,
  SLOT_STAGES,
  type SlotStage,
} from "../../../core/cases/stage";
import { UNKNOWN } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import {
  corner,
  type CornerName,
  edge,
  type EdgeName,
} from "../../../core/cube/pieces";
import { sampleState } from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { pick, randomSource } from "../../../core/random-source";
import {
  type FaceLetter,
  NORMALS,
  type Vector,
} from "../../oracles/geometric-cube";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
} from "../../reference/published-values";
import { chiSquare, SIGMAS } from "../cube/chi-square";
import { PLACED_SETS } from "./placed-sets";
import { facingOf, pieceSeen } from "./seen-pieces";

type HomedStage = FirstLayerStage | SlotStage;

const HOMED_STAGES: readonly HomedStage[] = [
  ...FIRST_LAYER_STAGES,
  ...SLOT_STAGES,
];

/** The cases of a stage; the tasks of two corners are cases of one of them as well. */
function casesOf(stage: HomedStage | LastLayerStage): readonly CaseId[] {
  return casesOfStage(stage)
    .map(({ id }) => id)
    .filter((id) => !CORNER_SWAP_IDS.some((swap) => swap === id));
}

function sumOver(stage: HomedStage | LastLayerStage): number {
  return casesOf(stage).reduce((sum, id) => sum + caseFrequency(id), 0);
}

/** The sum over 0 to 3 others placed. */
function overOthers(of: (placed: number) => number): number {
  return [0, 1, 2, 3].reduce((sum, placed) => sum + of(placed), 0);
}

// Counted by hand: how the pieces of a home can lie with k others placed. All
// 12 edges twice; 8 corners three times; below the first layer 8 edges.
const WAYS_TO_LIE: Readonly<Record<HomedStage, (placed: number) => number>> = {
  "first-layer-edges": (k) => 2 * (12 - k),
  "first-layer-corners": (k) => 3 * (8 - k),
  "second-layer-edges": (k) => 2 * (8 - k),
  pairs: (k) => 3 * (8 - k) * 2 * (8 - k),
};

// Counted by hand, up to turns of the layer: 3 flips and 3 twists are free, 4!
// places of one kind, half of 4! where the other kind is placed, and one in
// four of those arrangements is the solved one turned on. 15,552 in all:
// check-values, "Cases".
const WAYS_OF_THE_LAYER: Readonly<Record<LastLayerStage, number>> = {
  "last-layer-edges-turned": 2 ** 3,
  "last-layer-edges-placed": 24 / 4,
  "last-layer-corners-placed": 24 / 2,
  "last-layer-corners-turned-last": 3 ** 3,
  "last-layer-corners-turned": 3 ** 3,
  "last-layer-corners-placed-first": 24 / 4,
  "last-layer-edges-placed-last": 24 / 2,
  "last-layer-turned": 2 ** 3 * 3 ** 3,
  "last-layer-placed": (24 * 24) / 2 / 4,
  "last-layer-corners": (3 ** 3 * 24) / 4,
  "last-layer-but-edges-turned": (3 ** 3 * 24 * 24) / 2 / 4,
  "last-layer-whole": 15_552,
};

describe("how often a case is met in a solve", () => {
  it.each(HOMED_STAGES)(
    "adds up, over %s and homes that are filled already, to four",
    (stage) => {
      const filled = overOthers((k) => 1 / WAYS_TO_LIE[stage](k));
      expect(sumOver(stage) + filled).toBeCloseTo(4, 12);
    },
  );

  it.each(LAST_LAYER_STAGES)(
    "adds up, over %s and a layer that is done already, to one",
    (stage) => {
      expect(sumOver(stage) + 1 / WAYS_OF_THE_LAYER[stage]).toBeCloseTo(1, 12);
    },
  );

  it("is four arrangements' share of a piece in the free layer, one's of others, none where its place is taken", () => {
    expect(caseFrequency("E1")).toBeCloseTo(
      4 * (1 / 24 + 1 / 22 + 1 / 20 + 1 / 18),
      12,
    );
    expect(caseFrequency("E7")).toBeCloseTo(
      1 / 24 + 1 / 22 + 1 / 20 + 1 / 18,
      12,
    );
    // Another's home is free in all, two thirds, one third and none of the sets.
    expect(caseFrequency("E8a")).toBeCloseTo(
      1 / 24 + 2 / 3 / 22 + 1 / 3 / 20,
      12,
    );
    expect(caseFrequency("C1")).toBeCloseTo(
      4 * (1 / 24 + 1 / 21 + 1 / 18 + 1 / 15),
      12,
    );
    // Corner and edge in two other slots: only with none placed, or the third.
    const twoTaken = casesOfStage("pairs").find(
      (entry) =>
        entry.group === "slot" && entry.shows.slotsTakenUp.length === 2,
    );
    expect(caseFrequency(twoTaken?.id ?? "E1")).toBeCloseTo(
      1 / (24 * 16) + 1 / 3 / (21 * 14),
      12,
    );
  });

  // Source: check-values, "Cases": 41 pairs (common practice) of 150
  // arrangements (computed) when three are placed.
  it("counts 41 pairs that are met whatever else is placed, each by its share of 384, 294, 216 and 150", () => {
    const always = casesOfStage("pairs").filter(
      (entry) =>
        entry.group === "slot" && entry.shows.slotsTakenUp.length === 0,
    );
    expect(always).toHaveLength(41);
    const share = 1 / 384 + 1 / 294 + 1 / 216 + 1 / 150;
    const times = always.map(({ id }) => caseFrequency(id) / share);
    const inLayer = times.filter((one) => Math.abs(one - 4) < 1e-9);
    const inSlot = times.filter((one) => Math.abs(one - 1) < 1e-9);
    // 24 with both in the last layer, 6 and 6 with one, 5 in the slot itself.
    expect([inLayer.length, inSlot.length]).toEqual([36, 5]);
  });

  // Source: last-layer.json (identity common practice, chances computed).
  it("is the published chance of each of the 57 turnings and the 21 placings", () => {
    const frequencies = (stage: "last-layer-turned" | "last-layer-placed") =>
      new Map(
        casesOf(stage).map((id) => {
          const entry = caseEntry(id);
          const title =
            entry.group === "last-layer" && lastLayerTradeTitle(entry.shows);
          return [title, caseFrequency(id)] as const;
        }),
      );
    const turned = frequencies("last-layer-turned");
    expect(LAST_LAYER_ORIENTATIONS).toHaveLength(57);
    for (const { number, of216 } of LAST_LAYER_ORIENTATIONS)
      expect(turned.get(`OLL ${number}`), `OLL ${number}`).toBeCloseTo(
        of216 / 216,
        12,
      );
    const placed = frequencies("last-layer-placed");
    // Common practice: Z and E one in 36, H, Na and Nb one in 72, others in 18.
    const rare: Readonly<Record<string, number>> = {
      Z: 36,
      E: 36,
      H: 72,
      Na: 72,
      Nb: 72,
    };
    expect(LAST_LAYER_PERMUTATIONS).toHaveLength(21);
    for (const { name } of LAST_LAYER_PERMUTATIONS)
      expect(placed.get(`PLL ${name}`), name).toBeCloseTo(
        1 / (rare[name] ?? 18),
        12,
      );
  });
});

/** Where one sticker of a piece is, and where it faces. */
interface StickerPlace {
  readonly at: Vector;
  readonly facing: Vector;
}

/** A quarter turn about the vertical axis of what lies in the bottom layer; the rest stays. */
function bottomTurned({ at, facing }: StickerPlace): StickerPlace {
  if (at[1] !== -1) return { at, facing };
  const turned = ([x, y, z]: Vector): Vector => [z, y, -x];
  return { at: turned(at), facing: turned(facing) };
}

/** A name that arrangements share exactly when turns of the bottom layer make one the other. */
function turnedName(stickers: readonly StickerPlace[]): string {
  let now = stickers;
  return [0, 1, 2, 3]
    .map(() => {
      now = now.map(bottomTurned);
      // Adding 0 makes a −0 a 0.
      return now
        .map(({ at, facing }) => [...at, ...facing].map((n) => n + 0).join(","))
        .join(" ");
    })
    .toSorted()
    .join(" / ");
}

function normalOf(letter: string): Vector {
  const normal = Object.entries(NORMALS).find(([name]) => name === letter)?.[1];
  if (normal === undefined) throw new Error(`${letter} is no side`);
  return normal;
}

/** A place and a facing as the tables write them: `DFR`, `R`. */
function written(place: string, facing: string): StickerPlace {
  const normals = [...place].map(normalOf);
  const along = (axis: 0 | 1 | 2) =>
    normals.reduce((sum, normal) => sum + normal[axis], 0);
  return { at: [along(0), along(1), along(2)], facing: normalOf(facing) };
}

/** The pieces of the reference home, corner first, each with the sticker that its case follows. */
const FOLLOWED: Readonly<
  Record<HomedStage, readonly (readonly [piece: string, sticker: FaceLetter])[]>
> = {
  "first-layer-edges": [["UF", "U"]],
  "first-layer-corners": [["UFR", "U"]],
  "second-layer-edges": [["FR", "F"]],
  pairs: [
    ["UFR", "U"],
    ["FR", "F"],
  ],
};

/** What a case shows, from how it is written down or from its code. */
function shownName(id: CaseId): string {
  const row = [...FIRST_LAYER_EDGE_ROWS, ...FIRST_LAYER_CORNER_ROWS].find(
    (one) => one.id === id,
  );
  if (row !== undefined)
    return turnedName([written(row.where.at, row.where.facing)]);
  const entry = caseEntry(id);
  if (entry.group !== "slot") throw new Error(`${id} has no home`);
  return turnedName(
    entry.shows.code.split(" ").map((part) => {
      const [place = "", facing = ""] = part.split("-");
      return written(place, facing);
    }),
  );
}

const CROSS: readonly EdgeName[] = ["UF", "UL", "UB", "UR"];
const TOP_CORNERS: readonly CornerName[] = ["URF", "UFL", "ULB", "UBR"];
const MIDDLE: readonly EdgeName[] = ["FR", "FL", "BL", "BR"];

interface PlacedNames {
  readonly corners: readonly CornerName[];
  readonly edges: readonly EdgeName[];
}

/** What is placed in a stage with some other homes filled, by the names of the pieces. */
function placedNames(
  stage: HomedStage,
  others: readonly number[],
): PlacedNames {
  const those = <Name>(names: readonly Name[]) =>
    names.filter((_, home) => others.includes(home));
  switch (stage) {
    case "first-layer-edges":
      return { corners: [], edges: those(CROSS) };
    case "first-layer-corners":
      return { corners: those(TOP_CORNERS), edges: CROSS };
    case "second-layer-edges":
      return { corners: TOP_CORNERS, edges: [...CROSS, ...those(MIDDLE)] };
    case "pairs":
      return {
        corners: those(TOP_CORNERS),
        edges: [...CROSS, ...those(MIDDLE)],
      };
  }
}

const SEED = 505;

/** Pictures of uniformly random cubes, drawn with 0 to 3 others placed, each number and each set as often. */
function drawnCubes(stage: HomedStage, n: number): readonly string[] {
  const random = randomSource(SEED);
  return Array.from({ length: n }, () => {
    const count = random.below(4);
    const others = pick(
      random,
      PLACED_SETS.filter((set) => set.length === count),
    );
    const constraint = {
      cornerPermutation: new Uint8Array(8).fill(UNKNOWN),
      cornerOrientation: new Uint8Array(8).fill(UNKNOWN),
      edgePermutation: new Uint8Array(12).fill(UNKNOWN),
      edgeOrientation: new Uint8Array(12).fill(UNKNOWN),
      unplacedCorners: [],
      unplacedEdges: [],
    };
    const { corners, edges } = placedNames(stage, others);
    for (const piece of corners.map(corner)) {
      constraint.cornerPermutation[piece] = piece;
      constraint.cornerOrientation[piece] = 0;
    }
    for (const piece of edges.map(edge)) {
      constraint.edgePermutation[piece] = piece;
      constraint.edgeOrientation[piece] = 0;
    }
    return formatFacelets({
      cubies: sampleState(random, constraint),
      hold: NO_ROTATION,
    });
  });
}

/** What the reference home's pieces show on a picture, read by the geometric oracle alone. */
function seenName(stage: HomedStage, facelets: string): string {
  return turnedName(
    FOLLOWED[stage].map(([letters, sticker]) => {
      const piece = pieceSeen(facelets, letters);
      return { at: piece.at, facing: facingOf(piece, sticker) };
    }),
  );
}

/** The chance of everything that a home can show when one of the four is drawn. */
function drawnChances(
  stage: HomedStage,
  frequency: (id: CaseId) => number,
): ReadonlyMap<string, number> {
  const filled = turnedName(
    FOLLOWED[stage].map(([piece, sticker]) => written(piece, sticker)),
  );
  const cases = casesOf(stage);
  const sum = cases.reduce((all, id) => all + frequency(id), 0);
  return new Map([
    ...cases.map((id) => [shownName(id), frequency(id) / 4] as const),
    [filled, 1 - sum / 4],
  ]);
}

describe(`how often a case is met, on cubes drawn at random (seed ${SEED})`, () => {
  // At least 20 cubes are expected of the rarest case of each stage.
  it.each([
    ["first-layer-edges", 4_000],
    ["first-layer-corners", 4_000],
    ["second-layer-edges", 4_000],
    ["pairs", 24_000],
  ] as const)("agrees with what is seen of %s", (stage, n) => {
    const seen = drawnCubes(stage, n).map((one) => seenName(stage, one));
    const found = chiSquare(seen, drawnChances(stage, caseFrequency));
    expect(found).toMatchObject({ passes: true, strays: 0 });
    expect(found.smallestExpected).toBeGreaterThanOrEqual(20);
    // Told from a solve in which no other home was ever filled.
    const sizeOf = (id: CaseId) => new Set(shownName(id).split(" / ")).size;
    const other = chiSquare(
      seen,
      drawnChances(stage, (id) => (4 * sizeOf(id)) / WAYS_TO_LIE[stage](0)),
    );
    expect(other.passes).toBe(false);
  });

  it("agrees with how often two corners stand in each other's homes", () => {
    const n = 20_000;
    const cubes = drawnCubes("first-layer-corners", n);
    const swapped = (partner: string, letters: string) =>
      cubes.filter((facelets) => {
        const own = pieceSeen(facelets, "UFR").at.join();
        const other = pieceSeen(facelets, letters).at.join();
        return (
          own === written(partner, "U").at.join() &&
          other === written("UFR", "U").at.join()
        );
      }).length;
    const counts = {
      S1: swapped("UFL", "UFL") + swapped("UBR", "UBR"),
      S2: swapped("UBL", "UBL"),
    };
    for (const id of CORNER_SWAP_IDS) {
      const chance = caseFrequency(id) / 4;
      const spread = Math.sqrt(n * chance * (1 - chance));
      expect(Math.abs(counts[id] - n * chance), id).toBeLessThan(
        SIGMAS * spread,
      );
      expect(counts[id]).toBeGreaterThan(50);
    }
  });
});
