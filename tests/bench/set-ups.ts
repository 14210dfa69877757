/**
 * How long a set-up takes to find: every case, on what a beginner's cube has,
 * lined up and turned away, held both ways. Every set-up was played before it
 * was returned (`set-up.ts`); here its end is compared once more.
 */
import { FIRST_LAYER_IDS } from "../../core/cases/case-ids";
import { caseEntry } from "../../core/cases/case-table";
import { partlyKnownPosition } from "../../core/cases/partly-known-position";
import { type Position, startOf } from "../../core/cases/position";
import { randomPosition } from "../../core/cases/random-position";
import { randomVariant } from "../../core/cases/random-variant";
import { FIRST_LAYER_CORNERS, FIRST_LAYER_EDGES } from "../../core/cases/stage";
import { HOLDS, holdOfVariant } from "../../core/cases/variant";
import { SOLVED } from "../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../core/cube/held-cube";
import { agreesWith, knownOnly } from "../../core/cube/partly-known";
import { executionTurns } from "../../core/notation/metrics";
import { randomSource } from "../../core/random-source";
import { createSetUpFinder } from "../../core/solver/set-up";
import { runToEnd } from "../../core/solver/steps";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const SEED = 33;
const OF_EACH = 20;
const WARM_UP = 100;
const TARGET = { time: 100, turns: 9 };

const CORNERS = new Set(FIRST_LAYER_CORNERS);
const EDGES = new Set(FIRST_LAYER_EDGES);

/** Measures how long finding takes and how many turns are found. */
export function setUps(): Promise<BenchResult[]> {
  const random = randomSource(SEED);
  const finder = createSetUpFinder();
  const times: number[] = [];
  const turns: number[] = [];
  let toWarmUp = WARM_UP;
  for (let n = 0; n < OF_EACH; n++) {
    for (const id of FIRST_LAYER_IDS) {
      const hold = HOLDS[n % HOLDS.length] ?? "up";
      const variant = randomVariant(random, id, { turnedAway: true });
      const position = randomPosition(random, id, variant, hold);
      const to = partlyKnownPosition(position, "named");
      const isEdge = caseEntry(id).stage === "first-layer-edges";
      const from: HeldCube = {
        cubies: knownOnly(SOLVED, isEdge ? new Set() : CORNERS, EDGES),
        hold: holdOfVariant({ home: 0, seenFrom: 0 }, hold),
      };
      const start = performance.now();
      const found = runToEnd(finder.find(from, to, random));
      const time = performance.now() - start;
      if (!found.ok) throw new WrongAnswer(`${id}: ${found.error.code}`);
      if (!leadsTo(to, from, found.value.turns))
        throw new WrongAnswer(`${id}: the set-up leads elsewhere`);
      if (toWarmUp-- > 0) continue;
      times.push(time);
      turns.push(executionTurns(found.value.turns));
    }
  }
  return Promise.resolve([
    resultFrom({
      name: "set-up: found",
      unit: "ms",
      better: "lower",
      samples: times,
      target: TARGET.time,
    }),
    resultFrom({
      name: "set-up: turns, those of the whole cube included",
      unit: "turns",
      better: "lower",
      samples: turns,
      target: TARGET.turns,
    }),
  ]);
}

function leadsTo(
  to: Position,
  from: HeldCube,
  turns: Parameters<typeof applyTurns>[1],
): boolean {
  const after = applyTurns(from, turns);
  return agreesWith(after.cubies, to.cubies) && after.hold === startOf(to).hold;
}
