import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bodyFacelet,
  centreFacelet,
  CORNER_FACELETS,
  EDGE_FACELETS,
  faceletFace,
  formatFacelets,
  stickersOf,
  viewFacelet,
} from "../../../core/cube/facelets";
import { type Face, FACES } from "../../../core/cube/faces";
import { knownOnly } from "../../../core/cube/partly-known";
import {
  corner,
  CORNER_FACES,
  edge,
  EDGE_FACES,
} from "../../../core/cube/pieces";
import { ROTATIONS } from "../../../core/cube/symmetries";
import { cubeFromStickers, parseFacelets } from "../../../core/cube/validity";
import {
  isSameVector,
  NORMALS,
  solvedStickers,
} from "../../oracles/geometric-cube";
import { arbitraryCube, START } from "./arbitrary-cubes";

describe("stickers", () => {
  it("of any cube, held in any way, read back as that cube", () => {
    fc.assert(
      fc.property(arbitraryCube, (cube) => {
        expect(parseFacelets(formatFacelets(cube))).toEqual({
          ok: true,
          value: cube,
        });
        const stickers = stickersOf(cube).filter((face) => face !== undefined);
        expect(cubeFromStickers(stickers)).toEqual({ ok: true, value: cube });
      }),
    );
  });

  it("sit where the geometric oracle has them, face by face", () => {
    const places = solvedStickers();
    const expectPlaces = (
      facelets: readonly number[],
      faces: readonly Face[] = [],
    ) => {
      const at = [0, 1, 2].map((i) =>
        faces.reduce((sum, face) => sum + (NORMALS[face][i] ?? 0), 0),
      );
      expect(faces).toHaveLength(facelets.length);
      faces.forEach((face, k) => {
        const place = places[facelets[k] ?? NaN];
        expect(place?.at).toEqual(at);
        expect(place?.facing).toEqual(NORMALS[face]);
      });
    };
    CORNER_FACELETS.forEach((facelets, i) =>
      expectPlaces(facelets, CORNER_FACES[i]),
    );
    EDGE_FACELETS.forEach((facelets, i) =>
      expectPlaces(facelets, EDGE_FACES[i]),
    );
    for (const face of FACES) {
      const place = places[centreFacelet(face)];
      expect(place && isSameVector(place.at, NORMALS[face])).toBe(true);
      expect(faceletFace(centreFacelet(face))).toBe(face);
    }
  });

  it("move as one body when the whole cube is turned", () => {
    for (const hold of ROTATIONS) {
      const seen = Array.from({ length: 54 }, (_, i) => viewFacelet(hold, i));
      expect(new Set(seen).size).toBe(54);
      seen.forEach((place, own) => expect(bodyFacelet(hold, place)).toBe(own));
      const stickers = stickersOf({ ...START, hold });
      seen.forEach((place, own) =>
        expect(stickers[place]).toBe(faceletFace(own)),
      );
    }
  });

  it("of pieces that are not known are written as question marks", () => {
    const cubies = knownOnly(
      START.cubies,
      new Set([corner("URF")]),
      new Set([edge("UF")]),
    );
    expect(formatFacelets({ ...START, cubies })).toBe(
      "????U??UU" +
        "R???R????" +
        "?FF?F????" +
        "????D????" +
        "????L????" +
        "????B????",
    );
  });
});
