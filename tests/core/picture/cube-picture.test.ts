import { describe, expect, it } from "vitest";
import { faceletFace } from "../../../core/cube/facelets";
import { COLOUR_SETS } from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";
import {
  type CubeView,
  highView,
  USUAL_VIEW,
  usualView,
} from "../../../core/picture/projection";
import { pathsOf, pictureOf, SOLVED_STICKERS } from "./pictures-for-tests";

const MIRRORS = { floor: true, left: true, right: true, back: true };

/** How strongly each mirror is shown. */
function strengths(yaw: number, pitch: number) {
  const picture = pictureOf({
    view: { ...usualView(73), yaw, pitch },
    mirrors: MIRRORS,
  });
  return new Map(picture.layers.map(({ name, opacity }) => [name, opacity]));
}

describe("a cube's picture", () => {
  it("has the view that the design measured: 25° right, 25° above, 19 cubies away", () => {
    expect(USUAL_VIEW).toEqual({ yaw: 25, pitch: 25, distance: 19 });
    expect(usualView(73, "left").yaw).toBe(-25);
  });

  it("shows the top a quarter larger in the high view, and the front still larger than the top and the right", () => {
    const areas = (view: CubeView) => {
      const centres = pictureOf({ view }).targets.filter(
        ({ facelet }) => facelet % 9 === 4,
      );
      return Object.fromEntries(
        centres.map(({ facelet, column, row }) => [
          faceletFace(facelet),
          Math.abs(column.x * row.y - column.y * row.x),
        ]),
      );
    };
    const high = areas(highView(73));
    const usual = areas(usualView(73));
    expect(high["U"]).toBeGreaterThan(1.25 * (usual["U"] ?? NaN));
    expect(high["F"]).toBeGreaterThan(1.25 * (high["U"] ?? NaN));
    expect(high["F"]).toBeGreaterThan(1.75 * (high["R"] ?? NaN));
    expect(highView(73, "left")).toEqual({ ...highView(73), yaw: -25 });
  });

  it("keeps what names its mirrors within its bounds where their size is asked for, and is else as it was", () => {
    const wordsOf = ({ layers }: ReturnType<typeof pictureOf>) =>
      layers
        .flatMap(({ shapes }) => shapes)
        .filter((shape) => shape.kind === "text" && shape.role === "word");
    const small = pictureOf({ view: usualView(40), mirrors: MIRRORS });
    const large = pictureOf({
      view: usualView(40),
      mirrors: MIRRORS,
      mirrorWords: 60,
    });
    expect(
      wordsOf(small).map((word) => "fontSize" in word && word.fontSize),
    ).toEqual([13, 13, 13]);
    for (const word of wordsOf(large)) {
      if (word.kind !== "text") continue;
      expect(word.fontSize).toBe(60);
      const [, , , , x, y] = word.matrix;
      // Half an em a letter is less than any typeface of ours takes.
      const width = 30 * word.text.length;
      const from = x - (word.anchor === "middle" ? width / 2 : 0);
      expect(from).toBeGreaterThanOrEqual(large.bounds.left);
      expect(from + width).toBeLessThanOrEqual(large.bounds.right);
      expect(y - 0.7 * 60).toBeGreaterThanOrEqual(large.bounds.top);
    }
    expect(large.bounds.right).toBeGreaterThan(small.bounds.right);
    expect(
      pictureOf({ view: usualView(40), mirrors: MIRRORS, mirrorWords: 13 })
        .layers,
    ).toEqual(small.layers);
  });

  it("is drawn behind to in front: mirrors before the cube, the arrow last", () => {
    const picture = pictureOf({
      mirrors: MIRRORS,
      arrow: { layer: "R", quarters: 1 },
    });
    const names = picture.layers.map((layer) => layer.name);
    expect(names.indexOf("floor")).toBeLessThan(names.indexOf("cube"));
    expect(names.indexOf("left")).toBeLessThan(names.indexOf("cube"));
    expect(names.at(-1)).toBe("arrow");
  });

  it("shows bare plastic where no sticker is known", () => {
    const picture = pictureOf({
      stickers: SOLVED_STICKERS.map((face, i) => (i === 4 ? face : undefined)),
    });
    const coloured = pathsOf(picture, ["sticker"], "cube").map(
      (path) => path.facelet,
    );
    expect(new Set(coloured)).toEqual(new Set([4]));
    const { inks } = cubePalette({ ...COLOUR_SETS.usual, theme: "light" });
    const tops = pathsOf(picture, ["tile"], "cube").filter(
      (path) => path.facelet === 0,
    );
    // The top is in full light, so its plastic has the palette's own colour.
    expect(tops.map((path) => path.fill)).toEqual([inks.bare, inks.plate]);
  });

  it("writes each colour's letter where letters are wanted, also in mirrors, never mirrored", () => {
    const picture = pictureOf({
      palette: cubePalette({ ...COLOUR_SETS.greys, theme: "print" }),
      mirrors: MIRRORS,
    });
    const letters = picture.layers.flatMap(({ shapes }) =>
      shapes.flatMap((shape) =>
        shape.kind === "text" && shape.role === "letter" ? [shape] : [],
      ),
    );
    const said = new Set(letters.map((letter) => letter.text));
    expect(said).toEqual(new Set(["W", "R", "G", "Y", "O", "B"]));
    for (const { matrix } of letters) {
      const [a, b, c, d] = matrix;
      // A positive area: the letter is turned and leant, not turned over.
      expect(a * d - b * c).toBeGreaterThan(0);
    }
  });

  it("shows a side's mirror only where that side is hidden, and none while looking underneath or behind", () => {
    const right = strengths(25, 25);
    expect(right.get("floor")).toBe(1);
    expect(right.get("left")).toBe(1);
    expect(right.has("right")).toBe(false);
    const left = strengths(-25, 25);
    expect(left.get("right")).toBe(1);
    expect(left.has("left")).toBe(false);
    for (const [yaw, pitch] of [
      [25, -50],
      [205, 25],
    ] as const)
      for (const mirror of ["floor", "left", "right", "back"])
        expect(strengths(yaw, pitch).has(mirror)).toBe(false);
  });

  it("lets mirrors fade on the way, without a jump", () => {
    let last = 1;
    for (let pitch = 25; pitch > 0; pitch -= 1) {
      const now = strengths(25, pitch).get("floor") ?? 0;
      expect(last - now).toBeGreaterThanOrEqual(0);
      expect(last - now).toBeLessThan(0.2);
      last = now;
    }
    expect(last).toBe(0);
  });

  it("keeps its origin at the cube's own centre, whatever stands beside it", () => {
    const alone = pictureOf({});
    const mirrored = pictureOf({ mirrors: MIRRORS });
    const bodies = (picture: typeof alone) =>
      pathsOf(picture, ["body"], "cube").map((path) => path.d);
    expect(bodies(mirrored)).toEqual(bodies(alone));
    expect(mirrored.bounds.left).toBeLessThan(alone.bounds.left);
    expect(mirrored.bounds.bottom).toBeGreaterThan(alone.bounds.bottom);
  });

  it("leaves fine detail out of thumbnails", () => {
    const count = (size: number) =>
      pathsOf(pictureOf({ view: usualView(size) }), [
        "tile",
        "sticker",
        "sheen",
      ]).length;
    expect(count(19)).toBe(27);
    expect(count(73)).toBeGreaterThan(80);
  });
});
