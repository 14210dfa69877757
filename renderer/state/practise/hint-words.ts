/** What each step of help says. */
import { targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import type { Turn } from "../../../core/cube/turns";
import type { Hint } from "../../../core/memory/review";
import { turnInWords } from "../../../core/notation/say-in-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { listInWords } from "../../../core/notation/sentence";
import { homeInWords, pieceWhereInWords } from "./case-words";
import { piecesOf } from "./prompt-words";

/** The help that was asked for, in the order it was given. */
export function hintWords(
  position: Position,
  hints: readonly Hint[],
  way: readonly Turn[],
  scheme: ColourScheme,
): readonly string[] {
  const cube = startOf(position);
  const pieces = piecesOf(targetsOf(position));
  return hints.map((hint) => {
    switch (hint) {
      case "piece":
        return `It is here: ${listInWords(
          pieces.map(
            (piece) => pieceWhereInWords(cube, piece, scheme) ?? "hidden",
          ),
        )}.`;
      case "home":
        return `Its home is ${listInWords(
          pieces.map((piece) => homeInWords(cube, piece)),
        )}.`;
      case "first-turn":
        return way[0] === undefined
          ? ""
          : `Begin like this. ${turnInWords(way[0], "full", {
              hold: cube.hold,
              colours: scheme,
            })}`;
      case "whole-way":
        return "Here is the whole way.";
    }
  });
}
