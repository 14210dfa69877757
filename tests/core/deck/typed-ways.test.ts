import { expect, it } from "vitest";
import { casesWithBadWays, withoutWays } from "../../../core/deck/typed-ways";
import type { DeckCase } from "../../../core/deck/deck";
import { randomSource } from "../../../core/random-source";

const typed = (turns: string) => ({ kind: "turns", turns }) as const;

// Sources: `D' R' D R` answers C1 and `F'` E2a (the first-layer table, common
// practice); `F' R` brings E2a home and takes the right edge out of its own.
const CASES: readonly DeckCase[] = [
  { case: "C1", target: 20, way: typed("D' R' D R") },
  { case: "E1", target: 8, way: typed("R L U D B") },
  { case: "E2a", target: 8, way: typed("F' R") },
  { case: "E2b", target: 8, way: { kind: "school", school: "shortest" } },
  { case: "E3", target: 15 },
];

it("ways that somebody else typed are played, with as many others placed as the deck asks", () => {
  expect(casesWithBadWays(CASES, randomSource(1))).toEqual(["E1", "E2a"]);
  const alone = CASES.map((entry) => ({ ...entry, placed: 0 as const }));
  expect(casesWithBadWays(alone, randomSource(1))).toEqual(["E1"]);
});

it("a way that does not answer is left out, and nothing else", () => {
  const [c1, e1, ...rest] = withoutWays(CASES, ["E1"]);
  expect(e1).toEqual({ case: "E1", target: 8 });
  expect([c1, ...rest]).toEqual([CASES[0], ...CASES.slice(2)]);
});
