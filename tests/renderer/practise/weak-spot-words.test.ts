import { describe, expect, it } from "vitest";
import type { WeakSpot } from "../../../core/memory/weak-spots";
import {
  weakSpotsOffer,
  weakSpotWords,
} from "../../../renderer/state/practise/weak-spot-words";

function spot(changes: Partial<WeakSpot>): WeakSpot {
  return {
    planned: {
      case: "C3",
      hold: "up",
      deck: "d",
      target: 8,
      memory: "settling",
      times: 1,
    },
    frequency: 0.5,
    time: 0,
    certainty: 0,
    unsure: 0,
    ...changes,
  };
}

describe("a weak spot", () => {
  it("is slow where most is lost by time: as long as it takes, and as it should", () => {
    expect(weakSpotWords(spot({ time: 2 }), 0.9)).toBe(
      "12 s where 8 are wanted",
    );
    expect(weakSpotWords(spot({ time: 0.25, certainty: 0.2 }), 0.9)).toBe(
      "8.5 s where 8 are wanted",
    );
  });

  it("is unsure where most is lost by that: as likely as it is, and as it should be", () => {
    expect(
      weakSpotWords(spot({ time: 1, certainty: 2, unsure: 0.15 }), 0.9),
    ).toBe("you’d know it 75 times in 100 where 90 are wanted");
  });
});

describe("a round of weak spots", () => {
  it("says how many it asks beyond those that are named", () => {
    expect(weakSpotsOffer(["C3", "E1"], ["C3", "E1"], 240)).toBe(
      "Practise these, about 4 minutes",
    );
    expect(weakSpotsOffer(["C3", "E1"], ["C3", "C5", "C9"], 40)).toBe(
      "Practise these and 2 more, about a minute",
    );
  });
});
