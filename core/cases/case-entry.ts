import type { CornerName, EdgeName } from "../cube/pieces";
import type { Face } from "../cube/faces";
import type { CaseId } from "./case-ids";
import type { Stage } from "./stage";
import { turnsInTable, type Way, WAY_SCHOOLS, type WaySchool } from "./way";

/** The families of cases, by where the piece is and which way it faces. */
export const FAMILIES = [
  "straight-up",
  "looks-from-below",
  "go-down-first",
  "flipped-at-home",
  "in-anothers-home",
  "on-a-side",
  "underneath",
  "twisted-at-home",
  "next-to-its-home",
  "across-from-its-home",
  "in-each-others-homes",
] as const;

export type Family = (typeof FAMILIES)[number];

/**
 * Where a piece is and where its sticker of the first colour faces, in the
 * reference frame: first layer up, home in front, lined up.
 */
export interface Facing<Place extends CornerName | EdgeName> {
  readonly at: Place;
  readonly facing: Face;
}

/**
 * Whole answers on a real cube.
 *
 * Units: seconds. Source: `first-layer.md`, common practice.
 */
export interface CaseTargets {
  readonly starting: number;
  readonly fourWeeks: number;
  readonly speedMinded: number;
}

/** Everything that is written down about a case; what it looks like is computed. */
export interface CaseEntry {
  readonly id: CaseId;
  readonly stage: Stage;
  readonly family: Family;
  /** Its place in the starter order of its stage; absent: later. */
  readonly order?: number;
  /**
   * Right-handed ways, held up; the first is the taught one. Empty for two
   * corners in each other's homes: those are answered one after the other.
   */
  readonly ways: readonly Way[];
  /** The case that a mirror shows; itself where the mirror changes nothing. */
  readonly twin: CaseId;
  readonly targets: CaseTargets;
}

/** One line of a table of cases: a case as it is written down. */
export interface CaseRow<Id extends CaseId, Place> {
  readonly id: Id;
  readonly where: Place;
  readonly family: Family;
  readonly twin: Id;
  readonly order?: number;
  readonly targets: CaseTargets;
  readonly ways: Readonly<Partial<Record<WaySchool, readonly string[]>>>;
}

/** Targets as the tables write them: starting / after four weeks / speed-minded. */
export function targets(
  starting: number,
  fourWeeks: number,
  speedMinded: number,
): CaseTargets {
  return { starting, fourWeeks, speedMinded };
}

/** The entry that a line of a table stands for. */
export function entryFromRow(
  row: CaseRow<CaseId, unknown>,
  stage: Stage,
): CaseEntry {
  return {
    id: row.id,
    stage,
    family: row.family,
    ...(row.order === undefined ? {} : { order: row.order }),
    ways: WAY_SCHOOLS.flatMap((school) =>
      (row.ways[school] ?? []).map((text) => ({
        school,
        hand: "right" as const,
        turns: turnsInTable(text),
      })),
    ),
    twin: row.twin,
    targets: row.targets,
  };
}
