/**
 * All shortest sequences that answer a goal, by deepening: every length is
 * searched to its end before the next, so what is found is shortest because
 * nothing shorter was there.
 *
 * The two-phase solver is no help here: it finds short sequences at once and
 * shortest ones never, and moves every piece where a case leaves most free.
 * Measured on a busy machine, tables ready after 0.2 s: first layer 0.13 ms at
 * the median (p95 0.7 ms), second-layer edges 2.5 ms (4.4 ms), the pairs 0.7 ms
 * (2.7 ms), turning the last layer 24 ms (0.34 s, at worst 1.3 s: twelve turns).
 * Placing the last layer takes 0.1 s where ten turns do, 4 s with
 * twelve, two minutes with thirteen.
 */
import { isFullyKnown, type PartlyKnownCubies } from "../cube/cubies";
import type { Face } from "../cube/faces";
import { FACES } from "../cube/faces";
import { validateCubies } from "../cube/validity";
import { invariant } from "../invariant";
import { askedPieces, type CaseGoal, quartersToGoal } from "../cases/case-goal";
import { namesOf } from "./case-halves";
import { createCaseKernel, MOST_CASE_TURNS } from "./case-kernel";
import { buildNearby, type Nearby } from "./case-nearby";
import { type CaseStart, caseStarts, sequenceImage } from "./case-starts";
import { createCaseTableShelf, type FollowedPieces } from "./case-tables";
import {
  afterSequence,
  faceOfTurn,
  type FaceTurnSequence,
} from "./face-turn-sequence";
import { ALL_TURNS } from "./move-tables";
import { partOf, type Steps } from "../steps";

/** What to search for. */
export interface CaseQuestion {
  /** Shape: every piece that the goal names is known. */
  readonly from: PartlyKnownCubies;
  readonly goal: CaseGoal;
  /** The body's faces to turn; absent: all. The free layer may be turned before and after in any case. */
  readonly faces?: readonly Face[];
  /** Longer sequences are not looked for: 1–20, 20 where absent. */
  readonly mostTurns?: number;
  /** Also all sequences of so many turns more than the shortest: 0 where absent. */
  readonly extraTurns?: number;
}

/** A sequence that answers. */
export interface CaseAnswer {
  /** Quarter turns of the free layer to make before, 0–3. */
  readonly before: number;
  /** Begins and ends with another face than the free layer's; normalised. */
  readonly turns: FaceTurnSequence;
  /** Quarter turns of the free layer to make after, 0–3; 0 where all fits already. */
  readonly after: number;
}

/** Searches, and keeps the tables that were needed. */
export interface CaseSearch {
  /** Makes all that any answer to a goal needs, so that the first is found as soon as the others. */
  prepare(goal: CaseGoal): Steps<void>;
  /**
   * All shortest answers, and as many longer ones as were asked for, shortest
   * first. Turns of the free layer before and after count nothing. Answers
   * that are one seen from another side, where case and goal look alike from
   * there, are given once.
   *
   * Shape: one answer without turns where the goal is reached already; none
   *        where no sequence has at most `mostTurns`.
   */
  answers(question: CaseQuestion): Steps<readonly CaseAnswer[]>;
}

/**
 * From this length on it pays to have the states near the goal: shorter ones
 * are found in less time than it takes to list them.
 */
const NEARBY_FROM = 8;

/** How near: one turn more would take thirteen times the room, 64 MB. */
const NEARBY_REACH = 5;

/** How much of the progress the tables are. */
const TABLES_SHARE = 0.1;

/** A search with nothing prepared yet. */
export function createCaseSearch(): CaseSearch {
  const shelf = createCaseTableShelf();
  const kept = new Map<string, Nearby>();

  function* nearbyOf({ halves }: FollowedPieces): Steps<Nearby> {
    const name = namesOf(halves);
    const nearby = kept.get(name) ?? (yield* buildNearby(halves, NEARBY_REACH));
    kept.set(name, nearby);
    return nearby;
  }

  return {
    *prepare(goal) {
      const followed = yield* partOf(shelf.follow(askedPieces(goal)), 0, 0.6);
      yield* partOf(nearbyOf(followed), 0.6, 1);
    },
    *answers(question) {
      const { from, goal, mostTurns = MOST_CASE_TURNS } = question;
      invariant(
        !isFullyKnown(from) || validateCubies(from).ok,
        "only possible cubes are searched from",
      );
      const followed = yield* partOf(
        shelf.follow(askedPieces(goal)),
        0,
        TABLES_SHARE,
      );
      const turns = turnsOfFaces(question.faces ?? FACES);
      const searches = caseStarts(from, goal, turns).map((start) => ({
        kernel: createCaseKernel(followed, start, turns),
        taker: answerTaker(start, goal),
      }));
      const after = quartersToGoal(from, goal);
      const found: CaseAnswer[] =
        after === undefined ? [] : [{ before: 0, turns: [], after }];
      let most = found.length > 0 ? (question.extraTurns ?? 0) : mostTurns;
      for (let length = 1; length <= most; length++) {
        const progress = (share: number) =>
          TABLES_SHARE +
          ((1 - TABLES_SHARE) * (length - 1 + share)) / (MOST_CASE_TURNS + 1);
        const possible = searches.filter(
          ({ kernel }) => kernel.bound <= length,
        );
        const nearby =
          possible.length > 0 && length >= NEARBY_FROM
            ? yield* partOf(nearbyOf(followed), progress(0), progress(0.1))
            : undefined;
        for (const [i, { kernel, taker }] of possible.entries()) {
          const share = (n: number) => 0.1 + (0.9 * n) / possible.length;
          yield* partOf(
            kernel.ofLength(length, nearby, (sequence) => {
              const answer = taker(sequence);
              if (answer !== undefined) found.push(answer);
            }),
            progress(share(i)),
            progress(share(i + 1)),
          );
        }
        if (found.length > 0)
          most = Math.min(
            mostTurns,
            found[0]!.turns.length + (question.extraTurns ?? 0),
          );
      }
      return found;
    },
  };
}

function turnsOfFaces(faces: readonly Face[]): readonly number[] {
  return ALL_TURNS.filter((turn) => faces.includes(FACES[faceOfTurn(turn)]!));
}

/** Makes answers of sequences that reach the goal, one of those that are the same from another side. */
function answerTaker(
  start: CaseStart,
  goal: CaseGoal,
): (turns: FaceTurnSequence) => CaseAnswer | undefined {
  const met = new Set<string>();
  return (turns) => {
    const after = quartersToGoal(afterSequence(start.state, turns), goal);
    if (after === undefined || met.has(turns.join())) return undefined;
    for (const rotation of start.symmetries)
      met.add(sequenceImage(rotation, turns).join());
    return { before: start.quarters, turns, after };
  };
}
