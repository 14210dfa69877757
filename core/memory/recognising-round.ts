/**
 * A round of questions that are answered by choosing: which of the cases that
 * were met are asked. A few that were mistaken come first, until they are told
 * apart, then those that are easily mistaken for one another and were both met.
 * The schedule hears nothing of it.
 */
import { alikeCases } from "../cases/alike";
import type { CaseId } from "../cases/case-ids";
import { stageOfCase } from "../cases/case-table";
import { isLastLayerStage } from "../cases/stage";
import type { AskingChoice } from "../deck/deck";
import { type RandomSource, shuffled } from "../random-source";
import type { PlannedCase } from "./plan-candidates";
import { isRecognising, type RecognisingWay, type Review } from "./review";

/** About how many questions a round has. */
export const QUESTIONS = 10;

/** How often at most a case is asked in a round, misses aside. */
const MOST_TIMES = 3;

/** How many pairs that were mistaken a round begins with: more of them would leave nothing else to be asked. */
const MOST_PAIRS = 3;

/** After so many right choices in a way two cases count as told apart in it. */
const TOLD_APART = 2;

/** Two cases of which one was taken for the other. */
interface TakenFor {
  readonly case: CaseId;
  readonly answeredAs: CaseId;
}

/** The same, with how often either was chosen right since it last happened. */
export interface ConfusedPair extends TakenFor {
  readonly rightSince: Readonly<Record<RecognisingWay, number>>;
}

/**
 * Pairs with the right choices since they were last mistaken, under either
 * hold.
 *
 * Shape: `log` in the order of replay, with the mistakes that the pairs are
 *        from.
 */
export function withRightChoices(
  log: readonly Pick<Review, "case" | "answeredAs" | "answerWay" | "verdict">[],
  pairs: readonly TakenFor[],
): readonly ConfusedPair[] {
  const counted = pairs.map((pair) => ({ pair, rightSince: noneRight() }));
  for (const { case: id, answeredAs, answerWay, verdict } of log) {
    if (answeredAs === undefined && !isRecognising(answerWay)) continue;
    for (const one of counted) {
      const { pair } = one;
      if (id === pair.case && answeredAs === pair.answeredAs)
        one.rightSince = noneRight();
      else if (
        verdict === "right" &&
        isRecognising(answerWay) &&
        (id === pair.case || id === pair.answeredAs)
      )
        one.rightSince[answerWay] += 1;
    }
  }
  return counted.map(({ pair, rightSince }) => ({ ...pair, rightSince }));
}

function noneRight(): Record<RecognisingWay, number> {
  return { "which-is-it": 0, "find-it": 0, "where-is-home": 0 };
}

/**
 * Whether a case can be asked in a way: two corners in each other's homes are
 * a task rather than a case to tell from others, and in the last layer no one
 * piece is asked about.
 */
export function isRecognisable(id: CaseId, way: RecognisingWay): boolean {
  if (id === "S1" || id === "S2") return false;
  return way === "which-is-it" || !isLastLayerStage(stageOfCase(id));
}

/** How a case is to be asked: where a piece is to be found, or its home, nothing may give it away. */
function choiceFor(
  way: RecognisingWay,
  { choice: own }: PlannedCase,
): AskingChoice {
  if (way !== "which-is-it")
    return {
      placed: 0,
      home: "anywhere",
      lining: "turned-away",
      pieces: "unmarked",
    };
  const { placed, home, lining } = own ?? {};
  return {
    ...(placed === undefined ? {} : { placed }),
    ...(home === undefined ? {} : { home }),
    ...(lining === undefined ? {} : { lining }),
    pieces: "unmarked",
  };
}

/** Each with one that is alike and was met behind it, as long as there are such. */
function besideTheirAlikes(
  cases: readonly PlannedCase[],
): readonly PlannedCase[] {
  return cases.flatMap((one) => {
    const [nearest] = alikeCases(one.case).flatMap(
      (id) => cases.find((other) => other.case === id) ?? [],
    );
    return nearest === undefined ? [] : [one, nearest];
  });
}

/** The cases of the pairs that are not yet told apart, pair by pair, as far as they were met; a pair mistaken both ways is one. */
function notToldApart(
  pairs: readonly ConfusedPair[],
  way: RecognisingWay,
  cases: readonly PlannedCase[],
): readonly PlannedCase[] {
  const inQuestion = new Map<string, readonly PlannedCase[]>();
  for (const pair of pairs) {
    if (pair.rightSince[way] >= TOLD_APART) continue;
    const ids = [pair.case, pair.answeredAs];
    const known = ids.flatMap(
      (id) => cases.find((one) => one.case === id) ?? [],
    );
    const key = ids.toSorted().join(" ");
    if (known.length > 0 && !inQuestion.has(key)) inQuestion.set(key, known);
  }
  return [...inQuestion.values()].slice(0, MOST_PAIRS).flat();
}

/**
 * The cases of a round of questions, in the order in which they are first
 * asked; none where nothing that can be asked in this way was met.
 *
 * Shape: `met` are the cases with a memory; `pairs` what the learner mistook,
 *        most often first.
 */
export function planRecognising(
  met: readonly PlannedCase[],
  way: RecognisingWay,
  pairs: readonly ConfusedPair[],
  random: RandomSource,
): readonly PlannedCase[] {
  const cases = met.filter((one) => isRecognisable(one.case, way));
  const inAnyOrder = shuffled(random, cases);
  const chosen = [
    ...new Set([
      ...notToldApart(pairs, way, cases),
      ...besideTheirAlikes(inAnyOrder),
      ...inAnyOrder,
    ]),
  ].slice(0, QUESTIONS);
  // A lone case would only be asked the same again.
  const times =
    chosen.length < 2
      ? 1
      : Math.min(MOST_TIMES, Math.floor(QUESTIONS / chosen.length));
  return chosen.map((planned) => ({
    ...planned,
    times,
    asking: "extra",
    answerWay: way,
    choice: choiceFor(way, planned),
  }));
}
