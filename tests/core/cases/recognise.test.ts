import { describe, expect, it } from "vitest";
import {
  FIRST_LAYER_IDS,
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { FIRST_LAYER_TABLE, caseEntry } from "../../../core/cases/case-table";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import {
  isCrossPlaced,
  recogniseSwap,
} from "../../../core/cases/recognise-first-layer";
import { situationOf } from "../../../core/cases/situation";
import { STAGES } from "../../../core/cases/stage";
import { HOME_INDICES } from "../../../core/cases/variant";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { knownOnly } from "../../../core/cube/partly-known";
import {
  conjugate,
  LEFT_RIGHT_MIRROR,
  NO_ROTATION,
  rotationAbout,
  thenSymmetry,
} from "../../../core/cube/symmetries";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";

const SEED = 11;
const SINGLE = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

describe("recognising", () => {
  it.each(SINGLE)(
    "finds %s again in 1,000 random positions of it, wholly or partly known",
    (id) => {
      const random = randomSource(SEED);
      const { stage } = caseEntry(id);
      const missed = Array.from({ length: 1_000 }, (_, i) => {
        const variant = randomVariant(random, id, { turnedAway: true });
        const position = randomPosition(random, id, variant, "up");
        return i % 2 === 0 ? position : partlyKnownPosition(position, "named");
      }).filter(({ cubies, variant: { home, turnedAway } }) => {
        const shown = recognise(cubies, stage, home);
        return shown?.case !== id || shown.turnedAway !== turnedAway;
      });
      expect(missed).toEqual([]);
    },
  );

  it("says for every home what it shows, and leaves out those that are placed", () => {
    const variant = {
      home: 1,
      placed: [0, 3],
      turnedAway: 2,
      seenFrom: 0,
    } as const;
    const { cubies } = randomPosition(randomSource(SEED), "C3", variant, "up");
    const shown = HOME_INDICES.map((home) =>
      recognise(cubies, "first-layer-corners", home),
    );
    expect(shown.map((one) => one !== undefined)).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect(shown[1]).toEqual({ case: "C3", turnedAway: 2 });
  });

  it("finds both tasks of two corners again, from the home they were drawn for", () => {
    const random = randomSource(SEED);
    for (const id of ["S1", "S2"] as const) {
      for (let i = 0; i < 200; i++) {
        const variant = randomVariant(random, id);
        const { cubies } = randomPosition(random, id, variant, "up");
        expect(recogniseSwap(cubies, variant.home)).toBe(id);
      }
    }
  });

  it("names nothing on a solved cube", () => {
    for (const stage of STAGES)
      for (const home of HOME_INDICES)
        expect(recognise(SOLVED, stage, home)).toBeUndefined();
    expect(recogniseSwap(SOLVED, 0)).toBeUndefined();
    expect(isCrossPlaced(SOLVED)).toBe(true);
  });

  it("names nothing where the piece is not known", () => {
    const nothing = knownOnly(SOLVED, new Set(), new Set());
    expect(recognise(nothing, "first-layer-edges", 0)).toBeUndefined();
    expect(recognise(nothing, "first-layer-corners", 0)).toBeUndefined();
    expect(isCrossPlaced(nothing)).toBe(false);
  });

  // Each written here as the turns that make it on a solved cube: the inverse
  // of a way of first-layer.md.
  it.each([
    ["F2", "E1", 0],
    ["F2 D", "E1", 1],
    ["F2 D2", "E1", 2],
    ["F2 D'", "E1", 3],
    ["F", "E2a", 0],
    ["R F R' D' D2", "E3", 2],
    ["F R", "E8a", 0],
  ] as const)(
    "after %s the edge shows %s, turned away by %i",
    (text, id, away) => {
      const cube = { cubies: SOLVED, hold: NO_ROTATION };
      const { cubies } = applyTurns(cube, turnsOf(text));
      expect(recognise(cubies, "first-layer-edges", 0)).toEqual({
        case: id,
        turnedAway: away,
      });
    },
  );
});

describe("the table", () => {
  it("has every id once, in the order of the ids", () => {
    expect(FIRST_LAYER_TABLE.map(({ id }) => id)).toEqual(FIRST_LAYER_IDS);
  });

  it("makes twins of mirror images, and of nothing else", () => {
    // Edges: left and right exchanged. Corners: front and right exchanged.
    const diagonal = thenSymmetry(LEFT_RIGHT_MIRROR, rotationAbout("y", -1));
    const random = randomSource(SEED);
    for (const id of SINGLE) {
      const { twin, stage } = caseEntry(id);
      const mirror =
        stage === "first-layer-edges" ? LEFT_RIGHT_MIRROR : diagonal;
      const variant = randomVariant(random, id, { homes: [0] });
      const { cubies } = randomPosition(random, id, variant, "up");
      const mirrored = conjugate(cubies, mirror);
      expect(recognise(mirrored, stage, 0)?.case, id).toBe(twin);
      expect(caseEntry(twin).twin).toBe(id);
    }
  });

  // Source: first-layer.md: edges in the order E1 E2a E2b E3 E4a E4b E7 E5a E5b
  // E6a E6b, corners C1 to C7 (common practice).
  it("orders what a starter learns, and leaves the rest for later", () => {
    const order = (stage: "first-layer-edges" | "first-layer-corners") =>
      FIRST_LAYER_TABLE.filter((entry) => entry.stage === stage && entry.order)
        .toSorted((a, b) => (a.order ?? 0) - (b.order ?? 0))
        .map(({ id }) => id)
        .join(" ");
    expect(order("first-layer-edges")).toBe(
      "E1 E2a E2b E3 E4a E4b E7 E5a E5b E6a E6b",
    );
    expect(order("first-layer-corners")).toBe("C1 C2 C3 C4 C5 C6 C7");
  });

  it("gives each case one situation, different from every other's", () => {
    const situations = FIRST_LAYER_IDS.map((id) =>
      JSON.stringify(situationOf(id)),
    );
    expect(new Set(situations).size).toBe(FIRST_LAYER_IDS.length);
  });
});
