import { describe, expect, it } from "vitest";
import { isAnswered } from "../../../core/answer/judge";
import type { LastLayerEntry } from "../../../core/cases/case-entry";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import { answersLook } from "../../../core/cases/last-layer-goal";
import { stateOfLook } from "../../../core/cases/last-layer-look";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { wayForPosition } from "../../../core/cases/way-for-position";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { turnsMade } from "../../../core/notation/metrics";
import { randomSource, shuffled } from "../../../core/random-source";
import { easeOf } from "../../../core/solver/ease-of-turning";
import { easiestWriting } from "../../../core/solver/easiest-writing";
import { createLastLayerSequences } from "../../../core/solver/last-layer-set-ups";
import { runToEnd } from "../../../core/steps";
import { findWayAtOnce } from "../../../core/solver/way-at-once";

const SEED = 41;
const OF_EACH = 30;

describe("a way at once", () => {
  const sequences = createLastLayerSequences();

  it.each(["last-layer-but-edges-turned", "last-layer-whole"] as const)(
    `of 30 cases of %s (seed ${SEED}) answers from the look that names the case, and on random positions`,
    (stage) => {
      const random = randomSource(SEED);
      const without = casesOfStage(stage).filter(
        (entry): entry is LastLayerEntry =>
          entry.group === "last-layer" && entry.ways.length === 0,
      );
      const chosen = shuffled(random, without).slice(0, OF_EACH);
      expect(chosen).toHaveLength(OF_EACH);
      for (const entry of chosen) {
        const turns = runToEnd(findWayAtOnce(sequences, entry));
        expect(answersLook(entry.shows, turns), entry.id).toBe(true);
        expect(turnsMade(turns), entry.id).toBeLessThanOrEqual(20);
        for (let i = 0; i < 3; i++) {
          const variant = randomVariant(random, entry.id, { turnedAway: true });
          const position = randomPosition(random, entry.id, variant, "down");
          const after = applyTurns(
            startOf(position),
            wayForPosition(position, { turns }),
          );
          expect(isAnswered(position, after), entry.id).toBe(true);
        }
      }
    },
    60_000,
  );

  it("is of three where no two can be joined", () => {
    // Which those are was found by going through all cases.
    const entry = caseEntry("last-layer-whole:0000-1111-0123-0123");
    if (entry.group !== "last-layer")
      throw new Error("it is of the last layer");
    const from = stateOfLook(entry.shows.lookAt(0));
    expect(runToEnd(sequences.joined(from, SOLVED))).toEqual([]);
    const turns = runToEnd(findWayAtOnce(sequences, entry));
    expect(answersLook(entry.shows, turns)).toBe(true);
  });

  it("costs the hands no more than the shortest that can be joined", () => {
    const random = randomSource(SEED);
    const hold = holdInStage(
      "last-layer-whole",
      { home: 0, seenFrom: 0 },
      "down",
    );
    const all = casesOfStage("last-layer-but-edges-turned");
    for (const entry of shuffled(random, all).slice(0, 5)) {
      if (entry.group !== "last-layer") throw new Error("they are");
      const from = stateOfLook(entry.shows.lookAt(0));
      const joined = runToEnd(sequences.joined(from, SOLVED));
      const least = Math.min(...joined.map(({ length }) => length));
      const own = easeOf(runToEnd(findWayAtOnce(sequences, entry)));
      const [shortest] = joined.filter(({ length }) => length === least);
      expect(own).toBeLessThanOrEqual(
        easiestWriting(shortest ?? [], hold).ease,
      );
    }
  });

  it("tells its progress ascending, between 0 and 1", () => {
    const [entry] = casesOfStage("last-layer-but-edges-turned");
    if (entry?.group !== "last-layer") throw new Error("the stage has cases");
    const steps = findWayAtOnce(sequences, entry);
    const told: number[] = [];
    for (let step = steps.next(); step.done !== true; step = steps.next())
      told.push(step.value);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect(Math.min(...told)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...told)).toBeLessThanOrEqual(1);
  });
});
