import { stretchesOf } from "../../../core/cases/way";
import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import { parseTurns } from "../../../core/notation/parse";
import {
  timesInWords,
  turnCount,
  turnCounts,
  wayInWords,
  wayOnOneLine,
} from "../../../renderer/components/way-words";

function turns(text: string): readonly Turn[] {
  const parsed = parseTurns(text);
  if (!parsed.ok) throw new Error(text);
  return parsed.value;
}

describe("a way on one line", () => {
  it("writes a repeated pattern once", () => {
    expect(wayOnOneLine(turns("(R' D' R D)3"))).toBe("R' D' R D, three times");
    expect(wayOnOneLine(turns("F2"))).toBe("F2");
    expect(wayOnOneLine(turns("R' D R"))).toBe("R' D R");
  });

  it("keeps a turn of the whole cube before the repeated part", () => {
    expect(wayOnOneLine(turns("y (L D L' D')3"))).toBe(
      "y, then L D L' D', three times",
    );
  });

  it("says a repeated part once", () => {
    expect(wayInWords(turns("(R' D' R D)3"))).toMatch(
      /^Turn the right side down.*to the right\. Three times\.$/,
    );
    expect(wayInWords(turns("F2"))).toBe("Turn the front twice.");
  });

  it("says parts that are repeated inside a way once, and loses no turn", () => {
    const way = turns("U (R' D' R D)2 U (R' D' R D)4 U2");
    expect(wayOnOneLine(way)).toBe(
      "U, (R' D' R D) twice, U, (R' D' R D) four times, U2",
    );
    expect(wayInWords(way)).toMatch(/ Twice: .* Four times: .*twice\.$/);
    expect(
      stretchesOf(way).flatMap(({ part, times }) =>
        Array.from({ length: times }, () => part).flat(),
      ),
    ).toEqual(way);
  });

  it("gives a length in both metrics where they say more", () => {
    expect(turnCounts(turns("R U R' U'"))).toBe("4 turns");
    expect(turnCounts(turns("M2 U M2"))).toBe(
      "3 turns (5 of outer layers, 9 quarters)",
    );
  });

  it("counts turns as they stand, those of the whole cube left out", () => {
    expect(turnCount(turns("y D L D' L'"))).toBe("4 turns");
    expect(turnCount(turns("M2 U M2"))).toBe("3 turns");
    expect(turnCount(turns("F2"))).toBe("1 turn");
  });

  it("says how many times in words", () => {
    expect(timesInWords(2)).toBe("twice");
    expect(timesInWords(7)).toBe("7 times");
  });
});
