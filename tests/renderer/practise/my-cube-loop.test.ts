/**
 * One real cube, fully mixed and of which the app knows only what it is told,
 * goes through case after case on "My cube". The learner makes every turn as
 * told and says truthfully where a piece is; now and then they lose their cube
 * altogether. Whatever the app takes for known must be so on the real cube.
 */
import { expect, it } from "vitest";
import { judge } from "../../../core/answer/judge";
import {
  afterFreeQuarters,
  FREE_QUARTERS,
} from "../../../core/cases/case-goal";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { holdFor } from "../../../core/cases/hold-in-stage";
import {
  knownAfterAnswer,
  mustSidesMatch,
} from "../../../core/cases/known-layer";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
} from "../../../core/cases/last-layer-look";
import { LAST_LAYER_COURSES } from "../../../core/cases/last-layer-stages";
import type { Position } from "../../../core/cases/position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import {
  FIRST_LAYER_STAGES,
  groupOfStage,
  type Stage,
} from "../../../core/cases/stage";
import { HOLDS } from "../../../core/cases/variant";
import type { Cubies, PartlyKnownCubies } from "../../../core/cube/cubies";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import { agreesWith } from "../../../core/cube/partly-known";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import type { Turn } from "../../../core/cube/turns";
import type { RoundItem } from "../../../core/memory/round";
import { pick, randomSource } from "../../../core/random-source";
import { ok } from "../../../core/result";
import { imagined } from "../../../core/solver/imagined";
import { createSetUpFinder } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/steps";
import type { GivenAnswer } from "../../../renderer/state/practise/given-answer";
import { MyCubeAttempt } from "../../../renderer/state/practise/my-cube-attempt.svelte";
import type {
  Astray,
  SetUpFinder,
} from "../../../renderer/state/practise/my-cube-stage";
import {
  type CubePiece,
  cubeThatHas,
  UNKNOWN_CUBE,
} from "../../../renderer/state/practise/own-cube";
import { positionOfItem } from "../../../renderer/state/practise/position-of-item";

const SEED = 77;
const CASES = 60;

/** More steps than any case takes, with every piece to be found and brought home more than once. */
const STEPS = 200;

/** From the second layer on: slots, a beginner's steps, and the last layer in one look each. */
const LATER_STAGES: readonly Stage[] = [
  "second-layer-edges",
  "pairs",
  ...LAST_LAYER_COURSES["beginners-steps"],
  ...LAST_LAYER_COURSES["one-look-each"],
];

const TWO_LAYERS = cubeThatHas("two-layers");

const random = randomSource(SEED);
const finder = createSetUpFinder();

function itemOf(n: number, stages: readonly Stage[]): RoundItem {
  const stage = pick(random, stages);
  const { id } = pick(random, casesOfStage(stage));
  return {
    case: id,
    hold: holdFor(stage, pick(random, HOLDS)),
    deck: "all",
    target: 5,
    asking: random.below(4) === 0 ? "shown" : "alone",
    variant: randomVariant(random, id, {
      turnedAway: true,
      seenFromAnywhere: true,
    }),
    opening: "front",
    bare: true,
    seed: n,
    interrupted: false,
    track: 0,
  };
}

/** The cube in the hands; the app never sees it. */
class RealCube {
  cubies: Cubies = sampleState(random, ANY_STATE);

  /** Dropped, taken apart, turned by somebody else. */
  mix(): void {
    this.cubies = sampleState(random, ANY_STATE);
  }

  /** Answers a case away from the app: by its way where there is one, else anyhow. */
  answer(position: Position, hold: HeldCube["hold"], way: readonly Turn[]) {
    if (way.length > 0) this.turn(hold, way);
    else this.cubies = imagined(knownAfterAnswer(position), random);
    this.match(position);
  }

  /** Turns the last layer until the sides match, as the report asks for. */
  match(position: Position): void {
    const wanted = knownAfterAnswer(position);
    const turned = FREE_QUARTERS.map((quarters) =>
      afterFreeQuarters(this.cubies, quarters),
    ).find((cubies) => agreesWith(cubies, wanted));
    if (mustSidesMatch(position)) this.cubies = turned ?? this.cubies;
  }

  turn(hold: HeldCube["hold"], turns: readonly Turn[]): void {
    this.cubies = applyTurns({ cubies: this.cubies, hold }, turns).cubies;
  }

  where({ kind, piece }: CubePiece): readonly [at: number, turned: number] {
    const [permutation, orientation] =
      kind === "edge"
        ? [this.cubies.edgePermutation, this.cubies.edgeOrientation]
        : [this.cubies.cornerPermutation, this.cubies.cornerOrientation];
    const at = permutation.indexOf(piece);
    return [at, orientation[at] ?? 0];
  }
}

interface Met {
  found: number;
  told: number;
  brought: number;
  seen: number;
  lost: number;
}

/** Goes through one case; answers what is known of the cube afterwards. */
async function goThrough(
  item: RoundItem,
  real: RealCube,
  ownCube: PartlyKnownCubies | undefined,
  met: Met,
): Promise<PartlyKnownCubies | undefined> {
  let searching: Promise<unknown> = Promise.resolve();
  const findSetUp: SetUpFinder = (from, to, seed) => {
    const found = runToEnd(finder.find(from, to, randomSource(seed)));
    const turns = Promise.resolve(found.ok ? ok(found.value.turns) : found);
    searching = turns;
    return turns;
  };
  const answers: GivenAnswer[] = [];
  const attempt = new MyCubeAttempt({
    item,
    position: positionOfItem(item),
    way: turnsForPosition(positionOfItem(item)),
    wayChoice: { school: "first", hand: "right" },
    isMarked: true,
    isRetry: false,
    ownCube,
    findSetUp,
    onset: () => undefined,
    onmoved: () => undefined,
    onhinted: () => undefined,
    onended: (given) => answers.push(given),
  });
  const about = `seed ${SEED}, ${JSON.stringify(item)}`;
  const isRight = () =>
    judge(attempt.position, { cubies: real.cubies, hold: attempt.cube.hold })
      .right;
  const goAstray = (what: Astray) => {
    met.lost++;
    real.mix();
    attempt.astray(what, 5);
  };

  for (let step = 0; step < STEPS && answers.length === 0; step++) {
    const { stage } = attempt;
    switch (stage.kind) {
      case "has":
        attempt.say(
          agreesWith(real.cubies, TWO_LAYERS) ? TWO_LAYERS : UNKNOWN_CUBE,
        );
        break;
      case "tell": {
        met.told++;
        const [pieces, turned] =
          stage.place.kind === "edge"
            ? [real.cubies.edgePermutation, real.cubies.edgeOrientation]
            : [real.cubies.cornerPermutation, real.cubies.cornerOrientation];
        const { piece: at, kind } = stage.place;
        // What is asked about is a piece of the last layer, on top.
        expect(
          (kind === "edge" ? LAST_LAYER_EDGES : LAST_LAYER_CORNERS).some(
            (piece) => piece === pieces[at],
          ),
          about,
        ).toBe(true);
        attempt.told(turned[at] ?? 0);
        break;
      }
      case "find":
        met.found++;
        attempt.found(...real.where(stage.piece));
        break;
      case "searching":
        await searching;
        break;
      case "bring":
      case "set-up":
      case "shown": {
        const { start, turns, done } = stage.walk;
        if (stage.kind === "bring") met.brought++;
        real.turn(start.hold, turns.slice(done));
        turns.slice(done).forEach((_, n) => attempt.turnMade(n));
        if (stage.kind === "set-up") {
          const { position } = attempt;
          expect(agreesWith(real.cubies, position.cubies), about).toBe(true);
          const { stage: asked } = caseEntry(item.case);
          if (groupOfStage(asked) !== "first-layer")
            expect(
              recognise(real.cubies, asked, position.variant.home)?.case,
              about,
            ).toBe(item.case);
        }
        if (stage.kind === "shown") expect(isRight(), about).toBe(true);
        break;
      }
      case "see":
        met.seen++;
        attempt.seen(1);
        break;
      case "turning": {
        const chance = random.below(8);
        if (chance === 0) goAstray("base-lost");
        else if (chance === 1) goAstray("looks-different");
        else {
          real.answer(attempt.position, attempt.cube.hold, attempt.way);
          expect(isRight(), about).toBe(true);
          attempt.done(5);
        }
        break;
      }
      case "report":
        attempt.report("done");
        break;
      case "no-set-up":
        throw new Error(stage.error.code);
      case "ended":
        throw new Error("ended without an answer");
    }
  }
  expect(answers, about).toHaveLength(1);
  const own = attempt.cubeNow;
  expect(own === undefined || agreesWith(real.cubies, own), about).toBe(true);
  return own;
}

/** Takes one mixed cube through many cases of some stages. */
async function goThroughAll(stages: readonly Stage[]): Promise<Met> {
  const real = new RealCube();
  const met: Met = { found: 0, told: 0, brought: 0, seen: 0, lost: 0 };
  let own: PartlyKnownCubies | undefined;
  for (let n = 0; n < CASES; n++)
    own = await goThrough(itemOf(n, stages), real, own, met);
  // The loop went through everything that it claims to.
  expect(met.seen).toBeGreaterThan(CASES / 2);
  expect(met.lost).toBeGreaterThan(3);
  expect(met.found).toBeGreaterThan(20);
  expect(met.brought).toBeGreaterThan(5);
  return met;
}

it(`one mixed cube goes through ${CASES} cases of the first layer, and what is known of it is always true`, async () => {
  const met = await goThroughAll(FIRST_LAYER_STAGES);
  expect(met.told).toBe(0);
});

it(`one mixed cube goes through ${CASES} cases from the second layer to the last, and shows each that was set up`, async () => {
  const met = await goThroughAll(LATER_STAGES);
  expect(met.told).toBeGreaterThan(5);
});
