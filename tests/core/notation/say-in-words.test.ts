import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Face } from "../../../core/cube/faces";
import { FACES } from "../../../core/cube/faces";
import { applyTurns } from "../../../core/cube/held-cube";
import { type Turn, TURN_LAYERS } from "../../../core/cube/turns";
import { formatTurn, formatTurns } from "../../../core/notation/format";
import {
  colourSideInWords,
  holdInWords,
  onSideInWords,
  placeInWords,
  sideName,
} from "../../../core/notation/place-words";
import {
  turnDetailInWords,
  turnInWords,
  turnsInWords,
} from "../../../core/notation/say-in-words";
import {
  afterTurns,
  dot,
  type FaceLetter,
  isSameVector,
  NORMALS,
  solvedStickers,
  type Sticker,
  type Vector,
} from "../../oracles/geometric-cube";
import { START } from "../cube/arbitrary-cubes";
import { arbitraryTurns } from "./arbitrary-turns";
import { turnsOf } from "./turns-of";

const COLOURS = {
  U: "white",
  R: "red",
  F: "green",
  D: "yellow",
  L: "orange",
  B: "blue",
} as const satisfies Record<Face, string>;

const EVERY_TURN: readonly Turn[] = TURN_LAYERS.flatMap((layer) =>
  ([1, 2, 3] as const).map((quarters) => ({ layer, quarters })),
);

/** What the oracle does: each sticker before and after. */
function moved(turn: Turn): readonly (readonly [Sticker, Sticker])[] {
  const before = solvedStickers();
  const after = afterTurns(before, formatTurn(turn));
  return before.map((sticker, i) => [sticker, after[i] ?? sticker]);
}

/** Which pieces the words name, as the layers between two distances along an axis. */
const NAMED_LAYERS: Readonly<
  Record<string, readonly [axis: FaceLetter, from: number, to: number]>
> = {
  top: ["U", 1, 1],
  "right side": ["R", 1, 1],
  front: ["F", 1, 1],
  bottom: ["D", 1, 1],
  "left side": ["L", 1, 1],
  back: ["B", 1, 1],
  "two top layers": ["U", 0, 1],
  "two right layers": ["R", 0, 1],
  "two front layers": ["F", 0, 1],
  "two bottom layers": ["D", 0, 1],
  "two left layers": ["L", 0, 1],
  "two back layers": ["B", 0, 1],
  "middle column": ["R", 0, 0],
  "middle row": ["U", 0, 0],
  "layer behind the front": ["F", 0, 0],
  "whole cube": ["F", -1, 1],
};

/** What a direction means: stickers that face one way come to face another. */
const DIRECTION_MEANS: Readonly<
  Record<string, readonly [from: FaceLetter, to: FaceLetter]>
> = {
  up: ["F", "U"],
  down: ["F", "D"],
  "to the left": ["F", "L"],
  "to the right": ["F", "R"],
  "so that its top goes left": ["U", "L"],
  "so that its top goes right": ["U", "R"],
  "so that their top goes left": ["U", "L"],
  "so that their top goes right": ["U", "R"],
  "so that the top comes to the front": ["U", "F"],
  "so that the right side comes to the front": ["R", "F"],
  "so that the bottom comes to the front": ["D", "F"],
  "so that the left side comes to the front": ["L", "F"],
  "so that the back comes to the front": ["B", "F"],
  "so that the left side comes to the top": ["L", "U"],
  "so that the right side comes to the top": ["R", "U"],
  "its front goes up": ["F", "U"],
  "its front goes down": ["F", "D"],
  "its front goes left": ["F", "L"],
  "its front goes right": ["F", "R"],
  "their front goes up": ["F", "U"],
  "their front goes down": ["F", "D"],
  "their front goes left": ["F", "L"],
  "their front goes right": ["F", "R"],
  "clockwise, as you see it from the front": ["U", "R"],
  "anticlockwise, as you see it from the front": ["U", "L"],
  ", its top to the left": ["U", "L"],
  ", its top to the right": ["U", "R"],
  ", their top to the left": ["U", "L"],
  ", their top to the right": ["U", "R"],
  ", top to the front": ["U", "F"],
  ", right side to the front": ["R", "F"],
  ", bottom to the front": ["D", "F"],
  ", left side to the front": ["L", "F"],
  ", back to the front": ["B", "F"],
  ", left side to the top": ["L", "U"],
  ", right side to the top": ["R", "U"],
};

function expectDirection(turn: Turn, direction: string): void {
  const meaning = DIRECTION_MEANS[direction];
  if (meaning === undefined) {
    // Half turns say no direction but what comes where.
    const facts: Readonly<Record<string, readonly [FaceLetter, FaceLetter][]>> =
      {
        twice: [],
        "upside down so that the back comes to the front": [
          ["U", "D"],
          ["B", "F"],
        ],
        "upside down and keep the front in front": [
          ["U", "D"],
          ["F", "F"],
        ],
        "upside down, back to the front": [
          ["U", "D"],
          ["B", "F"],
        ],
        "upside down, front stays in front": [
          ["U", "D"],
          ["F", "F"],
        ],
      };
    const known = facts[direction];
    expect(known, `the words "${direction}"`).toBeDefined();
    expect(turn.quarters).toBe(2);
    for (const [from, to] of known ?? []) expectFacing(turn, from, to);
    return;
  }
  expectFacing(turn, ...meaning);
}

/** Every sticker that turns and faced `from` faces `to` afterwards; there are some. */
function expectFacing(turn: Turn, from: FaceLetter, to: FaceLetter): void {
  const turning = moved(turn).filter(
    ([before, after]) =>
      isSameVector(before.facing, NORMALS[from]) &&
      !(
        isSameVector(before.at, after.at) &&
        isSameVector(before.facing, after.facing) &&
        from !== to
      ),
  );
  expect(turning.length).toBeGreaterThan(0);
  for (const [, after] of turning) expect(after.facing).toEqual(NORMALS[to]);
}

function expectLayers(turn: Turn, name: string): void {
  const [axis, from, to] = NAMED_LAYERS[name] ?? [];
  expect(axis, `the words "${name}"`).toBeDefined();
  if (axis === undefined || from === undefined || to === undefined) return;
  for (const [before, after] of moved(turn)) {
    const distance = dot(before.at, NORMALS[axis]);
    const isNamed = distance >= from && distance <= to;
    const stays =
      isSameVector(before.at, after.at) &&
      isSameVector(before.facing, after.facing);
    // A centre on the axis turns in its place.
    const isOnAxis = before.at.every(
      (n, i) => NORMALS[turnAxisLetter(turn)][i] !== 0 || n === 0,
    );
    if (!isOnAxis) expect(!stays).toBe(isNamed);
  }
}

function turnAxisLetter(turn: Turn): FaceLetter {
  const face = FACES.find((letter) => turn.layer.startsWith(letter));
  if (face !== undefined) return face;
  const axes: Readonly<Record<string, FaceLetter>> = {
    M: "L",
    E: "D",
    S: "F",
    x: "R",
    y: "U",
    z: "F",
  };
  return axes[turn.layer] ?? "U";
}

/** Parts a phrase into the layer's name and the direction. */
function parted(phrase: string): readonly [name: string, direction: string] {
  const name = Object.keys(NAMED_LAYERS)
    .filter((known) => phrase.startsWith(known))
    .sort((a, b) => b.length - a.length)[0];
  expect(name, `a layer's name begins "${phrase}"`).toBeDefined();
  return [name ?? "", phrase.slice(name?.length).trim()];
}

describe("turns in words", () => {
  it.each(EVERY_TURN.map((turn) => [formatTurn(turn), turn] as const))(
    "the words for %s name the layers that turn and the way they go in the oracle",
    (_, turn) => {
      const full = /^Turn the (.+)\.$/.exec(turnInWords(turn))?.[1] ?? "";
      const [name, direction] = parted(full);
      expectLayers(turn, name);
      expectDirection(turn, direction);
      if (turn.quarters === 2 && name !== "whole cube")
        expect(direction).toBe("twice");

      const short = turnInWords(turn, "short");
      expect(short).toMatch(/^[A-Z]/);
      const [shortName, way] = parted(
        short.charAt(0).toLowerCase() + short.slice(1),
      );
      expect(shortName).toBe(name);
      expectDirection(turn, way);
    },
  );

  it("no two turns have the same words", () => {
    for (const style of ["full", "short"] as const)
      expect(
        new Set(EVERY_TURN.map((turn) => turnInWords(turn, style))).size,
      ).toBe(EVERY_TURN.length);
  });

  it("no words hold a letter of notation", () => {
    for (const turn of EVERY_TURN)
      for (const words of [
        turnInWords(turn),
        turnInWords(turn, "short"),
        turnDetailInWords(turn),
      ])
        expect(words).not.toMatch(/\b[A-Zxyz]\b|['’]/);
  });

  it.each([
    // As in the pictures of the intended look.
    ["R'", "Turn the right side down.", "Right side down"],
    ["D'", "Turn the bottom to the left.", "Bottom to the left"],
    ["D", "Turn the bottom to the right.", "Bottom to the right"],
    ["R", "Turn the right side up.", "Right side up"],
    ["F2", "Turn the front twice.", "Front twice"],
  ])("says %s as %j", (text, full, short) => {
    const [turn] = turnsOf(text);
    expect(turn && turnInWords(turn)).toBe(full);
    expect(turn && turnInWords(turn, "short")).toBe(short);
  });

  it.each(EVERY_TURN.map((turn) => [formatTurn(turn), turn] as const))(
    "the detail of %s says how far and which way",
    (_, turn) => {
      const words = turnDetailInWords(turn);
      const how = /^One quarter turn; (.+?)(; the layers beside it stay)?\.$/;
      const [, direction, rest] = how.exec(words) ?? [];
      if (direction !== undefined) {
        expect(turn.quarters).not.toBe(2);
        expectDirection(turn, direction);
        expect(rest !== undefined).toBe(/^[MES]$/.test(turn.layer));
      } else if (/^[xyz]$/.test(turn.layer)) {
        expect(words).toMatch(/^No layer turns/);
      } else {
        expect(turn.quarters).toBe(2);
        expect(words).toMatch(/^Two quarter turns/);
      }
    },
  );
});

describe("sequences in words", () => {
  it("are one sentence", () => {
    expect(turnsInWords(turnsOf("D' R'"))).toBe(
      "Turn the bottom to the left, then the right side down.",
    );
    expect(turnsInWords(turnsOf("y F"))).toBe(
      "Turn the whole cube so that the right side comes to the front, then the front so that its top goes right.",
    );
    expect(turnsInWords([])).toBe("");
  });

  it("name the colour that really comes to the front or to the top", () => {
    fc.assert(
      fc.property(
        arbitraryTurns(),
        arbitraryTurns(["x", "y", "z"]),
        (before, turns) => {
          const [turn] = turns;
          if (turn === undefined) return;
          const { hold } = applyTurns(START, before);
          const words = turnInWords(turn, "full", { hold, colours: COLOURS });
          const [, colour, place] =
            /(\w+) (?:comes to the|in) (front|top)\.$/.exec(words) ?? [];
          expect(colour).toBeDefined();
          expect(
            turnInWords(turn, "short", { hold, colours: COLOURS }),
          ).toContain(`, ${colour ?? ""} `);
          const stickers = afterTurns(
            solvedStickers(),
            formatTurns([...before, turn]),
          );
          const side: Vector = place === "top" ? NORMALS.U : NORMALS.F;
          const centre = stickers.find((sticker) =>
            isSameVector(sticker.at, side),
          );
          const face = FACES.find((f) =>
            isSameVector(NORMALS[f], centre?.colour ?? [0, 0, 0]),
          );
          expect(face && COLOURS[face]).toBe(colour);
        },
      ),
    );
  });

  it("follow how the cube is held from turn to turn", () => {
    expect(
      turnsInWords(turnsOf("y y"), { hold: START.hold, colours: COLOURS }),
    ).toBe(
      "Turn the whole cube so that red comes to the front, then the whole cube so that blue comes to the front.",
    );
  });
});

describe("places in words", () => {
  it("say top or bottom first and left or right last", () => {
    expect(placeInWords(["R", "D", "F"])).toBe("bottom front right");
    expect(placeInWords(["U", "L", "B"])).toBe("top back left");
    expect(placeInWords(["F", "D"])).toBe("bottom front");
    expect(placeInWords(["R", "U"])).toBe("top right");
    expect(placeInWords(["R", "F"])).toBe("middle front right");
    expect(placeInWords(["B"])).toBe("back");
  });

  it("say which way a colour faces", () => {
    expect(colourSideInWords("white", "R")).toBe("white is on the right");
    expect(FACES.map(onSideInWords)).toEqual([
      "on top",
      "on the right",
      "on the front",
      "on the bottom",
      "on the left",
      "on the back",
    ]);
    expect(FACES.map(sideName)).toEqual([
      "the top",
      "the right side",
      "the front",
      "the bottom",
      "the left side",
      "the back",
    ]);
  });

  it("say how the whole cube is held", () => {
    expect(holdInWords(START.hold, COLOURS)).toEqual([
      "white on top",
      "green in front",
      "red on the right",
    ]);
    const { hold } = applyTurns(START, turnsOf("z2 y"));
    expect(holdInWords(hold, COLOURS)).toEqual([
      "yellow on top",
      "orange in front",
      "blue on the right",
    ]);
  });
});
