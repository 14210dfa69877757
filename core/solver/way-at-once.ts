/**
 * A way at once for a case of which none is written down: put together of two
 * short sequences that keep the first two layers, not proved to be shortest.
 *
 * The shortest ways of the two largest stages take 13 or 14 turns as a rule
 * and cannot be waited for (`ways-on-demand.ts`). What is joined is hardly
 * longer, and may be the easier one to make: of the shortest few each is
 * written as it is easiest for the hands. Two can be joined for all but 21 of
 * the 4,408 cases; for those three are, in 16 to 19 turns and 1.6 s.
 *
 * Measured on a busy machine, 30 cases of each stage, outer turns (median /
 * p95) and milliseconds: without turning edges 14 / 16 and 250 / 670, the
 * whole 15 / 18 and 300 / 490; the first, which makes the tables, 0.7 s.
 */
import type { LastLayerEntry } from "../cases/case-entry";
import { holdInStage } from "../cases/hold-in-stage";
import { answersLook } from "../cases/last-layer-goal";
import { stateOfLook } from "../cases/last-layer-look";
import { FREE_LAYER } from "../cases/stage";
import { compose, type Cubies, SOLVED } from "../cube/cubies";
import { faceTurnIndex } from "../cube/face-turns";
import type { Turn } from "../cube/turns";
import { invariant, present } from "../invariant";
import { type EasyTurns, easiestWriting } from "./easiest-writing";
import {
  effectOf,
  faceOfTurn,
  type FaceTurnSequence,
  normalised,
} from "./face-turn-sequence";
import type { LastLayerSequences } from "./last-layer-set-ups";
import { sequencesKeepingTwoLayers } from "./short-sequences";
import { partOf, type Steps } from "../steps";

/** So many of the shortest are written: about 10 ms each, and more are seldom easier. */
const MOST_WRITTEN = 24;

/** There are sixteen of at most so many turns, and each leaves something that two answer nearly always. Units: turns. */
const MOST_OF_FIRST = 8;

const HOLD = holdInStage("last-layer-whole", { home: 0, seenFrom: 0 }, "down");

const FREE_FACE = faceOfTurn(faceTurnIndex(FREE_LAYER, 1));

/** How the layer stands in the end is not asked: its last turn is left out. */
function withoutLastTurn(sequence: FaceTurnSequence): FaceTurnSequence {
  const last = sequence.at(-1);
  return last !== undefined && faceOfTurn(last) === FREE_FACE
    ? sequence.slice(0, -1)
    : sequence;
}

/** The shortest of many, each once. */
function shortestOf(
  sequences: readonly FaceTurnSequence[],
): readonly FaceTurnSequence[] {
  const shortest = new Map<string, FaceTurnSequence>();
  for (const turns of sequences.toSorted((a, b) => a.length - b.length)) {
    if (shortest.size === MOST_WRITTEN) break;
    shortest.set(turns.join(), turns);
  }
  return [...shortest.values()];
}

/** Where no two do: a very short one first, and two that answer what is left. */
function* ofThree(
  sequences: LastLayerSequences,
  from: Cubies,
): Steps<readonly FaceTurnSequence[]> {
  const all: FaceTurnSequence[] = [];
  const firsts = sequencesKeepingTwoLayers().filter(
    ({ length }) => length <= MOST_OF_FIRST,
  );
  for (const [i, first] of firsts.entries()) {
    const rest = yield* partOf(
      sequences.joined(compose(from, effectOf(first)), SOLVED),
      i / firsts.length,
      (i + 1) / firsts.length,
    );
    for (const turns of rest) all.push(normalised([...first, ...turns]));
  }
  return all;
}

/**
 * The easiest of the shortest joined ways.
 *
 * Shape: as it is seen in the reference of the case.
 */
export function* findWayAtOnce(
  sequences: LastLayerSequences,
  { shows }: LastLayerEntry,
): Steps<readonly Turn[]> {
  const from = stateOfLook(shows.lookAt(0));
  const ofTwo = yield* partOf(sequences.joined(from, SOLVED), 0, 0.3);
  const joined =
    ofTwo.length > 0
      ? ofTwo
      : yield* partOf(ofThree(sequences, from), 0.3, 0.5);
  const shortest = shortestOf(joined.map(withoutLastTurn));
  let best: EasyTurns | undefined;
  for (const [i, sequence] of shortest.entries()) {
    yield 0.5 + (0.5 * i) / shortest.length;
    const written = easiestWriting(sequence, HOLD);
    if (best === undefined || written.ease < best.ease) best = written;
  }
  const { turns } = present(best, "some way can be joined for every case");
  invariant(answersLook(shows, turns), "a joined way answers its case");
  return turns;
}
