/**
 * A round of questions that are answered by choosing: which of the cases that
 * were met are asked. Those that were mistaken come first, then those that are
 * easily mistaken for one another and were both met. The schedule hears
 * nothing of it.
 */
import { alikeCases } from "../cases/alike";
import type { CaseId } from "../cases/case-ids";
import { stageOfCase } from "../cases/case-table";
import { isLastLayerStage } from "../cases/stage";
import type { AskingChoice } from "../deck/deck";
import { type RandomSource, shuffled } from "../random-source";
import type { PlannedCase } from "./plan-candidates";
import type { RecognisingWay } from "./review";

/** About how many questions a round has. */
export const QUESTIONS = 10;

/** How often at most a case is asked in a round, misses aside. */
const MOST_TIMES = 3;

/** Two cases of which one was taken for the other. */
export interface ConfusedPair {
  readonly case: CaseId;
  readonly answeredAs: CaseId;
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
  const confused = pairs
    .flatMap((pair) => [pair.case, pair.answeredAs])
    .flatMap((id) => cases.find((one) => one.case === id) ?? []);
  const inAnyOrder = shuffled(random, cases);
  const chosen = [
    ...new Set([...confused, ...besideTheirAlikes(inAnyOrder), ...inAnyOrder]),
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
