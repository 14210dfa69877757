import { describe, expect, it } from "vitest";
import { isSameState, order, SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { type Face, FACES } from "../../../core/cube/faces";
import { applyTurns } from "../../../core/cube/held-cube";
import { isCornerPlaced, isEdgePlaced } from "../../../core/cube/partly-known";
import {
  CORNER_FACES,
  CORNERS,
  EDGE_FACES,
  EDGES,
} from "../../../core/cube/pieces";
import { parseFacelets } from "../../../core/cube/validity";
import {
  IDENTITIES,
  PUBLISHED_SEQUENCES,
} from "../../reference/published-values";
import {
  afterTurns,
  faceletString,
  solvedStickers,
} from "../../oracles/geometric-cube";
import { turnsOf } from "../notation/turns-of";
import { START } from "./arbitrary-cubes";

/** A sticker's place: the position of its piece and the slot in the position's faces. */
interface Place {
  readonly position: number;
  readonly slot: number;
}

function placeNamed(name: string, faces: readonly (readonly Face[])[]): Place {
  const letters = FACES.filter((face) => name.includes(face));
  const position = faces.findIndex(
    (own) =>
      own.length === letters.length &&
      letters.every((face) => own.includes(face)),
  );
  const slot = faces[position]?.findIndex((face) => face === name[0]) ?? -1;
  expect(slot, `${name} names a place`).toBeGreaterThanOrEqual(0);
  return { position, slot };
}

/** Checks each step of the cycles and says which positions they name. */
function expectCycles(
  cycles: readonly string[],
  faces: readonly (readonly Face[])[],
  permutation: Uint8Array,
  orientation: Uint8Array,
): ReadonlySet<number> {
  const named = new Set<number>();
  for (const cycle of cycles) {
    const places = cycle.split(" -> ").map((name) => placeNamed(name, faces));
    expect(places.length).toBeGreaterThan(1);
    places.forEach((to, i) => {
      const from = places[i - 1];
      if (from === undefined) return;
      named.add(to.position);
      expect(permutation[to.position]).toBe(from.position);
      const turned = orientation[to.position] ?? NaN;
      const stickers = faces[to.position]?.length ?? NaN;
      expect((from.slot + turned) % stickers).toBe(to.slot);
    });
  }
  return named;
}

describe("published sequences (sequences.json)", () => {
  it("there are 23 of them", () => {
    expect(PUBLISHED_SEQUENCES).toHaveLength(23);
  });

  it.each(PUBLISHED_SEQUENCES)(
    "$name shows the published stickers",
    (entry) => {
      const after = applyTurns(START, turnsOf(entry.moves));
      expect(formatFacelets(after)).toBe(entry.facelets);
      expect(parseFacelets(entry.facelets)).toEqual({ ok: true, value: after });
      expect(faceletString(afterTurns(solvedStickers(), entry.moves))).toBe(
        entry.facelets,
      );
    },
  );

  it.each(PUBLISHED_SEQUENCES)("$name has the published order", (entry) => {
    const { cubies } = applyTurns(START, turnsOf(entry.moves));
    expect(order(cubies)).toBe(entry.order);
  });

  it.each(PUBLISHED_SEQUENCES)(
    "$name moves pieces in the published cycles and no others",
    (entry) => {
      const { cubies } = applyTurns(START, turnsOf(entry.moves));
      const corners = expectCycles(
        entry.cornerCycles,
        CORNER_FACES,
        cubies.cornerPermutation,
        cubies.cornerOrientation,
      );
      const edges = expectCycles(
        entry.edgeCycles,
        EDGE_FACES,
        cubies.edgePermutation,
        cubies.edgeOrientation,
      );
      for (const corner of CORNERS)
        expect(isCornerPlaced(cubies, corner)).toBe(!corners.has(corner));
      for (const edge of EDGES)
        expect(isEdgePlaced(cubies, edge)).toBe(!edges.has(edge));
    },
  );

  it("the superflip flips every edge in its place and nothing else", () => {
    const flip = PUBLISHED_SEQUENCES.find(({ name }) => name === "superflip20");
    const { cubies } = applyTurns(START, turnsOf(flip?.moves ?? ""));
    expect([...cubies.edgeOrientation]).toEqual(new Array(12).fill(1));
    expect(
      isSameState(
        { ...cubies, edgeOrientation: SOLVED.edgeOrientation },
        SOLVED,
      ),
    ).toBe(true);
  });

  it.each(IDENTITIES)("%s is the same as %s", (short, long) => {
    for (const suffix of ["", "2", "'"]) {
      const times = { "": 1, "2": 2, "'": 3 }[suffix] ?? 0;
      const turns = new Array(times).fill(long).join(" ");
      expect(applyTurns(START, turnsOf(short + suffix))).toEqual(
        applyTurns(START, turnsOf(turns)),
      );
    }
  });
});
