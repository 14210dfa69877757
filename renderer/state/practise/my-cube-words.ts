/** What "My cube" says of a case in any stage. Colours are the learner's own. */
import { caseEntry } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { mustSidesMatch } from "../../../core/cases/known-layer";
import type { Position } from "../../../core/cases/position";
import { isLastLayerStage, type Stage } from "../../../core/cases/stage";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { type AskWords, askWords } from "./ask-words";
import { piecesOf } from "./prompt-words";

/** The words of one case, on top of its question's. */
export interface MyCubeWords extends AskWords {
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
  const all = { ...askWords(position, scheme), lost: lostInWords(stage) };
  if (group === "last-layer")
    return {
      ...all,
      when: "when it is done",
      done: "it looks as in the picture",
      lookFirst: mustSidesMatch(position)
        ? "Turn the top until its sides match the middles, as far as the picture shows them."
        : "",
    };
  const home = (what: string) => `${what} home, and nothing else lost`;
  if (group === "slot") {
    const isPair = stage === "pairs";
    return {
      ...all,
      when: "when it is home",
      done: home(isPair ? "the corner and the edge are" : "the edge is"),
      lookFirst: "",
    };
  }
  const pieces = piecesOf(targetsOf(position));
  return {
    ...all,
    when: "when it is home",
    done: home(
      pieces.length > 1
        ? "both corners are"
        : `the ${pieces[0]?.kind ?? "piece"} is`,
    ),
    lookFirst: "",
  };
}
