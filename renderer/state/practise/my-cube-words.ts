/** What "My cube" says of a case in any stage. Colours are the learner's own. */
import { caseEntry } from "../../../core/cases/case-table";
import { markedOf, targetsOf } from "../../../core/cases/constraint";
import { mustSidesMatch } from "../../../core/cases/known-layer";
import type { Position } from "../../../core/cases/position";
import { isLastLayerStage, type Stage } from "../../../core/cases/stage";
import { stageWords } from "../../../core/cases/stage-words";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import {
  pieceInWords,
  piecesOf,
  placedInWords,
  promptInWords,
} from "./prompt-words";

/** The words of one case. */
export interface MyCubeWords {
  /** What to do: "Bring the white and green edge home." */
  readonly prompt: string;
  /** What is done already. */
  readonly before: string;
  /** When it is done: "when it is home". */
  readonly when: string;
  /** What the cube shows when it is done; stands below "Done". */
  readonly done: string;
  /** What the learner does before they look whether it is done; empty: nothing. */
  readonly lookFirst: string;
  /** The label for having lost what was done before. */
  readonly lost: string;
}

function lostInWords(stage: Stage): string {
  if (isLastLayerStage(stage)) return "I lost my first two layers";
  return stage === "second-layer-edges"
    ? "I lost my first layer"
    : "I lost my cross";
}

/** What the page says about a case on the learner's own cube. */
export function myCubeWords(
  position: Position,
  scheme: ColourScheme,
): MyCubeWords {
  const { stage, group } = caseEntry(position.case);
  const targets = targetsOf(position);
  const lost = lostInWords(stage);
  const { asks, before } = stageWords(
    stage,
    wholeCubeNaming(scheme, position.hold),
  );
  if (group === "last-layer")
    return {
      prompt: asks,
      before,
      when: "when it is done",
      done: "it looks as in the picture",
      lookFirst: mustSidesMatch(position)
        ? "Turn the top until its sides match the middles, as far as the picture shows them."
        : "",
      lost,
    };
  const home = (what: string) => `${what} home, and nothing else lost`;
  if (group === "slot") {
    const [first] = piecesOf(
      stage === "pairs" ? { ...targets, edges: [] } : targets,
    );
    const name = first === undefined ? "it" : pieceInWords(first, scheme);
    const isPair = stage === "pairs";
    return {
      prompt: `Bring ${name} ${isPair ? "and the edge that belongs to it " : ""}home.`,
      before,
      when: "when it is home",
      done: home(isPair ? "the corner and the edge are" : "the edge is"),
      lookFirst: "",
      lost,
    };
  }
  const pieces = piecesOf(targets);
  return {
    prompt: promptInWords(targets, scheme),
    before: placedInWords(markedOf(position), targets, scheme),
    when: "when it is home",
    done: home(
      pieces.length > 1
        ? "both corners are"
        : `the ${pieces[0]?.kind ?? "piece"} is`,
    ),
    lookFirst: "",
    lost,
  };
}
