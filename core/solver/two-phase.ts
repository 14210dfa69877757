/**
 * Solves any cube in at most a given number of turns.
 *
 * The two-phase algorithm finds short solutions at once and shortest ones
 * never; a teacher's cube needs the first. The state is attacked from six
 * sides at once (three axes, and its inverse), shallow searches first: the
 * easiest of six is far easier than the average one. With a limit of 22 turns
 * 1,000 uniform states take 0.47 ms at the median, 1.8 ms at p95 (Node 20, one
 * of two cores, idle); another two-phase solver takes 29 ms in the same run,
 * 65 times as long (56–79 over ten blocks of 100). Tables are ready in 0.19 s,
 * the other's in 1.0 s. `npm run bench -- solver` measures both.
 *
 * Source: H. Kociemba's two-phase algorithm (1992).
 */
import { type Cubies, invert } from "../cube/cubies";
import { FACES, type Face } from "../cube/faces";
import {
  conjugate,
  faceImage,
  inverseSymmetry,
  NO_ROTATION,
  type Rotation,
  rotationBringing,
  thenSymmetry,
} from "../cube/symmetries";
import { inverseTurn, type Quarters, type Turn } from "../cube/turns";
import { validateCubies } from "../cube/validity";
import { invariant, present } from "../invariant";
import { runToEnd, type Steps } from "../steps";
import { createTwoPhaseSearch } from "./two-phase-search";
import { buildTwoPhaseTables } from "./two-phase-tables";

/** A solver whose tables are ready. */
export interface TwoPhaseSolver {
  /**
   * The turns that solve a state, seen from the body's own frame.
   *
   * Units:  `maxTurns` counts outer-block turns, at least 20: every state can
   *         be solved in 20 (Rokicki, Kociemba, Davidson, Dethridge, 2010).
   * Errors: an impossible state is a bug of the caller's.
   */
  solve(cubies: Cubies, maxTurns?: number): readonly Turn[];
  /** The same in slices; its progress is how deep it has searched. */
  solveInSteps(cubies: Cubies, maxTurns?: number): Steps<readonly Turn[]>;
}

const DEFAULT_MAX_TURNS = 23;
const LEAST_MAX_TURNS = 20;

/**
 * A longer phase 2 is not looked for while a longer phase 1 is cheap. Limits
 * 12, 13 and 14 visit about 31,000 states a solution alike (at most 22 turns);
 * the lowest of them finds the shortest solutions.
 */
const PHASE_TWO_LIMIT = 12;

/** The longest phase 2 there is (Kociemba), for the few states that need it. */
const PHASE_TWO_DIAMETER = 18;

/** No phase 1 is longer than this (Kociemba): from here on, leave nothing out. */
const PHASE_ONE_DIAMETER = 12;

/** Builds the tables. */
export function* createTwoPhaseSolver(): Steps<TwoPhaseSolver> {
  const search = createTwoPhaseSearch(yield* buildTwoPhaseTables());

  function* solveInSteps(
    cubies: Cubies,
    maxTurns = DEFAULT_MAX_TURNS,
  ): Steps<readonly Turn[]> {
    invariant(validateCubies(cubies).ok, "only possible cubes are solved");
    invariant(maxTurns >= LEAST_MAX_TURNS, "some states need twenty turns");
    const sides = SIDES.map((side) => ({
      side,
      start: search.start(seenFrom(side, cubies)),
    }));
    for (let phaseOne = 0; phaseOne <= maxTurns; phaseOne++) {
      const usual =
        phaseOne <= PHASE_ONE_DIAMETER ? PHASE_TWO_LIMIT : PHASE_TWO_DIAMETER;
      const limit = Math.min(usual, maxTurns - phaseOne);
      for (const { side, start } of sides) {
        if (start.bound > phaseOne) continue;
        for (let face = 0; face < FACES.length; face++) {
          const found = search.search(start, face, phaseOne, limit);
          if (found !== undefined) return turnsSeenBack(side, found);
          if (phaseOne === 0) break;
          yield phaseOne / (maxTurns + 1);
        }
      }
    }
    return present<readonly Turn[]>(
      undefined,
      "twenty turns solve every state",
    );
  }

  return {
    solveInSteps,
    solve: (cubies, maxTurns) => runToEnd(solveInSteps(cubies, maxTurns)),
  };
}

/** A way to look at a state: turned over, and perhaps undone instead of done. */
interface Side {
  readonly rotation: Rotation;
  readonly isInverse: boolean;
}

const THIRD_TURN = present(
  rotationBringing("R", "U"),
  "R and U are next to each other",
);

/** The three axes, forward and inverse. */
const SIDES: readonly Side[] = [false, true].flatMap((isInverse) =>
  [NO_ROTATION, THIRD_TURN, thenSymmetry(THIRD_TURN, THIRD_TURN)].map(
    (rotation) => ({ rotation, isInverse }),
  ),
);

function seenFrom(side: Side, cubies: Cubies): Cubies {
  return conjugate(side.isInverse ? invert(cubies) : cubies, side.rotation);
}

/** A solution of the state seen from a side, as a solution of the state itself. */
function turnsSeenBack(
  side: Side,
  indices: readonly number[],
): readonly Turn[] {
  const back = inverseSymmetry(side.rotation);
  const turns = indices.map((index): Turn => {
    const face: Face = present(FACES[Math.floor(index / 3)], "turns are 0–17");
    return {
      layer: faceImage(back, face),
      quarters: ((index % 3) + 1) as Quarters,
    };
  });
  return side.isInverse ? turns.map(inverseTurn).reverse() : turns;
}
