import { describe, expect, it } from "vitest";
import type { Face } from "../../../core/cube/faces";
import { FACES } from "../../../core/cube/faces";
import { usualView } from "../../../core/picture/projection";
import {
  afterTurns,
  faceletString,
  solvedStickers,
} from "../../oracles/geometric-cube";
import { ALL_TURNS, pathsOf, pictureOf, pointsOn } from "./pictures-for-tests";

const SUFFIX = { 1: "", 2: "2", 3: "'" } as const;

function stickersAfter(turns: string): readonly Face[] {
  return [...faceletString(afterTurns(solvedStickers(), turns))].map(
    (letter) => {
      const face = FACES.find((candidate) => candidate === letter);
      if (face === undefined) throw new Error(`no face ${letter}`);
      return face;
    },
  );
}

/** Where stickers are seen and in which colour, however their paths begin. */
function seen(picture: ReturnType<typeof pictureOf>): readonly string[] {
  return pathsOf(picture, ["sticker"])
    .filter((path) => path.fill !== undefined)
    .map((path) => {
      const points = pointsOn(path);
      const mean = (part: "x" | "y") =>
        Math.round(
          points.reduce((sum, point) => sum + point[part], 0) / points.length,
        );
      return `${mean("x")} ${mean("y")} ${path.fill ?? ""}`;
    })
    .sort();
}

// Far from solved, so that every facelet that goes the wrong way shows.
const MIXED = "R U2 F' L D B2 U' R2 F L'";

describe("a turning layer", () => {
  it.each(ALL_TURNS)(
    "$layer $quarters at its end is the picture of the turned cube, in mirrors too",
    (turn) => {
      const mirrors = { floor: true, left: true, back: true };
      // Rounded to whole pixels, so the view must not put a middle on a half.
      const view = usualView(73.21);
      const turned = pictureOf({
        view,
        mirrors,
        stickers: stickersAfter(MIXED),
        turning: { turn, progress: 1 },
      });
      const after = pictureOf({
        view,
        mirrors,
        stickers: stickersAfter(
          `${MIXED} ${turn.layer}${SUFFIX[turn.quarters]}`,
        ),
      });
      expect(seen(turned)).toEqual(seen(after));
      expect(seen(after)).not.toEqual(
        seen(pictureOf({ view, mirrors, stickers: stickersAfter(MIXED) })),
      );
    },
  );

  it("has its place kept while it turns: bounds do not move", () => {
    const still = pictureOf({ mirrors: { floor: true } });
    const moving = pictureOf({
      mirrors: { floor: true },
      turning: { turn: { layer: "R", quarters: 1 }, progress: 0.5 },
    });
    expect(moving.bounds).toEqual(still.bounds);
  });
});
