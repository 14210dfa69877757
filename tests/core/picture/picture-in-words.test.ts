import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CORNER_FACELETS, EDGE_FACELETS } from "../../../core/cube/facelets";
import { FACES, type Face } from "../../../core/cube/faces";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { pictureInWords } from "../../../core/picture/picture-in-words";
import {
  afterTurns,
  faceletString,
  solvedStickers,
} from "../../oracles/geometric-cube";
import { SOLVED_STICKERS } from "./pictures-for-tests";

const SIDE_WORDS: Readonly<Record<Face, string>> = {
  U: "top",
  R: "right",
  F: "front",
  D: "bottom",
  L: "left",
  B: "back",
};

function stickersAfter(turns: string): readonly Face[] {
  return [...faceletString(afterTurns(solvedStickers(), turns))].flatMap(
    (letter) => FACES.filter((face) => face === letter),
  );
}

describe("a picture in words", () => {
  it("says how the cube is held, where the piece is, which way each sticker faces, and where its home is", () => {
    // The design's picture of a question: white up, green in front; the
    // white, green and red corner under its home, white on the front.
    const bare = SOLVED_STICKERS.map((face, i) =>
      i % 9 === 4 ? face : undefined,
    );
    const stickers = bare.map((face, i): Face | undefined =>
      i === 26 ? "U" : i === 15 ? "R" : i === 29 ? "F" : face,
    );
    const { short } = pictureInWords(
      { stickers, pieces: [[29, 26, 15]], home: [8, 9, 20] },
      USUAL_SCHEME,
    );
    expect(short).toBe(
      "White on top, green in front, red on the right. " +
        "The white, green and red corner: bottom front right, " +
        "green on the bottom, white on the front, red on the right. " +
        "Home: top front right.",
    );
  });

  it("says that a piece is in its home, and names no home besides", () => {
    const { short } = pictureInWords(
      {
        stickers: stickersAfter("R' D' R D R' D' R D"),
        pieces: [[8, 9, 20]],
        home: [8, 9, 20],
      },
      USUAL_SCHEME,
    );
    expect(short).toContain("in its home, top front right");
    expect(short).not.toContain("Home:");
  });

  it("names both homes of a pair, or the one whose piece is not in it", () => {
    const homes = (piece: readonly number[]) =>
      pictureInWords(
        {
          stickers: SOLVED_STICKERS,
          pieces: [piece, [7, 19]],
          home: [29, 26, 15, 23, 12],
        },
        USUAL_SCHEME,
      ).short.match(/Homes?: [^.]*\./g);
    expect(homes([8, 9, 20])).toEqual([
      "Homes: bottom front right and middle front right.",
    ]);
    expect(homes([29, 26, 15])).toEqual(["Home: middle front right."]);
  });

  it("says the arrow and the rings", () => {
    const { short } = pictureInWords(
      {
        stickers: SOLVED_STICKERS,
        rings: [20],
        arrow: { layer: "R", quarters: 3 },
      },
      USUAL_SCHEME,
    );
    expect(short).toContain("Arrow: Turn the right side down.");
    expect(short).toContain(
      "With a ring: green on the front at top front right.",
    );
  });

  it("lists what is placed and reads every side out", () => {
    const { details } = pictureInWords(
      { stickers: stickersAfter("R") },
      USUAL_SCHEME,
    );
    // R takes four edges and four corners away; eight edges and four corners stay.
    const placed = /Placed edges: ([^.]*)\. Placed corners: ([^.]*)\./.exec(
      details,
    );
    expect(placed?.[1]?.split(/, | and /)).toHaveLength(8);
    expect(placed?.[2]?.split(/, | and /)).toHaveLength(4);
    expect(details).toContain(
      "The front, row by row: green green yellow; green green yellow; green green yellow.",
    );
  });

  it("names the true places and sides of any piece of any cube", () => {
    const turns = fc.array(
      fc.constantFrom("U", "R", "F'", "D2", "L", "B'", "M", "x", "y'", "z"),
      { maxLength: 12 },
    );
    const pieces = fc.constantFrom(...CORNER_FACELETS, ...EDGE_FACELETS);
    fc.assert(
      fc.property(turns, pieces, (sequence, piece) => {
        const cube = afterTurns(solvedStickers(), sequence.join(" "));
        const stickers = stickersAfter(sequence.join(" "));
        const { short } = pictureInWords(
          { stickers, pieces: [piece] },
          USUAL_SCHEME,
        );
        const said = short.slice(short.indexOf(":"));
        const places = solvedStickers();
        for (const facelet of piece) {
          // The oracle's sticker that lies where the facelet is.
          const place = places[facelet];
          const sticker = cube.find(
            (candidate) =>
              candidate.at.join() === place?.at.join() &&
              candidate.facing.join() === place.facing.join(),
          );
          const side = FACES.find(
            (face) => place?.facing.join() === NORMAL[face],
          );
          const colour = FACES.find(
            (face) => sticker?.colour.join() === NORMAL[face],
          );
          if (side === undefined || colour === undefined)
            throw new Error("every sticker faces somewhere");
          const on = side === "U" ? "on top" : `on the ${SIDE_WORDS[side]}`;
          expect(said).toContain(`${USUAL_SCHEME[colour]} ${on}`);
          expect(said.split(",")[0]).toContain(SIDE_WORDS[side]);
        }
      }),
      { numRuns: 100 },
    );
  });
});

const NORMAL: Readonly<Record<Face, string>> = {
  U: "0,1,0",
  R: "1,0,0",
  F: "0,0,1",
  D: "0,-1,0",
  L: "-1,0,0",
  B: "0,0,-1",
};
