import { describe, expect, it } from "vitest";
import { CORNER_FACELETS, EDGE_FACELETS } from "../../../core/cube/facelets";
import { FACES, type Face } from "../../../core/cube/faces";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { cubePicture } from "../../../core/picture/cube-picture";
import {
  mirrorsNeeded,
  thumbnailMirrors,
} from "../../../core/picture/mirrors-needed";
import { cubePalette } from "../../../core/picture/palette";
import { faceletPoint, targetAt } from "../../../core/picture/pointing";
import { usualView } from "../../../core/picture/projection";

const SOLVED: readonly Face[] = FACES.flatMap((face) =>
  new Array<Face>(9).fill(face),
);
const PALETTE = cubePalette({ scheme: USUAL_SCHEME, theme: "light" });
const PIECES = [...CORNER_FACELETS, ...EDGE_FACELETS];
// Pixels per cubie of the places where a piece is marked, from the design's
// measures.
const SIZES = [92, 86, 76, 73, 54, 44, 34, 29, 21, 19, 13];

describe("mirrors a case needs", () => {
  for (const side of ["right", "left"] as const)
    for (const size of SIZES)
      it(`every sticker of every piece and home is seen from the ${side} at ${size} pixels a cubie`, () => {
        const view = usualView(size, side);
        const hidden: string[] = [];
        for (const piece of PIECES) {
          const picture = cubePicture({
            stickers: SOLVED,
            view,
            palette: PALETTE,
            pieces: [piece],
            mirrors: mirrorsNeeded(piece, view),
          });
          for (const facelet of piece) {
            const direct = faceletPoint(picture, facelet);
            const point = direct ?? faceletPoint(picture, facelet, true);
            const seen = point && targetAt(picture, point)?.facelet === facelet;
            if (seen !== true) hidden.push(`${piece.join(" ")}: ${facelet}`);
          }
        }
        expect(hidden).toEqual([]);
      });

  it("no mirror stands where the piece is seen without it", () => {
    const view = usualView(73);
    expect(mirrorsNeeded([8, 9, 20], view)).toEqual({});
    expect(mirrorsNeeded([29, 26, 15], view)).toEqual({ floor: true });
    expect(mirrorsNeeded([6, 18, 38], usualView(73, "left"))).toEqual({});
    expect(mirrorsNeeded([8, 9, 20], usualView(73, "left"))).toEqual({
      right: true,
    });
  });

  it("a thumbnail shows the floor for the bottom and the left for a first colour there or a piece at the back left", () => {
    const view = usualView(19);
    const carrying = (facelet: number, piece: readonly number[]) =>
      thumbnailMirrors(
        piece,
        SOLVED.map((_, i) => (i === facelet ? "U" : "F")),
        view,
      );
    // The shelf of first-layer corners in the design's pictures.
    expect(carrying(26, [29, 26, 15])).toEqual({ floor: true });
    expect(carrying(6, [6, 18, 38])).toEqual({});
    expect(carrying(38, [6, 18, 38])).toEqual({ left: true });
    expect(carrying(18, [6, 18, 38])).toEqual({});
    expect(carrying(0, [0, 36, 47])).toEqual({ left: true });
    expect(carrying(2, [2, 45, 11])).toEqual({});
  });
});
