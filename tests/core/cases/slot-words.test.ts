import { describe, expect, it } from "vitest";
import { stateShowing } from "../../../core/cases/orbits";
import {
  type SlotCase,
  type SlotFamily,
  slotCases,
} from "../../../core/cases/slot-cases";
import { slotConstraint } from "../../../core/cases/slot-stages";
import { SLOT_STAGES } from "../../../core/cases/stage";
import {
  SLOT_PLACE,
  slotFamilyName,
  slotInWords,
  slotNameInFamily,
  slotTitle,
} from "../../../core/cases/slot-words";
import type { WholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import { formatFacelets } from "../../../core/cube/facelets";
import { viewFace } from "../../../core/cube/held-cube";
import { rotationAbout, thenSymmetry } from "../../../core/cube/symmetries";
import { present } from "../../../core/invariant";
import { isSameVector, NORMALS } from "../../oracles/geometric-cube";
import {
  centreSeen,
  facingOf,
  onSide,
  pieceSeen,
  placeAt,
} from "./seen-pieces";

const NAMING: WholeCubeNaming = {
  first: "white",
  last: "yellow",
  hold: "up",
};
const WITH_SIDES: WholeCubeNaming = {
  ...NAMING,
  sides: { F: "red", R: "green", B: "orange", L: "blue" },
};

// One y further than slot 0 at the front right with the first layer on top,
// then turned over about the front-back axis.
const HOLD = thenSymmetry(rotationAbout("y", 1), rotationAbout("z", 2));

function faceletsOf({ stage, orbit }: SlotCase): string {
  const linedUp = present(orbit[0], "no orbit is empty");
  return formatFacelets({
    cubies: stateShowing(slotConstraint(stage, []), linedUp),
    hold: HOLD,
  });
}

/** The letters of the body that are seen in front and on the right. */
function sideLetters(facelets: string) {
  const at = (side: "F" | "R") =>
    ["F", "R", "L", "B"].find((letter) =>
      isSameVector(centreSeen(facelets, letter), NORMALS[side]),
    ) ?? "?";
  return { front: at("F"), right: at("R") };
}

/** A case told from its picture alone. */
function readOff(one: SlotCase) {
  const facelets = faceletsOf(one);
  const { front, right } = sideLetters(facelets);
  const edge = pieceSeen(facelets, front + right);
  const edgePlace = placeAt(edge.at);
  const frontOn = onSide(facingOf(edge, front));
  const rightOn = onSide(facingOf(edge, right));
  const isEdgeHome = isSameVector(edge.at, [1, 0, 1]);
  const edgeWords = isEdgeHome
    ? frontOn === "on the front"
      ? "placed"
      : "at home, flipped"
    : `${edgePlace}, ${rightOn === "on top" ? "right colour on top" : `front colour ${frontOn}`}`;
  if (one.stage !== "pairs")
    return { edgePlace, frontOn, rightOn, edgeWords, isEdgeHome };
  const corner = pieceSeen(facelets, `U${front}${right}`);
  const cornerPlace = placeAt(corner.at);
  const firstOn = onSide(facingOf(corner, "U"));
  const isHome = isSameVector(corner.at, [1, -1, 1]);
  const where = isHome
    ? "at home"
    : corner.at[1] === 1
      ? "above its slot"
      : cornerPlace;
  const cornerWords =
    isHome && firstOn === "on the bottom"
      ? "placed"
      : `${where}, white ${firstOn}`;
  return {
    edgePlace,
    frontOn,
    rightOn,
    edgeWords,
    isEdgeHome,
    cornerPlace,
    firstOn,
    cornerWords,
  };
}

describe("the hold of slots", () => {
  it("shows slot 0 at the front right, the last layer on top", () => {
    expect(viewFace(HOLD, "F")).toBe("R");
    expect(viewFace(HOLD, "R")).toBe("F");
    expect(viewFace(HOLD, "D")).toBe("U");
    expect(SLOT_PLACE).toBe("middle front right");
  });
});

describe("names of second-layer edges", () => {
  it("are these nine", () => {
    expect(
      slotCases("second-layer-edges")
        .map((one) => slotTitle(one, NAMING))
        .toSorted(),
    ).toEqual([
      "Above the front, its top colour belongs on the right",
      "Above the right side, its top colour belongs on the front",
      "At home, flipped",
      "Middle back left, front colour on the back",
      "Middle back left, front colour on the left",
      "Middle back right, front colour on the back",
      "Middle back right, front colour on the right",
      "Middle front left, front colour on the front",
      "Middle front left, front colour on the left",
    ]);
  });

  it("say what the picture shows: an edge on top stands above the centre of its side's colour", () => {
    for (const one of slotCases("second-layer-edges")) {
      const { edgePlace, frontOn, rightOn, edgeWords, isEdgeHome } =
        readOff(one);
      const title = slotTitle(one, NAMING);
      if (edgePlace === "top front") {
        expect([frontOn, rightOn]).toEqual(["on the front", "on top"]);
        expect(title).toMatch(/^Above the front, .* on the right$/);
      } else if (edgePlace === "top right") {
        expect([frontOn, rightOn]).toEqual(["on top", "on the right"]);
        expect(title).toMatch(/^Above the right side, .* on the front$/);
      } else expect(title.toLowerCase()).toBe(edgeWords);
      expect(slotNameInFamily(one, NAMING)).toBe(
        isEdgeHome ? "Flipped" : title,
      );
    }
  });

  it("name the edge's colours where the sides have names", () => {
    const titles = slotCases("second-layer-edges").map((one) =>
      slotTitle(one, WITH_SIDES),
    );
    expect(titles).toContain("Above the front, green on top");
    expect(titles).toContain("Above the right side, red on top");
    expect(titles).toContain("Middle back left, red on the back");
  });
});

describe("names of pairs", () => {
  it("say what the picture shows, for all 167", () => {
    for (const one of slotCases("pairs")) {
      const { cornerWords = "", edgeWords, firstOn = "" } = readOff(one);
      const title = slotTitle(one, NAMING);
      expect(title, one.code).toBe(`Corner ${cornerWords}; edge ${edgeWords}`);
      const name = slotNameInFamily(one, NAMING);
      expect(
        [
          title,
          `White ${firstOn}; edge ${edgeWords}`,
          `Corner placed; edge ${edgeWords}`,
        ],
        one.code,
      ).toContain(name);
    }
  });

  it("are such as these", () => {
    const named = (code: string) => {
      const one = slotCases("pairs").find((other) => other.code === code);
      return slotTitle(present(one, "the code is one of a pair"), NAMING);
    };
    // Read off the frame by hand: body F is seen on the right, R in front, B
    // on the left, L at the back.
    expect(named("DFR-R FR-R")).toBe(
      "Corner above its slot, white on the front; edge at home, flipped",
    );
    expect(named("DFR-F DB-D")).toBe(
      "Corner above its slot, white on the right; edge top left, right colour on top",
    );
    expect(named("URF-F FR-F")).toBe(
      "Corner at home, white on the right; edge placed",
    );
  });
});

describe.each(SLOT_STAGES)("words of %s", (stage) => {
  const keyOf = ({ corner, edge }: SlotFamily) => `${corner ?? ""} ${edge}`;

  it("are different for every case, and within every family", () => {
    const cases = slotCases(stage);
    for (const naming of [NAMING, WITH_SIDES]) {
      expect(new Set(cases.map((one) => slotTitle(one, naming))).size).toBe(
        cases.length,
      );
      expect(new Set(cases.map((one) => slotInWords(one, naming))).size).toBe(
        cases.length,
      );
      const inFamily = cases.map(
        (one) => `${keyOf(one.family)} ${slotNameInFamily(one, naming)}`,
      );
      expect(new Set(inFamily).size).toBe(cases.length);
    }
  });

  it("have a name for each family that no other has", () => {
    const families = new Map(
      slotCases(stage).map(({ family }) => [
        keyOf(family),
        slotFamilyName(family),
      ]),
    );
    expect(new Set(families.values()).size).toBe(families.size);
    expect(families.size).toBe(stage === "pairs" ? 9 : 3);
  });

  it("tell places and stickers as the picture shows them", () => {
    for (const one of slotCases(stage)) {
      const { cornerPlace, edgePlace, firstOn, frontOn, rightOn } =
        readOff(one);
      const corner =
        cornerPlace === undefined
          ? ""
          : `The corner is ${cornerPlace}, white ${firstOn}. `;
      expect(slotInWords(one, NAMING)).toBe(
        `${corner}The edge is ${edgePlace}, front colour ${frontOn}, right colour ${rightOn}.`,
      );
      expect(slotInWords(one, WITH_SIDES)).toContain(
        `${edgePlace}, red ${frontOn}, green ${rightOn}.`,
      );
    }
  });
});

describe("families of slots", () => {
  it("are named by where the pieces are", () => {
    expect(slotFamilyName({ edge: "elsewhere" })).toBe("In another slot");
    expect(slotFamilyName({ corner: "last-layer", edge: "home" })).toBe(
      "Corner in the top layer, edge at home",
    );
    expect(slotFamilyName({ corner: "home", edge: "home" })).toBe(
      "Both at home",
    );
    expect(slotFamilyName({ corner: "elsewhere", edge: "elsewhere" })).toBe(
      "Both in a wrong slot",
    );
  });
});
