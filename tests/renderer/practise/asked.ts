/** Positions of any stage for the tests of what is shown and said. */
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage, parseCaseId } from "../../../core/cases/case-table";
import { allowedPlacedSets, mostPlaced } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import type { Stage } from "../../../core/cases/stage";
import type { Variant } from "../../../core/cases/variant";
import { randomSource } from "../../../core/random-source";

const SEED = 5;

/** The first case of a stage. */
export function firstOf(stage: Stage): CaseId {
  const [first] = casesOfStage(stage);
  if (first === undefined) throw new Error(`${stage} has no case`);
  return first.id;
}

/** A case by its id; throws where there is none. */
export function caseNamed(text: string): CaseId {
  const id = parseCaseId(text);
  if (id === undefined) throw new Error(`${text} is no case`);
  return id;
}

/** A random position of a case, its slot or front colour the reference's where nothing else is said. */
export function asked(
  id: CaseId,
  more: Partial<Variant> = {},
  placed = 3,
): Position {
  const home = more.home ?? 0;
  const [set = []] = allowedPlacedSets(
    id,
    home,
    Math.min(placed, mostPlaced(id)),
  );
  const variant = { home, placed: set, turnedAway: 0, seenFrom: 0, ...more };
  return randomPosition(randomSource(SEED), id, variant as Variant, "down");
}

/** A pair: its corner above its slot, its edge in the top layer. */
export const PAIR = caseNamed("pairs:DFR-R.DR-D");

/** An edge above the front, its side colour that of the front. */
export const EDGE = caseNamed("second-layer-edges:DF-F");
