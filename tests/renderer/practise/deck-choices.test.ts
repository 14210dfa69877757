import { describe, expect, it } from "vitest";
import { casesOfStage } from "../../../core/cases/case-table";
import { STAGES } from "../../../core/cases/stage";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { planDay } from "../../../core/memory/day-plan";
import { planRound } from "../../../core/memory/round-plan";
import type { LocalDay } from "../../../core/memory/review";
import { decksToPlan } from "../../../renderer/state/practise/deck-choices";
import {
  isPractised,
  type Practised,
} from "../../../renderer/state/practise/practised";

/** What a new learner with one deck is asked, having chosen something from a shelf. */
function asked(of: Practised | undefined) {
  const day = planDay({
    learner: "ann",
    decks: decksToPlan(STARTER_DECKS.slice(0, 1), of),
    hold: "up",
    memories: new Map(),
    today: 100 as LocalDay,
    only: (id) => isPractised(id, of),
  });
  return planRound(day);
}

describe("what is practised of what was chosen from a shelf", () => {
  it.each(STAGES)("is each case of %s, whatever decks there are", (stage) => {
    const [first] = casesOfStage(stage);
    if (first === undefined) throw new Error(`${stage} has no case`);
    const [planned, ...others] = asked(first.id);
    expect(others).toEqual([]);
    expect(planned).toMatchObject({
      case: first.id,
      target: first.targets.starting,
    });
  });

  it("comes from the learner's decks, then the starter decks, before it counts for the shelf alone", () => {
    const deckOf = (of: Practised) => asked(of)[0]?.deck;
    expect(deckOf("E1")).toBe("starter-edges");
    expect(deckOf("pairs")).toBe("starter-pairs");
    expect(deckOf("last-layer-corners")).toBe("shelf");
  });

  it("is held with the last layer on top from the second layer on", () => {
    expect(asked("first-layer-corners")[0]?.hold).toBe("up");
    for (const stage of STAGES.slice(2))
      expect(asked(stage)[0]?.hold, stage).toBe("down");
  });

  it("is nothing but the learner's decks where nothing was chosen", () => {
    expect(new Set(asked(undefined).map(({ deck }) => deck))).toEqual(
      new Set(["starter-edges"]),
    );
  });
});
