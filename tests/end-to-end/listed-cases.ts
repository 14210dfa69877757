/**
 * A case of any stage by a sequence that answers it: which case it is, and the
 * turns that answer it when it is first asked, lined up and with the reference
 * home in front. So a browser test has a right answer of its own, whatever
 * ways the app knows.
 */
import type { CaseId } from "../../core/cases/case-ids";
import { holdInStage } from "../../core/cases/hold-in-stage";
import { recognise } from "../../core/cases/recognise";
import type { Stage } from "../../core/cases/stage";
import { lineUp } from "../../core/cases/way-for-position";
import { SOLVED } from "../../core/cube/cubies";
import { applyTurns } from "../../core/cube/held-cube";
import { formatTurn } from "../../core/notation/format";
import { inverseTurns } from "../../core/notation/inverse";
import { parseTurns } from "../../core/notation/parse";
import { simplifyTurns } from "../../core/notation/simplify";

/** A case and the moves that answer it. */
export interface ListedCase {
  readonly id: CaseId;
  readonly moves: readonly string[];
}

/** The case that a sequence answers, the last layer on top. */
export function caseAnsweredBy(stage: Stage, sequence: string): ListedCase {
  const read = parseTurns(sequence);
  if (!read.ok) throw new Error(`${sequence} cannot be read`);
  const hold = holdInStage(stage, { home: 0, seenFrom: 0 }, "down");
  const { cubies } = applyTurns(
    { cubies: SOLVED, hold },
    inverseTurns(read.value),
  );
  const shown = recognise(cubies, stage, 0);
  if (shown === undefined) throw new Error(`${sequence} answers no case`);
  const turnedOn = inverseTurns(lineUp(shown, "down"));
  const moves = simplifyTurns([...turnedOn, ...read.value]).map(formatTurn);
  return { id: shown.case, moves };
}
