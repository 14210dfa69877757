import { describe, expect, it } from "vitest";
import { caseEntry } from "../../../core/cases/case-table";
import { tradeNameOf } from "../../../core/cases/last-layer-names";
import { randomPosition } from "../../../core/cases/random-position";
import { slotCases } from "../../../core/cases/slot-cases";
import { slotPositionSampler } from "../../../core/cases/slot-position";
import { type Stage, STAGES } from "../../../core/cases/stage";
import {
  type CaseShown,
  stageShown,
  stagesShown,
} from "../../../core/cases/stages-shown";
import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import { edge } from "../../../core/cube/pieces";
import { formatFacelets } from "../../../core/cube/facelets";
import {
  ANY_STATE,
  emptyCubies,
  sampleState,
} from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { inverseTurns } from "../../../core/notation/inverse";
import { randomSource } from "../../../core/random-source";
import { LAST_LAYER_PERMUTATIONS } from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";
import { madeOnTop } from "./made-on-top";
import { placedPieces } from "./seen-by-oracle";

const SEED = 15;

function stagesThatAre(state: Cubies, which: string): readonly Stage[] {
  return stagesShown(state)
    .filter((shown) => shown.state === which)
    .map(({ stage }) => stage);
}

function nameOf({ case: id, home }: CaseShown): string {
  const entry = caseEntry(id);
  return entry.group === "last-layer"
    ? (tradeNameOf(entry.shows) ?? id)
    : `${home} ${id}`;
}

describe("what a cube shows", () => {
  it("is that every stage is done on a solved cube", () => {
    expect(stagesThatAre(SOLVED, "done")).toEqual(STAGES);
  });

  it("is an open first stage, and no other, where the cross is not placed", () => {
    const random = randomSource(SEED);
    for (let i = 0; i < 200; i++) {
      const state = sampleState(random, {
        ...ANY_STATE,
        unplacedEdges: [edge("UF")],
      });
      expect(stagesThatAre(state, "open")).toEqual(["first-layer-edges"]);
      expect(stagesThatAre(state, "done")).toEqual([]);
    }
  });

  it("is that corners and pairs are both open once the cross is placed", () => {
    const random = randomSource(SEED);
    const variant = {
      home: 2,
      placed: [],
      turnedAway: 1,
      seenFrom: 0,
    } as const;
    const { cubies } = randomPosition(random, "C1", variant, "up");
    expect(stagesThatAre(cubies, "done")).toEqual(["first-layer-edges"]);
    expect(stagesThatAre(cubies, "open")).toEqual([
      "first-layer-corners",
      "pairs",
    ]);
    const { cases } = stageShown(cubies, "first-layer-corners");
    expect(cases).toHaveLength(4);
    expect(cases.map(nameOf)).toContain("2 C1");
  });

  it("is each slot that is not filled, with its case", () => {
    const random = randomSource(SEED);
    const state = emptyCubies();
    for (const one of slotCases("second-layer-edges")) {
      const variant = { home: 3, placed: [], turnedAway: 0 } as const;
      slotPositionSampler(one, variant).drawInPlace(random, state);
      expect(stagesThatAre(state, "open")).toEqual([
        "second-layer-edges",
        "pairs",
      ]);
      const { cases, placed } = stageShown(state, "second-layer-edges");
      expect(cases).toHaveLength(4);
      expect(cases.map(nameOf)).toContain(`3 ${one.id}`);
      expect(placed).toEqual({ corners: [], edges: [] });
      expect(stageShown(state, "pairs").placed.corners).toHaveLength(4);
    }
  });

  // Source: last-layer.json: all turned and none placed but what the case
  // leaves home, so that of two looks only the last two stages may be open.
  it.each(LAST_LAYER_PERMUTATIONS)(
    "is the case $name where its sequence is to be played",
    ({ name, sequence }) => {
      const state = madeOnTop(inverseTurns(turnsOf(sequence)));
      const { cases } = stageShown(state, "last-layer-placed");
      expect(cases.map(nameOf)).toEqual([name]);
      expect(stageShown(state, "last-layer-turned").state).toBe("done");
      expect(stageShown(state, "last-layer-whole").state).toBe("open");
      const cornersPlaced = ["H", "Ua", "Ub", "Z"].includes(name);
      expect(stageShown(state, "last-layer-corners-placed-first").state).toBe(
        cornersPlaced ? "done" : "open",
      );
      expect(stageShown(state, "last-layer-edges-placed-last").state).toBe(
        cornersPlaced ? "open" : "not-reached",
      );
    },
  );

  it("is placed as the geometric oracle sees it", () => {
    const random = randomSource(SEED);
    const states = [
      ...Array.from({ length: 50 }, () => sampleState(random, ANY_STATE)),
      ...LAST_LAYER_PERMUTATIONS.map(({ sequence }) =>
        madeOnTop(turnsOf(sequence)),
      ),
    ];
    for (const cubies of states) {
      const seen = placedPieces(
        formatFacelets({ cubies, hold: NO_ROTATION }),
      ).size;
      // Between them these stages own every piece once.
      const ours = (["first-layer-edges", "pairs", "last-layer-whole"] as const)
        .map((stage) => stageShown(cubies, stage).placed)
        .reduce(
          (n, { corners, edges }) => n + corners.length + edges.length,
          0,
        );
      expect(ours).toBe(seen);
    }
  });
});
