/** What the case search finds, and what the geometric oracle sees after it. */
import type { Cubies } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { FACES } from "../../../core/cube/faces";
import { CORNER_NAMES, EDGE_NAMES } from "../../../core/cube/pieces";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import type { CaseGoal } from "../../../core/cases/case-goal";
import {
  type CaseAnswer,
  type CaseQuestion,
  type CaseSearch,
  createCaseSearch,
} from "../../../core/solver/case-search";
import { faceOfTurn } from "../../../core/solver/face-turn-sequence";
import { runToEnd } from "../../../core/steps";
import { carried, placedPieces, sourcesOf } from "../cases/seen-by-oracle";

let search: CaseSearch | undefined;

/** The one search of a worker: its tables are made once. */
export function caseSearch(): CaseSearch {
  return (search ??= createCaseSearch());
}

/** What the search finds, all of it. */
export function answers(question: CaseQuestion): readonly CaseAnswer[] {
  return runToEnd(caseSearch().answers(question));
}

/** How many turns the shortest of the answers has; `undefined` of none. */
export function lengthOf(found: readonly CaseAnswer[]): number | undefined {
  return found[0]?.turns.length;
}

function nameOfTurn(turn: number): string {
  return `${FACES[faceOfTurn(turn)] ?? "?"}${["", "2", "'"][turn % 3] ?? "?"}`;
}

function freeTurns(quarters: number): string {
  return ["", "D", "D2", "D'"][quarters] ?? "?";
}

/** The 54 letters after an answer, by the geometric oracle. */
export function afterByOracle(from: Cubies, answer: CaseAnswer): string {
  const text = [
    freeTurns(answer.before),
    ...answer.turns.map(nameOfTurn),
    freeTurns(answer.after),
  ].join(" ");
  const facelets = formatFacelets({ cubies: from, hold: NO_ROTATION });
  return carried(facelets, sourcesOf(text));
}

/** Whether the oracle sees every piece placed that the goal wants placed. */
export function isPlacedByOracle(
  facelets: string,
  { placed }: CaseGoal,
): boolean {
  const seen = placedPieces(facelets);
  return [
    ...placed.corners.map((piece) => CORNER_NAMES[piece] ?? "?"),
    ...placed.edges.map((piece) => EDGE_NAMES[piece] ?? "?"),
  ].every((name) => seen.has(Array.from(name).toSorted().join("")));
}
