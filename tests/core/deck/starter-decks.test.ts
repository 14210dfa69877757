import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { lastLayerFamilyOf } from "../../../core/cases/last-layer-families";
import { LAST_LAYER_COURSES } from "../../../core/cases/last-layer-stages";
import { STAGES } from "../../../core/cases/stage";
import { parseDeck } from "../../../core/deck/deck-schema";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";

// Source: the design's first-layer.md, "starter order" and starting targets;
// order and targets are common practice. S1 and S2 are tasks, not in its table.
const ORDER_AND_TARGETS = {
  "starter-edges":
    "E1 8, E2a 8, E2b 8, E3 15, E4a 15, E4b 15, E7 20, E5a 20, E5b 20, E6a 20, E6b 20",
  "starter-corners": "C1 20, C2 20, C3 30, C4 30, C5 30, C6 35, C7 35",
  "starter-rest":
    "E8a 12, E8b 12, E9a 15, E9b 15, E10 15, E11 20, C8 35, C9 35, C10 35, C11 35, C12 35, C13 35, C14 35, S1 65, S2 65",
};

const FIRST_LAYER_DECKS = STARTER_DECKS.slice(0, 3);

function casesOf(id: string) {
  const deck = STARTER_DECKS.find((one) => one.id === id);
  return (deck?.cases ?? []).map((entry) => entry.case);
}

/** Stages in the order in which they first come, each with how many cases stand together. */
function stretches(id: string): readonly string[] {
  const stages = casesOf(id).map((one) => caseEntry(one).stage);
  return stages
    .filter((stage, i) => stage !== stages[i - 1])
    .map(
      (stage) => `${stage} ${stages.filter((other) => other === stage).length}`,
    );
}

describe("the starter decks of the first layer", () => {
  it("have the cases of the table in its order, with its starting targets", () => {
    const written = Object.fromEntries(
      FIRST_LAYER_DECKS.map((deck) => [
        deck.id,
        deck.cases.map((c) => `${c.case} ${c.target}`).join(", "),
      ]),
    );
    expect(written).toEqual(ORDER_AND_TARGETS);
  });

  it("hold every case exactly once between them", () => {
    const ids = FIRST_LAYER_DECKS.flatMap((deck) =>
      deck.cases.map((c) => c.case),
    );
    expect(ids.toSorted()).toEqual([...FIRST_LAYER_IDS].toSorted());
  });
});

describe("the starter decks of the other stages", () => {
  it("come in the order of a beginner's solve, then of those who want to be quicker", () => {
    expect(STARTER_DECKS.map(({ id }) => id)).toEqual([
      "starter-edges",
      "starter-corners",
      "starter-rest",
      "starter-second-layer",
      "starter-last-steps",
      "starter-pairs",
      "starter-two-looks",
      "starter-turning",
      "starter-placing",
    ]);
  });

  // Source: the table of stages and sets.
  it("have the cases of their stages, one stage after the other", () => {
    expect(stretches("starter-second-layer")).toEqual(["second-layer-edges 9"]);
    expect(stretches("starter-last-steps")).toEqual([
      "last-layer-edges-turned 3",
      "last-layer-edges-placed 2",
      "last-layer-corners-placed 4",
      "last-layer-corners-turned-last 7",
    ]);
    expect(stretches("starter-pairs")).toEqual(["pairs 41"]);
    expect(stretches("starter-two-looks")).toEqual([
      "last-layer-edges-turned 3",
      "last-layer-corners-turned 7",
      "last-layer-corners-placed-first 2",
      "last-layer-edges-placed-last 4",
    ]);
    expect(stretches("starter-turning")).toEqual(["last-layer-turned 57"]);
    expect(stretches("starter-placing")).toEqual(["last-layer-placed 21"]);
  });

  it("leave pairs in another slot for later", () => {
    for (const id of casesOf("starter-pairs")) {
      const entry = caseEntry(id);
      if (entry.group !== "slot") throw new Error(`${id} is no pair`);
      expect(entry.shows.slotsTakenUp).toEqual([]);
    }
  });

  it("begin with an edge that lies in the top layer, and end with those that must come out first", () => {
    const families = casesOf("starter-second-layer").map((id) => {
      const entry = caseEntry(id);
      return entry.group === "slot" ? entry.shows.family.edge : undefined;
    });
    expect(families.slice(0, 3)).toEqual(["last-layer", "last-layer", "home"]);
    expect(new Set(families.slice(3))).toEqual(new Set(["elsewhere"]));
  });

  it("ask what a learner of two looks knows before the rest: all edges up first", () => {
    const edges = casesOf("starter-turning").map((id) => {
      const entry = caseEntry(id);
      const family =
        entry.group === "last-layer"
          ? lastLayerFamilyOf(entry.shows)
          : undefined;
      return family?.kind === "up" ? family.edges : undefined;
    });
    expect(edges.slice(0, 7)).toEqual(Array(7).fill("all"));
    expect(edges.slice(-8)).toEqual(Array(8).fill("none"));
  });

  it("put mirror twins next to each other", () => {
    for (const { id } of STARTER_DECKS.slice(3)) {
      const cases = casesOf(id);
      cases.forEach((one, i) => {
        const { twin } = caseEntry(one);
        const at = cases.indexOf(twin);
        expect(Math.abs(at - i), `${one} and ${twin}`).toBeLessThanOrEqual(1);
      });
    }
  });

  it("share what two courses through the last layer have in common", () => {
    const shared = LAST_LAYER_COURSES["beginners-steps"].filter((stage) =>
      LAST_LAYER_COURSES["two-looks-each"].some((other) => other === stage),
    );
    const first = casesOf("starter-last-steps");
    const second = new Set(casesOf("starter-two-looks"));
    expect(first.filter((id) => second.has(id))).toEqual(
      first.filter((id) => shared.some((s) => s === caseEntry(id).stage)),
    );
  });
});

describe("every starter deck", () => {
  it("brings two or three new cases into a round", () => {
    for (const { newPerRound } of STARTER_DECKS)
      expect([2, 3]).toContain(newPerRound);
  });

  it("can be read again, with no case twice and the stage's starting targets", () => {
    for (const deck of STARTER_DECKS) {
      expect(parseDeck({ ...deck }), deck.id).toMatchObject({ ok: true });
      for (const { case: id, target } of deck.cases)
        expect(target).toBe(caseEntry(id).targets.starting);
    }
  });

  it("leaves out only what comes by hundreds, and the corners of those", () => {
    const inDecks = new Set(
      STARTER_DECKS.flatMap((deck) =>
        deck.cases.map((entry) => caseEntry(entry.case).stage),
      ),
    );
    expect(STAGES.filter((stage) => !inDecks.has(stage))).toEqual([
      "last-layer-corners",
      "last-layer-but-edges-turned",
      "last-layer-whole",
    ]);
    expect(casesOfStage("last-layer-corners")).toHaveLength(42);
  });
});
