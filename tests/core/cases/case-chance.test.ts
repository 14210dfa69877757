import { describe, expect, it } from "vitest";
import { caseChance } from "../../../core/cases/case-chance";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { lastLayerTradeTitle } from "../../../core/cases/last-layer-words";

function chanceOf(
  trade: string,
  stage: "last-layer-turned" | "last-layer-placed",
) {
  const found = casesOfStage(stage).find(({ id }) => {
    const entry = caseEntry(id);
    return (
      entry.group === "last-layer" && lastLayerTradeTitle(entry.shows) === trade
    );
  });
  return found && caseChance(found.id);
}

describe("how often a case comes up", () => {
  it("is one in 54, 108 or 216, and one in 18, 36 or 72, in the last layer", () => {
    // Source: the table of chances.
    expect(chanceOf("OLL 27", "last-layer-turned")).toEqual({
      part: 1,
      whole: 54,
    });
    expect(chanceOf("OLL 21", "last-layer-turned")).toEqual({
      part: 1,
      whole: 108,
    });
    expect(chanceOf("OLL 20", "last-layer-turned")).toEqual({
      part: 1,
      whole: 216,
    });
    expect(chanceOf("PLL T", "last-layer-placed")).toEqual({
      part: 1,
      whole: 18,
    });
    expect(chanceOf("PLL Z", "last-layer-placed")).toEqual({
      part: 1,
      whole: 36,
    });
    expect(chanceOf("PLL H", "last-layer-placed")).toEqual({
      part: 1,
      whole: 72,
    });
  });

  it("is, of a pair with all other slots placed, its share of 150 arrangements", () => {
    // 5 places and 3 ways for the corner, 5 and 2 for the edge: 15 · 10.
    const chances = casesOfStage("pairs").flatMap(({ id, ...entry }) =>
      entry.group === "slot" && entry.shows.slotsTakenUp.length === 0
        ? [caseChance(id)]
        : [],
    );
    expect(chances).toHaveLength(41);
    const sum = chances.reduce(
      (all, chance) => all + (chance?.part ?? 0) / (chance?.whole ?? 1),
      0,
    );
    expect(sum).toBeCloseTo(149 / 150, 10);
  });

  it("is not said of the first layer", () => {
    expect(caseChance("E1")).toBeUndefined();
  });
});
