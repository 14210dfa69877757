/**
 * What the question of a position says above the cube, in any stage: what is
 * to be done, and what is already placed. Colours are the learner's own.
 */
import { caseEntry } from "../../../core/cases/case-table";
import { markedOf, targetsOf } from "../../../core/cases/constraint";
import type { Position } from "../../../core/cases/position";
import {
  isLastLayerStage,
  type SlotStage,
  type Stage,
} from "../../../core/cases/stage";
import { stageWords } from "../../../core/cases/stage-words";
import type { Hold } from "../../../core/cases/variant";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { Pieces } from "../../../core/cube/pieces";
import { present } from "../../../core/invariant";
import { listInWords } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import {
  pieceInWords,
  piecesOf,
  placedInWords,
  promptInWords,
} from "./prompt-words";

/** Two lines: what to do, and what is placed already. */
export interface AskWords {
  readonly prompt: string;
  readonly placed: string;
}

const COUNTS = ["no", "one", "two", "three"] as const;

/** "two other pairs", "the other three pairs"; nothing where none is placed. */
function othersInWords(
  count: number,
  one: string,
  many: string,
): readonly string[] {
  const number = COUNTS[count] ?? String(count);
  if (count === 0) return [];
  if (count === 3) return [`the other three ${many}`];
  return [`${number} other ${count === 1 ? one : many}`];
}

function slotPlacedInWords(
  stage: SlotStage,
  placed: number,
  first: string,
): string {
  const words =
    stage === "pairs"
      ? [`the ${first} cross`, ...othersInWords(placed, "pair", "pairs")]
      : [
          `the ${first} layer`,
          ...othersInWords(placed, "edge of the middle", "edges of the middle"),
        ];
  return `Already placed: ${listInWords(words)}.`;
}

/** What a stage asks of some pieces; of the last layer, what it asks of all of it, which may be two sentences. */
export function askedInWords(
  stage: Stage,
  targets: Pieces,
  hold: Hold,
  scheme: ColourScheme,
): string {
  if (isLastLayerStage(stage))
    return stageWords(stage, wholeCubeNaming(scheme, hold)).asks;
  if (stage !== "pairs") return promptInWords(targets, scheme);
  // The edge of a pair is named by its corner, whose colours it has.
  const [corner] = piecesOf({ ...targets, edges: [] });
  const named = present(corner, "a pair has a corner");
  return `Bring ${pieceInWords(named, scheme)} and its edge home.`;
}

/** What a position asks, and what is placed in it already. */
export function askWords(position: Position, scheme: ColourScheme): AskWords {
  const entry = caseEntry(position.case);
  const targets = targetsOf(position);
  const asks = askedInWords(entry.stage, targets, position.hold, scheme);
  switch (entry.group) {
    case "first-layer":
      return {
        prompt: asks,
        placed: placedInWords(markedOf(position), targets, scheme),
      };
    case "slot":
      return {
        prompt: asks,
        placed: slotPlacedInWords(
          entry.stage,
          position.variant.placed.length,
          scheme.U,
        ),
      };
    case "last-layer": {
      const { before } = stageWords(
        entry.stage,
        wholeCubeNaming(scheme, position.hold),
      );
      // The headline is one sentence; a second one stands with what is done.
      const [, prompt = asks, rest = ""] =
        /^(.+?\.)(?: (.+))?$/.exec(asks) ?? [];
      return {
        prompt,
        placed: rest === "" ? before : `${rest} ${before}`,
      };
    }
  }
}
