import { describe, expect, it } from "vitest";
import type { WaySchool } from "../../../core/cases/way";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { shownWays } from "../../../renderer/state/practise/shown-ways";
import { asked, caseNamed } from "./asked";

/** Two corners and two edges change places: the way of least trouble is four turns longer than the shortest. */
const POSITION = asked(caseNamed("last-layer-placed:0132-0321"));

function shown(chosen: WaySchool, deck?: WaySchool) {
  return shownWays(POSITION, {
    way: deck && { kind: "school", school: deck },
    choice: { school: chosen, hand: "right" },
  });
}

describe("the ways shown after an answer", () => {
  it("begin with the way that the learner chose", () => {
    const [fewest, other] = shown("shortest");
    const [easiest] = shown("easiest");
    expect(fewest.name).toBe("The way you learn");
    expect(easiest.turns).toEqual(other?.turns);
    expect(outerBlockTurns(fewest.turns)).toBeLessThan(
      outerBlockTurns(easiest.turns),
    );
  });

  it("begin with their deck's where it names one", () => {
    const [first] = shown("shortest", "easiest");
    expect(first.name).toBe("The deck’s way");
    expect(first.turns).toEqual(shown("easiest")[0].turns);
  });
});
