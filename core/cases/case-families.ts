/** How a stage's cases stand on a shelf: in families, mirror twins side by side. */
import type { CaseEntry, Family } from "./case-entry";
import type { CaseId } from "./case-ids";
import { casesOfStage } from "./case-table";
import { type LastLayerFamily, lastLayerFamilyOf } from "./last-layer-families";
import type { SlotFamily } from "./slot-cases";
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

/** The families of the first layer from left to right: the short ones share a board's row. */
const FIRST_LAYER_ORDER: readonly Family[] = [
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
];

function rankOf({ family, group }: CaseFamily): number {
  return group === "first-layer" ? FIRST_LAYER_ORDER.indexOf(family) : 0;
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

/** A stage's cases by family and twins. Every case of the stage is in it once. */
export function shelfFamilies(stage: Stage): readonly ShelfFamily[] {
  const families = new Map<
    string,
    { family: CaseFamily; cases: CaseEntry[] }
  >();
  for (const entry of casesOfStage(stage)) {
    const family = familyOf(entry);
    const key = JSON.stringify(family.family);
    const known = families.get(key);
    if (known === undefined) families.set(key, { family, cases: [entry] });
    else known.cases.push(entry);
  }
  return [...families]
    .toSorted(([, a], [, b]) => rankOf(a.family) - rankOf(b.family))
    .map(([key, { family, cases }]) => ({
      key,
      family,
      groups: besideTwins(cases),
    }));
}
