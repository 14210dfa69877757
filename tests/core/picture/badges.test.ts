import { describe, expect, it } from "vitest";
import { CORNER_FACELETS, EDGE_FACELETS } from "../../../core/cube/facelets";
import type { Badge } from "../../../core/picture/badges";
import { contrast } from "../../../core/picture/colours";
import { COLOUR_SETS } from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";
import { targetAt } from "../../../core/picture/pointing";
import { highView, usualView } from "../../../core/picture/projection";
import { pathsOf, pictureOf } from "./pictures-for-tests";

const PLACES = [...CORNER_FACELETS, ...EDGE_FACELETS];
const ALL_MIRRORS = { floor: true, left: true, back: true };

function badge(facelets: readonly number[], text = "1"): Badge {
  return { text, facelets, kind: "choice" };
}

describe("a badge", () => {
  it.each([33, 58])(
    "stands on its own place, whichever that is, with most of it, at %i pixels a cubie",
    (pixels) => {
      for (const facelets of PLACES) {
        const picture = pictureOf({
          view: highView(pixels),
          mirrors: ALL_MIRRORS,
          badges: [badge(facelets)],
        });
        const [disc] = pathsOf(picture, ["badge"]);
        const [x = NaN, y = NaN, r = NaN] =
          disc?.d.match(/-?[\d.]+/g)?.map(Number) ?? [];
        // Its middle and both sides of it: nothing stands before it.
        for (const dx of [0.6, 1, 1.4]) {
          const seen = targetAt(picture, { x: x + dx * r, y });
          expect(facelets).toContain(seen?.facelet);
        }
      }
    },
  );

  it("stands on the cube itself where its place is seen there, and but once", () => {
    // The top front edge: U8 and F2 in the usual numbering of facelets.
    const place = EDGE_FACELETS[1] ?? [];
    const picture = pictureOf({
      view: highView(60),
      mirrors: ALL_MIRRORS,
      badges: [badge(place)],
    });
    expect(pathsOf(picture, ["badge"])).toHaveLength(1);
    const facelet = pathsOf(picture, ["badge"])[0]?.facelet ?? -1;
    const direct = picture.targets.find(
      (target) => target.facelet === facelet && target.mirror === undefined,
    );
    expect(direct).toBeDefined();
  });

  it("is left out where its place is not seen at all", () => {
    // The back right edge of the bottom, without a mirror.
    const [bottomBack = []] = EDGE_FACELETS.slice(7, 8);
    const picture = pictureOf({
      view: usualView(60),
      badges: [badge(bottomBack)],
    });
    expect(picture.layers.at(-1)?.shapes).toEqual([]);
  });

  it("can be read at 4.5:1, in every kind and theme (WCAG 2.2, 1.4.3)", () => {
    for (const theme of ["light", "dark"] as const)
      for (const kind of ["choice", "right", "mistaken"] as const) {
        const picture = pictureOf({
          palette: cubePalette({ ...COLOUR_SETS.usual, theme }),
          badges: [{ ...badge(EDGE_FACELETS[1] ?? []), kind }],
        });
        const shapes = picture.layers.at(-1)?.shapes ?? [];
        const disc = shapes.find((shape) => shape.kind === "path");
        const text = shapes.find((shape) => shape.kind === "text");
        expect(
          contrast(disc?.fill ?? "#000000", text?.fill ?? "#000000"),
        ).toBeGreaterThanOrEqual(4.5);
      }
  });
});
