import { describe, expect, it } from "vitest";
import { isSameState, SOLVED, UNKNOWN } from "../../../core/cube/cubies";
import { corner, edge } from "../../../core/cube/pieces";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import {
  formatDesk,
  parseDesk,
} from "../../../renderer/state/practise/desk-schema";
import {
  cubeThatHas,
  isHome,
  isKnown,
  onlyHome,
  UNKNOWN_CUBE,
  withPieceAt,
} from "../../../renderer/state/practise/own-cube";
import { seatAt, seatsFor } from "../../../renderer/state/practise/seats";

const UF = { kind: "edge", piece: edge("UF") } as const;
const URF = { kind: "corner", piece: corner("URF") } as const;

function held(cubies = UNKNOWN_CUBE) {
  return { cubies, hold: NO_ROTATION };
}

describe("what is known of the learner's own cube", () => {
  it("is the cross alone where only the cross is done", () => {
    const cube = cubeThatHas("cross");
    expect(isHome(cube, UF)).toBe(true);
    expect(isKnown(cube, URF)).toBe(false);
  });

  it("is the first layer and nothing below where the layer is done", () => {
    const cube = cubeThatHas("first-layer");
    expect(isHome(cube, UF) && isHome(cube, URF)).toBe(true);
    expect(isKnown(cube, { kind: "corner", piece: corner("DFR") })).toBe(false);
  });

  it("takes in a piece that was found, and forgets who was thought to be there", () => {
    const found = withPieceAt(onlyHome([UF, URF]), URF, corner("DLF"), 2);
    expect(found.cornerPermutation[corner("DLF")]).toBe(corner("URF"));
    expect(found.cornerOrientation[corner("DLF")]).toBe(2);
    expect(found.cornerPermutation[corner("URF")]).toBe(UNKNOWN);
    expect(isHome(found, UF)).toBe(true);
  });
});

describe("the places where a lost piece can be", () => {
  it("are all twenty-four of an edge where nothing is known", () => {
    expect(seatsFor(held(), UF, USUAL_SCHEME)).toHaveLength(24);
  });

  it("leave out what known pieces hold", () => {
    const cube = held(cubeThatHas("cross"));
    expect(seatsFor(cube, UF, USUAL_SCHEME)).toHaveLength(16);
  });

  it("are named by the place and the side of the first colour", () => {
    const words = seatsFor(held(), UF, USUAL_SCHEME).map((seat) => seat.words);
    expect(words).toContain("bottom front; white is on the front");
  });

  it("are found by a tap on the sticker of the first colour", () => {
    // Facelet 25 is the middle of the front's lowest row, 28 what lies under it.
    expect(seatAt(held(), "edge", 25)).toEqual({
      position: edge("DF"),
      orientation: 1,
    });
    expect(seatAt(held(), "edge", 28)).toEqual({
      position: edge("DF"),
      orientation: 0,
    });
  });

  it("are refused with a reason: a middle, the other kind, a place that is taken", () => {
    expect(seatAt(held(), "edge", 22)).toBe("centre");
    expect(seatAt(held(), "edge", 18)).toBe("other-kind");
    expect(seatAt(held(cubeThatHas("cross")), "edge", 19)).toBe("taken");
  });
});

describe("the desk as it is stored", () => {
  it("comes back as it was", () => {
    const desk = {
      of: "C1",
      ownCube: cubeThatHas("cross"),
      walk: {
        kind: "set-up",
        turns: [{ layer: "R", quarters: 3 }],
        done: 1,
      },
    } as const;
    const back = parseDesk(structuredClone(formatDesk(desk)));
    expect(back.of).toBe("C1");
    expect(back.walk).toEqual(desk.walk);
    expect(isSameState(back.ownCube ?? SOLVED, desk.ownCube)).toBe(true);
  });

  it("is empty where it cannot be read", () => {
    for (const stored of [
      undefined,
      7,
      { version: 2 },
      { version: 1, ownCube: { cornerPermutation: [9] } },
    ])
      expect(parseDesk(stored)).toEqual({});
  });

  it("drops a walk that goes beyond its turns", () => {
    const stored = {
      version: 1,
      walk: { kind: "set-up", turns: "R U", done: 3 },
    };
    expect(parseDesk(stored).walk).toBeUndefined();
  });
});
