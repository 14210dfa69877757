import { describe, expect, it } from "vitest";
import {
  type LastLayerCase,
  lastLayerCases,
} from "../../../core/cases/last-layer-cases";
import { stateOfLook } from "../../../core/cases/last-layer-look";
import {
  lastLayerMoves,
  type PieceMove,
} from "../../../core/cases/last-layer-moves";
import { tradeNameOf } from "../../../core/cases/last-layer-names";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import {
  CORNER_FACELETS,
  EDGE_FACELETS,
  faceletFace,
  stickersOf,
} from "../../../core/cube/facelets";
import type { Face } from "../../../core/cube/faces";
import { viewFace } from "../../../core/cube/held-cube";
import { rotationAbout } from "../../../core/cube/symmetries";

const TURNED_OVER = rotationAbout("z", 2);
const CORNERS: readonly number[] = [0, 2, 8, 6];
const EDGES: readonly number[] = [1, 5, 7, 3];

function cubeOf({ lookAt }: LastLayerCase, look = 0) {
  return { cubies: stateOfLook(lookAt(look)), hold: TURNED_OVER };
}

/** Places around the top are neighbours or opposite; "2n" is an exchange of neighbours, "3" a round of three. */
function shapeOf(
  moves: readonly PieceMove[],
  places: readonly number[],
): string {
  const next = new Map(
    moves
      .filter(({ from }) => places.includes(from))
      .map(({ from, to }) => [from, to]),
  );
  const rounds: string[] = [];
  const met = new Set<number>();
  for (const start of next.keys()) {
    if (met.has(start)) continue;
    const round: number[] = [];
    for (
      let at: number | undefined = start;
      at !== undefined && !met.has(at);
      at = next.get(at)
    ) {
      met.add(at);
      round.push(at);
    }
    const [a, b] = round.map((place) => places.indexOf(place));
    const isOpposite = a !== undefined && b !== undefined && (a - b) % 2 === 0;
    rounds.push(
      round.length === 2 ? (isOpposite ? "2o" : "2n") : String(round.length),
    );
  }
  return rounds.toSorted().join(" ");
}

describe("which pieces change places", () => {
  // Common practice: what the letters of placing the last layer stand for.
  const SHAPES: Readonly<Record<string, readonly [string, string]>> = {
    Aa: ["3", ""],
    Ab: ["3", ""],
    E: ["2n 2n", ""],
    F: ["2n", "2o"],
    Ga: ["3", "3"],
    Gb: ["3", "3"],
    Gc: ["3", "3"],
    Gd: ["3", "3"],
    H: ["", "2o 2o"],
    Ja: ["2n", "2n"],
    Jb: ["2n", "2n"],
    Na: ["2o", "2o"],
    Nb: ["2o", "2o"],
    Ra: ["2n", "2n"],
    Rb: ["2n", "2n"],
    T: ["2n", "2o"],
    Ua: ["", "3"],
    Ub: ["", "3"],
    V: ["2o", "2n"],
    Y: ["2o", "2n"],
    Z: ["", "2n 2n"],
  };

  it.each(lastLayerCases("last-layer-placed"))(
    "is, for placing $code, what its letter stands for in the trade",
    (one) => {
      const name = tradeNameOf(one) ?? "";
      for (let look = 0; look < one.size; look++) {
        const moves = lastLayerMoves("last-layer-placed", cubeOf(one, look));
        expect(
          [shapeOf(moves, CORNERS), shapeOf(moves, EDGES)],
          `${name}, look ${look}`,
        ).toEqual(SHAPES[name]);
      }
    },
  );

  // The upright sides, clockwise seen from above.
  const AROUND: readonly Face[] = ["F", "L", "B", "R"];
  const placesSeenBy = (stage: LastLayerStage) => [
    ...(stage === "last-layer-edges-placed" ? [] : CORNERS),
    ...(stage === "last-layer-corners-placed-first" ||
    stage === "last-layer-corners"
      ? []
      : EDGES),
  ];

  const TURNING: readonly LastLayerStage[] = [
    "last-layer-edges-turned",
    "last-layer-corners-turned",
    "last-layer-turned",
  ];

  it.each(LAST_LAYER_STAGES.filter((stage) => !TURNING.includes(stage)))(
    "leads in %s every piece to where one turn of the layer brings all home",
    (stage) => {
      for (const one of lastLayerCases(stage)) {
        const cube = cubeOf(one, one.size - 1);
        const stickers = stickersOf(cube);
        const moves = lastLayerMoves(stage, cube);
        const destination = new Map(moves.map(({ from, to }) => [from, to]));
        expect(destination.size).toBe(moves.length);
        expect(new Set(destination.values()).size).toBe(moves.length);
        const shifts = placesSeenBy(stage).map((place) => {
          const to = destination.get(place) ?? place;
          const faceletsAt = (top: number) =>
            [...CORNER_FACELETS, ...EDGE_FACELETS].find((facelets) =>
              facelets.includes(top),
            ) ?? [];
          const indices = (faces: readonly (Face | undefined)[]) =>
            faces
              .map((face) => (face === undefined ? -1 : AROUND.indexOf(face)))
              .filter((index) => index >= 0);
          const homes = indices(
            faceletsAt(place).map((facelet) => {
              const face = stickers[facelet];
              return face && viewFace(TURNED_OVER, face);
            }),
          );
          const sides = indices(faceletsAt(to).map(faceletFace));
          // The quarter turns that take where it now goes to its home.
          return [0, 1, 2, 3].filter((k) =>
            sides.every((side) => homes.includes((side + k) % 4)),
          );
        });
        expect(shifts.every((shift) => shift.length === 1)).toBe(true);
        expect(new Set(shifts.flat()).size, one.code).toBe(1);
      }
    },
  );

  it.each(TURNING)("is not asked in %s", (stage) => {
    for (const one of lastLayerCases(stage))
      expect(lastLayerMoves(stage, cubeOf(one))).toEqual([]);
  });
});
