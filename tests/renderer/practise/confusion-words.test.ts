import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { confusedWith } from "../../../core/answer/explanation";
import { casesOfStage, waysOf } from "../../../core/cases/case-table";
import { allowedPlacedSets } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { HOLDS, HOME_INDICES } from "../../../core/cases/variant";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { faceletFace, stickersOf } from "../../../core/cube/facelets";
import { present } from "../../../core/invariant";
import { onSideInWords } from "../../../core/notation/place-words";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { randomSource } from "../../../core/random-source";
import { confusionWords } from "../../../renderer/state/practise/confusion-words";
import { diagnosisWords } from "../../../renderer/state/practise/diagnosis-words";

const CORNERS = casesOfStage("first-layer-corners").map(({ id }) => id);

/** A position of a corner's case for each hold and home. */
function positionsOf(id: Position["case"]): readonly Position[] {
  return HOLDS.flatMap((hold) =>
    HOME_INDICES.map((home) => {
      const [placed = []] = allowedPlacedSets(id, home, 1);
      const variant = { home, placed, turnedAway: 0, seenFrom: 0 } as const;
      return randomPosition(randomSource(home), id, variant, hold);
    }),
  );
}

const CONTRARY =
  /^You answered as if (?:it|\w+) were (.*)\. It is (.*?)\.(?: |$)/;

/** What the learner is said to have seen, and what is so. */
function sidesOf({ sentence, more }: { sentence: string; more: string }) {
  const [, taken, is] = CONTRARY.exec(`${sentence} ${more}`) ?? [];
  return { taken, is };
}

describe("a confusion in words", () => {
  it("of two corners with any way of a corner names both cases, and never one side twice", () => {
    let said = 0;
    for (const id of ["S1", "S2"] as const)
      for (const position of positionsOf(id))
        for (const other of CORNERS) {
          for (const { turns } of waysOf(other, position.hold)) {
            const { explanation } = diagnose(
              position,
              turns,
              turnsForPosition(position),
            );
            if (explanation === undefined) continue;
            const answered = confusedWith(explanation);
            if (answered === undefined) continue;
            const words = present(
              diagnosisWords(
                { position, turns, scheme: USUAL_SCHEME, withNotation: false },
                explanation,
              ),
              "a confusion has words",
            );
            said++;
            const { taken, is } = sidesOf(words);
            expect(taken, `${id} as ${answered}`).toMatch(/^“.*”$/);
            expect(is).toMatch(/^“In each other's homes.*”$/);
            expect(taken).not.toBe(is);
            expect(words.leaders).toBeUndefined();
          }
          if (other === id) continue;
          const { taken, is } = sidesOf(
            confusionWords(position, other, USUAL_SCHEME),
          );
          expect(taken).toBeDefined();
          expect(taken, `${id} as ${other}`).not.toBe(is);
        }
    expect(said).toBeGreaterThan(10);
  });

  it("of one corner says where white truly is, as the cube's stickers show it", () => {
    let shown = 0;
    for (const id of CORNERS)
      for (const position of positionsOf(id))
        for (const other of CORNERS) {
          if (other === id) continue;
          const words = confusionWords(position, other, USUAL_SCHEME);
          const { taken, is } = sidesOf(words);
          expect(taken).toBeDefined();
          expect(taken, `${id} as ${other}`).not.toBe(is);
          if (words.leaders === undefined) continue;
          shown++;
          const side = onSideInWords(faceletFace(words.leaders.is));
          expect(is).toBe(side);
          expect(stickersOf(startOf(position))[words.leaders.is]).toBe("U");
        }
    expect(shown).toBeGreaterThan(50);
  });
});
