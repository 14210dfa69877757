/**
 * What each step of help says. Of a piece to bring home: where it is, where its
 * home is. The last layer has no one piece: there the first step names what it
 * shows, the second how it is lined up.
 */
import { caseEntry } from "../../../core/cases/case-table";
import { caseTitle } from "../../../core/cases/case-words";
import { targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import type { Turn } from "../../../core/cube/turns";
import type { Hint } from "../../../core/memory/review";
import { turnInWords } from "../../../core/notation/say-in-words";
import { capitalised, listInWords } from "../../../core/notation/sentence";
import { simplifyTurns } from "../../../core/notation/simplify";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { homeInWords, pieceWhereInWords } from "./case-words";
import type { CubePiece } from "./own-cube";
import { pieceInWords, piecesOf } from "./prompt-words";

/** How many turns of the top stand before anything else in a way. */
function linedUpAfter(way: readonly Turn[]): number {
  const other = way.findIndex(({ layer }) => layer !== "U");
  return other < 0 ? way.length : other;
}

function isLastLayer(position: Position): boolean {
  return caseEntry(position.case).group === "last-layer";
}

/** The help that was asked for, in the order it was given. */
export function hintWords(
  position: Position,
  hints: readonly Hint[],
  way: readonly Turn[],
  scheme: ColourScheme,
): readonly string[] {
  return hints.map((hint) =>
    isLastLayer(position)
      ? lastLayerHint(position, hint, way, scheme)
      : pieceHint(position, hint, way, scheme),
  );
}

/**
 * The turn that the help shows by an arrow before anything is turned; undefined
 * where it shows none yet.
 */
export function turnHinted(
  position: Position,
  hints: readonly Hint[],
  way: readonly Turn[],
): Turn | undefined {
  const isLinedUp = linedUpAfter(way) === 0;
  const showsTurn =
    hints.includes("first-turn") ||
    (isLastLayer(position) && hints.includes("home") && !isLinedUp);
  return showsTurn ? way[0] : undefined;
}

function pieceHint(
  position: Position,
  hint: Hint,
  way: readonly Turn[],
  scheme: ColourScheme,
): string {
  const cube = startOf(position);
  // The corner of a pair is named first in every question.
  const pieces = piecesOf(targetsOf(position)).toSorted((a, b) =>
    a.kind.localeCompare(b.kind),
  );
  switch (hint) {
    case "piece": {
      const where = (piece: CubePiece) =>
        pieceWhereInWords(cube, piece, scheme) ?? "hidden";
      const [only] = pieces;
      if (pieces.length === 1 && only !== undefined)
        return `It is here: ${where(only)}.`;
      const isPair = new Set(pieces.map(({ kind }) => kind)).size > 1;
      const name = (piece: CubePiece) =>
        isPair ? `the ${piece.kind}` : pieceInWords(piece, scheme);
      return pieces
        .map((piece) => `${capitalised(name(piece))} is here: ${where(piece)}.`)
        .join(" ");
    }
    case "home":
      return `${pieces.length === 1 ? "Its home is" : "Their homes are"} ${listInWords(
        pieces.map((piece) => homeInWords(cube, piece)),
      )}.`;
    case "first-turn":
      return way[0] === undefined
        ? ""
        : `Begin like this. ${turnSaid(position, way[0], scheme)}`;
    case "whole-way":
      return "Here is the whole way.";
  }
}

function lastLayerHint(
  position: Position,
  hint: Hint,
  way: readonly Turn[],
  scheme: ColourScheme,
): string {
  const count = linedUpAfter(way);
  switch (hint) {
    case "piece": {
      const title = caseTitle(
        position.case,
        wholeCubeNaming(scheme, position.hold),
      );
      // The trade's own names keep their capitals.
      const said = /^[A-Z]{2}/.test(title)
        ? title
        : title.charAt(0).toLowerCase() + title.slice(1);
      return `What it shows: ${said}.`;
    }
    case "home": {
      const [turn] = simplifyTurns(way.slice(0, count));
      return turn === undefined
        ? "It lies as it should: begin without turning the top."
        : `Line it up first. ${turnSaid(position, turn, scheme)}`;
    }
    case "first-turn": {
      const turn = way[count];
      if (turn === undefined) return "";
      const begin = count === 0 ? "Begin like this." : "Then begin like this.";
      return `${begin} ${turnSaid(position, turn, scheme)}`;
    }
    case "whole-way":
      return "Here is the whole way.";
  }
}

function turnSaid(
  position: Position,
  turn: Turn,
  scheme: ColourScheme,
): string {
  const { hold } = startOf(position);
  return turnInWords(turn, "full", { hold, colours: scheme });
}
