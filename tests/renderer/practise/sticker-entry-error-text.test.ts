import { describe, expect, it } from "vitest";
import { readEnteredStickers } from "../../../core/cube/entered-stickers";
import type { ColourName } from "../../../core/picture/colour-sets";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { SOLVED } from "../../../core/cube/cubies";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { randomSource } from "../../../core/random-source";
import { entryFaultText } from "../../../renderer/state/practise/sticker-entry-error-text";
import {
  changedAt,
  colouredStickers,
  FACE_COLOURS,
  reassembled,
  SIX_COLOURS,
} from "../../core/cube/entered-cubes";

type Told = readonly (ColourName | undefined)[];

const SOLVED_CUBE = { cubies: SOLVED, hold: NO_ROTATION };
const SOLVED_STICKERS = colouredStickers(SOLVED_CUBE, FACE_COLOURS);
const RANDOM = {
  cubies: sampleState(randomSource(3), ANY_STATE),
  hold: NO_ROTATION,
};
const RANDOM_STICKERS = colouredStickers(RANDOM, FACE_COLOURS);

function textOf(entered: Told): string {
  const read = readEnteredStickers(entered);
  if (read.ok) throw new Error("these stickers were taken for a cube");
  const { what, lookAt } = entryFaultText(read.error, SIX_COLOURS);
  return `${what} ${lookAt}`;
}

function solvedBut(
  ...changes: readonly (readonly [number, ColourName | undefined])[]
): Told {
  return changedAt<ColourName | undefined>(SOLVED_STICKERS, changes);
}

describe("a fault in a learner's words", () => {
  it.each([
    [
      "missing stickers",
      solvedBut([0, undefined], [1, undefined]),
      "2 stickers are still empty. Fill them in.",
    ],
    [
      "two middles alike",
      solvedBut([4, "red"]),
      "Two sides have red in the middle. Every middle has a colour of its own. Look at this sticker again: Top, middle. Is it white?",
    ],
    [
      "a colour of no middle",
      solvedBut([0, "pink"]),
      "No side has pink in the middle, so no sticker can be pink. Look at the outlined stickers again.",
    ],
    [
      "a wrong sticker",
      solvedBut([18, "blue"]),
      "Every colour has nine stickers, but here are 10 blue and 8 green. Look at this sticker again: Front, top left. Is it green?",
    ],
    [
      "a colour twice on a piece",
      solvedBut([19, "white"], [0, undefined], [1, undefined]),
      "The edge at the top front has white twice. No piece has. Look at its stickers again.",
    ],
    [
      "opposite colours on a piece",
      solvedBut([19, "yellow"], [27, undefined]),
      "The edge at the top front has white and yellow. They are on opposite sides, so no piece has both. Look at its stickers again.",
    ],
    [
      "a mirrored corner",
      solvedBut([9, "green"], [20, "red"]),
      "The corner at the top front right has its colours the wrong way round, as in a mirror. Look at the piece at the top front right: perhaps its stickers are in each other’s place.",
    ],
    [
      "a piece that is there twice",
      solvedBut([18, "red"], [38, "green"], [17, undefined], [44, undefined]),
      "The white, green and red corner is there twice: at the top front right and at the top front left. Look at both again: one of them is another piece.",
    ],
  ])("%s: what and where", (_what, entered, text) => {
    expect(textOf(entered)).toBe(text);
  });

  it.each([
    [
      { thirds: 1 },
      "one corner is turned in its place",
      "Turn one corner in its place, a third of the way round, against the clock.",
    ],
    [
      { thirds: 2 },
      "one corner is turned in its place",
      "a third of the way round, with the clock.",
    ],
    [
      { isFlipped: true },
      "one edge is the wrong way round",
      "Take one edge out, and put it back the other way round.",
    ],
    [
      { swappedEdges: [1, 10] as const },
      "two pieces are in each other’s place",
      "Take it apart, and put it together with every side in one colour.",
    ],
    [
      { thirds: 1, isFlipped: true },
      "one corner is turned in its place and one edge is the wrong way round",
      "Take it apart",
    ],
  ])("a cube put together wrongly: %o", (how, what, mending) => {
    const text = textOf(
      colouredStickers(reassembled(RANDOM, how), FACE_COLOURS),
    );
    expect(text).toContain(`Every piece is there, but ${what}.`);
    expect(text).toContain("If it is all as on your cube");
    expect(text).toContain(mending);
  });

  it("a side that was held the wrong way up is named with the way it goes", () => {
    const turned = [6, 3, 0, 7, 4, 1, 8, 5, 2].map(
      (old, k) => [k, RANDOM_STICKERS[old] ?? "white"] as const,
    );
    expect(textOf(changedAt(RANDOM_STICKERS, turned))).toContain(
      "Perhaps the top was held the wrong way up. It goes with white facing you, blue on top.",
    );
  });

  it("a side entered left for right, two exchanged sides and colours taken for each other are named", () => {
    const mirrored = [2, 1, 0, 5, 4, 3, 8, 7, 6].map(
      (old, k) => [k, RANDOM_STICKERS[old] ?? "white"] as const,
    );
    expect(textOf(changedAt(RANDOM_STICKERS, mirrored))).toContain(
      "Perhaps the top was entered with left and right exchanged.",
    );
    const exchanged = RANDOM_STICKERS.map((colour, at) =>
      at % 9 === 4 || at >= 18
        ? colour
        : (RANDOM_STICKERS[(at + 9) % 18] ?? colour),
    );
    expect(textOf(exchanged)).toContain(
      "Perhaps the top and the right side were entered in each other’s place.",
    );
    const mixedUp = RANDOM_STICKERS.map((colour, at) => {
      if (at % 9 === 4) return colour;
      return colour === "red" ? "orange" : colour === "orange" ? "red" : colour;
    });
    // As in a mirror: any two opposite colours could be the ones.
    expect(textOf(mixedUp)).toMatch(
      /Perhaps two colours were taken for each other: .*orange and red/,
    );
  });
});
