import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compose,
  type Cubies,
  SOLVED,
  UNKNOWN,
} from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import {
  agreesWith,
  cornerPosition,
  edgePosition,
  isCornerPlaced,
  isEdgePlaced,
  knownOnly,
} from "../../../core/cube/partly-known";
import {
  type Corner,
  corner,
  CORNERS,
  type Edge,
  edge,
  EDGES,
} from "../../../core/cube/pieces";
import { arbitraryTurns } from "../notation/arbitrary-turns";
import { turnsOf } from "../notation/turns-of";
import { arbitraryCube, arbitraryCubies, START } from "./arbitrary-cubes";

const someCorners = fc.subarray([...CORNERS]).map((list) => new Set(list));
const someEdges = fc.subarray([...EDGES]).map((list) => new Set(list));

describe("partly known states", () => {
  it("turning and then forgetting is forgetting and then turning", () => {
    fc.assert(
      fc.property(
        arbitraryCube,
        arbitraryTurns(),
        someCorners,
        someEdges,
        (cube, turns, corners, edges) => {
          const forget = (cubies: Cubies) => knownOnly(cubies, corners, edges);
          const forgotten = { ...cube, cubies: forget(cube.cubies) };
          const after = applyTurns(cube, turns);
          expect(applyTurns(forgotten, turns)).toEqual({
            cubies: forget(after.cubies),
            hold: after.hold,
          });
        },
      ),
    );
  });

  it("know exactly the pieces that were named, where they are and how they are turned", () => {
    fc.assert(
      fc.property(
        arbitraryCubies,
        someCorners,
        someEdges,
        (all, corners, edges) => {
          const some = knownOnly(all, corners, edges);
          for (const piece of CORNERS) {
            const at = cornerPosition(all, piece);
            expect(cornerPosition(some, piece)).toBe(
              corners.has(piece) ? at : undefined,
            );
            expect(some.cornerOrientation[at ?? NaN]).toBe(
              corners.has(piece) ? all.cornerOrientation[at ?? NaN] : UNKNOWN,
            );
          }
          for (const piece of EDGES) {
            const at = edgePosition(all, piece);
            expect(edgePosition(some, piece)).toBe(
              edges.has(piece) ? at : undefined,
            );
            expect(some.edgeOrientation[at ?? NaN]).toBe(
              edges.has(piece) ? all.edgeOrientation[at ?? NaN] : UNKNOWN,
            );
          }
        },
      ),
    );
  });

  it("what was forgotten twice is what either forgetting left out", () => {
    fc.assert(
      fc.property(
        arbitraryCubies,
        someCorners,
        someCorners,
        someEdges,
        someEdges,
        (all, c1, c2, e1, e2) => {
          const both = <T>(a: ReadonlySet<T>, b: ReadonlySet<T>) =>
            new Set([...a].filter((piece) => b.has(piece)));
          expect(knownOnly(knownOnly(all, c1, e1), c2, e2)).toEqual(
            knownOnly(all, both<Corner>(c1, c2), both<Edge>(e1, e2)),
          );
        },
      ),
    );
  });

  it("agree with the state they come from, and with another only where the known pieces are the same", () => {
    fc.assert(
      fc.property(
        arbitraryCubies,
        arbitraryCubies,
        someCorners,
        someEdges,
        (a, b, corners, edges) => {
          const pattern = knownOnly(a, corners, edges);
          expect(agreesWith(a, pattern)).toBe(true);
          const sameCorner = (c: Corner) => {
            const at = cornerPosition(a, c) ?? NaN;
            return (
              cornerPosition(b, c) === at &&
              b.cornerOrientation[at] === a.cornerOrientation[at]
            );
          };
          const sameEdge = (e: Edge) => {
            const at = edgePosition(a, e) ?? NaN;
            return (
              edgePosition(b, e) === at &&
              b.edgeOrientation[at] === a.edgeOrientation[at]
            );
          };
          expect(agreesWith(b, pattern)).toBe(
            [...corners].every(sameCorner) && [...edges].every(sameEdge),
          );
        },
      ),
    );
  });

  it("a state that does not know a wanted piece does not agree", () => {
    const pattern = knownOnly(SOLVED, new Set([corner("URF")]), new Set());
    const nothing = knownOnly(SOLVED, new Set(), new Set());
    expect(agreesWith(nothing, pattern)).toBe(false);
    expect(agreesWith(pattern, nothing)).toBe(true);
  });
});

describe("placed pieces", () => {
  it("are in their home with every sticker matching its centre", () => {
    const twisted = applyTurns(START, turnsOf("R' D' R D R' D' R D")).cubies;
    // The sequence twists three corners; URF is in its home but twisted.
    expect(cornerPosition(twisted, corner("URF"))).toBe(corner("URF"));
    expect(isCornerPlaced(twisted, corner("URF"))).toBe(false);
    expect(isCornerPlaced(twisted, corner("UFL"))).toBe(true);

    const flipped = applyTurns(START, turnsOf("F R' D R F2")).cubies;
    expect(edgePosition(flipped, edge("UF"))).not.toBe(edge("UF"));
    expect(isEdgePlaced(flipped, edge("UF"))).toBe(false);
    expect(isEdgePlaced(flipped, edge("UB"))).toBe(true);
  });

  it("stay placed however the whole cube is turned", () => {
    fc.assert(
      fc.property(arbitraryTurns(["x", "y", "z"]), (turns) => {
        const { cubies } = applyTurns(START, turns);
        expect(CORNERS.every((c) => isCornerPlaced(cubies, c))).toBe(true);
        expect(EDGES.every((e) => isEdgePlaced(cubies, e))).toBe(true);
      }),
    );
  });

  it("that are not known are not placed", () => {
    const nothing = compose(knownOnly(SOLVED, new Set(), new Set()), SOLVED);
    expect(CORNERS.some((c) => isCornerPlaced(nothing, c))).toBe(false);
    expect(EDGES.some((e) => isEdgePlaced(nothing, e))).toBe(false);
  });
});
