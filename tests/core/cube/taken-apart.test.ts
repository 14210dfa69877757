import Cube from "cubejs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { readEnteredStickers } from "../../../core/cube/entered-stickers";
import { faceletFace, formatFacelets } from "../../../core/cube/facelets";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { validateCubies } from "../../../core/cube/validity";
import {
  anyHeldCube,
  colouredStickers,
  FACE_COLOURS,
  randomCubies,
  reassembled,
} from "./entered-cubes";

describe("a cube that was taken apart", () => {
  it("is named rightly in each of the 12 classes, in any hold", () => {
    fc.assert(
      fc.property(
        anyHeldCube,
        fc.nat(2),
        fc.boolean(),
        fc.constantFrom("none", "corners", "edges"),
        fc.nat(7),
        fc.nat(11),
        (cube, thirds, isFlipped, swapped, corner, edge) => {
          const apart = reassembled(cube, {
            corner,
            thirds,
            edge,
            isFlipped,
            ...(swapped === "corners" && {
              swappedCorners: [corner, (corner + 3) % 8] as const,
            }),
            ...(swapped === "edges" && {
              swappedEdges: [edge, (edge + 5) % 12] as const,
            }),
          });
          const read = readEnteredStickers(
            colouredStickers(apart, FACE_COLOURS),
          );
          const broken = [
            ...(thirds === 0 ? [] : ["corner-twisted"]),
            ...(isFlipped ? ["edge-flipped"] : []),
            ...(swapped === "none" ? [] : ["pieces-swapped"]),
          ];
          expect(read.ok).toBe(broken.length === 0);
          if (!read.ok && thirds !== 0 && swapped === "none" && !isFlipped)
            expect(read.error).toMatchObject({ cornerThirds: thirds });
          if (!read.ok)
            expect(read.error).toMatchObject({
              code: "put-together-wrongly",
              broken,
            });
          // The older check says the first of the same things.
          const older = validateCubies(apart.cubies);
          expect(older.ok ? [] : [older.error.code]).toEqual(
            broken.slice(0, 1),
          );
        },
      ),
    );
  });

  it("is possible exactly where cubejs reads pieces that keep all three laws", () => {
    const sum = (values: readonly number[]) =>
      values.reduce((a, b) => a + b, 0);
    /** By cycles, another way than core's. */
    const isOdd = (permutation: readonly number[]) => {
      const met = new Set<number>();
      let steps = 0;
      for (const start of permutation) {
        let at = start;
        while (!met.has(at)) {
          met.add(at);
          at = permutation[at] ?? NaN;
          if (!met.has(at)) steps++;
        }
      }
      return steps % 2 === 1;
    };
    let possible = 0;
    fc.assert(
      fc.property(
        randomCubies,
        fc.nat(2),
        fc.boolean(),
        fc.boolean(),
        (cubies, thirds, isFlipped, isSwapped) => {
          const apart = reassembled(
            { cubies, hold: NO_ROTATION },
            {
              thirds,
              isFlipped,
              ...(isSwapped && { swappedEdges: [2, 9] as const }),
            },
          );
          const { cp, co, ep, eo } = Cube.fromString(
            formatFacelets(apart),
          ).toJSON();
          const canBe =
            sum(co) % 3 === 0 && sum(eo) % 2 === 0 && isOdd(cp) === isOdd(ep);
          const { ok } = readEnteredStickers(
            colouredStickers(apart, FACE_COLOURS),
          );
          expect(ok).toBe(canBe);
          if (ok) possible++;
        },
      ),
      { numRuns: 600 },
    );
    // About one in twelve: the comparison saw both outcomes.
    expect(possible).toBeGreaterThan(20);
    expect(possible).toBeLessThan(110);
  });

  it("one corner alone is pointed at where everything else is solved", () => {
    for (const corner of [0, 5]) {
      const twisted = reassembled(
        { cubies: SOLVED, hold: NO_ROTATION },
        { corner, thirds: 1 },
      );
      const read = readEnteredStickers(colouredStickers(twisted, FACE_COLOURS));
      expect(read.ok).toBe(false);
      if (read.ok) return;
      const fault = read.error;
      expect(fault).toMatchObject({
        code: "put-together-wrongly",
        broken: ["corner-twisted"],
        cornerThirds: 1,
      });
      const [slip] = "slips" in fault ? fault.slips : [];
      expect(slip).toMatchObject({ kind: "piece-turned", placed: 20 });
      expect(new Set(slip?.facelets.map(faceletFace)).size).toBe(3);
    }
  });
});
