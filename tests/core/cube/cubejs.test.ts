import Cube from "cubejs";
import { describe, expect, it } from "vitest";
import { formatFacelets } from "../../../core/cube/facelets";
import { applyTurns } from "../../../core/cube/held-cube";
import { type Quarters, TURN_LAYERS } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { pick, randomSource } from "../../../core/random-source";
import { START } from "./arbitrary-cubes";

const SEED = 20_251_125;

describe("cubejs, a second cube model", () => {
  it("shows the same stickers after each of 10,000 random sequences of all turns", () => {
    const random = randomSource(SEED);
    const disagreements: string[] = [];
    const quarters: readonly Quarters[] = [1, 2, 3];
    for (let i = 0; i < 10_000; i++) {
      const turns = Array.from({ length: 1 + random.below(25) }, () => ({
        layer: pick(random, TURN_LAYERS),
        quarters: pick(random, quarters),
      }));
      const text = formatTurns(turns);
      // cubejs writes wide turns small: `r` for `Rw`.
      const theirs = new Cube().move(
        text.replace(/([A-Z])w/g, (_, face: string) => face.toLowerCase()),
      );
      const ours = formatFacelets(applyTurns(START, turns));
      if (ours !== theirs.asString()) disagreements.push(text);
    }
    expect(disagreements, `seed ${SEED}`).toEqual([]);
  }, 60_000);
});
