/** What the questions of the progress page read of a learner's log. */
import type { CaseId } from "../cases/case-ids";
import type { Hold } from "../cases/variant";
import { present } from "../invariant";
import { type GradedAnswer as Worth, isMissed } from "../memory/grade";
import { Grader } from "../memory/grader";
import {
  type AnswerWay,
  isRecognising,
  type Mistook,
  type Review,
} from "../memory/review";

/** What of a review progress looks at. */
export interface ProgressAnswer extends Pick<
  Review,
  | "case"
  | "hold"
  | "localDay"
  | "asking"
  | "answerWay"
  | "interrupted"
  | "verdict"
  | "corrections"
  | "hints"
  | "total"
  | "target"
> {
  // Undefined is as good as absent: objects of one shape are read faster, and
  // there may be a million.
  readonly answeredAs?: CaseId | undefined;
  readonly mistook?: Mistook | undefined;
  readonly thinking?: number | undefined;
  readonly turning?: number | undefined;
  readonly untimed?: true | undefined;
}

/** An answer as the log has it, with how many turns it took. */
export interface LoggedAnswer extends ProgressAnswer {
  /** From the first that commits to the last; 0 where nobody saw them. */
  readonly committedTurns: number;
}

/** How many turns an answer took from the first that commits to the last; 0 where nobody saw them, or when they began. */
export function committedTurns({
  thinking,
  turns,
}: Pick<Review, "turns"> & Pick<ProgressAnswer, "thinking">): number {
  let count = 0;
  if (thinking !== undefined)
    for (const { at } of turns) if (at >= thinking) count += 1;
  return count;
}

/** One learner's log in the order of replay: a list, or something that makes its answers when they are looked at. */
export interface AnswerList {
  readonly length: number;
  /** The answer at a place from 0 to below `length`. */
  at(place: number): LoggedAnswer | undefined;
}

/** A case as it is asked: a case held up and the same held down are two to a memory. */
export interface AskedCase {
  readonly case: CaseId;
  readonly hold: Hold;
}

/** An answer with what it was worth in its log. */
export interface GradedAnswer<Answer extends ProgressAnswer = ProgressAnswer> {
  readonly answer: Answer;
  readonly graded: Worth;
}

/**
 * The answers of a log with their grades by case, each case's oldest first.
 *
 * The one place where progress grades: it goes through the whole log in
 * order, because a grade may depend on what came before.
 */
export function gradedByCase(
  log: AnswerList,
): readonly (() => readonly GradedAnswer<LoggedAnswer>[])[] {
  const grader = new Grader();
  // A few objects that the grader shares out, and not one for each answer.
  const graded: Worth[] = [];
  // By id and then by hold: building a key for each of a million answers
  // takes longer than everything else here.
  const holds = {
    up: new Map<CaseId, number[]>(),
    down: new Map<CaseId, number[]>(),
  };
  for (let place = 0; place < log.length; place++) {
    const answer = present(log.at(place), "the log is as long as it says");
    graded.push(grader.grade(answer));
    if (!isAnswer(answer)) continue;
    const cases = holds[answer.hold];
    const own = cases.get(answer.case);
    if (own === undefined) cases.set(answer.case, [place]);
    else own.push(place);
  }
  // Made when they are looked at, so that no more than one case's answers
  // need to be there at a time.
  return [...holds.up.values(), ...holds.down.values()].map(
    (places) => () =>
      places.map((place) => ({
        answer: present(log.at(place), "an answer stays where it is"),
        graded: present(graded[place], "every answer was graded"),
      })),
  );
}

/**
 * Whether the learner answered, however: alone, with help, again, beyond the
 * schedule, by choosing or on paper. A showing is no answer. Wherever people
 * read "12 answers", these are counted.
 */
export function isAnswer({ asking }: Pick<ProgressAnswer, "asking">): boolean {
  return asking !== "shown";
}

/** Whether a case was to be turned without its way in sight. */
export function isOnOnesOwn({
  asking,
  answerWay,
}: Pick<ProgressAnswer, "asking" | "answerWay">): boolean {
  return (
    (asking === "alone" || asking === "again" || asking === "extra") &&
    !isRecognising(answerWay)
  );
}

/** Whether an answer's time says how fast a case goes: there is one, and it was right, on one's own, without a hint or an interruption. */
export function isTimed(answer: ProgressAnswer): boolean {
  return (
    isOnOnesOwn(answer) &&
    answer.untimed !== true &&
    !answer.interrupted &&
    !isMissed(answer) &&
    answer.hints.length === 0
  );
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
