/** How cases are named and linked on the progress page. */
import { caseEntry } from "../../../core/cases/case-table";
import { caseTitle } from "../../../core/cases/case-words";
import type { Stage } from "../../../core/cases/stage";
import { stageNames } from "../../../core/cases/stage-words";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { AskedCase } from "../../../core/progress/answer-log";
import type { LearnerState } from "../../state/learner.svelte";
import { formatRoute } from "../route";

/** What stands for a case. */
export interface CaseLabel {
  readonly title: string;
  /** The stage's name, where titles of more than one stage stand together: they are unique in a stage only. */
  readonly stage?: string;
  /** Where the case is looked up. */
  readonly href: string;
}

/** Gives the label of a case. */
export type CaseLabels = (asked: AskedCase) => CaseLabel;

/** Labels in a learner's own words, for a page with these cases. */
export function caseLabels(
  learner: Pick<LearnerState, "scheme">,
  cases: readonly AskedCase[],
): CaseLabels {
  const naming = {
    up: wholeCubeNaming(learner.scheme, "up"),
    down: wholeCubeNaming(learner.scheme, "down"),
  };
  const stages = new Set<Stage>(
    cases.map(({ case: id }) => caseEntry(id).stage),
  );
  return ({ case: id, hold }) => {
    const { stage } = caseEntry(id);
    return {
      title: caseTitle(id, naming[hold]),
      ...(stages.size > 1 ? { stage: stageNames(stage).name } : {}),
      href: formatRoute({ place: "cases", shelf: stage, case: id }),
    };
  };
}

/** A label on one line. */
export function wholeLabel({ title, stage }: CaseLabel): string {
  return stage === undefined ? title : `${title} (${stage})`;
}
