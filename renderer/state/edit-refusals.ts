/** Why an edit of a deck or a typed way was refused, as a sentence beside the field. */
import { confusedWith, type Explanation } from "../../core/answer/explanation";
import { caseEntry } from "../../core/cases/case-table";
import { caseTitle } from "../../core/cases/case-words";
import type { WholeCubeNaming } from "../../core/cases/whole-cube-naming";
import type { AnswersAfter, WayRefusal } from "../../core/deck/check-way";
import { capitalised } from "../../core/notation/sentence";
import { formatTurns } from "../../core/notation/format";
import { deckFaultText } from "../deck-error-text";
import { notationErrorText } from "../notation-error-text";
import { storageErrorText } from "../error-text";
import type { EditRefusal } from "./deck-bench.svelte";
import type { DeckNotKept } from "./decks.svelte";
import { wrongTurnSentence } from "./practise/diagnosis-words";
import { lostParts } from "./practise/lost-words";

/** What the bench calls the fields whose own name is no word. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  name: "Name",
  description: "Description",
  message: "Message",
  note: "Note",
  target: "Target",
  newPerRound: "New cases a round",
  everyDays: "At least every",
};

function asLabelled(step: string | number): string | number {
  return FIELD_WORDS[step] ?? step;
}

/** A refused edit in a sentence that says what to do; empty where the offer of a copy says it. */
export function editRefusalText(error: EditRefusal): string {
  if ("path" in error)
    return deckFaultText({ ...error, path: error.path.map(asLabelled) });
  switch (error.code) {
    case "copy-first":
      return "";
    case "deck-gone":
      return "This deck was deleted in another window. Choose another one.";
    case "guest-at-desk":
      return "A guest is at the desk: decks stay as they are. Somebody of the house can sit down with F2.";
    case "case-not-in-deck":
      return "This case is no longer in the deck. Put it in again first.";
    case "no-such-place":
      return "The deck has no such place any more. Try again.";
  }
}

/** Why a deck was not kept, and what to do about it. */
export function deckNotKeptText(error: DeckNotKept): string {
  return error.code === "deck-gone" || error.code === "guest-at-desk"
    ? editRefusalText(error)
    : storageErrorText(error);
}

/** What is said where a refused way leaves the one before as it is. */
export function wayStillKeptText(way: string): string {
  return `The deck still has: ${way}.`;
}

type Failure = Extract<WayRefusal, { readonly code: "does-not-answer" }>;

/** What the cube shows at the end of a way that does not answer. */
function endInWords({ verdict, position }: Failure): string {
  const { group, stage } = caseEntry(position.case);
  if (group === "last-layer") {
    const { top, below } = lostParts(verdict.lost);
    if (below.length > 0) return "the first two layers do not stay as they are";
    const [kept] = top;
    return kept === undefined
      ? "the top is not as the case asks"
      : `the top ${kept.kind}s do not stay as they are`;
  }
  const isEdge =
    stage === "first-layer-edges" || stage === "second-layer-edges";
  const piece = isEdge ? "the edge" : "the corner";
  if (stage === "pairs") {
    if (verdict.missing.corners.length + verdict.missing.edges.length === 0)
      return "the pair comes home, but another piece loses its place";
    return "the pair does not come home";
  }
  if (verdict.layerTurned !== undefined)
    return "only the first layer stays turned away";
  switch (verdict.pieceState) {
    case "placed":
      return `${piece} comes home, but another piece loses its place`;
    case "home-but-turned":
      return `${piece} comes home, but ${isEdge ? "flipped" : "twisted"}`;
    case "up-but-wrong-side-colours":
      return `${piece} comes into another piece’s home`;
    case "elsewhere":
      return `${piece} does not come home`;
  }
}

/** How many other homes were filled where it failed. */
function placedInWords(count: number): string {
  if (count === 0) return "With no other piece home yet";
  return count === 1
    ? "With one other piece home already"
    : `With ${count} other pieces home already`;
}

/** Why the way that a deck has for a case does not answer it any more, as the deck now asks it; empty where it was refused for anything else. */
export function wayOutgrownText(refusal: WayRefusal): string {
  if (refusal.code !== "does-not-answer") return "";
  const others = placedInWords(refusal.position.variant.placed.length);
  return `This way no longer answers the case as you have it asked now. ${others}, ${endInWords(refusal)}. Try another way, choose one of the list, or take “Others at home already” back.`;
}

/** Where a typed way fails, and what it is a way of instead. */
export function wayRefusalText(
  refusal: WayRefusal,
  naming: WholeCubeNaming,
): string {
  switch (refusal.code) {
    case "way-not-notation": {
      const { notation } = refusal;
      return `This cannot be read at letter ${notation.offset + 1}. ${notationErrorText(notation)}`;
    }
    case "way-without-turns":
      return "Nothing turns in this way. Write its turns.";
    case "no-one-way":
      return "Two corners in each other’s homes have no one way: they can lie in nine ways.";
    case "does-not-answer": {
      const { position, diagnosis } = refusal;
      const { group } = caseEntry(position.case);
      const end = endInWords(refusal);
      const what =
        group === "last-layer"
          ? `${capitalised(end)}.`
          : `${placedInWords(position.variant.placed.length)}, ${end}.`;
      const help = helpInWords(refusal, diagnosis.explanation, naming);
      return `Played through, this does not answer the case. ${what}${help === "" ? "" : ` ${help}`}`;
    }
  }
}

/** What is lacking before a way. */
function leadInWords({ lead, way }: AnswersAfter): string {
  const layer = lead[0]?.layer === "U" ? "top" : "bottom";
  return `It does after a turn of the ${layer}: ${formatTurns(lead)} first. Type: ${way}`;
}

/** What would make a refused way right, or what it is a way of; empty where nothing is known. */
function helpInWords(
  { answersAfter }: Failure,
  explanation: Explanation | undefined,
  naming: WholeCubeNaming,
): string {
  if (answersAfter !== undefined) return leadInWords(answersAfter);
  if (explanation?.kind === "one-turn")
    return explanation.evidence === "from-known-way"
      ? wrongTurnSentence(explanation)
      : "";
  // Which piece happened to be brought home is chance where nobody sees it.
  const meant =
    explanation?.kind === "wrong-piece"
      ? explanation.case
      : explanation && confusedWith(explanation);
  return meant === undefined
    ? ""
    : `These turns answer “${caseTitle(meant, naming)}”.`;
}
