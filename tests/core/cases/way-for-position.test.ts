import { describe, expect, it } from "vitest";
import { isAnswered } from "../../../core/answer/judge";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import {
  caseEntry,
  casesOfStage,
  waysOf,
} from "../../../core/cases/case-table";
import { startOf } from "../../../core/cases/position";
import { targetsOf } from "../../../core/cases/constraint";
import { holdFor } from "../../../core/cases/hold-in-stage";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import {
  HOLDS,
  type Hold,
  type HomeIndex,
  type Variant,
} from "../../../core/cases/variant";
import { repetitionIn } from "../../../core/cases/way";
import {
  lineUpTurns,
  turnsForPosition,
  turnsToAnswer,
  wayForPosition,
} from "../../../core/cases/way-for-position";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { ROTATIONS } from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";

const SEED = 19;

/** Stages of which every case has a way of its own. */
const FULL_WAY_STAGES = [
  "first-layer-edges",
  "second-layer-edges",
  "pairs",
  "last-layer-turned",
  "last-layer-placed",
] as const;

describe("lining up", () => {
  function written(
    turnedAway: Variant["turnedAway"],
    seenFrom: Variant["seenFrom"],
    hold: Hold,
  ): string {
    const variant = { home: 0, placed: [], turnedAway, seenFrom } as const;
    return formatTurns(lineUpTurns({ variant, hold }));
  }

  it("takes back what the free layer and the whole cube were turned by", () => {
    expect(written(0, 0, "up")).toBe("");
    expect(written(1, 0, "up")).toBe("D'");
    expect(written(2, 3, "up")).toBe("y D2");
    expect(written(3, 1, "up")).toBe("y' D");
  });

  it("turns the top with the first layer held down, and the whole cube the other way", () => {
    expect(written(1, 0, "down")).toBe("U'");
    expect(written(3, 1, "down")).toBe("y U");
  });
});

describe("answering from any cube", () => {
  it("brings the piece home however the cube is held", () => {
    const random = randomSource(SEED);
    for (const id of FIRST_LAYER_IDS) {
      const { stage } = caseEntry(id);
      const variant = randomVariant(random, id, { turnedAway: true });
      for (const hold of HOLDS) {
        const position = randomPosition(random, id, variant, hold);
        const isPair = targetsOf(position).corners.length === 2;
        for (const held of isPair ? [] : ROTATIONS) {
          const cube = { cubies: position.cubies, hold: held };
          const turns = turnsToAnswer(cube, stage, variant.home, hold) ?? [];
          expect(isAnswered(position, applyTurns(cube, turns))).toBe(true);
        }
      }
    }
  });

  it("turns no layer that was just turned to line the piece up", () => {
    const random = randomSource(SEED);
    for (const stage of FULL_WAY_STAGES)
      for (const { id } of casesOfStage(stage))
        for (const chosen of HOLDS) {
          const hold = holdFor(stage, chosen);
          const variant = randomVariant(random, id, { turnedAway: true });
          const position = randomPosition(random, id, variant, hold);
          const turns = turnsForPosition(position);
          for (const [n, { layer }] of turns.entries())
            expect(turns[n + 1]?.layer, formatTurns(turns)).not.toBe(layer);
          expect(
            isAnswered(position, applyTurns(startOf(position), turns)),
          ).toBe(true);
        }
  });

  it("leaves a way as it is written where nothing is to be lined up", () => {
    const variant = {
      home: 0,
      placed: [],
      turnedAway: 0,
      seenFrom: 0,
    } as const;
    const turns = turnsOf("U U R");
    expect(wayForPosition({ variant, hold: "down" }, { turns })).toBe(turns);
    const turned = { ...variant, turnedAway: 1 } as const;
    const played = wayForPosition({ variant: turned, hold: "down" }, { turns });
    expect(formatTurns(played)).toBe("U R");
  });

  it("has nothing to say of a piece that is placed", () => {
    const home: HomeIndex = 2;
    for (const hold of ROTATIONS)
      expect(
        turnsToAnswer(
          { cubies: SOLVED, hold },
          "first-layer-corners",
          home,
          "up",
        ),
      ).toBeUndefined();
  });
});

describe("a way that repeats one part", () => {
  const read = (id: "C1" | "C2" | "C3", hand: "right" | "left") =>
    waysOf(id, "up", hand)
      .filter(({ school }) => school.startsWith("repeating"))
      .map(({ turns }) => repetitionIn(turns))
      .map(
        (found) =>
          found &&
          `${formatTurns(found.before)}(${formatTurns(found.part)})${found.times}`,
      );

  // Source: first-layer.md, the second school (common practice): once, three
  // or five times for first colour right, down, front.
  it("is read as its part and how often", () => {
    expect(read("C1", "right")).toEqual(["(R' D' R D)5", undefined]);
    expect(read("C2", "right")).toEqual([undefined, "(D' R' D R)5"]);
    expect(read("C3", "right")).toEqual(["(R' D' R D)3", "(D' R' D R)3"]);
  });

  it("is read so after the whole cube was turned", () => {
    expect(read("C3", "left")).toEqual(["y(L D L' D')3", "y(D L D' L')3"]);
  });

  it("is not seen in other ways, nor in no turns at all", () => {
    expect(repetitionIn([])).toBeUndefined();
    const ways = FIRST_LAYER_IDS.flatMap((id) => waysOf(id, "up"))
      .filter(({ school }) => school === "first")
      .filter(({ turns }) => repetitionIn(turns));
    expect(ways).toEqual([]);
  });
});
