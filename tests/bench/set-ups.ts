/**
 * How long a set-up takes to find and how many turns it has, for each group of
 * stages: in the first layer every case, on what a beginner's cube has; in the
 * others some cases of every stage, on what an answer in it leaves known. All
 * turned away, the first layer held both ways where it may be. Every set-up was
 * played before it was returned (`set-up.ts`); here its end is compared once
 * more.
 */
import { caseEntry, casesOfStage } from "../../core/cases/case-table";
import { mostPlaced } from "../../core/cases/constraint";
import { knownAfterAnswer, shownPosition } from "../../core/cases/known-layer";
import { partlyKnownPosition } from "../../core/cases/partly-known-position";
import { type Position, startOf } from "../../core/cases/position";
import { randomPosition } from "../../core/cases/random-position";
import { randomVariant } from "../../core/cases/random-variant";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
  groupOfStage,
  type Stage,
  type StageGroup,
  STAGES,
} from "../../core/cases/stage";
import { HOLDS, holdOfVariant } from "../../core/cases/variant";
import { type PartlyKnownCubies, SOLVED } from "../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../core/cube/held-cube";
import { agreesWith, knownOnly } from "../../core/cube/partly-known";
import type { CaseId } from "../../core/cases/case-ids";
import { executionTurns } from "../../core/notation/metrics";
import {
  type RandomSource,
  randomSource,
  shuffled,
} from "../../core/random-source";
import { createSetUpFinder, type SetUpFinder } from "../../core/solver/set-up";
import { runToEnd } from "../../core/steps";
import { type BenchResult, resultFrom, WrongAnswer } from "./result";

const SEED = 33;

interface Group {
  readonly name: string;
  /** How many cases of each stage are taken. */
  readonly ofEach: number | "all";
  /** How often each. */
  readonly times: number;
  /** Of what was found first nothing is counted: the tables are made then. */
  readonly warmUp: number;
  readonly target?: { readonly time: number; readonly turns: number };
}

const GROUPS: Readonly<Record<StageGroup, Group>> = {
  "first-layer": {
    name: "first layer",
    ofEach: "all",
    times: 10,
    warmUp: 50,
    target: { time: 100, turns: 9 },
  },
  slot: { name: "slots", ofEach: 15, times: 3, warmUp: 5 },
  "last-layer": { name: "last layer", ofEach: 6, times: 2, warmUp: 5 },
};

/** Measures how long finding takes and how many turns are found. */
export function setUps(): Promise<BenchResult[]> {
  const random = randomSource(SEED);
  const finder = createSetUpFinder();
  const groups = ["first-layer", "slot", "last-layer"] as const;
  return Promise.resolve(
    groups.flatMap((group) => measured(group, finder, random)),
  );
}

function measured(
  group: StageGroup,
  finder: SetUpFinder,
  random: RandomSource,
): readonly BenchResult[] {
  const { name, ofEach, times, warmUp, target } = GROUPS[group];
  const all = STAGES.filter((stage) => groupOfStage(stage) === group).flatMap(
    (stage) => {
      const cases = casesOfStage(stage);
      const chosen =
        ofEach === "all" ? cases : shuffled(random, cases).slice(0, ofEach);
      return chosen.map(({ id }) => id);
    },
  );
  const samples = Array.from({ length: times }, (_, n) =>
    shuffled(random, all).map((id) => setUp(id, n, finder, random)),
  )
    .flat()
    .slice(warmUp);
  return [
    resultFrom({
      name: `set-up, ${name}: found`,
      unit: "ms",
      better: "lower",
      samples: samples.map(({ time }) => time),
      ...(target && { target: target.time }),
    }),
    resultFrom({
      name: `set-up, ${name}: turns, those of the whole cube included`,
      unit: "turns",
      better: "lower",
      samples: samples.map(({ turns }) => turns),
      ...(target && { target: target.turns }),
    }),
  ];
}

function setUp(
  id: CaseId,
  n: number,
  finder: SetUpFinder,
  random: RandomSource,
): { readonly time: number; readonly turns: number } {
  const { stage, group } = caseEntry(id);
  const hold =
    group === "first-layer" ? (HOLDS[n % HOLDS.length] ?? "up") : "down";
  const variant = randomVariant(random, id, { turnedAway: true });
  const position = randomPosition(random, id, variant, hold);
  const to =
    group === "first-layer"
      ? partlyKnownPosition(position, "named")
      : shownPosition(position);
  const from: HeldCube<PartlyKnownCubies> = {
    cubies: knownBefore(stage),
    hold: holdOfVariant({ home: 0, seenFrom: 0 }, hold),
  };
  const start = performance.now();
  const found = runToEnd(finder.find(from, to, random));
  const time = performance.now() - start;
  if (!found.ok) throw new WrongAnswer(`${id}: ${found.error.code}`);
  if (!leadsTo(to, from, found.value.turns))
    throw new WrongAnswer(`${id}: the set-up leads elsewhere`);
  return { time, turns: executionTurns(found.value.turns) };
}

const CORNERS = new Set(FIRST_LAYER_CORNERS);
const EDGES = new Set(FIRST_LAYER_EDGES);
const NO_CORNERS: ReadonlySet<(typeof FIRST_LAYER_CORNERS)[number]> = new Set();

/** What is known of a cube on which cases of a stage have been answered. */
function knownBefore(stage: Stage): PartlyKnownCubies {
  if (groupOfStage(stage) === "first-layer")
    return knownOnly(
      SOLVED,
      stage === "first-layer-edges" ? NO_CORNERS : CORNERS,
      EDGES,
    );
  const full = casesOfStage(stage).find(
    ({ id, group }) => group !== "slot" || mostPlaced(id) === 3,
  );
  if (full === undefined) throw new WrongAnswer(`${stage} has no case`);
  const variant = randomVariant(randomSource(1), full.id);
  return knownAfterAnswer({ case: full.id, variant });
}

function leadsTo(
  to: Position,
  from: HeldCube<PartlyKnownCubies>,
  turns: Parameters<typeof applyTurns>[1],
): boolean {
  const after = applyTurns(from, turns);
  return agreesWith(after.cubies, to.cubies) && after.hold === startOf(to).hold;
}
