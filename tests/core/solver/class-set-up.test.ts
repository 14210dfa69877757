/**
 * The bounds are what was measured over every case of each stage, and no more:
 * a longer set-up than before turns a test red.
 */
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage, waysOf } from "../../../core/cases/case-table";
import { allowedPlacedSets, mostPlaced } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { recognise } from "../../../core/cases/recognise";
import { type Stage, STAGES } from "../../../core/cases/stage";
import { type Hold, HOLDS } from "../../../core/cases/variant";
import { applyTurns } from "../../../core/cube/held-cube";
import { SOLVED } from "../../../core/cube/cubies";
import { inverseTurns } from "../../../core/notation/inverse";
import { present } from "../../../core/invariant";
import { randomSource } from "../../../core/random-source";
import {
  alsoHome,
  classSetUp,
  cubeAtStart,
  cubeStarts,
} from "../../../core/solver/class-set-up";
import { imagined } from "../../../core/solver/imagined";

/** Two stages of the last layer whose ways are found on demand. */
const ON_DEMAND: readonly Stage[] = [
  "last-layer-but-edges-turned",
  "last-layer-whole",
];
const WITH_WAYS = STAGES.filter((stage) => !ON_DEMAND.includes(stage));

/** Answered as two cases, one after the other. */
const TWO_CORNERS: readonly CaseId[] = ["S1", "S2"];

/** A position that shows a case lined up from its first home. */
function linedUp(id: CaseId, hold: Hold): Position {
  const [placed] = allowedPlacedSets(id, 0, mostPlaced(id));
  const variant = {
    home: 0,
    placed: present(placed, "a case allows what it allows at most"),
    turnedAway: 0,
    seenFrom: 0,
  } as const;
  return randomPosition(randomSource(7), id, variant, hold);
}

function casesWithWays(stage: Stage): readonly CaseId[] {
  return casesOfStage(stage)
    .map(({ id }) => id)
    .filter((id) => !TWO_CORNERS.includes(id));
}

function holdsOf(stage: Stage): readonly Hold[] {
  return stage.startsWith("first-layer") ? HOLDS : ["down"];
}

function setUpOf(position: Position) {
  return present(classSetUp(position), "a case with ways has a set-up");
}

describe("a set-up for a class", () => {
  it.each(WITH_WAYS)(
    "of %s makes any cube that has its start show the case, whatever else is on that cube",
    (stage) => {
      const random = randomSource(11);
      for (const hold of holdsOf(stage))
        for (const id of casesWithWays(stage)) {
          const position = linedUp(id, hold);
          const turns = setUpOf(position);
          for (const start of cubeStarts(id)) {
            const known = cubeAtStart(position, start);
            const cubies = imagined(known.cubies, random);
            const after = applyTurns({ ...known, cubies }, turns);
            expect(after.hold, `${id} from ${start}`).toBe(
              startOf(position).hold,
            );
            expect(
              recognise(after.cubies, stage, 0)?.case,
              `${id} from ${start}`,
            ).toBe(id);
          }
        }
    },
    60_000,
  );

  it("undone leaves the cube solved as it was, and before it nothing of the case was left to do", () => {
    for (const stage of WITH_WAYS)
      for (const id of casesWithWays(stage)) {
        const [hold = "up"] = holdsOf(stage);
        const position = linedUp(id, hold);
        const turns = setUpOf(position);
        const start = { ...cubeAtStart(position, "solved"), cubies: SOLVED };
        expect(recognise(SOLVED, stage, 0)).toBeUndefined();
        const shown = applyTurns(start, turns);
        expect(applyTurns(shown, inverseTurns(turns)).cubies).toEqual(SOLVED);
      }
  });

  it("is told for none but the two tasks of two corners, and where ways are found on demand", () => {
    for (const id of TWO_CORNERS)
      expect(classSetUp(linedUp(id, "up"))).toBeUndefined();
    for (const stage of ON_DEMAND) {
      const [first] = casesOfStage(stage);
      const { id } = present(first, "a stage has cases");
      expect(classSetUp(linedUp(id, "down"))).toBeUndefined();
    }
  });

  const BOUNDS: readonly (readonly [Stage, median: number, longest: number])[] =
    [
      ["first-layer-edges", 3, 4],
      ["first-layer-corners", 5, 6],
      ["second-layer-edges", 7, 9],
      ["pairs", 7, 10],
      ["last-layer-edges-turned", 7, 11],
      ["last-layer-edges-placed", 10, 10],
      ["last-layer-corners-placed", 8, 11],
      ["last-layer-corners-turned-last", 14, 17],
      ["last-layer-corners-turned", 9, 11],
      ["last-layer-corners-placed-first", 13, 13],
      ["last-layer-edges-placed-last", 9, 10],
      ["last-layer-turned", 10, 12],
      ["last-layer-placed", 13, 16],
      ["last-layer-corners", 10, 13],
    ];
  it.each(BOUNDS)(
    "of %s takes %i turns at the median and at most %i",
    (stage, median, longest) => {
      for (const hold of holdsOf(stage)) {
        const lengths = casesWithWays(stage)
          .map((id) => setUpOf(linedUp(id, hold)).length)
          .sort((a, b) => a - b);
        expect(lengths[Math.floor(lengths.length / 2)]).toBe(median);
        expect(lengths.at(-1)).toBe(longest);
      }
    },
  );

  it("is no more than two turns longer than the shortest way it undoes", () => {
    for (const stage of WITH_WAYS)
      for (const id of casesWithWays(stage)) {
        const [hold = "up"] = holdsOf(stage);
        const ways = waysOf(id, hold).map(({ turns }) => turns.length);
        const { length } = setUpOf(linedUp(id, hold));
        expect(length, id).toBeLessThanOrEqual(Math.min(...ways) + 2);
      }
  });

  it("starts from a cross only where what the case is about is home as well", () => {
    const corner = linedUp("C1", "up");
    expect(alsoHome(corner, "cross").corners).toHaveLength(1);
    expect(alsoHome(corner, "layer").corners).toHaveLength(0);
    expect(cubeStarts("C1")).toEqual(["cross", "layer", "solved"]);
    const edge = linedUp("E1", "up");
    expect(alsoHome(edge, "cross")).toEqual({ corners: [], edges: [] });
  });
});
