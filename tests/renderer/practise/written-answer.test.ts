import { describe, expect, it } from "vitest";
import { parseTurns } from "../../../core/notation/parse";
import {
  TAP_KEYS,
  smallLetterNote,
  type TapKey,
  tapped,
  withoutLastTurn,
} from "../../../renderer/state/practise/written-answer";

function afterTaps(...keys: TapKey[]): string {
  return keys.reduce(tapped, "");
}

describe("an answer that is tapped", () => {
  it("begins a turn with each letter and marks the last one", () => {
    expect(afterTaps("D", "'", "R", "'", "F", "2")).toBe("D' R' F2");
  });

  it("exchanges the mark of the last turn, and takes it away when tapped again", () => {
    expect(afterTaps("R", "'", "2")).toBe("R2");
    expect(afterTaps("R", "2", "'")).toBe("R'");
    expect(afterTaps("R", "2", "2")).toBe("R");
    expect(afterTaps("R", "'", "'")).toBe("R");
  });

  it("widens a face's turn and narrows it again, whatever its mark", () => {
    expect(afterTaps("R", "w")).toBe("Rw");
    expect(afterTaps("R", "2", "w")).toBe("Rw2");
    expect(afterTaps("R", "w", "'")).toBe("Rw'");
    expect(afterTaps("R", "w", "w")).toBe("R");
    expect(afterTaps("M", "w")).toBe("M");
    expect(afterTaps("x", "'", "w")).toBe("x'");
  });

  it("keeps a mark that belongs to no turn away", () => {
    expect(afterTaps("'")).toBe("");
    expect(afterTaps("2")).toBe("");
  });

  it("can always be read, whatever is tapped", () => {
    for (const a of TAP_KEYS)
      for (const b of TAP_KEYS)
        for (const c of TAP_KEYS)
          expect(parseTurns(afterTaps(a, b, c)).ok).toBe(true);
  });

  it("loses one turn at a time", () => {
    expect(withoutLastTurn("D' R2 ")).toBe("D'");
    expect(withoutLastTurn("D'")).toBe("");
    expect(withoutLastTurn("")).toBe("");
  });
});

describe("a small letter", () => {
  it("is said to turn two layers, with what to write for one", () => {
    expect(smallLetterNote("R u' f")).toBe(
      "A small u turns two layers. For the top alone write U.",
    );
    expect(smallLetterNote("r")).toContain("the right side alone write R");
  });

  it("is no cause for a word where it means the whole cube or stands in Rw", () => {
    expect(smallLetterNote("x R Fw2 y'")).toBeUndefined();
  });
});
