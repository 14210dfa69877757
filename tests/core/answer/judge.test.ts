import { describe, expect, it } from "vitest";
import { judge, type Verdict } from "../../../core/answer/judge";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { HOLDS, type Variant } from "../../../core/cases/variant";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { applyTurns } from "../../../core/cube/held-cube";
import { corner, edge } from "../../../core/cube/pieces";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";

const SEED = 3;

const LINED_UP: Variant = {
  home: 0,
  placed: [1, 2, 3],
  turnedAway: 0,
  seenFrom: 0,
};

function positionOf(id: Position["case"], variant: Variant = LINED_UP) {
  return randomPosition(randomSource(SEED), id, variant, "up");
}

function after(position: Position, text: string): Verdict {
  return judge(position, applyTurns(startOf(position), turnsOf(text)));
}

function randomPositions(n: number): Position[] {
  const random = randomSource(SEED);
  return FIRST_LAYER_IDS.flatMap((id) =>
    HOLDS.flatMap((hold) =>
      Array.from({ length: n }, () => {
        const variant = randomVariant(random, id, {
          turnedAway: true,
          seenFromAnywhere: true,
        });
        return randomPosition(random, id, variant, hold);
      }),
    ),
  );
}

describe("an answer", () => {
  it("is missed before anything is turned, whatever the case", () => {
    const verdicts = randomPositions(30).map((position) => [
      judge(position, startOf(position)),
      position.case,
    ]);
    for (const [verdict, id] of verdicts)
      expect(verdict).toMatchObject({ right: false, now: id });
  });

  it("is right after the turns for its position, with every piece known or only the named ones", () => {
    for (const position of randomPositions(30)) {
      const turns = turnsForPosition(position);
      for (const known of [position, partlyKnownPosition(position, "named")])
        expect(judge(known, applyTurns(startOf(known), turns))).toEqual({
          right: true,
        });
    }
  });

  it("is right however the whole cube is held and however far the free layer is turned", () => {
    const position = positionOf("C1");
    for (const rest of ["", "D", "D2", "D'", "x", "z2 U'", "y D", "x y2 z'"])
      expect(after(position, `D' R' D R ${rest}`), rest).toEqual({
        right: true,
      });
  });

  it("is right by any way, slices and wide turns among them", () => {
    expect(after(positionOf("E2a"), "F'")).toEqual({ right: true });
    // Identity Bw = z' F: check-values, "The group" (computed).
    expect(after(positionOf("E2a"), "Bw'")).toEqual({ right: true });
    expect(after(positionOf("E2a"), "Bw").right).toBe(false);
    expect(after(positionOf("E1"), "S2 B2 z2")).toEqual({ right: true });
  });
});

describe("a miss", () => {
  // Source: look/practise-miss-light.png: C2 answered as C1 leaves the corner
  // home but twisted, its first colour on the right.
  it("says that the piece is home but turned, and which case that is", () => {
    expect(after(positionOf("C2"), "D' R' D R")).toEqual({
      right: false,
      pieceState: "home-but-turned",
      missing: { corners: [corner("URF")], edges: [] },
      lost: { corners: [], edges: [] },
      now: "C4",
    });
  });

  it("tells a piece that is up with the wrong side colours from one that is elsewhere", () => {
    const up = after(
      positionOf("C1", { ...LINED_UP, placed: [1, 2] }),
      "y R' D R",
    );
    expect(up).toMatchObject({
      right: false,
      pieceState: "up-but-wrong-side-colours",
      now: "C9",
    });
    expect(after(positionOf("C1"), "D")).toMatchObject({
      pieceState: "elsewhere",
      now: "C1",
    });
  });

  it("names the marked pieces that were lost", () => {
    expect(after(positionOf("C1"), "D' R' D R L")).toEqual({
      right: false,
      pieceState: "placed",
      missing: { corners: [], edges: [] },
      lost: {
        corners: [corner("UFL"), corner("ULB")],
        edges: [edge("UL")],
      },
    });
  });

  it("does not name a case while the cross is lost, because a corner's case takes it as placed", () => {
    const verdict = after(positionOf("C1"), "R2");
    expect(verdict).toMatchObject({ right: false, pieceState: "elsewhere" });
    expect(verdict).not.toHaveProperty("now");
  });

  it("counts unmarked homes for nothing", () => {
    const position = positionOf("E1", { ...LINED_UP, placed: [] });
    expect(after(position, "F2 U2 D U2").right).toBe(true);
    expect(after(position, "F2 R2 B2 L2")).toEqual({ right: true });
  });
});

describe("a first layer that is turned as a whole", () => {
  it("is not right, and is told apart by how far its centres are off", () => {
    const position = positionOf("C1");
    for (const [turn, layerTurned] of [
      ["U'", 1],
      ["U2", 2],
      ["U", 3],
    ] as const) {
      expect(after(position, `D' R' D R ${turn}`)).toMatchObject({
        right: false,
        pieceState: "up-but-wrong-side-colours",
        layerTurned,
      });
      const back = ["", "U", "U2", "U'"][layerTurned] ?? "";
      expect(after(position, `D' R' D R ${turn} ${back}`).right).toBe(true);
    }
  });

  it("is not claimed where something else is wrong as well", () => {
    expect(after(positionOf("C2"), "D' R' D R U")).not.toHaveProperty(
      "layerTurned",
    );
    expect(after(positionOf("C1"), "")).not.toHaveProperty("layerTurned");
  });

  it("is not claimed where nothing but the piece itself is asked for", () => {
    const position = positionOf("E9a", { ...LINED_UP, placed: [] });
    expect(after(position, "")).toEqual({
      right: false,
      pieceState: "up-but-wrong-side-colours",
      missing: { corners: [], edges: [edge("UF")] },
      lost: { corners: [], edges: [] },
      now: "E9a",
    });
    expect(after(position, "U").right).toBe(true);
  });
});

describe("two corners in each other's homes", () => {
  const position = randomPosition(
    randomSource(SEED),
    "S1",
    { ...LINED_UP, placed: [2, 3] },
    "up",
  );

  it("are missed while one of them is not home, which is then the one named", () => {
    const turns = turnsForPosition(position);
    const firstHome = turns.findIndex(
      (_, i) =>
        i > 0 &&
        !judgeAfter(turns.slice(0, i)).right &&
        missingAfter(turns.slice(0, i)).length === 1,
    );
    expect(firstHome).toBeGreaterThan(0);
    expect(missingAfter(turns.slice(0, firstHome))).toEqual([corner("UFL")]);
    expect(judgeAfter(turns)).toEqual({ right: true });
  });

  function judgeAfter(turns: ReturnType<typeof turnsForPosition>): Verdict {
    return judge(position, applyTurns(startOf(position), turns));
  }

  function missingAfter(turns: ReturnType<typeof turnsForPosition>) {
    const verdict = judgeAfter(turns);
    return verdict.right ? [] : verdict.missing.corners;
  }
});
