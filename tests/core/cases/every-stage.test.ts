import { describe, expect, it } from "vitest";
import { isAnswered, judge } from "../../../core/answer/judge";
import {
  casesOfStage,
  parseCaseId,
  waysOf,
} from "../../../core/cases/case-table";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import {
  isVariantAllowed,
  randomVariant,
} from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import { isSlotStage, STAGES } from "../../../core/cases/stage";
import { HANDS } from "../../../core/cases/way";
import { wayForPosition } from "../../../core/cases/way-for-position";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import { randomSource } from "../../../core/random-source";

const SEED = 41;

/** Positions of a case, enough for its stage to come to a few thousand. */
function tries(cases: number): number {
  return Math.max(1, Math.min(40, Math.floor(4_000 / cases)));
}

const COUNTS = [0, 1, 2, 3, undefined] as const;

describe.each(STAGES)("cases of %s", (stage) => {
  const cases = casesOfStage(stage);

  it("have ids that name them again", () => {
    for (const { id } of cases) expect(parseCaseId(id)).toBe(id);
    expect(new Set(cases.map(({ id }) => id)).size).toBe(cases.length);
  });

  it("are recognised in positions of them, which are not answered", () => {
    const random = randomSource(SEED);
    for (const { id } of cases) {
      if (id === "S1" || id === "S2") continue;
      for (let i = 0; i < tries(cases.length); i++) {
        const placedCount = COUNTS[i % COUNTS.length];
        const variant = randomVariant(random, id, {
          ...(placedCount === undefined ? {} : { placedCount }),
          turnedAway: true,
          seenFromAnywhere: true,
        });
        expect(isVariantAllowed(id, variant)).toBe(true);
        const position = randomPosition(random, id, variant, "down");
        const { cubies } = position;
        const shown = recognise(cubies, stage, variant.home);
        expect(shown?.case).toBe(id);
        expect(judge(position, startOf(position)).right).toBe(false);
      }
    }
  });

  it("are answered by each of their ways, either hand's", () => {
    const random = randomSource(SEED);
    for (const { id } of cases)
      for (const hand of HANDS)
        for (const way of waysOf(id, "down", hand)) {
          const variant = randomVariant(random, id, {
            turnedAway: true,
            seenFromAnywhere: true,
          });
          const position = randomPosition(random, id, variant, "down");
          const turns = wayForPosition(position, way);
          const after = applyTurns(startOf(position), turns);
          expect(isAnswered(position, after), `${id} ${hand}`).toBe(true);
        }
  });
});

describe("a slot held down", () => {
  it("is seen at the front right", () => {
    const random = randomSource(SEED);
    for (const stage of STAGES.filter(isSlotStage))
      for (const { id } of casesOfStage(stage)) {
        const variant = randomVariant(random, id);
        const { hold } = startOf(randomPosition(random, id, variant, "down"));
        const faces = (["F", "L", "B", "R"] as const).map((_, i, all) => [
          all[i],
          all[(i + 3) % 4],
        ]);
        const slot = faces[variant.home] ?? [];
        expect(
          slot
            .map((face) => (face === undefined ? "" : viewFace(hold, face)))
            .toSorted(),
        ).toEqual(["F", "R"]);
      }
  });
});
