/**
 * How a stage's cases stand on a shelf: in families, mirror twins side by side;
 * within a family as the trade counts them, where it has names for them.
 */
import { partOf, runToEnd, type Steps } from "../steps";
import { type CaseEntry, FAMILIES, type Family } from "./case-entry";
import type { CaseId } from "./case-ids";
import { caseEntry, gatherCases } from "./case-table";
import { type LastLayerFamily, lastLayerFamilyOf } from "./last-layer-families";
import { tradeNameOf } from "./last-layer-names";
import type { SlotFamily, SlotPlace } from "./slot-cases";
import type { Stage } from "./stage";

/** A family of any stage. */
export type CaseFamily =
  | { readonly group: "first-layer"; readonly family: Family }
  | { readonly group: "slot"; readonly family: SlotFamily }
  | { readonly group: "last-layer"; readonly family: LastLayerFamily };

/** The family that a case belongs to. */
export function familyOf(entry: CaseEntry): CaseFamily {
  switch (entry.group) {
    case "first-layer":
      return { group: entry.group, family: entry.family };
    case "slot":
      return { group: entry.group, family: entry.shows.family };
    case "last-layer":
      return { group: entry.group, family: lastLayerFamilyOf(entry.shows) };
  }
}

/** A family on a shelf. */
export interface ShelfFamily {
  /** A name of its own within the stage, for keys; not for people. */
  readonly key: string;
  readonly family: CaseFamily;
  /** Groups of twins, each a case with its twin or a case that is its own. */
  readonly groups: readonly (readonly CaseId[])[];
}

/** Slots' families as they are met in a solve: from both pieces in the top layer to pieces in other slots. */
const SLOT_PLACES: readonly SlotPlace[] = ["last-layer", "home", "elsewhere"];

function rankOf({ family, group }: CaseFamily): number {
  switch (group) {
    case "first-layer":
      return FAMILIES.indexOf(family);
    case "slot": {
      const { corner = "last-layer", edge } = family;
      const atCorner = SLOT_PLACES.indexOf(corner);
      const atEdge = SLOT_PLACES.indexOf(edge);
      return 4 * Math.max(atCorner, atEdge) + atCorner + atEdge;
    }
    case "last-layer":
      return 0;
  }
}

/** Cases with their twins where both are there, in the order in which they are met. */
function besideTwins(entries: readonly CaseEntry[]): CaseId[][] {
  const ids = entries.map(({ id }): CaseId => id);
  const met = new Set<CaseId>();
  return entries.flatMap(({ id, twin }) => {
    if (met.has(id)) return [];
    const group = twin !== id && ids.includes(twin) ? [id, twin] : [id];
    for (const one of group) met.add(one);
    return [group];
  });
}

function tradeNameOfCase(id: CaseId): string | undefined {
  const entry = caseEntry(id);
  return entry.group === "last-layer" ? tradeNameOf(entry.shows) : undefined;
}

/** Numbers by what they count, letters by the alphabet; what has no name stays in its place. */
function byTradeName(a: CaseId, b: CaseId): number {
  const [one, other] = [tradeNameOfCase(a), tradeNameOfCase(b)];
  if (one === undefined || other === undefined) return 0;
  const difference = Number(one) - Number(other);
  if (!Number.isNaN(difference)) return difference;
  return one < other ? -1 : 1;
}

/** Twins and groups of them as the trade counts them: who looks for Ga finds it before Gb. */
function inTradeOrder(
  groups: readonly (readonly CaseId[])[],
): readonly (readonly CaseId[])[] {
  return groups
    .map((group) => group.toSorted(byTradeName))
    .toSorted(([a], [b]) => (a && b ? byTradeName(a, b) : 0));
}

/**
 * Whether a family's pieces stand in other slots, which are then open too: met
 * early in a solve, and after the cases that stay when all others are placed.
 */
export function isElsewhere({ group, family }: CaseFamily): boolean {
  return (
    group === "slot" &&
    family.corner !== undefined &&
    [family.corner, family.edge].includes("elsewhere")
  );
}

/** How many cases are sorted between two steps: about a millisecond's worth. */
const CASES_A_STEP = 64;

const SHELVES = new Map<Stage, readonly ShelfFamily[]>();

/** Sorts a stage's cases, where that is not done yet, so that other work can go on in between. */
export function* gatherShelf(stage: Stage): Steps<readonly ShelfFamily[]> {
  const known = SHELVES.get(stage);
  if (known !== undefined) return known;
  const families = new Map<
    string,
    { family: CaseFamily; cases: CaseEntry[] }
  >();
  const entries = yield* partOf(gatherCases(stage), 0, 0.8);
  for (const [i, entry] of entries.entries()) {
    if (i % CASES_A_STEP === 0) yield 0.8 + (0.2 * i) / entries.length;
    const family = familyOf(entry);
    const key = JSON.stringify(family.family);
    const sorted = families.get(key);
    if (sorted === undefined) families.set(key, { family, cases: [entry] });
    else sorted.cases.push(entry);
  }
  const shelf = [...families]
    .toSorted(([, a], [, b]) => rankOf(a.family) - rankOf(b.family))
    .map(([key, { family, cases }]) => ({
      key,
      family,
      groups: inTradeOrder(besideTwins(cases)),
    }));
  // Somebody may have needed it before the last slice was done.
  const first = SHELVES.get(stage) ?? shelf;
  SHELVES.set(stage, first);
  return first;
}

/** A stage's cases by family and twins; always the same list. Every case of the stage is in it once. */
export function shelfFamilies(stage: Stage): readonly ShelfFamily[] {
  return runToEnd(gatherShelf(stage));
}
