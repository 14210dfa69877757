import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Cubies,
  cubiesFrom,
  isSameState,
  SOLVED,
} from "../../../core/cube/cubies";
import {
  centreFacelet,
  CORNER_FACELETS,
  EDGE_FACELETS,
  formatFacelets,
  stickersOf,
  viewFacelet,
} from "../../../core/cube/facelets";
import { type Face, FACES } from "../../../core/cube/faces";
import type { HeldCube } from "../../../core/cube/held-cube";
import { CORNER_FACES } from "../../../core/cube/pieces";
import {
  cubeFromStickers,
  type CubeError,
  parseFacelets,
  validateCubies,
} from "../../../core/cube/validity";
import { arbitraryCube, START } from "./arbitrary-cubes";

const twoCorners = fc.uniqueArray(fc.nat(7), { minLength: 2, maxLength: 2 });
const twoEdges = fc.uniqueArray(fc.nat(11), { minLength: 2, maxLength: 2 });

/** A changed copy of a cube's pieces. */
function changed(
  { cubies, hold }: HeldCube<Cubies>,
  change: (copy: Cubies) => void,
): HeldCube<Cubies> {
  const copy = cubiesFrom(
    [...cubies.cornerPermutation],
    [...cubies.cornerOrientation],
    [...cubies.edgePermutation],
    [...cubies.edgeOrientation],
  );
  change(copy);
  return { cubies: copy, hold };
}

function swap(array: Uint8Array, [i = 0, j = 0]: readonly number[]): void {
  const kept = array[i] ?? 0;
  array[i] = array[j] ?? 0;
  array[j] = kept;
}

function turn(array: Uint8Array, at: number, by: number, full: 2 | 3): void {
  array[at] = ((array[at] ?? 0) + by) % full;
}

function errorOf(cube: HeldCube<Cubies>): CubeError | undefined {
  const byPieces = validateCubies(cube.cubies);
  const byStickers = parseFacelets(formatFacelets(cube));
  // Both ways in must say the same.
  expect(byStickers.ok ? undefined : byStickers.error).toEqual(
    byPieces.ok ? undefined : byPieces.error,
  );
  return byPieces.ok ? undefined : byPieces.error;
}

describe("pieces that can be reached by turning or not", () => {
  it("one twisted corner is called a twisted corner, whatever the rest", () => {
    fc.assert(
      fc.property(
        arbitraryCube,
        fc.nat(7),
        fc.constantFrom(1, 2),
        (cube, at, by) => {
          const twisted = changed(cube, (copy) =>
            turn(copy.cornerOrientation, at, by, 3),
          );
          expect(errorOf(twisted)).toEqual({ code: "corner-twisted" });
        },
      ),
    );
  });

  it("one flipped edge is called a flipped edge", () => {
    fc.assert(
      fc.property(arbitraryCube, fc.nat(11), (cube, at) => {
        const flipped = changed(cube, (copy) =>
          turn(copy.edgeOrientation, at, 1, 2),
        );
        expect(errorOf(flipped)).toEqual({ code: "edge-flipped" });
      }),
    );
  });

  it("two swapped corners, or two swapped edges, are called swapped pieces", () => {
    fc.assert(
      fc.property(arbitraryCube, twoCorners, twoEdges, (cube, cc, ee) => {
        const corners = changed(cube, (copy) =>
          swap(copy.cornerPermutation, cc),
        );
        const edges = changed(cube, (copy) => swap(copy.edgePermutation, ee));
        expect(errorOf(corners)).toEqual({ code: "pieces-swapped" });
        expect(errorOf(edges)).toEqual({ code: "pieces-swapped" });
      }),
    );
  });

  it("changes that turning could have made are no error", () => {
    fc.assert(
      fc.property(arbitraryCube, twoCorners, twoEdges, (cube, cc, ee) => {
        const [a = 0, b = 0] = cc;
        const [c = 0, d = 0] = ee;
        const possible = changed(cube, (copy) => {
          turn(copy.cornerOrientation, a, 1, 3);
          turn(copy.cornerOrientation, b, 2, 3);
          turn(copy.edgeOrientation, c, 1, 2);
          turn(copy.edgeOrientation, d, 1, 2);
          swap(copy.cornerPermutation, cc);
          swap(copy.edgePermutation, ee);
        });
        expect(errorOf(possible)).toBeUndefined();
      }),
    );
  });

  it("of all 12 ways to put a cube together one can be reached", () => {
    let reachable = 0;
    for (let way = 0; way < 12; way++) {
      const cube = changed(START, (copy) => {
        turn(copy.cornerOrientation, 0, way % 3, 3);
        turn(copy.edgeOrientation, 0, Math.floor(way / 3) % 2, 2);
        if (way >= 6) swap(copy.edgePermutation, [0, 1]);
      });
      if (errorOf(cube) === undefined) reachable++;
    }
    expect(reachable).toBe(1);
    expect(isSameState(SOLVED, START.cubies)).toBe(true);
  });
});

const SOLVED_TEXT = FACES.map((face) => face.repeat(9)).join("");

function withStickers(
  cube: HeldCube<Cubies>,
  change: (stickers: Face[]) => void,
): ReturnType<typeof cubeFromStickers> {
  const stickers = stickersOf(cube).filter((face) => face !== undefined);
  change(stickers);
  return cubeFromStickers(stickers);
}

function exchange(stickers: Face[], i: number, j: number): void {
  const kept = stickers[i];
  const other = stickers[j];
  if (kept === undefined || other === undefined) throw new RangeError();
  stickers[i] = other;
  stickers[j] = kept;
}

describe("stickers that no cube can show", () => {
  it.each([
    ["", 0],
    [SOLVED_TEXT.slice(1), 53],
    [SOLVED_TEXT + "U", 55],
  ])("a count other than 54 is said: %#", (text, count) => {
    expect(parseFacelets(text)).toEqual({
      ok: false,
      error: { code: "facelet-count", count },
    });
  });

  it("a count other than 54 is said for stickers as well", () => {
    expect(cubeFromStickers(["U", "R"])).toEqual({
      ok: false,
      error: { code: "facelet-count", count: 2 },
    });
  });

  it("a letter that is no face is named with its place", () => {
    expect(parseFacelets(SOLVED_TEXT.replace("R", "w"))).toEqual({
      ok: false,
      error: { code: "unknown-sticker", facelet: 9, text: "w" },
    });
    expect(parseFacelets(SOLVED_TEXT.replace("B", "🙂"))).toEqual({
      ok: false,
      error: { code: "unknown-sticker", facelet: 45, text: "🙂" },
    });
  });

  it("a colour that is there too often or too seldom is named with its count", () => {
    fc.assert(
      fc.property(arbitraryCube, fc.nat(53), (cube, at) => {
        const result = withStickers(cube, (stickers) => {
          stickers[at] = stickers[at] === "U" ? "R" : "U";
        });
        expect(result.ok).toBe(false);
        if (result.ok) return;
        expect(result.error.code).toBe("sticker-count");
        if (result.error.code !== "sticker-count") return;
        expect([8, 10]).toContain(result.error.count);
      }),
    );
    expect(parseFacelets("R" + SOLVED_TEXT.slice(1))).toEqual({
      ok: false,
      error: { code: "sticker-count", face: "U", count: 8 },
    });
  });

  it("any two centres exchanged are impossible centres: the cube is mirrored or wrong", () => {
    fc.assert(
      fc.property(
        arbitraryCube,
        fc.shuffledSubarray([...FACES], { minLength: 2, maxLength: 2 }),
        (cube, [a = "U", b = "D"]) => {
          const result = withStickers(cube, (stickers) =>
            exchange(stickers, centreFacelet(a), centreFacelet(b)),
          );
          expect(result).toEqual({ ok: false, error: { code: "centres" } });
        },
      ),
    );
  });

  it("two centres of one colour are impossible centres", () => {
    const result = withStickers(START, (stickers) =>
      exchange(stickers, centreFacelet("F"), 8),
    );
    expect(result).toEqual({ ok: false, error: { code: "centres" } });
  });

  it("three centres moved round alone are impossible centres", () => {
    const result = withStickers(START, (stickers) => {
      exchange(stickers, centreFacelet("U"), centreFacelet("R"));
      exchange(stickers, centreFacelet("R"), centreFacelet("F"));
    });
    expect(result).toEqual({ ok: false, error: { code: "centres" } });
  });

  it("all centres turned as one are a held cube: a third turn can be reached, a quarter is odd", () => {
    const third = withStickers(START, (stickers) => {
      exchange(stickers, centreFacelet("U"), centreFacelet("R"));
      exchange(stickers, centreFacelet("R"), centreFacelet("F"));
      exchange(stickers, centreFacelet("D"), centreFacelet("L"));
      exchange(stickers, centreFacelet("L"), centreFacelet("B"));
    });
    expect(third.ok).toBe(true);
    const quarter = withStickers(START, (stickers) => {
      exchange(stickers, centreFacelet("F"), centreFacelet("R"));
      exchange(stickers, centreFacelet("R"), centreFacelet("B"));
      exchange(stickers, centreFacelet("B"), centreFacelet("L"));
    });
    expect(quarter).toEqual({ ok: false, error: { code: "pieces-swapped" } });
  });

  it("a piece that no cube has is named with its place and colours, however the cube is held", () => {
    fc.assert(
      fc.property(arbitraryCube, fc.nat(7), fc.nat(2), (cube, at, k) => {
        // Two stickers of one corner exchanged: its mirror image.
        const places = (CORNER_FACELETS[at] ?? []).map((facelet) =>
          viewFacelet(cube.hold, facelet),
        );
        const result = withStickers(cube, (stickers) =>
          exchange(stickers, places[k] ?? NaN, places[(k + 1) % 3] ?? NaN),
        );
        expect(result.ok).toBe(false);
        if (result.ok) return;
        expect(result.error.code).toBe("unknown-piece");
        if (result.error.code !== "unknown-piece") return;
        expect(result.error.facelets).toEqual(places);
        const shown = [...result.error.faces].sort();
        const own = CORNER_FACES[cube.cubies.cornerPermutation[at] ?? NaN];
        expect(shown).toEqual([...(own ?? [])].sort());
      }),
    );
  });

  it("an edge of two opposite colours is a piece that no cube has", () => {
    // The F sticker of UF exchanged with the D sticker of DR.
    const result = withStickers(START, (stickers) => {
      exchange(
        stickers,
        EDGE_FACELETS[1]?.[1] ?? NaN,
        EDGE_FACELETS[4]?.[0] ?? NaN,
      );
    });
    expect(result).toEqual({
      ok: false,
      error: { code: "unknown-piece", facelets: [7, 19], faces: ["U", "D"] },
    });
  });

  it("a piece that is there twice is named where it is met again", () => {
    // The F sticker of UF exchanged with the R sticker of DR: a second UR.
    const result = withStickers(START, (stickers) => {
      exchange(
        stickers,
        EDGE_FACELETS[1]?.[1] ?? NaN,
        EDGE_FACELETS[4]?.[1] ?? NaN,
      );
    });
    expect(result).toEqual({
      ok: false,
      error: { code: "duplicate-piece", facelets: [7, 19], faces: ["U", "R"] },
    });
  });
});
