import type { CornerName, EdgeName } from "../cube/pieces";
import type { Face } from "../cube/faces";
import type { ComputedId, FirstLayerId } from "./case-ids";
import type { LastLayerCase } from "./last-layer-cases";
import type { LastLayerStage } from "./last-layer-stages";
import type { SlotCase } from "./slot-cases";
import type { FirstLayerStage, SlotStage } from "./stage";
import { turnsInTable, type Way, WAY_SCHOOLS, type WaySchool } from "./way";

/** The families of the first layer's cases, by where the piece is and which way it faces; from left to right as on a shelf, where the short ones share a row. */
export const FAMILIES = [
  "straight-up",
  "looks-from-below",
  "flipped-at-home",
  "go-down-first",
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

/** What is known about every case; what it looks like is computed. */
interface AnyEntry {
  /** Its place in the starter order of its stage; absent: later. */
  readonly order?: number;
  /**
   * Right-handed ways in the reference, the taught one first: held up in the
   * first layer, held down in every other stage. Empty for two corners in each
   * other's homes, which are answered one after the other, and for the stages
   * whose ways are found on demand.
   */
  readonly ways: readonly Way[];
  readonly targets: CaseTargets;
}

/** A case of the first layer, as it is written down. */
export interface FirstLayerEntry extends AnyEntry {
  readonly group: "first-layer";
  readonly id: FirstLayerId;
  readonly stage: FirstLayerStage;
  readonly family: Family;
  /** The case that a mirror shows; itself where the mirror changes nothing. */
  readonly twin: FirstLayerId;
}

/** A case of a slot: computed. */
export interface SlotEntry extends AnyEntry {
  readonly group: "slot";
  readonly id: ComputedId;
  readonly stage: SlotStage;
  readonly shows: SlotCase;
  /** The case that a mirror shows; itself where the mirror changes nothing. */
  readonly twin: ComputedId;
}

/** A case of the last layer: computed. */
export interface LastLayerEntry extends AnyEntry {
  readonly group: "last-layer";
  readonly id: ComputedId;
  readonly stage: LastLayerStage;
  readonly shows: LastLayerCase;
  /** The case that a mirror shows; itself where the mirror changes nothing. */
  readonly twin: ComputedId;
}

/** A case of any stage. */
export type CaseEntry = FirstLayerEntry | SlotEntry | LastLayerEntry;

/** One line of a table of cases: a case as it is written down. */
export interface CaseRow<Id extends FirstLayerId, Place> {
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
  row: CaseRow<FirstLayerId, unknown>,
  stage: FirstLayerStage,
): FirstLayerEntry {
  return {
    group: "first-layer",
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
