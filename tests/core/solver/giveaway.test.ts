import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { waysOf } from "../../../core/cases/case-table";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { HOLDS, holdOfVariant } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { inverseTurns } from "../../../core/notation/inverse";
import { randomSource } from "../../../core/random-source";
import { faceTurnsOf } from "../../../core/solver/face-turn-sequence";
import { giveawayJudge } from "../../../core/solver/giveaway";
import { turnsOf } from "../notation/turns-of";

function positionOf(id: (typeof FIRST_LAYER_IDS)[number], hold: "up" | "down") {
  const random = randomSource(FIRST_LAYER_IDS.indexOf(id));
  const variant = randomVariant(random, id, { homes: [0] });
  return randomPosition(random, id, variant, hold);
}

describe("what a set-up gives away", () => {
  it("is the whole way where it ends with that way taken back, whatever the free layer does", () => {
    for (const id of FIRST_LAYER_IDS) {
      for (const hold of HOLDS) {
        const position = positionOf(id, hold);
        const judge = giveawayJudge(position);
        const inFront = holdOfVariant({ home: 0, seenFrom: 0 }, hold);
        for (const hand of HANDS) {
          for (const way of waysOf(id, hold, hand)) {
            // Played backwards, the way ends as it began.
            const end = holdAfter(inFront, way.turns);
            const back = faceTurnsOf(end, inverseTurns(way.turns));
            const free = 9;
            expect(judge(back)).toBe("way");
            expect(judge([free, ...back, free + 1])).toBe("way");
            // A turn about another axis than the first one stays apart.
            const [r, f] = [3, 6];
            const axis = Math.floor((back[0] ?? 0) / 3) % 3;
            const before = axis === 1 ? f : r;
            expect(judge([before, ...back, free + 2])).toBe("way");
          }
        }
      }
    }
  });

  // E4a's ways are R' D' R F2 and U' R U, E7's F2 D R F' R': from the table.
  it.each([
    ["E4a", "F2 R' D R D2", "way"],
    ["E4a", "B U' R' U D", "way"],
    ["E4a", "U' B D R D", "first-turn"],
    ["E4a", "D F2 R' D", "nothing"],
    ["E4a", "", "nothing"],
    ["E7", "F2 D R F' R'", "way"],
    ["E7", "D R F R' D' F2", "way"],
    // The same to every piece as R F R' D' F2, but for a turn of the bottom.
    ["E7", "F2 D' L' F L", "way"],
    ["E7", "L' U' F D' U", "nothing"],
  ] as const)("%s after %s gives away: %s", (id, text, given) => {
    const judge = giveawayJudge(positionOf(id, "up"));
    const hold = holdOfVariant({ home: 0, seenFrom: 0 }, "up");
    expect(judge(faceTurnsOf(hold, turnsOf(text)))).toBe(given);
  });
});

function holdAfter(
  hold: ReturnType<typeof holdOfVariant>,
  turns: ReturnType<typeof turnsOf>,
) {
  return applyTurns({ cubies: SOLVED, hold }, turns).hold;
}
