import { describe, expect, it } from "vitest";
import { FACES, OPPOSITE_FACE } from "../../../core/cube/faces";
import {
  COLOUR_NAMES,
  COLOUR_SETS,
  colourHex,
  type ColourScheme,
  isColourScheme,
  OLDER_SCHEME,
  PAINTS,
  schemeLetters,
  isDoubtfulScheme,
  isSameCube,
  schemeWithFirstColour,
  USUAL_SCHEME,
} from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";

type Channels = readonly [number, number, number];
type Matrix = readonly [Channels, Channels, Channels];

// Machado, Oliveira, Fernandes, "A physiologically-based model for simulation
// of color vision deficiency", IEEE TVCG 15(6), 2009, severity 1.0; the
// numbers from memory.
const VISIONS: Readonly<Record<string, Matrix>> = {
  common: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function linear(hex: string, at: number): number {
  const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/** CIE L*a*b* (D65) of a colour as somebody with this vision sees it. */
function seen(hex: string, vision: Matrix): Channels {
  const [red, green, blue] = [1, 3, 5].map((at) => linear(hex, at));
  const [r = 0, g = 0, b = 0] = vision.map((row) => {
    const value =
      row[0] * (red ?? 0) + row[1] * (green ?? 0) + row[2] * (blue ?? 0);
    return Math.min(1, Math.max(0, value));
  });
  const root = (t: number) =>
    t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 4 / 29;
  const x = root((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = root(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = root((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function apart(a: Channels, b: Channels): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function closest(colours: readonly string[], vision: Matrix): number {
  const lab = colours.map((hex) => seen(hex, vision));
  return Math.min(
    ...lab.flatMap((a, i) => lab.slice(0, i).map((b) => apart(a, b))),
  );
}

function coloursOf(
  scheme: ColourScheme,
  paints: "plain" | "any-vision" | "greys",
): readonly string[] {
  const palette = cubePalette({ scheme, theme: "light", paints });
  return [...FACES.map((face) => palette.faces[face]), palette.inks.bare];
}

describe("colour sets", () => {
  it("have six different colours, also from bare plastic", () => {
    for (const set of Object.values(COLOUR_SETS)) {
      expect(isColourScheme(set.scheme)).toBe(true);
      const colours = coloursOf(set.scheme, set.paints);
      expect(new Set(colours).size).toBe(7);
    }
  });

  it("the usual one has white opposite yellow, green opposite blue, red opposite orange, and red to the right of green under white (common practice)", () => {
    const { U, R, F, D, L, B } = USUAL_SCHEME;
    expect([U, D]).toEqual(["white", "yellow"]);
    expect([F, B]).toEqual(["green", "blue"]);
    expect([R, L]).toEqual(["red", "orange"]);
  });

  it("the older one has white opposite blue", () => {
    expect(OLDER_SCHEME[OPPOSITE_FACE.U]).toBe("blue");
    expect(isColourScheme(OLDER_SCHEME)).toBe(true);
  });

  it("the set for any vision is told apart better than the usual one by every common vision that confuses colours", () => {
    // A difference of 2.3 is just noticed (Mahy et al. 1994, from memory);
    // the bar is seven times that.
    for (const [name, vision] of Object.entries(VISIONS))
      expect(
        closest(coloursOf(USUAL_SCHEME, "any-vision"), vision),
        name,
      ).toBeGreaterThan(16);
    const worst = (paints: "plain" | "any-vision") =>
      Math.min(
        ...Object.values(VISIONS).map((vision) =>
          closest(coloursOf(USUAL_SCHEME, paints), vision),
        ),
      );
    expect(worst("any-vision")).toBeGreaterThan(worst("plain"));
  });

  it("the set for any vision takes its colours from the palette of Okabe and Ito, and white", () => {
    // Okabe, Ito (2002, modified 2008).
    const palette =
      "000000 E69F00 56B4E9 009E73 F0E442 0072B2 D55E00 CC79A7".split(" ");
    for (const face of FACES) {
      const name = USUAL_SCHEME[face];
      if (name === "white") continue;
      const hex = colourHex(name, "any-vision").slice(1).toUpperCase();
      expect(palette).toContain(hex);
    }
  });

  it("greys carry letters, all different", () => {
    expect(COLOUR_SETS.greys.letters).toBe(true);
    const letters = schemeLetters(USUAL_SCHEME);
    expect(FACES.map((face) => letters[face]).join("")).toBe("WRGYOB");
  });

  it("letters stay six different ones when two names begin alike, and stay with their colour however the cube is held", () => {
    const own: ColourScheme = {
      U: "white",
      R: "black",
      F: "blue",
      D: "brown",
      L: "purple",
      B: "pink",
    };
    const letters = schemeLetters(own);
    expect(new Set(Object.values(letters)).size).toBe(6);
    const held = schemeWithFirstColour(own, "pink");
    const heldLetters = schemeLetters(held);
    for (const face of FACES) {
      const there = FACES.find((other) => held[other] === own[face]);
      expect(there && heldLetters[there]).toBe(letters[face]);
    }
  });

  it("every name has a colour of its own in every paint", () => {
    for (const paints of PAINTS) {
      const colours = COLOUR_NAMES.map((name) => colourHex(name, paints));
      expect(new Set(colours).size).toBe(COLOUR_NAMES.length);
      for (const colour of colours) expect(colour).toMatch(/^#[0-9a-f]{6}$/);
    }
  });
});

describe("an arrangement of colours", () => {
  it("is the same cube however it is held, and another in a mirror", () => {
    for (const first of FACES) {
      const held = schemeWithFirstColour(USUAL_SCHEME, USUAL_SCHEME[first]);
      expect(isSameCube(USUAL_SCHEME, held)).toBe(true);
      expect(isSameCube(OLDER_SCHEME, held)).toBe(false);
    }
    const mirrored = { ...USUAL_SCHEME, L: "red", R: "orange" } as const;
    expect(isSameCube(USUAL_SCHEME, mirrored)).toBe(false);
  });

  // Common practice: the usual colouring and the older one; children's cubes
  // with other colours stand as they like.
  it("is doubted where the usual six stand as on hardly any cube, and only there", () => {
    const turned = schemeWithFirstColour(OLDER_SCHEME, "red");
    for (const known of [USUAL_SCHEME, OLDER_SCHEME, turned])
      expect(isDoubtfulScheme(known)).toBe(false);
    const slip = { ...USUAL_SCHEME, F: "yellow", D: "green" } as const;
    expect(isDoubtfulScheme(slip)).toBe(true);
    expect(isDoubtfulScheme({ ...slip, F: "pink" })).toBe(false);
  });
});

describe("a first colour", () => {
  /** The colours around a corner, clockwise, beginning with the first in the alphabet. */
  function aroundCorners(scheme: ColourScheme): readonly string[] {
    // Corner names list their faces clockwise (house style).
    return ["URF", "UFL", "ULB", "UBR", "DFR", "DLF", "DBL", "DRB"]
      .map((name) => {
        const colours = [...name].map(
          (letter) => scheme[letter as keyof ColourScheme],
        );
        const first = colours.indexOf([...colours].sort()[0] ?? "white");
        return [...colours.slice(first), ...colours.slice(0, first)].join(" ");
      })
      .sort();
  }

  it("comes to the first layer's face, for each of the six, and the cube stays the same cube and not its mirror image", () => {
    for (const scheme of [USUAL_SCHEME, OLDER_SCHEME])
      for (const face of FACES) {
        const turned = schemeWithFirstColour(scheme, scheme[face]);
        expect(turned.U).toBe(scheme[face]);
        expect(aroundCorners(turned)).toEqual(aroundCorners(scheme));
      }
    expect(
      aroundCorners({ ...USUAL_SCHEME, R: "orange", L: "red" }),
    ).not.toEqual(aroundCorners(USUAL_SCHEME));
  });

  it("that is up already changes nothing", () => {
    expect(schemeWithFirstColour(USUAL_SCHEME, "white")).toEqual(USUAL_SCHEME);
  });
});
