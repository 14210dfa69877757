import { describe, expect, it } from "vitest";
import { beginnersWay } from "../../../core/cases/beginner-ways";
import { lastLayerCases } from "../../../core/cases/last-layer-cases";
import { stateOfLook } from "../../../core/cases/last-layer-look";
import {
  LAST_LAYER_COURSES,
  LAST_LAYER_STAGES,
} from "../../../core/cases/last-layer-stages";
import { formatFacelets } from "../../../core/cube/facelets";
import { rotationAbout } from "../../../core/cube/symmetries";
import { present } from "../../../core/invariant";
import { formatTurns } from "../../../core/notation/format";
import { stretchesOf } from "../../../core/cases/way";
import { carried, sourcesOf } from "./seen-by-oracle";

const STEPS = LAST_LAYER_COURSES["beginners-steps"];

describe("the ways taught for a beginner's last layer", () => {
  it("are there for its four steps, and for no other stage", () => {
    for (const stage of LAST_LAYER_STAGES) {
      const isStep = STEPS.some((step) => step === stage);
      for (const one of lastLayerCases(stage).slice(0, 7))
        expect(beginnersWay(one) !== undefined, stage).toBe(isStep);
    }
  });

  // Source: common practice. One sequence turns edges up, one brings them
  // home, one goes round three corners, one twists a corner in its place.
  it("are made of the pieces that are learnt, and of turns of the top", () => {
    const known = [
      "F R U R' U' F'",
      "F U R U' R' F'",
      "R U R' U R U2 R'",
      "R U' L' U R' U' L",
      "L' U R U' L U R'",
      "R' D' R D",
    ];
    for (const stage of STEPS)
      for (const one of lastLayerCases(stage)) {
        let text = formatTurns(present(beginnersWay(one), one.id));
        for (const piece of known) text = text.replaceAll(piece, "");
        expect(text.trim(), one.id).toMatch(/^(?:U[2']? *)*$/);
      }
  });

  it("leave nothing turned on the geometric oracle: the last step solves the cube", () => {
    for (const one of lastLayerCases("last-layer-corners-turned-last")) {
      const way = present(beginnersWay(one), one.id);
      const seen = formatFacelets({
        cubies: stateOfLook(one.lookAt(0)),
        hold: rotationAbout("z", 2),
      });
      const after = carried(seen, sourcesOf(formatTurns(way)));
      for (let face = 0; face < 6; face++)
        expect(new Set(after.slice(9 * face, 9 * face + 9)).size).toBe(1);
    }
  });

  it("are read as few things: no case of the last step has more than eight stretches", () => {
    for (const one of lastLayerCases("last-layer-corners-turned-last"))
      expect(
        stretchesOf(present(beginnersWay(one), one.id)).length,
      ).toBeLessThanOrEqual(8);
  });
});
