/** "What do I mistake for what?" as data. */
import type { CaseId } from "../cases/case-ids";
import type { LocalDay, Mistook } from "../memory/review";
import { isMissed } from "../memory/grade";
import { type AskedCase, isAnswer, type ProgressAnswer } from "./answer-log";

/** One case that was answered as if it were another. */
export interface Confusion extends AskedCase {
  readonly answeredAs: CaseId;
  readonly times: number;
  /** When it last happened. */
  readonly lastDay: LocalDay;
}

/** The ways of answering in which a piece or a home is chosen. */
export const PIECE_WAYS = ["find-it", "where-is-home"] as const;

/** A piece or a home that was chosen in the place of another. */
export interface PieceConfusion extends Mistook {
  readonly answerWay: (typeof PIECE_WAYS)[number];
  readonly times: number;
  /** When it last happened. */
  readonly lastDay: LocalDay;
}

/** What a learner's misses say. */
export interface Confusions {
  /** The most frequent first; the latest first of those that are even. */
  readonly pairs: readonly Confusion[];
  /** How many answers to a case were missed, whatever they were: where a piece or a home was asked for, no case could be taken for another. */
  readonly missed: number;
  /** In the same order. */
  readonly pieces: readonly PieceConfusion[];
}

/** The most frequent first; the latest first of those that are even. */
function mostFirst<C extends Pick<Confusion, "times" | "lastDay">>(
  confusions: Iterable<C>,
): readonly C[] {
  return [...confusions].toSorted(
    (a, b) => b.times - a.times || b.lastDay - a.lastDay,
  );
}

/**
 * Which cases were answered as which others, and which pieces and homes were
 * chosen for which, from a day on.
 *
 * The right case played for another home is no confusion of cases and is left
 * out.
 */
export function confusionsOf(
  log: readonly ProgressAnswer[],
  since?: LocalDay,
): Confusions {
  const pairs = new Map<string, Confusion>();
  const pieces = new Map<string, PieceConfusion>();
  let missed = 0;
  for (const answer of log) {
    if (since !== undefined && answer.localDay < since) continue;
    if (!isAnswer(answer) || !isMissed(answer)) continue;
    const answerWay = PIECE_WAYS.find((way) => way === answer.answerWay);
    if (answerWay !== undefined) {
      const { mistook, localDay: lastDay } = answer;
      if (mistook === undefined) continue;
      const key = `${answerWay} ${mistook.piece} ${mistook.for}`;
      const times = (pieces.get(key)?.times ?? 0) + 1;
      pieces.set(key, { ...mistook, answerWay, times, lastDay });
      continue;
    }
    missed += 1;
    const { case: id, hold, answeredAs, localDay: lastDay } = answer;
    if (answeredAs === undefined || answeredAs === id) continue;
    const key = `${id} ${hold} ${answeredAs}`;
    const times = (pairs.get(key)?.times ?? 0) + 1;
    pairs.set(key, { case: id, hold, answeredAs, times, lastDay });
  }
  return {
    pairs: mostFirst(pairs.values()),
    missed,
    pieces: mostFirst(pieces.values()),
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
