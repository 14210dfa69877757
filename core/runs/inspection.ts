/**
 * Looking at the mixed cube before a run by competition rules.
 *
 * Source: WCA Regulations, from memory: Article A3 (at most 15 seconds; the
 * judge calls out at 8 and at 12) and Article A4 (to begin later than 15
 * seconds adds 2 seconds; later than 17 seconds, the attempt did not finish).
 * That 15 and 17 exactly are too late already is from memory, too.
 */
import { invariant } from "../invariant";

/** How long the cube may be looked at. Units: milliseconds. */
export const INSPECTION_LIMIT = 15_000;

/** From here on the attempt did not finish. Units: milliseconds. */
export const INSPECTION_END = 17_000;

/** When a judge calls out. Units: milliseconds since the cube is looked at. */
export const INSPECTION_CALLS = [8_000, 12_000] as const;

/** What inspecting for so long costs. */
export type InspectionPenalty = "none" | "two-seconds" | "did-not-finish";

/** What it costs to begin after so long. Units: `inspection` in milliseconds. */
export function inspectionPenalty(inspection: number): InspectionPenalty {
  invariant(inspection >= 0, "time runs forward");
  if (inspection < INSPECTION_LIMIT) return "none";
  return inspection < INSPECTION_END ? "two-seconds" : "did-not-finish";
}
