import { type CaseId, parseCaseId } from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import { type Stage, STAGES } from "../../../core/cases/stage";

/** What somebody chose to practise: one case, or the cases of a stage. */
export type Practised = CaseId | Stage;

/** What a text names, or undefined. */
export function parsePractised(text: string): Practised | undefined {
  return parseCaseId(text) ?? STAGES.find((stage) => stage === text);
}

/** Whether a case belongs to what was chosen; everything does where nothing was. */
export function isPractised(id: CaseId, of: Practised | undefined): boolean {
  return of === undefined || id === of || caseEntry(id).stage === of;
}
