/** What a sheet asks, before it is laid out: its positions, and the set-ups found for them. */
import type { CaseId } from "../../../core/cases/case-ids";
import { shownPosition } from "../../../core/cases/known-layer";
import type { Position } from "../../../core/cases/position";
import type { Hold } from "../../../core/cases/variant";
import type { Turn } from "../../../core/cube/turns";
import type { DeckCase } from "../../../core/deck/deck";
import type { Opening } from "../../../core/memory/variant-opening";
import { practicePositions } from "../../../core/paper/practice-positions";
import { setUpStart } from "../../../core/paper/set-up-start";
import type { SheetKind } from "../../../core/paper/sheet";
import { present } from "../../../core/invariant";
import { seedFrom } from "../../../core/random-source";
import type { SolverError } from "../../workers/solver-client";
import { showcasePosition } from "../case-showcase";
import type { SetUpFinder } from "../practise/my-cube-stage";

/** What is drawn for a sheet. */
export interface DraftChoice {
  readonly kind: SheetKind;
  /** The deck's cases that are wanted, in its order. */
  readonly cases: readonly DeckCase[];
  readonly hold: Hold;
  /** The sheet's number. */
  readonly number: number;
  /** How many positions, and how far they are opened up: of a practice sheet only. */
  readonly count: number;
  readonly opening: Opening;
}

/** One thing on a sheet. */
export interface Drafted {
  readonly deckCase: DeckCase;
  readonly position: Position;
  /** From `setUpStart`; undefined: none was found, or none is wanted. */
  readonly setUp: readonly Turn[] | undefined;
}

/** A sheet's positions, and why one of them has no set-up. */
export interface Draft {
  readonly drafted: readonly Drafted[];
  readonly trouble: SolverError | undefined;
}

/** The positions of a sheet, in order. */
export function draftedPositions(choice: DraftChoice): readonly Position[] {
  const { kind, cases, hold } = choice;
  if (cases.length === 0) return [];
  return kind === "practice"
    ? practicePositions(choice)
    : cases.map((one) => showcasePosition(one.case, hold));
}

function deckCaseOf(cases: readonly DeckCase[], id: CaseId): DeckCase {
  return present(
    cases.find((one) => one.case === id),
    "positions are drawn from the cases",
  );
}

/**
 * A sheet's positions with their set-ups, one after the other. A position for
 * which none is found stands on the sheet without one.
 *
 * Shape: undefined where it was stopped; never rejects.
 */
export async function draftSheet(
  choice: DraftChoice,
  find: SetUpFinder,
  signal: AbortSignal,
  onprogress: (done: number, all: number) => void,
): Promise<Draft | undefined> {
  const positions = draftedPositions(choice);
  const wantsSetUps = choice.kind === "practice" || choice.kind === "cases";
  const drafted: Drafted[] = [];
  let trouble: SolverError | undefined;
  for (const [n, position] of positions.entries()) {
    const deckCase = deckCaseOf(choice.cases, position.case);
    if (!wantsSetUps) {
      drafted.push({ deckCase, position, setUp: undefined });
      continue;
    }
    onprogress(n, positions.length);
    const shown = shownPosition(position);
    const found = await find(
      setUpStart(shown),
      shown,
      seedFrom(choice.number, n),
      { signal },
    );
    if (signal.aborted) return undefined;
    const setUp = found.ok ? found.value : undefined;
    if (!found.ok) trouble ??= found.error;
    drafted.push({ deckCase, position, setUp });
  }
  return { drafted, trouble };
}
