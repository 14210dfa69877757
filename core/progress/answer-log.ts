/** What the questions of the progress page read of a learner's log. */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import { type Grade, gradeOf, isMissed } from "../memory/grade";
import type { AnswerWay, Review } from "../memory/review";

/** What of a review progress looks at. */
export type ProgressAnswer = Pick<
  Review,
  | "case"
  | "hold"
  | "localDay"
  | "asking"
  | "answerWay"
  | "interrupted"
  | "verdict"
  | "answeredAs"
  | "corrections"
  | "hints"
  | "thinking"
  | "turning"
  | "total"
  | "target"
>;

/** A case as it is asked: a case held up and the same held down are two to a memory. */
export interface AskedCase {
  readonly case: CaseId;
  readonly hold: Hold;
}

/** An answer with the grade that it has in its log. */
export interface GradedAnswer extends ProgressAnswer {
  readonly grade: Grade;
}

/**
 * The answers of a log with their grades: the one place where progress grades,
 * handed the whole log because a grade may depend on what came before.
 *
 * Shape: `log` is one learner's, in the order of replay.
 */
export function gradedAnswers(
  log: readonly ProgressAnswer[],
): readonly GradedAnswer[] {
  return log.map((answer) => ({ ...answer, grade: gradeOf(answer) }));
}

/** Whether the learner answered, however: a showing is no answer. */
export function isAnswer({ asking }: Pick<ProgressAnswer, "asking">): boolean {
  return asking !== "shown";
}

/** Whether an answer's time says how fast a case goes: right, on one's own, without a hint or an interruption. */
export function isTimed(answer: ProgressAnswer): boolean {
  return (
    (answer.asking === "alone" || answer.asking === "again") &&
    !answer.interrupted &&
    !isMissed(answer) &&
    answer.hints.length === 0
  );
}

/** Answers sorted by the case that was asked, each list in the log's order. */
export function byAskedCase<A extends AskedCase>(
  log: readonly A[],
): readonly (readonly [A, ...A[]])[] {
  // By id and then by hold: building a key for each of a million answers
  // takes longer than everything else here.
  const holds = {
    up: new Map<CaseId, [A, ...A[]]>(),
    down: new Map<CaseId, [A, ...A[]]>(),
  };
  for (const answer of log) {
    const cases = holds[answer.hold];
    const own = cases.get(answer.case);
    if (own === undefined) cases.set(answer.case, [answer]);
    else own.push(answer);
  }
  return [...holds.up.values(), ...holds.down.values()];
}

/** How many of the last answers say how a case is usually answered. */
const RECENT = 20;

/** The way of answering that a case is mostly answered by of late; the newest where two are even; undefined without an answer. */
export function usualWay(
  answers: readonly ProgressAnswer[],
): AnswerWay | undefined {
  const counts = new Map<AnswerWay, number>();
  for (const { answerWay } of answers.slice(-RECENT).toReversed())
    counts.set(answerWay, (counts.get(answerWay) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return [...counts].find(([, count]) => count === most)?.[0];
}
