import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_TABLE, waysOf } from "../../../core/cases/case-table";
import { HOLDS } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import { type Face, FACES } from "../../../core/cube/faces";
import { applyTurns } from "../../../core/cube/held-cube";
import { knownOnly } from "../../../core/cube/partly-known";
import {
  type Corner,
  corner,
  CORNER_FACES,
  type Edge,
  edge,
  EDGE_FACES,
} from "../../../core/cube/pieces";
import {
  isWholeCubeTurn,
  type Turn,
  TURN_LAYERS,
} from "../../../core/cube/turns";
import { formatTurn, formatTurns } from "../../../core/notation/format";
import { inverseTurns } from "../../../core/notation/inverse";
import {
  type PiecesToFollow,
  sayStep,
  sayWay,
} from "../../../core/notation/say-step";
import {
  afterTurns,
  NORMALS,
  solvedStickers,
} from "../../oracles/geometric-cube";
import { START } from "../cube/arbitrary-cubes";
import { arbitraryTurns } from "./arbitrary-turns";
import { turnsOf } from "./turns-of";
import {
  expectTruePlace,
  expectTrueWords,
  seenAfter,
  seenAtStart,
} from "./words-against-oracle";

const COLOURS = {
  U: "white",
  R: "red",
  F: "green",
  D: "yellow",
  L: "orange",
  B: "blue",
} as const satisfies Record<Face, string>;

const FIRST_LAYER_CORNERS: readonly Corner[] = [
  corner("URF"),
  corner("UFL"),
  corner("ULB"),
  corner("UBR"),
];
const FIRST_LAYER_EDGES: readonly Edge[] = [
  edge("UR"),
  edge("UF"),
  edge("UL"),
  edge("UB"),
];

function followingCorner(piece: Corner): PiecesToFollow {
  return { corners: [piece], edges: [] };
}

function followingEdge(piece: Edge): PiecesToFollow {
  return { corners: [], edges: [piece] };
}

/** Plays the turns in core and in the oracle and compares every sentence. */
function expectTrueSentences(
  before: readonly Turn[],
  turns: readonly Turn[],
  follow: PiecesToFollow,
): void {
  const [piece] = follow.corners;
  const [noun, faces] =
    piece === undefined
      ? ["edge", EDGE_FACES[follow.edges[0] ?? NaN]]
      : ["corner", CORNER_FACES[piece]];
  let seen = seenAtStart(
    afterTurns(solvedStickers(), formatTurns(before)),
    (faces ?? []).map((face) => NORMALS[face]),
  );
  const sentences = sayWay(applyTurns(START, before), turns, follow);
  expect(sentences).toHaveLength(turns.length);
  sentences.forEach((sentence, i) => {
    const turn = turns[i];
    if (turn === undefined) throw new RangeError();
    const [, words = ""] = /^[A-Z][^;]*; (.+)\.$/.exec(sentence) ?? [];
    const after = seenAfter(seen, formatTurn(turn));
    if (isWholeCubeTurn(turn)) expectTruePlace(words, noun, after);
    else expectTrueWords(words, noun, seen, after);
    seen = after;
  });
}

describe("what is said about a piece, held against the geometric oracle", () => {
  it.each(FIRST_LAYER_TABLE.filter(({ ways }) => ways.length > 0))(
    "is true on every way of $id, in both holds, for both hands and all four pieces",
    ({ id, stage }) => {
      const follows =
        stage === "first-layer-corners"
          ? FIRST_LAYER_CORNERS.map(followingCorner)
          : FIRST_LAYER_EDGES.map(followingEdge);
      for (const hold of HOLDS)
        for (const hand of HANDS)
          for (const { turns } of waysOf(id, hold, hand)) {
            const held = turnsOf(hold === "up" ? "" : "z2");
            const before = [...held, ...inverseTurns(turns)];
            for (const follow of follows)
              expectTrueSentences(before, turns, follow);
          }
    },
  );

  it("is true for a corner on any cube and any turns of faces and of the whole cube", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(),
        arbitraryTurns([...FACES, "x", "y", "z"]),
        fc.constantFrom(...FIRST_LAYER_CORNERS),
        (before, turns, piece) =>
          expectTrueSentences(before, turns, followingCorner(piece)),
      ),
      { numRuns: 100 },
    );
  });

  it("is true for a corner that is nearly home, where most can be said", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(["x", "y", "z"]),
        arbitraryTurns(["R", "D", "F"]),
        fc.constantFrom(...FIRST_LAYER_CORNERS),
        (before, turns, piece) =>
          expectTrueSentences(
            before,
            turns.slice(0, 8),
            followingCorner(piece),
          ),
      ),
      { numRuns: 100 },
    );
  });

  it("is true for an edge on any cube and any turns at all", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(),
        arbitraryTurns(TURN_LAYERS),
        fc.constantFrom(...FIRST_LAYER_EDGES),
        (before, turns, piece) =>
          expectTrueSentences(before, turns, followingEdge(piece)),
      ),
      { numRuns: 100 },
    );
  });
});

/** A way on the cube that it answers, told. */
function told(
  text: string,
  follow: PiecesToFollow,
  held = "",
): readonly string[] {
  const turns = turnsOf(text);
  const before = [...turnsOf(held), ...inverseTurns(turns)];
  return sayWay(applyTurns(START, before), turns, follow);
}

describe("ways in words", () => {
  it("are told as in the pictures of the intended look", () => {
    expect(told("D' R' D R", followingCorner(corner("URF")))).toEqual([
      "Bottom to the left; the corner steps aside.",
      "Right side down; its home comes down.",
      "Bottom to the right; the corner slides into its home.",
      "Right side up; corner and home rise together.",
    ]);
  });

  it("are told turned over when the first layer is held down", () => {
    expect(told("U' L' U L", followingCorner(corner("URF")), "z2")).toEqual([
      "Top to the right; the corner steps aside.",
      "Left side up; its home comes up.",
      "Top to the left; the corner slides into its home.",
      "Left side down; corner and home go down together.",
    ]);
  });

  it("tell an edge that goes down first", () => {
    expect(told("R' D' R F2", followingEdge(edge("UF")))).toEqual([
      "Right side down; the edge comes down to the bottom right.",
      "Bottom to the left; the edge comes under its home.",
      "Right side up; the edge waits under its home.",
      "Front twice; the edge goes home.",
    ]);
  });

  it("say when a piece comes home the wrong way", () => {
    const cube = applyTurns(START, turnsOf("F R' D' R"));
    expect(sayWay(cube, turnsOf("F2"), followingEdge(edge("UF")))).toEqual([
      "Front twice; the edge goes home, but flipped.",
    ]);
    // The miss in the pictures: white on the front answered as if on the right.
    const missed = applyTurns(START, inverseTurns(turnsOf("D' R' D R")));
    expect(
      sayWay(missed, turnsOf("R' D' R L"), followingCorner(corner("URF"))),
    ).toEqual([
      "Right side down; its home comes down, the corner goes to the bottom back right.",
      "Bottom to the left; the corner slides into its home, but twisted.",
      "Right side up; corner and home rise together.",
      "Left side down; the corner stays as it is.",
    ]);
  });

  it("say when a turn breaks up what the corner should go into", () => {
    const cube = applyTurns(START, turnsOf("R' D' R"));
    expect(
      sayWay(cube, turnsOf("R' F"), followingCorner(corner("URF"))),
    ).toEqual([
      "Right side down; its home comes down.",
      "Front, its top to the right; its home comes apart, the corner comes up to the top front left.",
    ]);
  });

  it("name colours where they are given, and the piece where several are followed", () => {
    const cube = applyTurns(START, turnsOf("R' D' R"));
    const one = followingCorner(corner("URF"));
    expect(sayWay(cube, turnsOf("y"), one, { colours: COLOURS })).toEqual([
      "Whole cube, red to the front; the corner comes to the bottom back left.",
    ]);
    const two = { corners: [corner("UFL"), corner("URF")], edges: [] };
    // The first of the two is placed: the other is told about.
    expect(sayWay(cube, turnsOf("R' D"), two, { colours: COLOURS })).toEqual([
      "Right side down; the home of the white, green and red corner comes down.",
      "Bottom to the right; the white, green and red corner slides into its home.",
    ]);
  });

  it("say only the turn where the piece is not known", () => {
    const cubies = knownOnly(START.cubies, new Set(), new Set());
    const follow = followingCorner(corner("URF"));
    expect(
      sayStep({ ...START, cubies }, { layer: "R", quarters: 3 }, follow),
    ).toBe("Right side down.");
    const nothing = { corners: [], edges: [] };
    expect(sayStep(START, { layer: "D", quarters: 1 }, nothing)).toBe(
      "Bottom to the right.",
    );
  });
});
