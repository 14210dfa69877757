import type { CaseId } from "../../../core/cases/case-ids";
import type { CaseEntry } from "../../../core/cases/case-entry";
import {
  caseEntry,
  casesOfStage,
  parseCaseId,
} from "../../../core/cases/case-table";
import { parseStage, type Stage } from "../../../core/cases/stage";
import {
  RECOGNISING_WAYS,
  type RecognisingWay,
} from "../../../core/memory/review";

/** Where most is lost in a solve. It stands in addresses and stored desks: never renamed. */
export const WEAK_SPOTS = "weak-spots";

/** Cases that were met, to be told apart by choosing. It stands in addresses and stored desks: never renamed. */
export type TellApart = `tell-apart/${RecognisingWay}`;

/** What somebody chose to practise: one case, the cases of a stage, their weak spots, or telling apart what they know. */
export type Practised = CaseId | Stage | typeof WEAK_SPOTS | TellApart;

/** Telling cases apart in one way. */
export function tellApart(way: RecognisingWay): TellApart {
  return `tell-apart/${way}`;
}

/** The way in which cases are to be told apart; undefined where something else was chosen. */
export function tellingApart(
  of: Practised | undefined,
): RecognisingWay | undefined {
  return RECOGNISING_WAYS.find((way) => tellApart(way) === of);
}

/** Whether what was chosen is offered beside what today brings: weak spots, or telling apart. */
export function isBesideToday(of: Practised | undefined): boolean {
  return of === WEAK_SPOTS || tellingApart(of) !== undefined;
}

/** What a text names, or undefined. */
export function parsePractised(text: string): Practised | undefined {
  if (text === WEAK_SPOTS) return WEAK_SPOTS;
  const way = RECOGNISING_WAYS.find((one) => tellApart(one) === text);
  return way === undefined
    ? (parseCaseId(text) ?? parseStage(text))
    : tellApart(way);
}

/** Whether a case belongs to what was chosen; everything does where no case and no stage was. */
export function isPractised(id: CaseId, of: Practised | undefined): boolean {
  return (
    of === undefined ||
    tellingApart(of) !== undefined ||
    id === of ||
    caseEntry(id).stage === of
  );
}

/** The cases that were chosen: one, or a stage's in the order of its shelf; none where those that were met are told apart. */
export function entriesPractised(of: Practised): readonly CaseEntry[] {
  const id = parseCaseId(of);
  if (id !== undefined) return [caseEntry(id)];
  const stage = parseStage(of);
  return stage === undefined ? [] : casesOfStage(stage);
}
