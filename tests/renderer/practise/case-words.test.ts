import { expect, it } from "vitest";
import { shownPosition } from "../../../core/cases/known-layer";
import { casesOfStage } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomSource } from "../../../core/random-source";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { pieceWhereInWords } from "../../../renderer/state/practise/case-words";
import { piecesOf } from "../../../renderer/state/practise/prompt-words";

it("says where a corner is of which nobody knows how it is turned", () => {
  const [entry] = casesOfStage("last-layer-corners-placed");
  if (entry === undefined) throw new Error("no case");
  const variant = { home: 0, placed: [], turnedAway: 0, seenFrom: 0 } as const;
  const whole = randomPosition(randomSource(1), entry.id, variant, "down");
  const position = shownPosition(whole);
  const words = piecesOf(targetsOf(position)).map((piece) =>
    pieceWhereInWords(startOf(position), piece, USUAL_SCHEME),
  );
  expect(words.toSorted()).toEqual([
    "top back left",
    "top back right",
    "top front left",
    "top front right",
  ]);
});
