import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import { parseTurns } from "../../../core/notation/parse";
import {
  timesInWords,
  turnCount,
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

  it("counts turns as WCA 12a5 does: whole-cube turns are none", () => {
    expect(turnCount(turns("y D L D' L'"))).toBe("4 turns");
    expect(turnCount(turns("F2"))).toBe("1 turn");
  });

  it("says how many times in words", () => {
    expect(timesInWords(2)).toBe("twice");
    expect(timesInWords(7)).toBe("7 times");
  });
});
