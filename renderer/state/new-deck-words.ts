/**
 * What is in a deck that is new here, as people read it before they take it
 * in: its texts, its cases stage by stage, what it says about them, and how
 * they come.
 */
import { caseEntry } from "../../core/cases/case-table";
import { caseTitle } from "../../core/cases/case-words";
import { stageName } from "../../core/cases/stage-words";
import { STAGES } from "../../core/cases/stage";
import type { DeckCase } from "../../core/deck/deck";
import type { DeckDraft } from "../../core/deck/deck-file-values";
import { capitalised } from "../../core/notation/sentence";
import {
  ceilingInWords,
  type DeckReading,
  OTHER_HOLD,
  stagesInWords,
} from "./deck-words";

function stageSentences(
  cases: readonly DeckCase[],
  { naming }: DeckReading,
): readonly string[] {
  const sentences = STAGES.flatMap((stage) => {
    const titles = cases
      .filter((entry) => caseEntry(entry.case).stage === stage)
      .map((entry) => caseTitle(entry.case, naming));
    return titles.length === 0
      ? []
      : [`${stageName(stage)}, ${titles.length}: ${titles.join("; ")}.`];
  });
  return sentences.length === 0 ? ["There are no cases in it."] : sentences;
}

/** What a deck may say of a case, after "1 case" and after "2 cases". */
const CASE_CHOICES: readonly {
  readonly isMade: (entry: DeckCase) => boolean;
  readonly one: string;
  readonly several: string;
}[] = [
  {
    isMade: ({ way }) => way !== undefined,
    one: "case has a way of its own",
    several: "cases have a way of their own",
  },
  {
    isMade: ({ note }) => note !== undefined,
    one: "case has a note to the learner",
    several: "cases have a note to the learner",
  },
  {
    isMade: ({ placed, home, lining, pieces }) =>
      [placed, home, lining, pieces].some((choice) => choice !== undefined),
    one: "case is asked in a special way",
    several: "cases are asked in a special way",
  },
  {
    isMade: ({ answerWays }) => answerWays !== undefined,
    one: "case allows only some ways of answering",
    several: "cases allow only some ways of answering",
  },
];

function choiceSentences(cases: readonly DeckCase[]): readonly string[] {
  return CASE_CHOICES.flatMap(({ isMade, one, several }) => {
    const count = cases.filter(isMade).length;
    if (count === 0) return [];
    return [count === 1 ? `1 ${one}.` : `${count} ${several}.`];
  });
}

/** What is in a deck that is new here, one sentence each. */
export function newDeckInWords(
  deck: DeckDraft,
  reading: DeckReading,
): readonly string[] {
  const { description, message, hold, ceiling, cases, stages } = deck;
  return [
    ...(description === "" ? [] : [description]),
    ...(message === undefined ? [] : [`To the learner: “${message}”`]),
    ...stageSentences(cases, reading),
    ...choiceSentences(cases),
    `New cases a round: at most ${deck.newPerRound}.`,
    ...(stages === undefined
      ? []
      : [`Order of the stages: ${stagesInWords(stages)}.`]),
    ...(hold === undefined
      ? []
      : [`It is held with the first layer ${hold}. ${OTHER_HOLD}`]),
    ...(ceiling === undefined
      ? []
      : [`${capitalised(ceilingInWords(ceiling))}.`]),
  ];
}
