/** Answers to explain, for the tests of the rules that explain them. */
import { diagnose } from "../../../core/answer/diagnose";
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import { holdFor } from "../../../core/cases/hold-in-stage";
import type { Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import type { Variant } from "../../../core/cases/variant";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";

/** The seed of what is drawn. */
export const SEED = 17;

/** The first layer's cases of a single piece. */
export const SINGLE = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

/** A position of a case at its first home, drawn but for what is given. */
export function positionOf(
  id: Position["case"],
  variant: Partial<Variant> = {},
): Position {
  const random = randomSource(SEED);
  const drawn = randomVariant(random, id, { homes: [0] });
  const hold = holdFor(caseEntry(id).stage, "up");
  return randomPosition(random, id, { ...drawn, ...variant }, hold);
}

/** The explanation of turns on a position whose way is the taught one. */
export function explained(position: Position, played: string) {
  const way = turnsForPosition(position);
  return diagnose(position, turnsOf(played), way).explanation;
}
