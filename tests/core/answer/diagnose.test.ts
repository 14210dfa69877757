import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { waysOf } from "../../../core/cases/case-table";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { wayForPosition } from "../../../core/cases/way-for-position";
import { randomSource } from "../../../core/random-source";
import { explained, positionOf, SEED, SINGLE } from "./explained-answer";

describe("the explanation of an answer", () => {
  it("is nothing where it is right, by any way", () => {
    expect(explained(positionOf("C3"), "F D2 F' D' F D F'")).toBeUndefined();
    expect(explained(positionOf("C1"), "F D F' D2 y")).toBeUndefined();
  });

  it("is not guessed at where nothing or only a single turn was made", () => {
    expect(explained(positionOf("C2"), "y")).toEqual({ kind: "unexplained" });
    expect(explained(positionOf("C2"), "B")).toEqual({ kind: "unexplained" });
  });

  it("is nothing for any way of the case itself", () => {
    const random = randomSource(SEED);
    for (const id of SINGLE) {
      const variant = randomVariant(random, id, { turnedAway: true });
      const position = randomPosition(random, id, variant, "up");
      for (const way of waysOf(id, "up")) {
        const played = wayForPosition(position, way);
        expect(diagnose(position, played, played)).toEqual({});
      }
    }
  });
});
