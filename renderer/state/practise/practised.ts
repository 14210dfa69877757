import type { CaseId } from "../../../core/cases/case-ids";
import type { CaseEntry } from "../../../core/cases/case-entry";
import {
  caseEntry,
  casesOfStage,
  parseCaseId,
} from "../../../core/cases/case-table";
import { parseStage, type Stage } from "../../../core/cases/stage";

/** Where most is lost in a solve. It stands in addresses and stored desks: never renamed. */
export const WEAK_SPOTS = "weak-spots";

/** What somebody chose to practise: one case, the cases of a stage, or their weak spots. */
export type Practised = CaseId | Stage | typeof WEAK_SPOTS;

/** What a text names, or undefined. */
export function parsePractised(text: string): Practised | undefined {
  return text === WEAK_SPOTS
    ? WEAK_SPOTS
    : (parseCaseId(text) ?? parseStage(text));
}

/** Whether a case belongs to what was chosen; everything does where nothing was. */
export function isPractised(id: CaseId, of: Practised | undefined): boolean {
  return of === undefined || id === of || caseEntry(id).stage === of;
}

/** The cases that were chosen: one, or a stage's in the order of its shelf. */
export function entriesPractised(of: Practised): readonly CaseEntry[] {
  const id = parseCaseId(of);
  if (id !== undefined) return [caseEntry(id)];
  const stage = parseStage(of);
  return stage === undefined ? [] : casesOfStage(stage);
}
