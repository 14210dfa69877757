/**
 * Whether a set-up gives its answer away.
 *
 * Any set-up played backwards is an answer; what must not happen is that it
 * shows a way that is taught: by ending with that way taken back, or with the
 * way itself (a flipped edge's way, played on a finished layer, flips it), or
 * by doing the same to every piece in other turns. Turns of the free layer at
 * the ends change nothing about that and are left out on both sides.
 *
 * Where a stage sees every piece of the cube, all set-ups do the same to every
 * piece, and only their turns can give something away. In the last layer a way
 * seen from any side is the same way.
 */
import { caseEntry, waysOf } from "../cases/case-table";
import { holdInStage } from "../cases/hold-in-stage";
import { type Position, startOf } from "../cases/position";
import { FREE_LAYER, isLastLayerStage, type Stage } from "../cases/stage";
import { demandOf } from "../cases/last-layer-goal";
import { HANDS } from "../cases/way";
import { turnsForPosition } from "../cases/way-for-position";
import { compose, type Cubies, SOLVED } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import { rotationAbout } from "../cube/symmetries";
import { sequenceImage } from "./case-starts";
import {
  effectOf,
  type FaceTurnSequence,
  faceTurnsOf,
  inverseFaceTurn,
  inverseSequence,
  normalised,
  withoutEndsOf,
} from "./face-turn-sequence";

/** What a set-up gives away: a whole way, a way's first turn, or nothing. */
export type Giveaway = "way" | "first-turn" | "nothing";

/** Answers for what a set-up of one position gives away. */
export type GiveawayJudge = (setUp: FaceTurnSequence) => Giveaway;

/** Prepares the judge of a position's set-ups, against all ways of its case and both hands. */
export function giveawayJudge(position: Position): GiveawayJudge {
  const { variant, hold } = position;
  const { stage } = caseEntry(position.case);
  const inFront = holdInStage(stage, { home: variant.home, seenFrom: 0 }, hold);
  const ways = [
    ...HANDS.flatMap((hand) =>
      waysOf(position.case, hold, hand).map(({ turns }) =>
        faceTurnsOf(inFront, turns),
      ),
    ),
    faceTurnsOf(startOf(position).hold, turnsForPosition(position)),
  ]
    .flatMap((way) => seenFromSides(stage, way))
    .map(withoutFreeEnds)
    .filter(({ length }) => length > 0);
  const shown = [
    ...ways,
    ...ways.map((way) => withoutFreeEnds(inverseSequence(way))),
  ];
  const effects = new Set(
    seesEveryPiece(stage) ? [] : shown.flatMap(effectsButForFreeEnds),
  );
  const firstTurns = new Set(
    ways.flatMap(([first]) =>
      first === undefined ? [] : inverseFaceTurn(first),
    ),
  );

  return (setUp) => {
    const core = withoutFreeEnds(setUp);
    if (shown.some((way) => endsWith(core, way))) return "way";
    if (effects.has(keyOf(effectOf(core)))) return "way";
    const last = core.at(-1);
    return last !== undefined && firstTurns.has(last)
      ? "first-turn"
      : "nothing";
  };
}

const SIDES = [0, 1, 2, 3] as const;

function seenFromSides(
  stage: Stage,
  way: FaceTurnSequence,
): readonly FaceTurnSequence[] {
  return isLastLayerStage(stage)
    ? SIDES.map((quarters) => sequenceImage(rotationAbout("y", quarters), way))
    : [way];
}

function seesEveryPiece(stage: Stage): boolean {
  return (
    isLastLayerStage(stage) &&
    demandOf(stage, "corner") === "placed" &&
    demandOf(stage, "edge") === "placed"
  );
}

function withoutFreeEnds(turns: FaceTurnSequence): FaceTurnSequence {
  return withoutEndsOf(FREE_LAYER, normalised(turns));
}

function endsWith(turns: FaceTurnSequence, end: FaceTurnSequence): boolean {
  const offset = turns.length - end.length;
  return offset >= 0 && end.every((turn, i) => turns[offset + i] === turn);
}

const FREE_TURNS: readonly Cubies[] = [
  SOLVED,
  ...[1, 2, 3].map(
    (quarters) => FACE_TURNS[faceTurnIndex(FREE_LAYER, quarters)]!,
  ),
];

function effectsButForFreeEnds(turns: FaceTurnSequence): readonly string[] {
  const effect = effectOf(turns);
  return FREE_TURNS.flatMap((before) =>
    FREE_TURNS.map((after) => keyOf(compose(compose(before, effect), after))),
  );
}

function keyOf(effect: Cubies): string {
  return [
    effect.cornerPermutation,
    effect.cornerOrientation,
    effect.edgePermutation,
    effect.edgeOrientation,
  ].join(" ");
}
