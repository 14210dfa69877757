/**
 * Ways for cases of which none is written down: the two largest stages of the
 * last layer, whose 4,408 cases are too many for a file.
 *
 * A whole last layer takes 13 or 14 turns as a rule, and every turn more takes
 * about ten times as long to rule out (measured on a busy core, tables after
 * 2.5 s: all of 10 turns 0.2 s, 11 turns 2.5 s, 12 turns 6 to 35 s). So the
 * search has a limit, and says what it has ruled out where it finds nothing.
 */
import type { LastLayerEntry } from "../cases/case-entry";
import { lastLayerGoal } from "../cases/last-layer-goal";
import { stateOfLook } from "../cases/last-layer-look";
import { FREE_LAYER } from "../cases/stage";
import { holdInStage } from "../cases/hold-in-stage";
import { faceTurnIndex } from "../cube/face-turns";
import type { Turn } from "../cube/turns";
import type { CaseAnswer, CaseSearch } from "./case-search";
import { MOST_CASE_TURNS } from "./case-kernel";
import { type EasyTurns, easiestWriting } from "./easiest-writing";
import type { Steps } from "../steps";

/** So long a way is looked for in a few seconds. Units: turns. */
export const SOON_TURNS = 11;

/** So long a way takes about half a minute to rule out. Units: turns. */
export const PATIENT_TURNS = 12;

/** What a search for ways has come to. */
export interface WaysOnDemand {
  /**
   * The shortest ways, each as it is easiest to make, the easiest first, as they
   * are seen in the reference of the case; none where each has more turns than were
   * looked for.
   */
  readonly ways: readonly (readonly Turn[])[];
  /** How many turns a way was allowed. */
  readonly mostTurns: number;
}

/** How many of the shortest ways are given. */
const MOST_WAYS = 3;

const HOLD = holdInStage("last-layer-whole", { home: 0, seenFrom: 0 }, "down");

/** An answer as it is easiest to make. */
function writtenEasily({ before, turns }: CaseAnswer): EasyTurns {
  const sequence =
    before === 0 ? turns : [faceTurnIndex(FREE_LAYER, before), ...turns];
  return easiestWriting(sequence, HOLD);
}

/** From the progress of a search through every length to that of one through a few, of which the last takes nearly all the time. */
function shareOf(progress: number, mostTurns: number): number {
  const lengths = ((progress - 0.1) / 0.9) * (MOST_CASE_TURNS + 1);
  const rest = lengths - (mostTurns - 1);
  if (rest < 0) return 0.1 * Math.max(0, lengths / (mostTurns - 1));
  return Math.min(1, 0.1 + 0.9 * rest);
}

/** Looks for the shortest ways of a case of the last layer, of at most so many turns. */
export function* findWays(
  search: CaseSearch,
  { stage, shows }: LastLayerEntry,
  mostTurns: number,
): Steps<WaysOnDemand> {
  const steps = search.answers({
    from: stateOfLook(shows.lookAt(0)),
    goal: lastLayerGoal(stage),
    mostTurns,
  });
  let step = steps.next();
  for (; step.done !== true; step = steps.next())
    yield shareOf(step.value, mostTurns);
  const ways = step.value
    .map(writtenEasily)
    .toSorted((a, b) => a.ease - b.ease)
    .slice(0, MOST_WAYS)
    .map(({ turns }) => turns);
  return { ways, mostTurns };
}
