/**
 * How far pieces are from what a case search's goal asks of them.
 *
 * Every table is over two halves, found breadth first from all that the goal
 * allows at once: at most 266,112 arrangements in 332 KB, about 12 ms. Besides
 * the four pieces of a layer, the front and the back of the middle layer with
 * the corners above are one table each: that took a fifth off the turns tried
 * for the last layer. More tables (all 15 of the first two layers) halve the
 * turns and double the time of each. They are kept, since every case of a
 * stage asks for the same ones.
 */
import { FREE_LAYER } from "../cases/stage";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import { type AskedPiece, FREE_QUARTERS } from "../cases/case-goal";
import {
  type Half,
  halvesOf,
  namesOf,
  slotsAt,
  valuesWanted,
} from "./case-halves";
import { ORIENTATIONS } from "../cube/pieces";
import { partOf, type Steps } from "../steps";

/** Distances of one half or of two, which are indices into the list of halves. */
export interface CaseTable {
  readonly first: number;
  /** The same as the first where the table is of one half. */
  readonly second: number;
  /** How many values the second has; 0 where the table is of one half. */
  readonly width: number;
  /**
   * Least numbers of face turns, turns of the free layer at the end left out;
   * `NEVER` where no turns lead to the goal.
   *
   * Shape: `[first × width + second]`.
   */
  readonly turns: Uint8Array;
}

/** What a search follows for the pieces of a goal. */
export interface FollowedPieces {
  readonly halves: readonly Half[];
  readonly tables: readonly CaseTable[];
}

/** Stands for a distance where no turns lead to the goal. */
export const NEVER = 255;

/** Makes tables and keeps them. */
export interface CaseTableShelf {
  /** All that is followed for the pieces of a goal. */
  follow(asked: readonly AskedPiece[]): Steps<FollowedPieces>;
}

/** Which halves are looked up together, those that turn a search back most often first. */
const TOGETHER: readonly (readonly [string, string])[] = [
  ["edge 4", "corner 0"],
  ["edge 5", "corner 1"],
  ["edge 0", "edge 1"],
  ["edge 4", "edge 5"],
  ["corner 0", "corner 1"],
  ["edge 2", "edge 3"],
  ["corner 2", "corner 3"],
  ["edge 2", "corner 2"],
  ["edge 3", "corner 3"],
];

/** A shelf with no tables on it. */
export function createCaseTableShelf(): CaseTableShelf {
  const kept = new Map<string, Uint8Array>();

  function* distances(halves: readonly Half[]): Steps<Uint8Array> {
    const name = namesOf(halves);
    const turns = kept.get(name) ?? (yield* buildDistances(halves));
    kept.set(name, turns);
    return turns;
  }

  return {
    *follow(asked) {
      const halves = halvesOf(asked);
      const wanted = tablesFor(halves);
      const tables: CaseTable[] = [];
      for (const [i, [first, second = first]] of wanted.entries()) {
        const pair = first === second ? [first] : [first, second];
        const turns = yield* partOf(
          distances(pair.map((half) => halves[half]!)),
          i / wanted.length,
          (i + 1) / wanted.length,
        );
        const width = first === second ? 0 : halves[second]!.size;
        tables.push({ first, second, width, turns });
      }
      return { halves, tables };
    },
  };
}

/** The tables that there can be for some halves, and one for each half that is then in none. */
function tablesFor(
  halves: readonly Half[],
): readonly (readonly [number, number?])[] {
  const at = (name: string) => halves.findIndex((half) => half.name === name);
  const together = TOGETHER.map(([a, b]) => [at(a), at(b)] as const).filter(
    ([a, b]) => a >= 0 && b >= 0,
  );
  const alone = [...halves.keys()].filter(
    (half) => !together.some((pair) => pair.includes(half)),
  );
  return [...together, ...alone.map((half) => [half] as const)];
}

/** Arrangements visited between two pauses: about 2 ms. */
const ARRANGEMENTS_A_STEP = 1 << 15;

function* buildDistances([first, second]: readonly Half[]): Steps<Uint8Array> {
  const turnCount = FACE_TURNS.length;
  const movesOfFirst = first!.moves;
  // A half that is not there has one value, which every turn keeps.
  const movesOfSecond = second?.moves ?? new Uint16Array(turnCount);
  const width = second?.size ?? 1;
  const turns = new Uint8Array(first!.size * width).fill(NEVER);
  const queue = new Uint32Array(turns.length);
  let met = 0;
  let done = 0;

  const meet = (arrangement: number, distance: number): void => {
    if (turns[arrangement] !== NEVER) return;
    turns[arrangement] = distance;
    queue[met++] = arrangement;
  };

  const visit = (until: number): void => {
    for (; done < until; done++) {
      const arrangement = queue[done]!;
      const b = arrangement % width;
      const a = (arrangement - b) / width;
      const distance = turns[arrangement]! + 1;
      for (let turn = 0; turn < turnCount; turn++)
        meet(
          movesOfFirst[a * turnCount + turn]! * width +
            movesOfSecond[b * turnCount + turn]!,
          distance,
        );
    }
  };

  for (const a of valuesWanted(first!)) {
    for (const b of second === undefined ? [0] : valuesWanted(second)) {
      if (!isPossible(first!, a, second, b)) continue;
      for (const quarters of FREE_QUARTERS)
        meet(
          afterFree(movesOfFirst, a, quarters) * width +
            afterFree(movesOfSecond, b, quarters),
          0,
        );
    }
  }
  while (done < met) {
    visit(Math.min(met, done + ARRANGEMENTS_A_STEP));
    yield done / queue.length;
  }
  return turns;
}

function afterFree(moves: Uint16Array, value: number, quarters: number) {
  return quarters === 0
    ? value
    : moves[value * FACE_TURNS.length + faceTurnIndex(FREE_LAYER, quarters)]!;
}

/** Whether no two pieces are in one place. */
function isPossible(
  first: Half,
  a: number,
  second: Half | undefined,
  b: number,
): boolean {
  const places = [
    ...placesAt(first, a),
    ...(second === undefined ? [] : placesAt(second, b)),
  ];
  return new Set(places).size === places.length;
}

function placesAt(half: Half, value: number): readonly string[] {
  return slotsAt(half, value).map((slot, i) => {
    const { kind } = half.pieces[i]!;
    return `${kind} ${Math.floor(slot / ORIENTATIONS[kind])}`;
  });
}
