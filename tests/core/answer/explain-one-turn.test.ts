import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { explained, positionOf } from "./explained-answer";

describe("the explanation of one wrong turn", () => {
  // The way of the design's first-layer.md: R' D2 R D R' D' R.
  it.each([
    ["R' D2 R D R' D R", "reversed", 5, "D'", "D"],
    ["R' D2 R D2 R' D' R", "amount", 3, "D", "D2"],
    ["R' D2 D R' D' R", "missing", 2, "R", undefined],
    ["R' D2 R D L R' D' R", "extra", 4, undefined, "L"],
    ["R' D2 R D R' F' R", "another-layer", 5, "D'", "F'"],
    ["y F' D2 F D F' L F", "another-layer", 6, "D'", "L"],
    ["R' D2 R D Rw' D' R", "another-layer", 4, "R'", "Rw'"],
  ] as const)(
    "is one turn of C3's way, named with its place: %s",
    (played, slip, index, wanted, made) => {
      const text = (turn: Turn | undefined) => turn && formatTurns([turn]);
      const found = explained(positionOf("C3"), played);
      expect(found).toMatchObject({ kind: "one-turn", slip, index });
      if (found?.kind !== "one-turn") return;
      expect(text(found.wanted)).toBe(wanted);
      expect(text(found.made)).toBe(made);
      expect(formatTurns(found.right)).toBe("R' D2 R D R' D' R");
    },
  );
});
