/** What to look at first to see quicker which case it is. */
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry } from "../../../core/cases/case-table";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { FREE_LAYER } from "../../../core/cases/stage";
import type { ColourScheme } from "../../../core/picture/colour-sets";

function lastLayerLook(stage: LastLayerStage, last: string): string {
  const { asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const asksOf = (end: string) => asks.some((part) => part.endsWith(end));
  const shape = `at the shape that ${last} makes on top`;
  const isTurning = asksOf("Twists") || asksOf("Flips");
  if (!asksOf("Places")) return `Look first ${shape}.`;
  return isTurning
    ? `Look first ${shape}, then at the sides.`
    : "Look first for a side whose colours match.";
}

/** One sentence: where the eye should go first. */
export function lookFirstInWords(id: CaseId, scheme: ColourScheme): string {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer":
      return `Look first at which side ${scheme.U} is on.`;
    case "slot":
      return entry.stage === "pairs"
        ? `Look first at which side ${scheme.U} is on, then for the edge.`
        : "Look first at the colour that the edge has on top: it says to which side it goes.";
    case "last-layer":
      return lastLayerLook(entry.stage, scheme[FREE_LAYER]);
  }
}
