import { describe, expect, it } from "vitest";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { CORNERS, EDGES, type Pieces } from "../../../core/cube/pieces";
import { isCornerPlaced, isEdgePlaced } from "../../../core/cube/partly-known";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import {
  EASE_PARTS,
  easeOf,
  HAND_COSTS,
} from "../../../core/solver/ease-of-turning";
import { effectOf } from "../../../core/solver/face-turn-sequence";
import { eachKeepingSequence } from "../../../core/solver/keeping-sequences";
import { EVERY_TURN, TURNS_COUNTED } from "../../../core/solver/turn-costs";
import {
  faceTurnsOfSequence,
  MAY_FOLLOW,
} from "../../../core/solver/turns-in-holds";
import { LAST_LAYER_STATES_AT_HALF_TURN_DEPTH } from "../../reference/published-values";
import { IS_SOAK } from "../../soak/times";

/** The first two layers, the last one on top. */
const TWO_LAYERS: Pieces = {
  corners: CORNERS.slice(4),
  edges: EDGES.slice(4),
};

const FACE_TURN_INDICES = Array.from({ length: 18 }, (_, turn) => turn);

/** How many states of the last layer are at each distance, as far as sequences reach. */
function statesByLength(most: number, mostFromEnd: number): number[] {
  const lengths = new Map<string, number>();
  eachKeepingSequence(
    {
      kept: TWO_LAYERS,
      turns: FACE_TURN_INDICES,
      costs: TURNS_COUNTED,
      most,
      mostFromEnd,
    },
    (sequence) => {
      const state = effectOf(sequence);
      const name = [
        state.cornerPermutation,
        state.cornerOrientation,
        state.edgePermutation,
        state.edgeOrientation,
      ].join(" ");
      const known = lengths.get(name) ?? Infinity;
      lengths.set(name, Math.min(known, sequence.length));
    },
  );
  const counts = Array.from({ length: most + 1 }, () => 0);
  for (const length of lengths.values())
    counts[length] = (counts[length] ?? 0) + 1;
  return counts;
}

describe("all sequences that keep the first two layers", () => {
  it(`reach as many states of the last layer with each length as published (up to ${IS_SOAK ? 12 : 10} turns; up to 12 with TURNWISE_SOAK)`, () => {
    const most = IS_SOAK ? 12 : 10;
    expect(statesByLength(most, Math.floor(most / 2))).toEqual(
      LAST_LAYER_STATES_AT_HALF_TURN_DEPTH.slice(0, most + 1),
    );
  }, 600_000);

  it("are the same wherever the two ends are joined", () => {
    const from = [1, 2, 3, 4].map((end) => statesByLength(6, end));
    expect(new Set(from.map((counts) => counts.join())).size).toBe(1);
  });
});

/** What one cross edge and its slot keep when every sequence is tried. */
const FEW: Pieces = { corners: CORNERS.slice(4, 5), edges: EDGES.slice(4, 6) };

function isKept(sequence: readonly number[]): boolean {
  const turns = sequence.map(
    (turn) => EVERY_TURN[turn] ?? ({ layer: "U", quarters: 1 } as const),
  );
  const { cubies } = applyTurns({ cubies: SOLVED, hold: NO_ROTATION }, turns);
  return (
    FEW.corners.every((piece) => isCornerPlaced(cubies, piece)) &&
    FEW.edges.every((piece) => isEdgePlaced(cubies, piece))
  );
}

/** All sequences up to a cost, tried one after the other. */
function triedBlindly(most: number): string[] {
  const found: string[] = [];
  const isWhole = (turn: number) =>
    "xyz".includes(EVERY_TURN[turn]?.layer ?? "");
  const goOn = (sequence: readonly number[]): void => {
    const last = sequence.at(-1);
    if (last === undefined || !isWhole(last))
      if (isKept(sequence)) found.push(written(sequence));
    for (const turn of EVERY_TURN.keys()) {
      if (last !== undefined && MAY_FOLLOW[last * 54 + turn] === 0) continue;
      const next = [...sequence, turn];
      const turns = next.map(
        (one) => EVERY_TURN[one] ?? ({ layer: "U", quarters: 1 } as const),
      );
      if (easeOf(turns) * EASE_PARTS <= most + 1e-9) goOn(next);
    }
  };
  goOn([]);
  return found;
}

function written(sequence: readonly number[]): string {
  return formatTurns(sequence.flatMap((turn) => EVERY_TURN[turn] ?? []));
}

/** Whether two turns about one axis have a turn of the whole cube between them: then the search leaves the sequence out. */
function isSaidInTwo(text: string): boolean {
  const turns = text
    .split(" ")
    .map((one) => EVERY_TURN.findIndex((turn) => formatTurns([turn]) === one));
  return turns.some((turn, i) => {
    const before = turns.slice(0, i + 1);
    const faces = (sequence: readonly number[]) =>
      faceTurnsOfSequence(sequence);
    if (i < 2 || !"xyz".includes(EVERY_TURN[turns[i - 1] ?? 0]?.layer ?? ""))
      return false;
    const axisOf = (face: number | undefined) =>
      Math.floor((face ?? 0) / 3) % 3;
    const upToNow = faces(before);
    const upToThen = faces(turns.slice(0, i - 1));
    return (
      upToNow.length > upToThen.length &&
      turn >= 0 &&
      axisOf(upToNow.at(-1)) === axisOf(upToThen.at(-1))
    );
  });
}

describe("sequences up to a cost of the hands", () => {
  it("are all that trying every sequence finds, each once, and no other", () => {
    const most = 17;
    const found: string[] = [];
    eachKeepingSequence(
      {
        kept: FEW,
        turns: [...EVERY_TURN.keys()],
        costs: HAND_COSTS,
        most,
        mostFromEnd: 8,
      },
      (sequence, bound) => {
        const turns = sequence.flatMap((turn) => EVERY_TURN[turn] ?? []);
        expect(bound).toBeLessThanOrEqual(easeOf(turns) * EASE_PARTS + 1e-9);
        // What costs more through the grip at the joint may be among them.
        if (easeOf(turns) * EASE_PARTS <= most + 1e-9)
          found.push(written(sequence));
      },
    );
    const tried = triedBlindly(most).filter((text) => !isSaidInTwo(text));
    expect(found.toSorted()).toEqual(tried.toSorted());
    expect(found.length).toBeGreaterThan(100);
  });

  it("keep to the turns and the beginnings they are given", () => {
    const found: string[] = [];
    eachKeepingSequence(
      {
        kept: TWO_LAYERS,
        turns: [...EVERY_TURN.keys()].filter((turn) =>
          ["R", "U"].includes(EVERY_TURN[turn]?.layer ?? ""),
        ),
        costs: HAND_COSTS,
        most: 45,
        mostFromEnd: 20,
        mayBegin: (turn) => EVERY_TURN[turn]?.layer === "R",
      },
      (sequence) => found.push(written(sequence)),
    );
    expect(found).toContain("R U R' U R U2 R'");
    expect(found.filter((text) => !/^(R[2']?( |$)|$)/.test(text))).toEqual([]);
    expect(found.filter((text) => /[^RU2' ]/.test(text))).toEqual([]);
  });
});
