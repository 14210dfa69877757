/**
 * Set-ups: turns that bring the cube in a learner's hands to a position.
 *
 * What is known of that cube may be a cross or a first layer only, or two
 * layers and of the last which pieces are turned up. Where one slot or the last
 * layer is to be changed and the rest kept, a set-up is put together from short
 * sequences; else a short sequence that moves just the pieces the position
 * names is found by search; where every piece matters, or none is short enough,
 * the unknown pieces are imagined and the two-phase solver finds a long one.
 * Nothing is returned that was not played first.
 *
 * Turns, those of the whole cube included (median / p95), and milliseconds on
 * a busy machine (median / p95), ways not yet counted against them:
 * first-layer edges 6 / 7, 30 / 110; corners 7 / 9, 50 / 150; second-layer edges
 * 9 / 12, 40 / 170; pairs 9 / 11, 55 / 140; their pieces in other slots 9 / 12,
 * 150 / 500; turning the last layer 11 / 18, 45 / 80, placing it 16 / 18, 95 / 190,
 * both in one go 16 / 19, 50 / 100; a beginner's four steps 9, 11, 11 and 16 / 20,
 * 30 to 100. `npm run bench -- set-ups` measures them by groups of stages.
 */
import { caseEntry } from "../cases/case-table";
import {
  allPieces,
  isUnmarkedPlaced,
  mostPlaced,
  unmarkedOf,
} from "../cases/constraint";
import { isEnoughKnown, notKnownFor } from "../cases/known-layer";
import { type Position, startOf } from "../cases/position";
import { isLastLayerStage } from "../cases/stage";
import {
  compose,
  invert,
  isFullyKnown,
  type PartlyKnownCubies,
} from "../cube/cubies";
import { canBe } from "../cube/forced-pieces";
import { applyTurns, type HeldCube } from "../cube/held-cube";
import { agreesWith } from "../cube/partly-known";
import type { Pieces } from "../cube/pieces";
import { NO_ROTATION } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { invariant } from "../invariant";
import type { RandomSource } from "../random-source";
import { err, ok, type Result } from "../result";
import { dressed } from "./dressing";
import {
  afterSequence,
  type FaceTurnSequence,
  faceTurnsOf,
} from "./face-turn-sequence";
import { imagined } from "./imagined";
import { createLastLayerSequences } from "./last-layer-set-ups";
import { lastLayerSetUp, slotSetUp, togetherFor } from "./put-together";
import { createSequenceSearch } from "./sequence-search";
import { partOf, type Steps } from "../steps";
import { createTwoPhaseSolver, type TwoPhaseSolver } from "./two-phase";
import { lightest, setUpScales, type WeighedSetUp } from "./weigh-set-up";

/** Turns that bring a cube to a position, and what is known of it then. */
export interface SetUp {
  /** As the learner makes them, from the way the cube was held. */
  readonly turns: readonly Turn[];
  /** Everything that was known before, followed through the turns. */
  readonly after: HeldCube<PartlyKnownCubies>;
}

/** Why there is no set-up. */
export type SetUpError =
  /**
   * The position shows pieces of which nobody knows where they are on this
   * cube, or how they are turned; of the last layer's, where names do not
   * matter, those that belong where nobody knows.
   */
  | ({ readonly code: "piece-not-known" } & Pieces)
  /** No turns lead from or to a cube that cannot be. */
  | { readonly code: "impossible-cube"; readonly which: "from" | "to" };

/** Finds set-ups; keeps the two-phase solver once it has been needed. */
export interface SetUpFinder {
  /**
   * A set-up, random among the good ones.
   *
   * Shape:  as few turns as hide the answer: 6 to 16 at the median, by stage
   *         (above). At most 23 face turns where the two-phase solver is
   *         needed.
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
  const lastLayer = createLastLayerSequences();
  let solver: TwoPhaseSolver | undefined;

  function* shortest(
    from: HeldCube<PartlyKnownCubies>,
    to: Position,
    random: RandomSource,
  ): Steps<readonly Turn[] | undefined> {
    if (agreesWith(from.cubies, to.cubies))
      return dressed([], from.hold, startOf(to).hold, false).turns;
    const together = togetherFor(from.cubies, to);
    if (together === "last-layer")
      return yield* lastLayerSetUp(from, to, random, lastLayer);
    if (together === "slot") {
      const turns = yield* slotSetUp(from, to, random);
      if (turns !== undefined) return turns;
    }
    // Every piece matters, or it cannot be followed by its name.
    return isFullyKnown(to.cubies) || isLastLayerStage(caseEntry(to.case).stage)
      ? undefined
      : yield* searchedSetUp(from, to, random);
  }

  function* preparedSolver(): Steps<TwoPhaseSolver> {
    solver ??= yield* createTwoPhaseSolver();
    return solver;
  }

  return {
    *find(from, to, random) {
      const error = whyImpossible(from.cubies, to.cubies);
      if (error !== undefined) return err(error);
      const short = yield* partOf(shortest(from, to, random), 0, 0.3);
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
  if (!canBe(from)) return { code: "impossible-cube", which: "from" };
  if (!canBe(to)) return { code: "impossible-cube", which: "to" };
  if (isEnoughKnown(from, to)) return undefined;
  const { pieces, turnedAt } = notKnownFor(from, to);
  const all = allPieces([pieces, turnedAt]);
  return {
    code: "piece-not-known",
    corners: [...new Set(all.corners)],
    edges: [...new Set(all.edges)],
  };
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

/** Turns tried before the search for a short sequence is given up: about 0.2 s. */
const MOST_TRIES = 10_000_000;

/** A slot names more pieces, and each try takes longer. */
const MOST_SLOT_TRIES = 2_000_000;

/** A sequence that is longer is better found by the two-phase solver. */
const MOST_TURNS = 11;

function* searchedSetUp(
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  random: RandomSource,
): Steps<readonly Turn[] | undefined> {
  const weigh = setUpScales(from.hold, to);
  const search = createSequenceSearch(from.cubies, to.cubies, random);
  const candidates: WeighedSetUp[] = [];
  const most =
    caseEntry(to.case).group === "slot" ? MOST_SLOT_TRIES : MOST_TRIES;
  for (let length = 1; length <= MOST_TURNS; length++) {
    const ofLength = search.ofLength(length, (sequence) => {
      if (!placesUnmarked(from.cubies, to, sequence))
        candidates.push(...weigh(sequence, true));
      return candidates.length < MOST_CANDIDATES && search.tried < most;
    });
    yield* partOf(ofLength, (length - 1) / MOST_TURNS, length / MOST_TURNS);
    if (candidates.length >= ENOUGH || search.tried >= most) break;
  }
  return lightest(candidates, random);
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
  const here = imagined(from.cubies, random);
  const there = imagined(to.cubies, random, unmarkedOf(to));
  // What solves this is what leads from here to there.
  const apart = compose(invert(there), here);
  const turns = yield* partOf(solver.solveInSteps(apart), 0.9, 1);
  const sequence = faceTurnsOf(NO_ROTATION, turns);
  return dressed(sequence, from.hold, startOf(to).hold, false).turns;
}
