/** The ways of a case as a learner's decks and hands have them, outside a position. */
import type { CaseId } from "../../core/cases/case-ids";
import { waysOf } from "../../core/cases/case-table";
import type { WaySchool } from "../../core/cases/way";
import type { Turn } from "../../core/cube/turns";
import { turnsOfDeckWay } from "../../core/deck/way-of-deck";
import { formatTurns } from "../../core/notation/format";
import type { LearnerState } from "./learner.svelte";

/** A way of a case. */
export interface CaseWay {
  readonly turns: readonly Turn[];
  /** The schools that teach just these turns; none for turns of a coach's own. */
  readonly schools: readonly WaySchool[];
}

/**
 * The ways of a case, each once, the one that is taught first: their deck's,
 * else the one that they chose. Empty for two corners, which no one way answers, and where
 * ways are found on demand.
 */
export function caseWays(
  id: CaseId,
  learner: LearnerState,
): readonly CaseWay[] {
  const { hold } = learner.settings;
  const { school, hand } = learner.wayChoice;
  const deckWay = learner.ownDeckCase(id)?.way ?? { kind: "school", school };
  const taught = turnsOfDeckWay(id, deckWay, hold, hand);
  const known = waysOf(id, hold, hand);
  const distinct = new Map<string, CaseWay>();
  if (taught !== undefined)
    distinct.set(formatTurns(taught), { turns: taught, schools: [] });
  for (const { turns, school } of known) {
    const text = formatTurns(turns);
    const { schools = [] } = distinct.get(text) ?? {};
    distinct.set(text, { turns, schools: [...schools, school] });
  }
  return [...distinct.values()];
}

/** The turns that a learner is taught for a case; undefined for two corners. */
export function taughtWay(
  id: CaseId,
  learner: LearnerState,
): readonly Turn[] | undefined {
  return caseWays(id, learner)[0]?.turns;
}
