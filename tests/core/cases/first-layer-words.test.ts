import { describe, expect, it } from "vitest";
import { FAMILIES } from "../../../core/cases/case-entry";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import { FIRST_LAYER_TABLE } from "../../../core/cases/case-table";
import {
  type CaseNaming,
  firstLayerFacing,
  firstLayerNameInFamily,
  firstLayerPlace,
  firstLayerTitle,
  firstLayerFamilyAdvice,
  firstLayerFamilyName,
  homePlace,
} from "../../../core/cases/first-layer-words";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { FIRST_LAYER_STAGES } from "../../../core/cases/stage";
import { HOLDS } from "../../../core/cases/variant";
import { formatFacelets } from "../../../core/cube/facelets";
import { randomSource } from "../../../core/random-source";
import {
  isSameVector,
  NORMALS,
  solvedStickers,
} from "../../oracles/geometric-cube";

const UP: CaseNaming = { first: "white", hold: "up" };
const DOWN: CaseNaming = { first: "yellow", hold: "down" };

describe("names held up", () => {
  // Source: look/cases-light.png, look/coach-light.png and first-layer.md.
  it.each([
    ["C1", "Under its home, white on the front"],
    ["C2", "Under its home, white on the right"],
    ["C3", "Under its home, white on the bottom"],
    ["C4", "At home, white on the right"],
    ["C5", "At home, white on the front"],
    ["C6", "Top front left, white on top"],
    ["C7", "Top front left, white on the left"],
    ["C10", "Top back right, white on the back"],
    ["C14", "Top back left, white on the left"],
    ["E1", "Under its home, white on the bottom"],
    ["E2a", "Middle front right, white on the right"],
    ["E3", "Under its home, white on the front"],
    ["E5b", "Middle back left, white on the back"],
    ["E7", "At home, flipped"],
    ["E8a", "Top right, flipped"],
    ["E10", "Top back, white on top"],
    ["S1", "In each other's homes, next to one another"],
    ["S2", "In each other's homes, across from one another"],
  ] satisfies [CaseId, string][])("%s is called “%s”", (id, title) => {
    expect(firstLayerTitle(id, UP)).toBe(title);
  });

  it("say what tells a case from the others of its family", () => {
    expect(firstLayerNameInFamily("C1", UP)).toBe("White on the front");
    expect(firstLayerNameInFamily("E7", UP)).toBe("Flipped");
    expect(firstLayerNameInFamily("C9", UP)).toBe(
      "Top back right, white on top",
    );
    expect(firstLayerNameInFamily("S2", UP)).toBe("Across from one another");
    for (const family of FAMILIES) {
      const names = FIRST_LAYER_TABLE.filter(
        (entry) => entry.family === family,
      ).map(({ id }) => firstLayerNameInFamily(id, UP));
      expect(names.length).toBeGreaterThan(0);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it("are different for every case of a stage", () => {
    for (const naming of [UP, DOWN]) {
      for (const stage of FIRST_LAYER_STAGES) {
        const titles = FIRST_LAYER_TABLE.filter(
          (entry) => entry.stage === stage,
        ).map(({ id }) => firstLayerTitle(id, naming));
        expect(titles.length).toBeGreaterThan(10);
        expect(new Set(titles).size).toBe(titles.length);
      }
    }
  });

  it("name families", () => {
    expect(FAMILIES.map((family) => firstLayerFamilyName(family, UP))).toEqual([
      "Straight up",
      "White looks at you from below",
      "Flipped at home",
      "Go down first",
      "In another's home",
      "White on a side",
      "White underneath",
      "Home but twisted",
      "In another corner's home, next to its own",
      "In another corner's home, across from its own",
      "In each other's homes",
    ]);
    expect(firstLayerFamilyAdvice("next-to-its-home", UP)).toBe(
      "Bring it down with white not underneath, then as above",
    );
    expect(firstLayerFamilyAdvice("on-a-side", UP)).toBeUndefined();
    expect(homePlace("first-layer-corners", UP)).toBe("top front right");
    expect(homePlace("first-layer-edges", UP)).toBe("top front");
  });
});

describe("names held down", () => {
  // The half turn about the front–back axis exchanges top with bottom and
  // right with left, and nothing else.
  it.each([
    ["C1", "Above its home, yellow on the front"],
    ["C2", "Above its home, yellow on the left"],
    ["C3", "Above its home, yellow on top"],
    ["C4", "At home, yellow on the left"],
    ["C6", "Bottom front right, yellow on the bottom"],
    ["E1", "Above its home, yellow on top"],
    ["E2a", "Middle front left, yellow on the left"],
    ["E7", "At home, flipped"],
    ["E8a", "Bottom left, flipped"],
    ["E9b", "Bottom right, yellow on the bottom"],
  ] satisfies [CaseId, string][])("%s is called “%s”", (id, title) => {
    expect(firstLayerTitle(id, DOWN)).toBe(title);
  });

  it("turn the words of families over", () => {
    expect(firstLayerFamilyName("straight-up", DOWN)).toBe("Straight down");
    expect(firstLayerFamilyName("looks-from-below", DOWN)).toBe(
      "Yellow looks at you from above",
    );
    expect(firstLayerFamilyName("go-down-first", DOWN)).toBe("Go up first");
    expect(firstLayerFamilyName("underneath", DOWN)).toBe("Yellow on top");
    expect(firstLayerFamilyAdvice("across-from-its-home", DOWN)).toBe(
      "Bring it up with yellow not on top, then as above",
    );
    expect(homePlace("first-layer-corners", DOWN)).toBe("bottom front left");
    expect(homePlace("first-layer-edges", DOWN)).toBe("bottom front");
  });
});

describe("places and facings", () => {
  const WORDS = {
    U: ["top", "on top"],
    R: ["right", "on the right"],
    F: ["front", "on the front"],
    D: ["bottom", "on the bottom"],
    L: ["left", "on the left"],
    B: ["back", "on the back"],
  } as const;
  const LETTERS = ["U", "R", "F", "D", "L", "B"] as const;
  const STICKERS = solvedStickers();

  /** The words for where a piece of these colours is and where its U sticker faces, from the picture alone. */
  function readOff(facelets: string, colours: string) {
    const at = STICKERS.filter(
      (sticker, i) =>
        facelets[i] === "U" &&
        [...facelets]
          .filter((_, j) =>
            isSameVector(STICKERS[j]?.at ?? [0, 0, 0], sticker.at),
          )
          .toSorted()
          .join("") === colours,
    );
    const [sticker] = at;
    if (sticker === undefined) throw new Error("the piece is not on the cube");
    const sides = STICKERS.filter((other) =>
      isSameVector(other.at, sticker.at),
    ).map(({ facing }) =>
      LETTERS.find((letter) => isSameVector(NORMALS[letter], facing)),
    );
    const facing = LETTERS.find((letter) =>
      isSameVector(NORMALS[letter], sticker.facing),
    );
    return {
      words: sides.flatMap((side) => (side ? [WORDS[side][0]] : [])),
      facing: facing ? WORDS[facing][1] : "",
    };
  }

  it("are those that the picture of the position shows, for every case and hold", () => {
    const random = randomSource(13);
    for (const id of FIRST_LAYER_IDS) {
      for (const hold of HOLDS) {
        const naming = { first: "white", hold };
        const variant = randomVariant(random, id, { homes: [0] });
        const position = randomPosition(random, id, variant, hold);
        const facelets = formatFacelets(startOf(position));
        const isEdge = id.startsWith("E");
        const { words, facing } = readOff(facelets, isEdge ? "FU" : "FRU");
        const said = firstLayerPlace(id, naming)
          .split(" ")
          .filter((word) => word !== "middle");
        expect(said.toSorted(), id).toEqual(words.toSorted());
        if (id === "S1" || id === "S2") {
          expect(firstLayerFacing(id, naming)).toBeUndefined();
        } else {
          // "Flipped" is said of an edge in the first layer that does not face out of it.
          const outward = hold === "up" ? "on top" : "on the bottom";
          const isFlipped =
            isEdge &&
            facing !== outward &&
            words.includes(hold === "up" ? "top" : "bottom");
          expect(firstLayerFacing(id, naming), id).toBe(
            isFlipped ? "flipped" : `white ${facing}`,
          );
        }
      }
    }
  });
});
