import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isSameState, SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import {
  conjugate,
  isMirrored,
  NO_ROTATION,
  rotationAbout,
  SYMMETRIES,
} from "../../../core/cube/symmetries";
import { type Turn, turnAxis } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { inverseTurns } from "../../../core/notation/inverse";
import {
  type Mirror,
  mirrorTurns,
  MIRRORS,
  turnsThroughSymmetry,
} from "../../../core/notation/mirror";
import { simplifyTurns } from "../../../core/notation/simplify";
import { arbitraryTurns } from "./arbitrary-turns";
import { turnsOf } from "./turns-of";

const START: HeldCube<typeof SOLVED> = { cubies: SOLVED, hold: NO_ROTATION };

function seenAfter(turns: readonly Turn[]): string {
  return formatFacelets(applyTurns(START, turns));
}

describe("inverse", () => {
  it("an algorithm followed by its inverse leaves every state unchanged", () => {
    fc.assert(
      fc.property(arbitraryTurns(), arbitraryTurns(), (before, turns) => {
        expect(seenAfter([...before, ...turns, ...inverseTurns(turns)])).toBe(
          seenAfter(before),
        );
      }),
    );
  });

  it("the inverse of the inverse is the sequence itself", () => {
    fc.assert(
      fc.property(arbitraryTurns(), (turns) => {
        expect(inverseTurns(inverseTurns(turns))).toEqual(turns);
      }),
    );
  });

  it("writes the last turn first", () => {
    expect(formatTurns(inverseTurns(turnsOf("R U2 Rw' x")))).toBe(
      "x' Rw U2 R'",
    );
  });
});

describe("simplify", () => {
  it.each([
    ["R R", "R2"],
    ["R R'", ""],
    ["R2 R2 U", "U"],
    ["R L R", "R2 L"],
    ["U R R' U", "U2"],
    ["U R L R' L' U'", ""],
    ["R x R'", "x"],
    ["Rw R", "Rw R"],
    ["R U R'", "R U R'"],
  ])("makes %j into %j", (text, shorter) => {
    expect(formatTurns(simplifyTurns(turnsOf(text)))).toBe(shorter);
  });

  it("never changes what a sequence does", () => {
    fc.assert(
      fc.property(arbitraryTurns(), (turns) => {
        expect(seenAfter(simplifyTurns(turns))).toBe(seenAfter(turns));
      }),
    );
  });

  it("leaves no layer turned twice within turns about one axis", () => {
    fc.assert(
      fc.property(arbitraryTurns(["R", "L", "M", "x", "U"]), (turns) => {
        const result = simplifyTurns(turns);
        expect(simplifyTurns(result)).toEqual(result);
        let run: string[] = [];
        result.forEach((turn, i) => {
          const earlier = result[i - 1];
          if (earlier && turnAxis(earlier) !== turnAxis(turn)) run = [];
          expect(run).not.toContain(turn.layer);
          run.push(turn.layer);
        });
      }),
    );
  });

  it("takes everything away from a sequence followed by its inverse", () => {
    fc.assert(
      fc.property(arbitraryTurns(), (turns) => {
        expect(simplifyTurns([...turns, ...inverseTurns(turns)])).toEqual([]);
      }),
    );
  });
});

describe("mirrors and symmetries", () => {
  it.each<[string, Mirror, string]>([
    // Common practice: left-handed twins of right-handed ways.
    ["D' R' D R", "left-right", "D L D' L'"],
    ["R' D' R", "left-right", "L D L'"],
    ["M E S", "left-right", "M E' S'"],
    ["x y z", "left-right", "x y' z'"],
    ["Rw2 Uw", "left-right", "Lw2 Uw'"],
    ["R U F", "top-bottom", "R' D' F'"],
    ["M E S", "top-bottom", "M' E S'"],
    ["R U F", "front-back", "R' U' B'"],
    ["x y z", "front-back", "x' y' z"],
  ])("shows %j in the %s mirror as %j", (text, mirror, image) => {
    expect(formatTurns(mirrorTurns(turnsOf(text), mirror))).toBe(image);
  });

  it("turns a way over for the first layer held down", () => {
    // The lead's convention: `R' D' R` held up is `L' U' L` held down.
    expect(
      formatTurns(
        turnsThroughSymmetry(turnsOf("R' D' R"), rotationAbout("z", 2)),
      ),
    ).toBe("L' U' L");
  });

  it("mirrored twice, a sequence is itself", () => {
    const mirror = fc.constantFrom(...(Object.keys(MIRRORS) as Mirror[]));
    fc.assert(
      fc.property(arbitraryTurns(), mirror, (turns, by) => {
        expect(mirrorTurns(mirrorTurns(turns, by), by)).toEqual(turns);
      }),
    );
  });

  it("the image of a sequence does to the image what the sequence does", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(),
        fc.constantFrom(...SYMMETRIES),
        (turns, symmetry) => {
          const body = turns.filter(({ layer }) => /^[URFDLB]$/.test(layer));
          const plain = applyTurns(START, body).cubies;
          const image = turnsThroughSymmetry(body, symmetry);
          expect(
            isSameState(
              applyTurns(START, image).cubies,
              conjugate(plain, symmetry),
            ),
          ).toBe(true);
        },
      ),
    );
  });

  it("with slices and whole-cube turns, the image is the sequence on a cube held another way", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(),
        fc.constantFrom(...SYMMETRIES.filter((s) => !isMirrored(s))),
        (turns, symmetry) => {
          const rotation = SYMMETRIES.indexOf(symmetry);
          const turnedFirst = ROTATING[rotation] ?? [];
          // Rotate, make the image: the same as make the turns, then rotate.
          expect(
            seenAfter([
              ...turnedFirst,
              ...turnsThroughSymmetry(turns, symmetry),
            ]),
          ).toBe(seenAfter([...turns, ...turnedFirst]));
        },
      ),
    );
  });
});

/** For each rotation, whole-cube turns that make it. */
const ROTATING: readonly (readonly Turn[])[] = (() => {
  const found = new Map<number, readonly Turn[]>();
  for (const text of ["", "x", "x2", "x'", "z", "z'"])
    for (const about of ["", " y", " y2", " y'"]) {
      const turns = turnsOf(text + about);
      found.set(applyTurns(START, turns).hold, turns);
    }
  return Array.from({ length: 24 }, (_, hold) => found.get(hold) ?? []);
})();
