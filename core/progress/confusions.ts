/** "What do I mistake for what?" as data. */
import type { CaseId } from "../cases/case-ids";
import type { LocalDay } from "../memory/review";
import { isMissed } from "../memory/grade";
import { type AskedCase, isAnswer, type ProgressAnswer } from "./answer-log";

/** One case that was answered as if it were another. */
export interface Confusion extends AskedCase {
  readonly answeredAs: CaseId;
  readonly times: number;
  /** When it last happened. */
  readonly lastDay: LocalDay;
}

/** What a learner's misses say. */
export interface Confusions {
  /** The most frequent first; the latest first of those that are even. */
  readonly pairs: readonly Confusion[];
  /** How many answers were missed, whatever they were. */
  readonly missed: number;
}

/**
 * Which cases were answered as which others, from a day on.
 *
 * The right case played for another home is no confusion of cases and is left
 * out.
 */
export function confusionsOf(
  log: readonly ProgressAnswer[],
  since?: LocalDay,
): Confusions {
  const pairs = new Map<string, Confusion>();
  let missed = 0;
  for (const answer of log) {
    if (since !== undefined && answer.localDay < since) continue;
    if (!isAnswer(answer) || !isMissed(answer)) continue;
    missed += 1;
    const { case: id, hold, answeredAs, localDay: lastDay } = answer;
    if (answeredAs === undefined || answeredAs === id) continue;
    const key = `${id} ${hold} ${answeredAs}`;
    const times = (pairs.get(key)?.times ?? 0) + 1;
    pairs.set(key, { case: id, hold, answeredAs, times, lastDay });
  }
  return {
    pairs: [...pairs.values()].toSorted(
      (a, b) => b.times - a.times || b.lastDay - a.lastDay,
    ),
    missed,
  };
}

/**
 * The cases that a case was taken for or that were taken for it, each with how
 * often, the most frequent first.
 */
export function timesMixedUp(
  id: CaseId,
  pairs: readonly Pick<Confusion, "case" | "answeredAs" | "times">[],
): ReadonlyMap<CaseId, number> {
  const times = new Map<CaseId, number>();
  for (const pair of pairs) {
    if (pair.case !== id && pair.answeredAs !== id) continue;
    const other = pair.case === id ? pair.answeredAs : pair.case;
    times.set(other, (times.get(other) ?? 0) + pair.times);
  }
  return new Map([...times].toSorted(([, a], [, b]) => b - a));
}
