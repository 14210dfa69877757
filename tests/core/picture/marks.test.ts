import { describe, expect, it } from "vitest";
import { contrast } from "../../../core/picture/colours";
import { COLOUR_SETS } from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";
import { usualView } from "../../../core/picture/projection";
import { pathsOf, pictureOf, SOLVED_STICKERS } from "./pictures-for-tests";

const BARE = SOLVED_STICKERS.map(() => undefined);

/** WCAG's contrast worked out here, not taken from the program. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function ratio(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort(
    (p, q) => p - q,
  );
  return (high + 0.05) / (low + 0.05);
}

function laidOver(under: string, over: string, share: number): string {
  const parts = [1, 3, 5].map((at) => {
    const a = Number.parseInt(under.slice(at, at + 2), 16);
    const b = Number.parseInt(over.slice(at, at + 2), 16);
    return Math.round(a + (b - a) * share)
      .toString(16)
      .padStart(2, "0");
  });
  return `#${parts.join("")}`;
}

describe("contrast", () => {
  it("is what WCAG 2.2 defines: 21 for black on white, 4.54 for #767676 on white", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
    expect(contrast("#ffffff", "#ffffff")).toBe(1);
  });
});

const ALL_FACELETS = SOLVED_STICKERS.map((_, facelet) => facelet);

describe("greys on a screen", () => {
  for (const theme of ["light", "dark"] as const)
    for (const size of [73, 12.4])
      it(`every sticker stands out at least 3:1 from bare plastic by its grey or its rim, in ${theme} at ${size} pixels a cubie (WCAG 2.2, 1.4.11)`, () => {
        const shown = (stickers: typeof SOLVED_STICKERS | typeof BARE) =>
          pictureOf({
            stickers,
            view: usualView(size),
            palette: cubePalette({ ...COLOUR_SETS.greys, theme }),
            mirrors: { floor: true, left: true },
          });
        for (const layer of ["cube", "floor-reflection", "left-reflection"]) {
          const plastics = pathsOf(shown(BARE), ["tile"], layer).flatMap(
            (path) => path.fill ?? [],
          );
          const stickers = pathsOf(shown(SOLVED_STICKERS), ["sticker"], layer);
          const weak = new Set(
            stickers.flatMap(({ facelet }) => {
              const looks = stickers
                .filter((path) => path.facelet === facelet)
                .flatMap(({ fill, stroke, strokeOpacity }) => [
                  ...(fill === undefined ? [] : [fill]),
                  ...(stroke === undefined || strokeOpacity !== undefined
                    ? []
                    : [stroke]),
                ]);
              const isTold = plastics.every((plastic) =>
                looks.some((look) => ratio(look, plastic) >= 3),
              );
              return isTold ? [] : [facelet];
            }),
          );
          expect([...weak]).toEqual([]);
          expect(stickers.length).toBeGreaterThan(8);
          expect(plastics.length).toBeGreaterThan(8);
        }
      });
});

describe("marks", () => {
  for (const theme of ["light", "dark", "print"] as const)
    for (const [set, { scheme, paints, letters }] of Object.entries(
      COLOUR_SETS,
    ))
      for (const role of ["home", "ring", "mistaken", "outline"] as const)
        it(`a ${role} mark stands out at least 3:1 from every sticker of the ${set} colours, in ${theme} and in mirrors (WCAG 2.2, 1.4.11)`, () => {
          for (const stickers of [SOLVED_STICKERS, BARE]) {
            const picture = pictureOf({
              stickers,
              view: usualView(73),
              palette: cubePalette({ scheme, theme, paints, letters }),
              mirrors: { floor: true, left: true },
              home: role === "home" ? ALL_FACELETS : [],
              rings: role === "ring" ? ALL_FACELETS : [],
              mistaken: role === "mistaken" ? ALL_FACELETS : [],
              pieces:
                role === "outline"
                  ? ALL_FACELETS.map((facelet) => [facelet])
                  : [],
            });
            const weak: string[] = [];
            let judged = 0;
            for (const layer of ["cube", "floor-reflection", "left-reflection"])
              for (const facelet of ALL_FACELETS) {
                const of = (roles: Parameters<typeof pathsOf>[1]) =>
                  pathsOf(picture, roles, layer).filter(
                    (path) => path.facelet === facelet,
                  );
                const marks = of([role]);
                if (marks.length === 0) continue;
                let ground = of(["tile", "sticker"]).findLast(
                  (path) => path.fill !== undefined,
                )?.fill;
                const film = marks.find((mark) => mark.fill !== undefined);
                if (ground === undefined) continue;
                if (film?.fill !== undefined)
                  ground = laidOver(ground, film.fill, film.fillOpacity ?? 1);
                const best = Math.max(
                  ...marks.map((mark) => ratio(mark.stroke ?? ground, ground)),
                );
                judged += 1;
                if (best < 3) weak.push(`${layer} ${facelet}: ${best}`);
              }
            expect(weak).toEqual([]);
            expect(judged).toBeGreaterThan(27);
          }
        });

  it("a home that holds its piece is not marked", () => {
    const roles = ["home"] as const;
    const marked = pictureOf({ home: [8, 9, 20], pieces: [[26, 15, 29]] });
    const arrived = pictureOf({ home: [8, 9, 20], pieces: [[20, 8, 9]] });
    expect(pathsOf(marked, roles).length).toBeGreaterThan(0);
    expect(pathsOf(arrived, roles)).toEqual([]);
  });

  it("of a pair's two homes only the one without its piece is marked", () => {
    const home = [29, 26, 15, 23, 12];
    const markedOn = (pieces: readonly (readonly number[])[]) =>
      new Set(
        pathsOf(pictureOf({ home, pieces }), ["home"]).map(
          ({ facelet }) => facelet,
        ),
      );
    const elsewhere = [7, 19];
    expect(markedOn([[8, 9, 20], elsewhere])).toEqual(
      new Set([26, 15, 23, 12]),
    );
    expect(markedOn([[26, 15, 29], elsewhere])).toEqual(new Set([23, 12]));
    expect(
      markedOn([
        [8, 9, 20],
        [12, 23],
      ]),
    ).toEqual(new Set([26, 15]));
    expect(
      markedOn([
        [26, 15, 29],
        [12, 23],
      ]),
    ).toEqual(new Set());
  });

  it("a piece has one outline around all its sides that are seen", () => {
    const outlines = (piece: readonly number[]) =>
      new Set(
        pathsOf(pictureOf({ pieces: [piece] }), ["outline"]).map(
          (path) => path.d,
        ),
      );
    for (const piece of [
      [8, 9, 20],
      [26, 15, 29],
      [5, 10],
      [7, 19],
      [0, 36, 47],
    ])
      expect(outlines(piece).size).toBe(1);
    // Nothing of the corner at the bottom back left is seen from here.
    expect(outlines([33, 53, 42]).size).toBe(0);
  });

  it("marks go along with the layer they are on", () => {
    const turning = {
      turn: { layer: "R", quarters: 3 },
      progress: 0.4,
    } as const;
    const marks = { home: [8, 9, 20], pieces: [[24, 44, 27]] };
    const paths = (role: "home" | "outline", moving: boolean) =>
      pathsOf(pictureOf(moving ? { ...marks, turning } : marks), [role]).map(
        (path) => path.d,
      );
    expect(paths("home", true)).not.toEqual(paths("home", false));
    expect(paths("outline", true)).toEqual(paths("outline", false));
  });
});
