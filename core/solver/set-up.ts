/**
 * Set-ups: turns that bring the cube in a learner's hands to a position.
 *
 * What is known of that cube may be a cross or a first layer only. A short
 * sequence that moves just the pieces the position names is found by search;
 * where every piece matters, or none is short enough, the unknown pieces are
 * imagined and the two-phase solver finds a long one. Nothing is returned
 * that was not played first. Over all cases a short one has 7 turns at the
 * median, those of the whole cube included, 9 at p95, and takes 25 ms to find
 * on a busy machine.
 */
import { type Pieces, CORNERS, EDGES } from "../cube/pieces";
import { isUnmarkedPlaced, mostPlaced, unmarkedOf } from "../cases/constraint";
import { type Position, startOf } from "../cases/position";
import {
  compose,
  type Cubies,
  invert,
  isFullyKnown,
  type PartlyKnownCubies,
} from "../cube/cubies";
import { applyTurns, type HeldCube } from "../cube/held-cube";
import { agreesWith } from "../cube/partly-known";
import { sampleState } from "../cube/sample-state";
import { NO_ROTATION } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { validateCubies } from "../cube/validity";
import { invariant } from "../invariant";
import { pick, type RandomSource } from "../random-source";
import { err, ok, type Result } from "../result";
import { dressed } from "./dressing";
import {
  afterSequence,
  type FaceTurnSequence,
  faceTurnsOf,
} from "./face-turn-sequence";
import { giveawayJudge } from "./giveaway";
import { createSequenceSearch } from "./sequence-search";
import { partOf, type Steps } from "./steps";
import { createTwoPhaseSolver, type TwoPhaseSolver } from "./two-phase";

/** Turns that bring a cube to a position, and what is known of it then. */
export interface SetUp {
  /** As the learner makes them, from the way the cube was held. */
  readonly turns: readonly Turn[];
  /** Everything that was known before, followed through the turns. */
  readonly after: HeldCube<PartlyKnownCubies>;
}

/** Why there is no set-up. */
export type SetUpError =
  /** The position names pieces of which nobody knows where they are on this cube. */
  | ({ readonly code: "piece-not-known" } & Pieces)
  /** No turns lead from or to a cube that cannot be. */
  | { readonly code: "impossible-cube"; readonly which: "from" | "to" };

/** The pieces that a position names and whose place on a cube is not known: none means that it can be set up. */
export function piecesNotKnown(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
): Pieces {
  return {
    corners: CORNERS.filter(
      (piece) =>
        to.cornerPermutation.includes(piece) &&
        !from.cornerPermutation.includes(piece),
    ),
    edges: EDGES.filter(
      (piece) =>
        to.edgePermutation.includes(piece) &&
        !from.edgePermutation.includes(piece),
    ),
  };
}

/** Finds set-ups; keeps the two-phase solver once it has been needed. */
export interface SetUpFinder {
  /**
   * A set-up, random among the good ones.
   *
   * Shape:  where `to.cubies` is fully known the result has at most 23 face
   *         turns; else as few as hide the answer, typically four to seven.
   * Errors: `piece-not-known`, `impossible-cube`.
   */
  find(
    from: HeldCube<PartlyKnownCubies>,
    to: Position,
    random: RandomSource,
  ): Steps<Result<SetUp, SetUpError>>;
}

/** A finder with nothing prepared yet. */
export function createSetUpFinder(): SetUpFinder {
  let solver: TwoPhaseSolver | undefined;

  function* preparedSolver(): Steps<TwoPhaseSolver> {
    solver ??= yield* createTwoPhaseSolver();
    return solver;
  }

  return {
    *find(from, to, random) {
      const error = whyImpossible(from.cubies, to.cubies);
      if (error !== undefined) return err(error);
      const short = isFullyKnown(to.cubies)
        ? undefined
        : yield* partOf(shortSetUp(from, to, random), 0, 0.3);
      const turns =
        short ??
        (yield* longSetUp(
          from,
          to,
          random,
          yield* partOf(preparedSolver(), 0.3, 0.9),
        ));
      return ok(playedSetUp(from, to, turns));
    },
  };
}

function whyImpossible(
  from: PartlyKnownCubies,
  to: PartlyKnownCubies,
): SetUpError | undefined {
  if (isFullyKnown(from) && !validateCubies(from).ok)
    return { code: "impossible-cube", which: "from" };
  if (isFullyKnown(to) && !validateCubies(to).ok)
    return { code: "impossible-cube", which: "to" };
  const unknown = piecesNotKnown(from, to);
  return unknown.corners.length + unknown.edges.length > 0
    ? { code: "piece-not-known", ...unknown }
    : undefined;
}

/** Plays a set-up and makes sure that it leads where it should. */
function playedSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  turns: readonly Turn[],
): SetUp {
  const after = applyTurns(from, turns);
  invariant(
    agreesWith(after.cubies, to.cubies) && after.hold === startOf(to).hold,
    "a set-up leads to its position",
  );
  return { turns, after };
}

/** How many sequences are enough to choose from: no longer ones are looked for. */
const ENOUGH = 24;

/** How many are weighed at most; where few pieces are named there are thousands. */
const MOST_CANDIDATES = 400;

/** A choice is made among sequences this much more trouble than the best. */
const TROUBLE_TO_SPARE = 1;

/** Ending with what undoes a way's first turn is as bad as this much more trouble. */
const TROUBLE_OF_FIRST_TURN = 1.5;

/** Turns tried before the search for a short sequence is given up: about 0.2 s. */
const MOST_TRIES = 10_000_000;

/** A sequence that is longer is better found by the two-phase solver. */
const MOST_TURNS = 11;

interface Candidate {
  readonly turns: readonly Turn[];
  readonly trouble: number;
}

function* shortSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  random: RandomSource,
): Steps<readonly Turn[] | undefined> {
  const end = startOf(to).hold;
  if (agreesWith(from.cubies, to.cubies))
    return dressed([], from.hold, end, false).turns;
  const giveaway = giveawayJudge(to);
  const search = createSequenceSearch(from.cubies, to.cubies, random);
  const candidates: Candidate[] = [];
  for (let length = 1; length <= MOST_TURNS; length++) {
    const ofLength = search.ofLength(length, (sequence) => {
      const given = giveaway(sequence);
      if (given !== "way" && !placesUnmarked(from.cubies, to, sequence)) {
        const { turns, trouble } = dressed(sequence, from.hold, end, true);
        const extra = given === "first-turn" ? TROUBLE_OF_FIRST_TURN : 0;
        candidates.push({ turns, trouble: trouble + extra });
      }
      return candidates.length < MOST_CANDIDATES && search.tried < MOST_TRIES;
    });
    yield* partOf(ofLength, (length - 1) / MOST_TURNS, length / MOST_TURNS);
    if (candidates.length >= ENOUGH || search.tried >= MOST_TRIES) break;
  }
  return chosen(candidates, random);
}

function chosen(
  candidates: readonly Candidate[],
  random: RandomSource,
): readonly Turn[] | undefined {
  const least = Math.min(...candidates.map(({ trouble }) => trouble));
  const good = candidates.filter(
    ({ trouble }) => trouble <= least + TROUBLE_TO_SPARE,
  );
  return good.length === 0 ? undefined : pick(random, good).turns;
}

/** Whether a known piece that must not happen to be placed would be. */
function placesUnmarked(
  from: PartlyKnownCubies,
  to: Position,
  sequence: FaceTurnSequence,
): boolean {
  const mayHappen = to.variant.placed.length < mostPlaced(to.case);
  return mayHappen && isUnmarkedPlaced(to, afterSequence(from, sequence));
}

/** A sequence for which every piece matters; pieces nobody knows are imagined. */
function* longSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  random: RandomSource,
  solver: TwoPhaseSolver,
): Steps<readonly Turn[]> {
  const here = imagined(from.cubies, { corners: [], edges: [] }, random);
  const there = imagined(to.cubies, unmarkedOf(to), random);
  // What solves this is what leads from here to there.
  const apart = compose(invert(there), here);
  const turns = yield* partOf(solver.solveInSteps(apart), 0.9, 1);
  const sequence = faceTurnsOf(NO_ROTATION, turns);
  return dressed(sequence, from.hold, startOf(to).hold, false).turns;
}

function imagined(
  state: PartlyKnownCubies,
  unplaced: Pieces,
  random: RandomSource,
): Cubies {
  if (isFullyKnown(state)) return state;
  return sampleState(random, {
    ...state,
    unplacedCorners: unplaced.corners,
    unplacedEdges: unplaced.edges,
  });
}
