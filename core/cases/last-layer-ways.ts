/**
 * The shortest and the easiest ways of the last layer's cases, all stages at
 * once: every sequence that keeps the first two layers answers one state of
 * the last layer, and that state shows a case in each stage.
 *
 * A turn of the layer before a way or after it is free: it depends on how the
 * layer happens to stand. What is written begins with the turn that is needed
 * from the look that names the case, and ends with none.
 *
 * What is proved: every shortest way is shortest (one case has none of 14 turns
 * and one of 15, which is then not chosen among all of 15). An easiest way up
 * to the first round's cost is the easiest there is within the model of
 * `hands.ts` and the rules of `keeping-sequences.ts`; a harder one is the
 * easiest among the turns of a few layers that the other rounds try, and all
 * shortest ones.
 */
import { type Cubies, invert } from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import { FACES } from "../cube/faces";
import { holdAfterTurn, viewFace } from "../cube/held-cube";
import {
  conjugate,
  NO_ROTATION,
  type Rotation,
  rotationAbout,
} from "../cube/symmetries";
import { present } from "../invariant";
import { EASE_PARTS, easeOf, HAND_COSTS } from "../solver/ease-of-turning";
import type { EasyTurns } from "../solver/easiest-writing";
import {
  effectOf,
  faceOfTurn,
  type FaceTurnSequence,
} from "../solver/face-turn-sequence";
import { eachKeepingSequence } from "../solver/keeping-sequences";
import {
  numbersOfPieces,
  pieceSeen,
  piecesOfNumbers,
} from "../solver/seen-marks";
import { EVERY_TURN, indexOfTurn, TURNS_COUNTED } from "../solver/turn-costs";
import { faceTurnsOfSequence } from "../solver/turns-in-holds";
import { type LastLayerCase, lastLayerCases } from "./last-layer-cases";
import { type LastLayerLook, lookIn } from "./last-layer-look";
import { lastLayerOrbits } from "./last-layer-orbits";
import type { LastLayerStage } from "./last-layer-stages";
import { FIRST_TWO_LAYERS } from "./slot-stages";
import { turnsInTable } from "./way";
import { betterOf, easiestFromAnySide, fromNamedLook } from "./way-reference";

/** How the body is held: the last layer on top. */
const HELD = rotationAbout("z", 2);

/** The first two layers as they are seen from there. */
export const TWO_LAYERS_SEEN = piecesOfNumbers(
  numbersOfPieces(FIRST_TWO_LAYERS).map((piece) => pieceSeen(HELD, piece)),
);

/** The look that a sequence of face turns answers, turns named as they are seen with the last layer on top. */
export function lookAnsweredBy(sequence: FaceTurnSequence): LastLayerLook {
  const answered: Cubies = invert(effectOf(sequence));
  return lookIn(conjugate(answered, HELD));
}

/** One search for easy sequences. */
export interface EasyRound {
  /** The layers that are turned, by their names with spaces between; absent: all. */
  readonly layers?: string;
  /** A turn of the whole cube that all begin with, if any. */
  readonly first?: string;
  /** Units: fifths of an easy quarter turn, `first` not counted. */
  readonly most: number;
  readonly mostFromEnd: number;
}

/**
 * The searches for easy sequences. The first is by all turns there are; what
 * goes further is by turns of a few layers, as long smooth sequences are.
 */
export const EASY_ROUNDS: readonly EasyRound[] = [
  { most: 60, mostFromEnd: 27 },
  { layers: "U R F", most: 110, mostFromEnd: 53 },
  { layers: "U R D", most: 105, mostFromEnd: 50 },
  { layers: "U R L", most: 95, mostFromEnd: 45 },
  { layers: "U R F D", most: 88, mostFromEnd: 43 },
  { layers: "U R F D L", most: 82, mostFromEnd: 39 },
  { layers: "U M", most: 100, mostFromEnd: 48 },
  { layers: "U R D", first: "x'", most: 100, mostFromEnd: 48 },
  { layers: "U R D", first: "x", most: 100, mostFromEnd: 48 },
  { layers: "U R F Rw M", most: 70, mostFromEnd: 31 },
];

/** The easiest way found for each look, by its texts. */
export type EasiestByLook = Map<string, EasyTurns & LookedAt>;

interface LookedAt {
  readonly look: LastLayerLook;
}

function nameOf(look: LastLayerLook): string {
  return `${look.cornerTwists}${look.edgeFlips}${look.cornerPlaces}${look.edgePlaces}`;
}

/** Looks through all sequences of a round; easier ones replace what was known. */
export function lookForEasyWays(
  { layers, first = "", most, mostFromEnd }: EasyRound,
  easiest: EasiestByLook,
): void {
  const before = turnsInTable(first);
  const beforeIndices = before.map(indexOfTurn);
  const chosen = layers?.split(" ");
  const turns = EVERY_TURN.flatMap(({ layer }, i) =>
    chosen === undefined || chosen.includes(layer) ? [i] : [],
  );
  const hold = before.reduce<Rotation>(
    (held, turn) => holdAfterTurn(held, turn),
    NO_ROTATION,
  );
  const kept = piecesOfNumbers(
    numbersOfPieces(TWO_LAYERS_SEEN).map((piece) => pieceSeen(hold, piece)),
  );
  // A way does not begin with the free layer.
  const free = viewFace(hold, "U");
  const mayBegin = (turn: number) => EVERY_TURN[turn]?.layer !== free;
  eachKeepingSequence(
    { kept, turns, costs: HAND_COSTS, most, mostFromEnd, mayBegin },
    (sequence, bound) => {
      const whole = [...beforeIndices, ...sequence];
      const look = lookAnsweredBy(faceTurnsOfSequence(whole));
      const name = nameOf(look);
      const known = easiest.get(name);
      if (known !== undefined && bound / EASE_PARTS > known.ease) return;
      const made = whole.map((turn) =>
        present(EVERY_TURN[turn], "a sequence is made of turns"),
      );
      const way = { turns: made, ease: easeOf(made), look };
      if (betterOf(known, way) === way) easiest.set(name, way);
    },
  );
}

/** Of the ways of all looks the easiest for each case of a stage, from the look that names it. */
export function easiestOfStage(
  stage: LastLayerStage,
  easiest: EasiestByLook,
): ReadonlyMap<LastLayerCase, EasyTurns> {
  const { caseOf } = lastLayerOrbits(stage);
  const cases = lastLayerCases(stage);
  const best = new Map<LastLayerCase, EasyTurns>();
  for (const way of easiest.values()) {
    const index = caseOf(way.look);
    const shown = typeof index === "number" ? cases[index] : undefined;
    if (shown !== undefined) best.set(shown, betterOf(best.get(shown), way));
  }
  return new Map(
    [...best].map(([shown, way]) => [shown, fromNamedLook(shown, way)]),
  );
}

/** Lengths and sequences of the shortest answers of some cases. */
interface ShortestFound {
  readonly length: number;
  readonly sequences: FaceTurnSequence[];
}

/**
 * The shortest ways of all cases of some stages that need no more than so many
 * face turns, and of those the easiest.
 *
 * Shape: stages are those of `LAST_LAYER_RULES`; `known` are not looked for.
 */
export function shortestUpTo(
  stages: readonly LastLayerStage[],
  most: number,
  known: ReadonlyMap<LastLayerCase, EasyTurns>,
): ReadonlyMap<LastLayerCase, EasyTurns> {
  const shortest = new Map<LastLayerCase, ShortestFound>();
  const shownBy = new Map<string, readonly LastLayerCase[]>();
  const casesShown = (look: LastLayerLook): readonly LastLayerCase[] => {
    const name = nameOf(look);
    const already = shownBy.get(name);
    if (already !== undefined) return already;
    const shown = stages.flatMap((stage) => {
      const index = lastLayerOrbits(stage).caseOf(look);
      const one =
        typeof index === "number" ? lastLayerCases(stage)[index] : undefined;
      return one === undefined || known.has(one) ? [] : [one];
    });
    shownBy.set(name, shown);
    return shown;
  };
  eachKeepingSequence(
    {
      kept: TWO_LAYERS_SEEN,
      turns: FACE_TURNS.map((_, turn) => turn),
      costs: TURNS_COUNTED,
      most,
      mostFromEnd: Math.min(6, Math.floor(most / 2)),
      // Of four that are one seen from four sides, the one that begins there.
      mayBegin: (turn) =>
        FACES[faceOfTurn(turn)] === "R" || FACES[faceOfTurn(turn)] === "D",
    },
    (sequence) => {
      for (const shown of casesShown(lookAnsweredBy(sequence))) {
        const found = shortest.get(shown);
        if (found === undefined || sequence.length < found.length)
          shortest.set(shown, {
            length: sequence.length,
            sequences: [sequence],
          });
        else if (sequence.length === found.length)
          found.sequences.push(sequence);
      }
    },
  );
  return new Map(
    [...shortest].map(([shown, { sequences }]) => {
      let best: EasyTurns | undefined;
      for (const sequence of sequences)
        best = betterOf(best, easiestFromAnySide(sequence, NO_ROTATION));
      return [shown, fromNamedLook(shown, present(best, "no list is empty"))];
    }),
  );
}
