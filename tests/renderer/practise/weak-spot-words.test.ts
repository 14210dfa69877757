import { describe, expect, it } from "vitest";
import type { WeakSpot } from "../../../core/memory/weak-spots";
import { weakSpotWords } from "../../../renderer/state/practise/weak-spot-words";

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
    ...changes,
  };
}

describe("a weak spot", () => {
  it("is slow where most is lost by time: as long as it takes, and as it should", () => {
    expect(weakSpotWords(spot({ time: 2 }))).toBe("12 s where 8 are wanted");
    expect(weakSpotWords(spot({ time: 0.25, certainty: 0.2 }))).toBe(
      "8.5 s where 8 are wanted",
    );
  });

  it("is unsure where most is lost by that", () => {
    expect(weakSpotWords(spot({ time: 1, certainty: 2 }))).toBe(
      "you may not know it any more",
    );
  });
});
