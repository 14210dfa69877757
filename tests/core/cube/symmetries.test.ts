import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compose,
  invert,
  isSameState,
  SOLVED,
} from "../../../core/cube/cubies";
import { FACES, OPPOSITE_FACE } from "../../../core/cube/faces";
import { knownOnly } from "../../../core/cube/partly-known";
import {
  CORNER_FACES,
  CORNERS,
  EDGE_FACES,
  EDGES,
} from "../../../core/cube/pieces";
import {
  conjugate,
  cornerImage,
  edgeImage,
  faceImage,
  inverseSymmetry,
  isMirrored,
  LEFT_RIGHT_MIRROR,
  NO_ROTATION,
  rotationAbout,
  rotationBringing,
  ROTATIONS,
  SYMMETRIES,
  type Symmetry,
  thenSymmetry,
} from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import { turnsThroughSymmetry } from "../../../core/notation/mirror";
import {
  afterTurns,
  isSameVector,
  NORMALS,
  solvedStickers,
  type Sticker,
  type Vector,
} from "../../oracles/geometric-cube";
import { arbitraryTurns } from "../notation/arbitrary-turns";
import { arbitraryCubies } from "./arbitrary-cubes";

const symmetry = fc.constantFrom(...SYMMETRIES);

/** A symmetry as the oracle sees it: a linear map, known from where three faces go. */
function throughVectors(through: Symmetry): (v: Vector) => Vector {
  const [right, up, front] = (["R", "U", "F"] as const).map(
    (face): Vector => NORMALS[faceImage(through, face)],
  );
  return ([x, y, z]) => {
    const at = (i: 0 | 1 | 2) =>
      x * (right?.[i] ?? 0) + y * (up?.[i] ?? 0) + z * (front?.[i] ?? 0) + 0;
    return [at(0), at(1), at(2)];
  };
}

describe("the 48 symmetries", () => {
  it("are different from one another and keep opposite faces opposite", () => {
    const maps = SYMMETRIES.map((s) =>
      FACES.map((face) => faceImage(s, face)).join(""),
    );
    expect(new Set(maps).size).toBe(48);
    for (const s of SYMMETRIES)
      for (const face of FACES)
        expect(OPPOSITE_FACE[faceImage(s, face)]).toBe(
          faceImage(s, OPPOSITE_FACE[face]),
        );
  });

  it("one after another are where the faces go one after another", () => {
    const wrong = SYMMETRIES.flatMap((a) =>
      SYMMETRIES.filter((b) =>
        FACES.some(
          (face) =>
            faceImage(thenSymmetry(a, b), face) !==
            faceImage(b, faceImage(a, face)),
        ),
      ).map((b) => [a, b]),
    );
    expect(wrong).toEqual([]);
  });

  it("and their inverses cancel", () => {
    for (const a of SYMMETRIES) {
      expect(thenSymmetry(a, inverseSymmetry(a))).toBe(NO_ROTATION);
      expect(thenSymmetry(inverseSymmetry(a), a)).toBe(NO_ROTATION);
    }
  });

  it("are mirrored where they make a right hand a left one", () => {
    for (const s of SYMMETRIES) {
      const through = throughVectors(s);
      const [a, b, c] = (["R", "U", "F"] as const).map((face) =>
        through(NORMALS[face]),
      );
      const [ax = 0, ay = 0, az = 0] = a ?? [];
      const [bx = 0, by = 0, bz = 0] = b ?? [];
      const [cx = 0, cy = 0, cz = 0] = c ?? [];
      const determinant =
        ax * (by * cz - bz * cy) -
        ay * (bx * cz - bz * cx) +
        az * (bx * cy - by * cx);
      expect(determinant).toBe(isMirrored(s) ? -1 : 1);
    }
  });

  it("with up and front chosen leave one rotation, or none where the two do not meet", () => {
    for (const up of FACES)
      for (const front of FACES) {
        const rotation = rotationBringing(up, front);
        if (up === front || up === OPPOSITE_FACE[front]) {
          expect(rotation).toBeUndefined();
          continue;
        }
        const found = rotation ?? NO_ROTATION;
        expect([faceImage(found, up), faceImage(found, front)]).toEqual([
          "U",
          "F",
        ]);
      }
    expect(ROTATIONS).toHaveLength(24);
  });

  it("quarter turns about an axis add up", () => {
    for (const axis of ["x", "y", "z"] as const)
      for (const quarters of [-3, -1, 0, 1, 2, 3, 4, 7])
        expect(
          thenSymmetry(
            rotationAbout(axis, quarters),
            rotationAbout(axis, 1 - quarters),
          ),
        ).toBe(rotationAbout(axis, 1));
  });

  it("move positions with the faces they lie on", () => {
    for (const s of SYMMETRIES) {
      const images = (faces: readonly string[] | undefined, by: Symmetry) =>
        FACES.filter((face) =>
          faces?.includes(faceImage(inverseSymmetry(by), face)),
        );
      for (const at of CORNERS)
        expect(
          FACES.filter((f) => CORNER_FACES[cornerImage(s, at)]?.includes(f)),
        ).toEqual(images(CORNER_FACES[at], s));
      for (const at of EDGES)
        expect(
          FACES.filter((f) => EDGE_FACES[edgeImage(s, at)]?.includes(f)),
        ).toEqual(images(EDGE_FACES[at], s));
    }
  });
});

describe("states seen through a symmetry", () => {
  it("compose as the originals do", () => {
    fc.assert(
      fc.property(arbitraryCubies, arbitraryCubies, symmetry, (a, b, s) => {
        expect(conjugate(compose(a, b), s)).toEqual(
          compose(conjugate(a, s), conjugate(b, s)),
        );
        expect(conjugate(invert(a), s)).toEqual(invert(conjugate(a, s)));
        expect(conjugate(SOLVED, s)).toEqual(SOLVED);
      }),
    );
  });

  it("through one symmetry and then another are through both", () => {
    fc.assert(
      fc.property(arbitraryCubies, symmetry, symmetry, (a, s, t) => {
        expect(conjugate(conjugate(a, s), t)).toEqual(
          conjugate(a, thenSymmetry(s, t)),
        );
      }),
    );
  });

  it("it does not matter whether pieces are forgotten before or after", () => {
    fc.assert(
      fc.property(
        arbitraryCubies,
        symmetry,
        fc.subarray([...CORNERS]),
        fc.subarray([...EDGES]),
        (a, s, corners, edges) => {
          const before = conjugate(
            knownOnly(a, new Set(corners), new Set(edges)),
            s,
          );
          const after = knownOnly(
            conjugate(a, s),
            new Set(corners.map((c) => cornerImage(s, c))),
            new Set(edges.map((e) => edgeImage(s, e))),
          );
          expect(isSameState(before, after)).toBe(true);
        },
      ),
    );
  });

  it("a mirrored sequence does in the oracle what the mirror shows", () => {
    fc.assert(
      fc.property(arbitraryTurns(), symmetry, (turns, s) => {
        const through = throughVectors(s);
        const seen = (sticker: Sticker): string =>
          JSON.stringify([
            through(sticker.piece),
            through(sticker.colour),
            through(sticker.at),
            through(sticker.facing),
          ]);
        const plain = afterTurns(solvedStickers(), formatTurns(turns));
        const image = afterTurns(
          solvedStickers(),
          formatTurns(turnsThroughSymmetry(turns, s)),
        );
        expect(
          image
            .map((sticker) =>
              JSON.stringify([
                sticker.piece,
                sticker.colour,
                sticker.at,
                sticker.facing,
              ]),
            )
            .sort(),
        ).toEqual(plain.map(seen).sort());
      }),
    );
  });

  it("left and right exchanged are the mirror that keeps the other four faces", () => {
    expect(FACES.map((face) => faceImage(LEFT_RIGHT_MIRROR, face))).toEqual([
      "U",
      "L",
      "F",
      "D",
      "R",
      "B",
    ]);
    expect(
      isSameVector(throughVectors(LEFT_RIGHT_MIRROR)([1, 1, 1]), [-1, 1, 1]),
    ).toBe(true);
  });
});
