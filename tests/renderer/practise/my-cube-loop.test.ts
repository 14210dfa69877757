/**
 * One real cube, fully mixed and of which the app knows only what it is told,
 * goes through case after case on "My cube". The learner makes every turn as
 * told and says truthfully where a piece is; now and then they lose their cube
 * altogether. Whatever the app takes for known must be so on the real cube.
 */
import { expect, it } from "vitest";
import { judge } from "../../../core/answer/judge";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { randomVariant } from "../../../core/cases/random-variant";
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
import { createSetUpFinder } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/solver/steps";
import type { GivenAnswer } from "../../../renderer/state/practise/given-answer";
import { MyCubeAttempt } from "../../../renderer/state/practise/my-cube-attempt.svelte";
import type {
  Astray,
  SetUpFinder,
} from "../../../renderer/state/practise/my-cube-stage";
import {
  type CubePiece,
  UNKNOWN_CUBE,
} from "../../../renderer/state/practise/own-cube";
import { positionOfItem } from "../../../renderer/state/practise/position-of-item";

const SEED = 77;
const CASES = 60;

/** More steps than any case takes, with every piece to be found and brought home. */
const STEPS = 60;

const random = randomSource(SEED);
const finder = createSetUpFinder();

function itemOf(n: number): RoundItem {
  const id = pick(random, FIRST_LAYER_IDS);
  return {
    case: id,
    hold: pick(random, HOLDS),
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
        attempt.say(UNKNOWN_CUBE);
        break;
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
        if (stage.kind === "set-up")
          expect(agreesWith(real.cubies, attempt.position.cubies), about).toBe(
            true,
          );
        if (stage.kind === "shown") expect(isRight(), about).toBe(true);
        break;
      }
      case "see":
        met.seen++;
        attempt.seen(1);
        break;
      case "turning": {
        const chance = random.below(8);
        if (chance === 0) goAstray("cross-lost");
        else if (chance === 1) goAstray("looks-different");
        else {
          real.turn(attempt.cube.hold, attempt.way);
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

it(`one mixed cube goes through ${CASES} cases, and what is known of it is always true`, async () => {
  const real = new RealCube();
  const met: Met = { found: 0, brought: 0, seen: 0, lost: 0 };
  let own: PartlyKnownCubies | undefined;
  for (let n = 0; n < CASES; n++)
    own = await goThrough(itemOf(n), real, own, met);
  // The loop went through everything that it claims to.
  expect(met.seen).toBeGreaterThan(CASES / 2);
  expect(met.lost).toBeGreaterThan(3);
  expect(met.found).toBeGreaterThan(20);
  expect(met.brought).toBeGreaterThan(5);
});
