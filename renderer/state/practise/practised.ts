import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, parseCaseId } from "../../../core/cases/case-table";
import { parseStage, type Stage } from "../../../core/cases/stage";

/** What somebody chose to practise: one case, or the cases of a stage. */
export type Practised = CaseId | Stage;

/** What a text names, or undefined. */
export function parsePractised(text: string): Practised | undefined {
  return parseCaseId(text) ?? parseStage(text);
}

/** Whether a case belongs to what was chosen; everything does where nothing was. */
export function isPractised(id: CaseId, of: Practised | undefined): boolean {
  return of === undefined || id === of || caseEntry(id).stage === of;
}
