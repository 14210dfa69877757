import { describe, expect, it } from "vitest";
import {
  FIRST_TWO_LAYERS,
  piecesOfSlot,
} from "../../../core/cases/slot-stages";
import { SOLVED } from "../../../core/cube/cubies";
import type { Pieces } from "../../../core/cube/pieces";
import { createCaseSearch } from "../../../core/solver/case-search";
import type { FaceTurnSequence } from "../../../core/solver/face-turn-sequence";
import {
  sequencesKeepingAllButSlot0,
  sequencesKeepingTwoLayers,
} from "../../../core/solver/short-sequences";
import { runToEnd } from "../../../core/steps";

const search = createCaseSearch();

/** All sequences up to a length that keep some pieces, turns of the first layer at both ends left out. */
function allKeeping(placed: Pieces, most: number): readonly FaceTurnSequence[] {
  const answers = runToEnd(
    search.answers({
      from: SOLVED,
      goal: { placed },
      mostTurns: most,
      extraTurns: most,
    }),
  );
  const isOfFirstLayer = (turn: number | undefined) => (turn ?? 3) < 3;
  return answers
    .map(({ turns }) => turns)
    .filter(
      (turns) =>
        turns.length > 0 &&
        !(isOfFirstLayer(turns[0]) && isOfFirstLayer(turns.at(-1))),
    );
}

const asText = (all: readonly FaceTurnSequence[]) =>
  all.map((turns) => turns.join(" "));

describe("the short sequences that are written down are those the case search finds", () => {
  it("that keep the first two layers", () => {
    expect(asText(sequencesKeepingTwoLayers())).toEqual(
      asText(allKeeping(FIRST_TWO_LAYERS, 10)),
    );
  });

  it("that keep all of them but slot 0", () => {
    const out = piecesOfSlot("pairs", 0);
    const kept = {
      corners: FIRST_TWO_LAYERS.corners.filter(
        (piece) => !out.corners.includes(piece),
      ),
      edges: FIRST_TWO_LAYERS.edges.filter(
        (piece) => !out.edges.includes(piece),
      ),
    };
    expect(asText(sequencesKeepingAllButSlot0())).toEqual(
      asText(allKeeping(kept, 7)),
    );
  });
});
