/**
 * The ways taught for a beginner's last layer: for each step one short piece
 * and its twin, made again and again with the top turned in between. What is
 * easiest for the hands changes from case to case and is long to remember;
 * these are four things to know for all sixteen cases.
 *
 * Which pieces a case needs is found by playing them.
 * Source of the pieces: common practice; check-values, `sequences.json`
 * ("LL cross", "Sune", "corner 3-cycle").
 */
import { compose, type Cubies, SOLVED } from "../cube/cubies";
import { applyTurns } from "../cube/held-cube";
import type { Turn } from "../cube/turns";
import { present } from "../invariant";
import { simplifyTurns } from "../notation/simplify";
import { afterFreeQuarters, FREE_QUARTERS, quartersToGoal } from "./case-goal";
import type { LastLayerCase } from "./last-layer-cases";
import { lastLayerGoal } from "./last-layer-goal";
import { LAST_LAYER_CORNERS, stateOfLook } from "./last-layer-look";
import type { LastLayerStage } from "./last-layer-stages";
import { holdOfVariant } from "./variant";
import { turnsInTable } from "./way";

/** A short piece, and what it does to a cube whose last layer is on top. */
interface Piece {
  readonly turns: readonly Turn[];
  readonly effect: Cubies;
}

const ON_TOP = holdOfVariant({ home: 0, seenFrom: 0 }, "down");

function piece(text: string): Piece {
  const turns = turnsInTable(text);
  const { cubies } = applyTurns({ cubies: SOLVED, hold: ON_TOP }, turns);
  return { turns, effect: cubies };
}

/** The pieces of each step but the last, in the order in which they are tried. */
const PIECES: Readonly<Partial<Record<LastLayerStage, readonly Piece[]>>> = {
  "last-layer-edges-turned": [piece("F R U R' U' F'"), piece("F U R U' R' F'")],
  "last-layer-edges-placed": [piece("R U R' U R U2 R' U")],
  "last-layer-corners-placed": [
    piece("U R U' L' U R' U' L"),
    piece("U' L' U R U' L U R'"),
  ],
};

/** Twists the corner at the front right in its place: once for each time; the rest is in order again when all corners are up. */
const TWIST = turnsInTable("(R' D' R D)2");

function topTurned(quarters: number): readonly Turn[] {
  return turnsInTable(["", "U", "U2", "U'"][quarters] ?? "");
}

/** All ways of so many pieces, the top turned before each, with the state that each leads to. */
function* waysOfPieces(
  from: Cubies,
  pieces: readonly Piece[],
  count: number,
): Generator<readonly [way: readonly Turn[], after: Cubies]> {
  if (count === 0) {
    yield [[], from];
    return;
  }
  for (const quarters of FREE_QUARTERS)
    for (const { turns, effect } of pieces) {
      const after = compose(afterFreeQuarters(from, quarters), effect);
      for (const [rest, end] of waysOfPieces(after, pieces, count - 1))
        yield [[...topTurned(quarters), ...turns, ...rest], end];
    }
}

/** The most pieces that a case needs: a top without any edge up. */
const MOST_PIECES = 3;

function fromPieces(
  { stage, lookAt }: LastLayerCase,
  pieces: readonly Piece[],
): readonly Turn[] | undefined {
  const start = stateOfLook(lookAt(0));
  const goal = lastLayerGoal(stage);
  for (let count = 1; count <= MOST_PIECES; count++)
    for (const [way, after] of waysOfPieces(start, pieces, count))
      if (quartersToGoal(after, goal) !== undefined) return way;
  return undefined;
}

/** Corner by corner: each comes to the front right and is twisted until it is up. */
function cornerByCorner({ lookAt }: LastLayerCase): readonly Turn[] {
  const state = stateOfLook(lookAt(0));
  const [frontRight] = LAST_LAYER_CORNERS;
  const way = FREE_QUARTERS.flatMap((quarters) => {
    const turned = afterFreeQuarters(state, quarters);
    const twist = turned.cornerOrientation[frontRight ?? 0] ?? 0;
    return [
      ...topTurned(quarters === 0 ? 0 : 1),
      ...Array.from({ length: twist }, () => TWIST).flat(),
    ];
  });
  return way;
}

function turnsFor(one: LastLayerCase): readonly Turn[] | undefined {
  if (one.stage === "last-layer-corners-turned-last")
    return cornerByCorner(one);
  const pieces = PIECES[one.stage];
  return pieces === undefined
    ? undefined
    : present(fromPieces(one, pieces), "three pieces are enough");
}

/**
 * The taught way of a case of a beginner's last layer, from the look that
 * names it; undefined in any other stage. Its last turn lines the top up:
 * nothing asks for it, but without it a beginner does not see that it is right.
 */
export function beginnersWay(one: LastLayerCase): readonly Turn[] | undefined {
  const turns = turnsFor(one);
  if (turns === undefined) return undefined;
  const start = { cubies: stateOfLook(one.lookAt(0)), hold: ON_TOP };
  const after = applyTurns(start, turns).cubies;
  const left = quartersToGoal(after, lastLayerGoal(one.stage));
  return simplifyTurns([
    ...turns,
    ...topTurned(present(left, "a taught way answers its case")),
  ]);
}
