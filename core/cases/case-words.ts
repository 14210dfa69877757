/** Names of cases and families for people, in any stage. */
import { capitalised } from "../notation/sentence";
import type { CaseFamily } from "./case-families";
import type { CaseId } from "./case-ids";
import { caseEntry } from "./case-table";
import {
  firstLayerFacing,
  firstLayerFamilyAdvice,
  firstLayerFamilyName,
  firstLayerNameInFamily,
  firstLayerPlace,
  firstLayerTitle,
} from "./first-layer-words";
import {
  lastLayerFamilyName,
  lastLayerNameInFamily,
  lastLayerTitle,
} from "./last-layer-words";
import { slotFamilyName, slotNameInFamily, slotTitle } from "./slot-words";
import type { WholeCubeNaming } from "./whole-cube-naming";

/** A family's name: "White on a side". */
export function familyName(
  family: CaseFamily,
  naming: WholeCubeNaming,
): string {
  switch (family.group) {
    case "first-layer":
      return firstLayerFamilyName(family.family, naming);
    case "slot":
      return slotFamilyName(family.family);
    case "last-layer":
      return lastLayerFamilyName(family.family, naming);
  }
}

/** What to do with a whole family, where one sentence says it for all its cases. */
export function familyAdvice(
  family: CaseFamily,
  naming: WholeCubeNaming,
): string | undefined {
  return family.group === "first-layer"
    ? firstLayerFamilyAdvice(family.family, naming)
    : undefined;
}

/** A case's whole name, unique in its stage. */
export function caseTitle(id: CaseId, naming: WholeCubeNaming): string {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer":
      return firstLayerTitle(entry.id, naming);
    case "slot":
      return slotTitle(entry.shows, naming);
    case "last-layer":
      return lastLayerTitle(entry.shows, naming);
  }
}

/** What tells a case from the others of its family. */
export function caseNameInFamily(id: CaseId, naming: WholeCubeNaming): string {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer":
      return firstLayerNameInFamily(entry.id, naming);
    case "slot":
      return capitalised(slotNameInFamily(entry.shows, naming));
    case "last-layer":
      return capitalised(lastLayerNameInFamily(entry.shows, naming));
  }
}

/** The place of the one piece that a case is about; undefined where it is about more. */
export function casePlace(
  id: CaseId,
  naming: WholeCubeNaming,
): string | undefined {
  const entry = caseEntry(id);
  return entry.group === "first-layer"
    ? firstLayerPlace(entry.id, naming)
    : undefined;
}

/** Which way the one piece faces that a case is about; undefined where it may face any way, or the case is about more. */
export function caseFacing(
  id: CaseId,
  naming: WholeCubeNaming,
): string | undefined {
  const entry = caseEntry(id);
  return entry.group === "first-layer"
    ? firstLayerFacing(entry.id, naming)
    : undefined;
}
