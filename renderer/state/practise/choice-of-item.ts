/** Where an item of a round becomes a question to choose from. */
import { recognisingQuestion } from "../../../core/answer/recognising-question";
import type { RecognisingWay } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import { timesMixedUp } from "../../../core/progress/confusions";
import { randomSource, seedFrom } from "../../../core/random-source";
import type { LearnerState } from "../learner.svelte";
import { ChoiceAttempt, type Chosen } from "./choice-attempt.svelte";
import { mixedUpPairs } from "./mixed-up-pairs";
import { positionOfItem } from "./position-of-item";

/** The position of an item is drawn from its seed itself. */
const SEED_OF_CHOICES = 1;

/**
 * The question of an item that is answered by choosing: the same again after a
 * reload, because nothing of the log has changed meanwhile.
 */
export function choiceOfItem(
  item: RoundItem & { readonly answerWay: RecognisingWay },
  learner: LearnerState,
  onchosen: (attempt: ChoiceAttempt, chosen: Chosen) => void,
): ChoiceAttempt {
  const position = positionOfItem(item);
  const attempt: ChoiceAttempt = new ChoiceAttempt({
    item,
    position,
    question: recognisingQuestion(
      position,
      item.answerWay,
      randomSource(seedFrom(item.seed, SEED_OF_CHOICES)),
      {
        mixedUpWith: [...timesMixedUp(item.case, mixedUpPairs(learner)).keys()],
        isMet: (id) => learner.memoryOf(id, item.hold) !== undefined,
      },
    ),
    onchosen: (chosen) => onchosen(attempt, chosen),
  });
  return attempt;
}
