import { describe, expect, it } from "vitest";
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomSource } from "../../../core/random-source";
import { position, wordsFor } from "./explained";

function slotPosition(): Position {
  return randomPosition(
    randomSource(1),
    "second-layer-edges:DF-F",
    { home: 0, placed: [1, 2, 3], turnedAway: 0, seenFrom: 0 },
    "down",
  );
}

describe("what explains a missed answer", () => {
  // C3's way, source the design's first-layer.md: R' D2 R D R' D' R.
  it.each([
    ["R' D2 R D R' D'", /^Right so far, but one turn is missing at the end\.$/],
    ["R' D2 R D R' D R", /^Your sixth turn went the other way round\.$/],
    ["R' D2 R D2 R' D' R", /^Your fourth turn went too far\.$/],
    ["R' D R D R' D' R", /^Your second turn did not go far enough\.$/],
    ["R' D2 D R' D' R", /^One turn is missing after your second\.$/],
    ["D2 R D R' D' R", /^One turn is missing at the beginning\.$/],
    ["R' D2 R D L R' D' R", /^Your fifth turn is one too many\.$/],
    ["R' D2 R D R' F' R", /^Your sixth turn should have been another one\.$/],
    ["R' D2 R D2", /^Your fourth turn went too far\.$/],
    ["R' D2 R'", /^Your third turn went the other way round\.$/],
  ])("is said of %s, played for C3", (played, sentence) => {
    expect(wordsFor(position("C3"), played)?.sentence).toMatch(sentence);
  });

  it("says what was wanted, or still is, as the cube is then held", () => {
    const asked = position("C3");
    expect(wordsFor(asked, "R' D2 R D R' D'")?.more).toBe(
      "Still to come: Turn the right side up.",
    );
    expect(wordsFor(asked, "R' D2 R D R' D'", undefined, true)?.more).toBe(
      "Still to come: R. Turn the right side up.",
    );
    expect(wordsFor(asked, "R' D2 R D2")?.more).toMatch(
      /^After the right one, 3 turns are still missing\. Still to come: Turn the right side down/,
    );
    expect(wordsFor(asked, "R' D2 R'")?.more).toBe(
      "After the right one, 4 turns are still missing.",
    );
    expect(wordsFor(asked, "y F' D2 F D F' D'")?.more).toContain(
      "Turn the front so that its top goes right.",
    );
    expect(wordsFor(asked, "R' D2 D R' D' R")?.more).toBe(
      "Wanted there: Turn the right side up. All else was right.",
    );
    expect(wordsFor(asked, "R' D2 R D R' D R")?.more).toBe(
      "All else was right.",
    );
  });

  it("names homes, pieces and sides by where they are and by the learner's own colours", () => {
    const asked = position("C1");
    expect(wordsFor(asked, "y D D' R' D R")?.sentence).toBe(
      "You answered for another home: top back right.",
    );
    expect(wordsFor(asked, "D' D' R' D R")?.sentence).toBe(
      "The right turns, but it was not lined up.",
    );
    const side = wordsFor(position("C7"), "y L D L' D' R' D R");
    // Green is in front, red on the right: after y the red side is.
    expect(side?.sentence).toBe("You answered as if red faced you.");
    expect(side?.more).toBe("These turns are right with green in front.");
    expect(wordsFor(position("C7"), "R' D' R D L D' L'")?.sentence).toBe(
      "You made the way backwards.",
    );
    const slot = slotPosition();
    expect(wordsFor(slot, "U R U' R'")?.sentence).toMatch(
      /^The edge is home, but the white, .* corner left the place\.$/,
    );
    expect(wordsFor(slot, "U R U' R' U' F' U F")?.sentence).toMatch(
      /^You answered as if it were “Above the .*”\.$/,
    );
  });

  it("is nothing where no rule holds, so that what the cube shows is said", () => {
    expect(wordsFor(position("C1"), "R D2 F2 B L D")).toBeUndefined();
  });
});
