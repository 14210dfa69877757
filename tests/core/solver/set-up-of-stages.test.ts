/**
 * Set-ups of every stage from the second layer on: from a solved cube, and
 * from one of which only that is known which an answer in the same stage
 * leaves. The turns are played on real cubes that agree with what is known.
 */
import { describe, expect, it } from "vitest";
import {
  caseEntry,
  casesOfStage,
  waysOf,
} from "../../../core/cases/case-table";
import { mostPlaced } from "../../../core/cases/constraint";
import {
  knownAfterAnswer,
  shownPosition,
} from "../../../core/cases/known-layer";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import { groupOfStage, type Stage, STAGES } from "../../../core/cases/stage";
import { holdOfVariant } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import { type PartlyKnownCubies, SOLVED } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import { agreesWith } from "../../../core/cube/partly-known";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { inverseTurns } from "../../../core/notation/inverse";
import { executionTurns } from "../../../core/notation/metrics";
import { pick, randomSource, shuffled } from "../../../core/random-source";
import { imagined } from "../../../core/solver/imagined";
import { createSetUpFinder, type SetUp } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/steps";

const SEED = 20_261_126;
const OF_EACH = 12;

const NEW_STAGES = STAGES.filter(
  (stage) => groupOfStage(stage) !== "first-layer",
);

const finder = createSetUpFinder();

function held(cubies: PartlyKnownCubies): HeldCube {
  return { cubies, hold: holdOfVariant({ home: 0, seenFrom: 0 }, "down") };
}

function setUp(from: HeldCube, to: Position, seed: number): SetUp {
  const found = runToEnd(finder.find(from, to, randomSource(seed)));
  if (!found.ok) throw new Error(found.error.code);
  return found.value;
}

/** What an answer to some case of the stage leaves known, as much as it can be. */
function knownBefore(stage: Stage): PartlyKnownCubies {
  const id = casesOfStage(stage).find(
    (entry) => groupOfStage(stage) !== "slot" || mostPlaced(entry.id) === 3,
  )?.id;
  if (id === undefined) throw new Error(stage);
  return knownAfterAnswer({
    case: id,
    variant: randomVariant(randomSource(1), id),
  });
}

/** Turns without those of the top at both ends, which change nothing about what is seen. */
function withoutTopAtEnds(turns: readonly Turn[]): string {
  const isTop = (turn: Turn | undefined) => turn?.layer === "U";
  let [from, to] = [0, turns.length];
  while (from < to && isTop(turns[from])) from++;
  while (to > from && isTop(turns[to - 1])) to--;
  return formatTurns(turns.slice(from, to));
}

describe.each(NEW_STAGES)("set-ups of %s", (stage) => {
  const random = randomSource(SEED + STAGES.indexOf(stage));
  const cases = shuffled(random, casesOfStage(stage)).slice(0, OF_EACH);
  const lengths: number[] = [];

  it.each(["answered", "solved"] as const)(
    "lead on any real cube that is %s to the case, as the picture shows it",
    (before) => {
      const known = before === "solved" ? SOLVED : knownBefore(stage);
      for (const { id } of cases) {
        const variant = randomVariant(random, id, {
          turnedAway: true,
          seenFromAnywhere: true,
        });
        const whole = randomPosition(random, id, variant, "down");
        const to = shownPosition(whole);
        const from = held(known);
        const { turns, after } = setUp(from, to, random.below(1_000_000));
        lengths.push(executionTurns(turns));
        expect(after).toEqual(applyTurns(from, turns));
        const about = `${id} by ${formatTurns(turns)}`;
        for (let i = 0; i < 5; i++) {
          const real = applyTurns(held(imagined(known, random)), turns);
          expect(recognise(real.cubies, stage, variant.home)?.case, about).toBe(
            id,
          );
          expect(agreesWith(real.cubies, to.cubies), about).toBe(true);
          expect(real.hold, about).toBe(startOf(to).hold);
        }
        expect(turns.some(({ layer }) => layer === "B")).toBe(false);
      }
    },
  );

  it("do not end with a way taken back", () => {
    for (const { id } of cases) {
      const taken = HANDS.flatMap((hand) => waysOf(id, "down", hand)).map(
        ({ turns }) => withoutTopAtEnds(inverseTurns(turns)),
      );
      for (let i = 0; i < 3; i++) {
        const variant = randomVariant(random, id);
        const to = shownPosition(randomPosition(random, id, variant, "down"));
        const { turns } = setUp(held(SOLVED), to, random.below(1000));
        // After the last turn of the whole cube it is seen as it is taught.
        const last = turns.map((turn) => turn.layer).lastIndexOf("y");
        const end = withoutTopAtEnds(turns.slice(last + 1));
        const about = `${id} by ${formatTurns(turns)}`;
        for (const way of taken)
          expect(way !== "" && end.endsWith(way), about).toBe(false);
      }
    }
  });

  it("take nine turns at the median in a slot, in the last layer seventeen at most", () => {
    const sorted = lengths.toSorted((a, b) => a - b);
    const median = sorted[Math.floor(sorted.length / 2)] ?? Infinity;
    expect(median).toBeLessThanOrEqual(
      groupOfStage(stage) === "slot" ? 10 : 17,
    );
  });
});

describe("what has to be known first", () => {
  const random = randomSource(SEED);
  const TWO_LAYERS = knownAfterAnswer({
    case: pick(random, casesOfStage("last-layer-edges-turned")).id,
    variant: { home: 0, placed: [], turnedAway: 0 },
  });

  it("is how the last layer is turned, before it is turned: the pieces are named", () => {
    const { id } = pick(random, casesOfStage("last-layer-turned"));
    const to = shownPosition(
      randomPosition(random, id, randomVariant(random, id), "down"),
    );
    // After the edges were turned up nothing is known of the corners.
    expect(runToEnd(finder.find(held(TWO_LAYERS), to, random))).toMatchObject({
      ok: false,
      error: { code: "piece-not-known", edges: [] },
    });
  });

  it("is where its pieces are, before it is placed", () => {
    const { id } = pick(random, casesOfStage("last-layer-placed"));
    const to = shownPosition(
      randomPosition(random, id, randomVariant(random, id), "down"),
    );
    const turned = knownBefore("last-layer-turned");
    expect(runToEnd(finder.find(held(turned), to, random))).toMatchObject({
      ok: false,
      error: { code: "piece-not-known" },
    });
    expect(caseEntry(id).stage).toBe("last-layer-placed");
  });
});
