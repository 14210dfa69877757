import { describe, expect, it } from "vitest";
import { corner, edge } from "../../../core/cube/pieces";
import { caseConstraint } from "../../../core/cases/constraint";
import { arrangementKey, caseOrbits } from "../../../core/cases/orbits";
import { FIRST_LAYER_EDGES } from "../../../core/cases/stage";
import type { HomeIndex } from "../../../core/cases/variant";
import { PLACED_SETS } from "./placed-sets";

function countsByPlaced(
  count: (placed: readonly HomeIndex[]) => number,
): number[][] {
  return [0, 1, 2, 3].map((k) => [
    ...new Set(PLACED_SETS.filter((set) => set.length === k).map(count)),
  ]);
}

describe("cases as orbits", () => {
  // Source: check-values, "Cases" (computed): 17 = 6 + 8 + 2 + 1 edges; 15, 13
  // and 11 with one, two and three others placed.
  it("has 17, 15, 13 and 11 first-layer edges with 0 to 3 others placed, whichever they are", () => {
    const counts = countsByPlaced(
      (placed) =>
        caseOrbits(caseConstraint("first-layer-edges", placed)).length,
    );
    expect(counts).toEqual([[17], [15], [13], [11]]);
  });

  // Source: check-values, "Cases" (computed): 3 + 2 + 3 × 3 = 14.
  it("has 14, 11, 8 and 5 first-layer corners with 0 to 3 others placed, whichever they are", () => {
    const counts = countsByPlaced(
      (placed) =>
        caseOrbits(caseConstraint("first-layer-corners", placed)).length,
    );
    expect(counts).toEqual([[14], [11], [8], [5]]);
  });

  // Source: check-values, "Cases" (computed): second-layer edges 9, 7, 5, 3.
  it("counts second-layer edges as published", () => {
    const others = [edge("FL"), edge("BL"), edge("BR")];
    const counts = [0, 1, 2, 3].map(
      (k) =>
        caseOrbits({
          targetCorners: [],
          targetEdges: [edge("FR")],
          placedCorners: [
            corner("URF"),
            corner("UFL"),
            corner("ULB"),
            corner("UBR"),
          ],
          placedEdges: [...FIRST_LAYER_EDGES, ...others.slice(0, k)],
          freeLayer: "D",
        }).length,
    );
    expect(counts).toEqual([9, 7, 5, 3]);
  });

  // Source: check-values, "Cases": 167, 113, 71 computed; 41 common practice.
  it("counts pairs as published", () => {
    const slots = [
      [corner("UFL"), edge("FL")],
      [corner("ULB"), edge("BL")],
      [corner("UBR"), edge("BR")],
    ] as const;
    const counts = [0, 1, 2, 3].map(
      (k) =>
        caseOrbits({
          targetCorners: [corner("URF")],
          targetEdges: [edge("FR")],
          placedCorners: slots.slice(0, k).map(([c]) => c),
          placedEdges: [
            ...FIRST_LAYER_EDGES,
            ...slots.slice(0, k).map(([, e]) => e),
          ],
          freeLayer: "D",
        }).length,
    );
    expect(counts).toEqual([167, 113, 71, 41]);
  });

  it("meets every arrangement in exactly one orbit, and the answered one in none", () => {
    for (const stage of ["first-layer-edges", "first-layer-corners"] as const) {
      const keys = caseOrbits(caseConstraint(stage, [])).flatMap((orbit) =>
        orbit.map(arrangementKey),
      );
      // 24 = 12 positions × 2 flips = 8 positions × 3 twists; one is answered.
      expect(keys).toHaveLength(23);
      expect(new Set(keys).size).toBe(23);
    }
  });

  it("has four arrangements in the orbits of the free layer and one in all others", () => {
    const sizes = (stage: "first-layer-edges" | "first-layer-corners") =>
      caseOrbits(caseConstraint(stage, []))
        .map((orbit) => orbit.length)
        .filter((size) => size !== 1);
    expect(sizes("first-layer-edges")).toEqual([4, 4]);
    expect(sizes("first-layer-corners")).toEqual([4, 4, 4]);
  });
});
