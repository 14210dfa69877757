/** What a learner's log says for a certificate. */
import type { Hold } from "../../../core/cases/variant";
import type { DeckCase } from "../../../core/deck/deck";
import type { CertificateNumbers } from "../../../core/paper/certificate";
import { isAnswer } from "../../../core/progress/answer-log";
import { caseTimes } from "../../../core/progress/case-times";
import { median } from "../../../core/progress/median";
import type { LearnerState } from "../learner.svelte";

/** A learner's numbers in some cases of a deck, held as it is. */
export function certificateNumbers(
  learner: LearnerState,
  cases: readonly DeckCase[],
  hold: Hold,
): CertificateNumbers {
  const byCase = cases.map((one) =>
    learner
      .answersTo(one.case, hold)
      .map(({ review }) => review)
      .filter(isAnswer),
  );
  const answers = byCase.flat();
  const thinking = median(
    byCase.flatMap((own) => caseTimes(own)?.usualThinking ?? []),
  );
  return {
    cases: cases.length,
    kept: cases.filter((one) => learner.stateOf(one.case, hold) === "kept")
      .length,
    answers: answers.length,
    days: new Set(answers.map(({ localDay }) => localDay)).size,
    ...(thinking === undefined ? {} : { thinking }),
  };
}
