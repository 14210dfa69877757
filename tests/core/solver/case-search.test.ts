import fc from "fast-check";
import { beforeAll, describe, expect, it, vi } from "vitest";
import {
  FIRST_LAYER_CORNER_IDS,
  FIRST_LAYER_EDGE_IDS,
} from "../../../core/cases/case-ids";
import { waysOf } from "../../../core/cases/case-table";
import { mostPlaced } from "../../../core/cases/constraint";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { FREE_LAYER } from "../../../core/cases/stage";
import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { faceTurnIndex } from "../../../core/cube/face-turns";
import { FACES } from "../../../core/cube/faces";
import { agreesWith, knownOnly } from "../../../core/cube/partly-known";
import {
  CORNER_NAMES,
  CORNERS,
  EDGE_NAMES,
  EDGES,
} from "../../../core/cube/pieces";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { NO_ROTATION, rotationAbout } from "../../../core/cube/symmetries";
import { randomSource } from "../../../core/random-source";
import type { CaseGoal } from "../../../core/cases/case-goal";
import { sequenceImage } from "../../../core/solver/case-starts";
import {
  type CaseAnswer,
  type CaseQuestion,
  type CaseSearch,
  createCaseSearch,
} from "../../../core/solver/case-search";
import {
  afterSequence,
  faceOfTurn,
  faceTurnsOf,
  type FaceTurnSequence,
  normalised,
  withoutEndsOf,
} from "../../../core/solver/face-turn-sequence";
import { ALL_TURNS } from "../../../core/solver/move-tables";
import { runToEnd } from "../../../core/steps";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
  SHORTEST_PERMUTATIONS,
} from "../../reference/published-values";
import { everyVariant } from "../cases/every-variant";
import { turnsOf } from "../notation/turns-of";
import { carried, placedPieces, sourcesOf } from "../cases/seen-by-oracle";
import {
  ALL_PLACED,
  answeredBy,
  goalOf,
  LAST_LAYER_TURNED,
  pairStates,
  secondLayerEdgeStates,
  TWO_LAYERS,
} from "./case-questions";

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const IN_SOAK = process.env["TURNWISE_SOAK"] !== undefined;

let search: CaseSearch;

beforeAll(() => {
  search = createCaseSearch();
});

function answers(question: CaseQuestion): readonly CaseAnswer[] {
  return runToEnd(search.answers(question));
}

function lengthOf(found: readonly CaseAnswer[]): number | undefined {
  return found[0]?.turns.length;
}

function nameOfTurn(turn: number): string {
  return `${FACES[faceOfTurn(turn)] ?? "?"}${["", "2", "'"][turn % 3] ?? "?"}`;
}

function freeTurns(quarters: number): string {
  return ["", "D", "D2", "D'"][quarters] ?? "?";
}

/** The 54 letters after an answer, by the geometric oracle. */
function afterByOracle(from: Cubies, answer: CaseAnswer): string {
  const text = [
    freeTurns(answer.before),
    ...answer.turns.map(nameOfTurn),
    freeTurns(answer.after),
  ].join(" ");
  const facelets = formatFacelets({ cubies: from, hold: NO_ROTATION });
  return carried(facelets, sourcesOf(text));
}

/** Whether the oracle sees every piece placed that the goal wants placed. */
function isPlacedByOracle(facelets: string, { placed }: CaseGoal): boolean {
  const seen = placedPieces(facelets);
  return [
    ...placed.corners.map((piece) => CORNER_NAMES[piece] ?? "?"),
    ...placed.edges.map((piece) => EDGE_NAMES[piece] ?? "?"),
  ].every((name) => seen.has(Array.from(name).toSorted().join("")));
}

describe("the case search on the first layer", () => {
  const IDS = [...FIRST_LAYER_EDGE_IDS, ...FIRST_LAYER_CORNER_IDS];

  it.each(IDS)(
    "finds for %s nothing longer than any taught way, and every way found is right by the oracle",
    (id) => {
      const random = randomSource(5);
      for (const variant of everyVariant(id, mostPlaced(id)).filter(
        ({ seenFrom, turnedAway }) => seenFrom === 0 && turnedAway === 0,
      )) {
        const position = randomPosition(random, id, variant, "up");
        const goal = goalOf(position);
        const from = partlyKnownPosition(position, "named").cubies;
        const found = answers({ from, goal });
        const taught = waysOf(id, "up").map(({ school, turns }) => {
          const sequence = faceTurnsOf(startOf(position).hold, turns);
          const { length } = withoutEndsOf(FREE_LAYER, normalised(sequence));
          return { school, length };
        });
        const least = Math.min(...taught.map(({ length }) => length));
        expect(lengthOf(found)).toBeLessThanOrEqual(least);
        // Source: `ways.test.ts` and `shortest-ways.test.ts` (computed).
        expect([id, lengthOf(found)]).toEqual([id, least]);
        for (const answer of found) {
          const after = afterByOracle(position.cubies, answer);
          expect(isPlacedByOracle(after, goal)).toBe(true);
        }
      }
    },
  );
});

describe("the case search on the second layer", () => {
  const goal: CaseGoal = { placed: TWO_LAYERS };

  it.each([
    ["second-layer edge", secondLayerEdgeStates, 10],
    ["pair", pairStates, 150],
  ] as const)(
    "answers every state of one %s, by the oracle too",
    (_, states, count) => {
      const random = randomSource(6);
      expect(states()).toHaveLength(count);
      for (const state of states()) {
        const from = sampleState(random, {
          ...state,
          unplacedCorners: [],
          unplacedEdges: [],
        });
        const found = answers({ from: state, goal });
        expect(found.length).toBeGreaterThan(0);
        for (const answer of found) {
          expect(answer.turns).toHaveLength(lengthOf(found) ?? NaN);
          expect(isPlacedByOracle(afterByOracle(from, answer), goal)).toBe(
            true,
          );
        }
      }
    },
  );

  // Source: check-values, "Cases": 41 pairs without the solved one are common practice.
  it("asks the same of the 41 pairs however the free layer is turned", () => {
    const found = pairStates().map((from) =>
      answers({ from, goal })
        .map(({ turns }) => turns.join())
        .toSorted()
        .join(" "),
    );
    expect(new Set(found).size).toBe(42);
  });
});

describe("the case search on the last layer", () => {
  // Thirteen turns take two minutes each; V and E, with fourteen, are not searched.
  const USUAL = LAST_LAYER_PERMUTATIONS.filter(
    ({ name }) => (SHORTEST_PERMUTATIONS[name] ?? NaN) <= (IN_SOAK ? 13 : 10),
  );

  it.each(USUAL)(
    "places permutation $name in the fewest turns published (those of up to 10 turns; up to 13 with TURNWISE_SOAK)",
    ({ name, sequence }) => {
      const from = answeredBy(sequence);
      const found = answers({ from, goal: ALL_PLACED });
      expect(lengthOf(found)).toBe(SHORTEST_PERMUTATIONS[name]);
      for (const answer of found)
        expect(isPlacedByOracle(afterByOracle(from, answer), ALL_PLACED)).toBe(
          true,
        );
    },
    IN_SOAK ? 1_800_000 : 60_000,
  );

  it("has a length for each of the 21", () => {
    expect(Object.keys(SHORTEST_PERMUTATIONS).toSorted()).toEqual(
      LAST_LAYER_PERMUTATIONS.map(({ name }) => name).toSorted(),
    );
  });

  // The listed sequences (common practice) need at least as many turns.
  const TURNED = LAST_LAYER_ORIENTATIONS.filter(
    ({ number }) =>
      IN_SOAK || [26, 27, 33, 37, 43, 44, 45, 57].includes(number),
  );

  it.each(TURNED)(
    "turns orientation $number in no more turns than the usual sequence, by the oracle too (8 of the 57; all with TURNWISE_SOAK)",
    ({ sequence }) => {
      const from = answeredBy(sequence);
      const found = answers({ from, goal: LAST_LAYER_TURNED });
      const listed = withoutEndsOf(FREE_LAYER, usual(sequence)).length;
      expect(lengthOf(found)).toBeGreaterThan(0);
      expect(lengthOf(found)).toBeLessThanOrEqual(listed);
      for (const answer of found) {
        const after = afterByOracle(from, answer);
        expect(isPlacedByOracle(after, LAST_LAYER_TURNED)).toBe(true);
        // The nine stickers of the bottom, in the order of the usual string.
        expect(after.slice(27, 36)).toBe("DDDDDDDDD");
      }
    },
    60_000,
  );
});

/** A listed sequence as face turns of a cube whose last layer is at the bottom. */
function usual(sequence: string): FaceTurnSequence {
  return normalised(faceTurnsOf(rotationAbout("z", 2), turnsOf(sequence)));
}

describe("the case search", () => {
  it("finds nothing shorter and nothing else than trying everything up to 4 turns, on random goals", () => {
    const some = (all: readonly number[]) =>
      fc.subarray([...all], { maxLength: 3 });
    fc.assert(
      fc.property(
        some(CORNERS),
        some(EDGES),
        fc.array(fc.nat(17), { minLength: 2, maxLength: 4 }),
        (corners, edges, walk) => {
          const goal: CaseGoal = {
            placed: {
              corners: CORNERS.filter((piece) => corners.includes(piece)),
              edges: EDGES.filter((piece) => edges.includes(piece)),
            },
          };
          const from = afterSequence(SOLVED, walk);
          const found = answers({ from, goal, mostTurns: 4 });
          const blind = blindAnswers(from, goal, 4);
          const own = found.map(({ turns }) => turns.join());
          expect(own.filter((turns) => !blind.has(turns))).toEqual([]);
          // What is one answer from several sides is given once.
          const fromAllSides = new Set(
            found.flatMap(({ turns }) =>
              [0, 1, 2, 3].map((quarters) =>
                sequenceImage(rotationAbout("y", quarters), turns).join(),
              ),
            ),
          );
          expect(
            [...blind].filter((turns) => !fromAllSides.has(turns)),
          ).toEqual([]);
        },
      ),
      { numRuns: 12 },
    );
  });

  it("finds every answer where no two sides look alike", () => {
    const goal: CaseGoal = {
      placed: { corners: CORNERS.slice(0, 1), edges: EDGES.slice(8, 9) },
    };
    const random = randomSource(8);
    for (let i = 0; i < 10; i++) {
      const from = sampleState(random, ANY_STATE);
      const found = answers({ from, goal, mostTurns: 3 });
      const own = new Set(found.map(({ turns }) => turns.join()));
      expect(own).toEqual(blindAnswers(from, goal, 3));
    }
  });

  it("keeps to the faces it is given", () => {
    const from = answeredBy("R U R' U R U2 R'");
    const found = answers({ from, goal: LAST_LAYER_TURNED, faces: ["D", "L"] });
    expect(lengthOf(found)).toBe(7);
    for (const { turns } of found)
      expect(new Set(turns.map(faceOfTurn))).toEqual(new Set([3, 4]));
    const none = answers({ from, goal: LAST_LAYER_TURNED, faces: ["L"] });
    expect(none).toEqual([]);
  });

  it("gives an answer that looks the same from four sides once", () => {
    const from = answeredBy("R2 L2 U R2 L2 U2 R2 L2 U R2 L2");
    const found = answers({ from, goal: ALL_PLACED });
    expect(found.length).toBeGreaterThan(0);
    for (const { turns } of found) {
      const images = [1, 2, 3].map((quarters) =>
        sequenceImage(rotationAbout("y", quarters), turns).join(),
      );
      const others = found.filter((other) => other.turns !== turns);
      expect(others.filter((o) => images.includes(o.turns.join()))).toEqual([]);
    }
  });

  it("begins with the layer across from the free one where all sides look alike", () => {
    const cross: CaseGoal = {
      placed: { corners: [], edges: EDGES.slice(0, 4) },
    };
    const from = afterSequence(SOLVED, [0]);
    expect(answers({ from, goal: cross })).toEqual([
      { before: 0, turns: [2], after: 0 },
    ]);
    // U F2 and one turn more, but not a turn of the free layer beside the U.
    const two = afterSequence(SOLVED, [7, 2]);
    for (const { turns } of answers({ from: two, goal: cross, extraTurns: 1 }))
      expect(withoutEndsOf(FREE_LAYER, turns)).toEqual(turns);
  });

  it("has nothing to do where only the free layer is turned, and says how far", () => {
    const from = afterSequence(SOLVED, [9]);
    expect(answers({ from, goal: ALL_PLACED })).toEqual([
      { before: 0, turns: [], after: 3 },
    ]);
  });

  it("finds nothing where more turns are needed than allowed, and more where longer ones are asked for", () => {
    const [from] = secondLayerEdgeStates().slice(2);
    if (from === undefined) throw new Error("there are ten states");
    const goal: CaseGoal = { placed: TWO_LAYERS };
    const shortest = answers({ from, goal });
    const length = lengthOf(shortest) ?? NaN;
    expect(answers({ from, goal, mostTurns: length - 1 })).toEqual([]);
    const more = answers({ from, goal, extraTurns: 1 });
    expect(more.slice(0, shortest.length)).toEqual(shortest);
    expect(new Set(more.map(({ turns }) => turns.length))).toEqual(
      new Set([length, length + 1]),
    );
    for (const { turns } of more)
      expect(withoutEndsOf(FREE_LAYER, normalised(turns))).toEqual(turns);
  });

  it("places corners that may be turned anyhow where that is asked", () => {
    const goal: CaseGoal = {
      placed: TWO_LAYERS,
      homed: { corners: CORNERS.slice(4), edges: [] },
    };
    const from = answeredBy("R U R' U R U2 R'");
    const found = answers({ from, goal });
    expect(found.length).toBeGreaterThan(0);
    for (const { before, turns, after } of found) {
      const free = (quarters: number) => (quarters === 0 ? [] : [8 + quarters]);
      const end = afterSequence(from, [
        ...free(before),
        ...turns,
        ...free(after),
      ]);
      expect([...end.cornerPermutation]).toEqual([...CORNERS]);
    }
  });

  it("can be stopped between steps and asked something else; its progress only grows", () => {
    const hard = answeredBy("R U2 R2 F R F' U2 R' F R F'");
    const steps = search.answers({ from: hard, goal: LAST_LAYER_TURNED });
    let progress = 0;
    for (let i = 0; i < 20; i++) {
      const step = steps.next();
      if (step.done === true) throw new Error("that was quick");
      expect(step.value).toBeGreaterThanOrEqual(progress);
      expect(step.value).toBeLessThan(1);
      progress = step.value;
    }
    const from = answeredBy("R U R' U R U2 R'");
    expect(lengthOf(answers({ from, goal: LAST_LAYER_TURNED }))).toBe(7);
  });

  it("refuses a cube that cannot be, or whose pieces are not known: that is its caller's mistake", () => {
    const twisted = { ...SOLVED, cornerOrientation: new Uint8Array(8).fill(1) };
    expect(() => answers({ from: twisted, goal: ALL_PLACED })).toThrow(
      "only possible cubes",
    );
    const [from] = pairStates();
    if (from === undefined) throw new Error("there are 150 states");
    expect(() => answers({ from, goal: ALL_PLACED })).toThrow(
      "the pieces of a goal are known",
    );
  });
});

/** All shortest sequences that place a goal's pieces, up to a length, with no bound and none of the search's own questions. */
function blindAnswers(
  from: Cubies,
  { placed }: CaseGoal,
  most: number,
): ReadonlySet<string> {
  const free = [0, 1, 2, 3].map((quarters) =>
    quarters === 0 ? [] : [faceTurnIndex(FREE_LAYER, quarters)],
  );
  const ends = free.map((turns) =>
    knownOnly(
      afterSequence(SOLVED, turns),
      new Set(placed.corners),
      new Set(placed.edges),
    ),
  );
  let level = free.map((turns) => ({
    turns: [] as FaceTurnSequence,
    state: afterSequence(from, turns),
  }));
  for (let length = 0; ; length++) {
    const reached = level.filter(
      ({ turns, state }) =>
        ends.some((end) => agreesWith(state, end)) &&
        withoutEndsOf(FREE_LAYER, turns).length === length,
    );
    if (reached.length > 0 || length === most)
      return new Set(reached.map(({ turns }) => turns.join()));
    level = level.flatMap(({ turns, state }) =>
      ALL_TURNS.map((turn) => [...turns, turn])
        .filter((longer) => normalised(longer).join() === longer.join())
        .map((longer) => ({
          turns: longer,
          state: afterSequence(state, longer.slice(-1)),
        })),
    );
  }
}
