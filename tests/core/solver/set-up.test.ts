import Cube from "cubejs";
import { describe, expect, it, vi } from "vitest";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import { caseEntry, waysOf } from "../../../core/cases/case-table";
import { mostPlaced, unmarkedOf } from "../../../core/cases/constraint";
import { partlyKnownPosition } from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import {
  FIRST_LAYER_CORNERS,
  FIRST_LAYER_EDGES,
} from "../../../core/cases/stage";
import {
  HOLDS,
  type Hold,
  holdOfVariant,
  HOME_INDICES,
} from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import { randomVariant } from "../../../core/cases/random-variant";
import {
  compose,
  type Cubies,
  invert,
  isSameState,
  type PartlyKnownCubies,
  SOLVED,
  UNKNOWN,
} from "../../../core/cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../../../core/cube/face-turns";
import { formatFacelets } from "../../../core/cube/facelets";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import {
  isCornerPlaced,
  isEdgePlaced,
  knownOnly,
} from "../../../core/cube/partly-known";
import { CORNERS, EDGES } from "../../../core/cube/pieces";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { isWholeCubeTurn, type Turn } from "../../../core/cube/turns";
import { wholeCubeTurnsBetween } from "../../../core/cube/whole-cube-turns";
import { formatTurns } from "../../../core/notation/format";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { randomSource } from "../../../core/random-source";
import { createSetUpFinder, type SetUp } from "../../../core/solver/set-up";
import { runToEnd } from "../../../core/steps";

const SEED = 20_251_127;

const CROSS = knownOnly(SOLVED, new Set(), new Set(FIRST_LAYER_EDGES));
const LAYER = knownOnly(
  SOLVED,
  new Set(FIRST_LAYER_CORNERS),
  new Set(FIRST_LAYER_EDGES),
);

const finder = createSetUpFinder();

// The machine that runs this may be busy; nothing here asks how fast it is.
vi.setConfig({ testTimeout: 60_000 });

function held(cubies: PartlyKnownCubies, hold: Hold): HeldCube {
  return { cubies, hold: holdOfVariant({ home: 0, seenFrom: 0 }, hold) };
}

/** What a beginner's cube needs before a case can be set up on it. */
function enoughFor(id: CaseId): PartlyKnownCubies {
  return caseEntry(id).stage === "first-layer-edges" ? CROSS : LAYER;
}

function setUp(from: HeldCube, to: Position, seed: number): SetUp {
  const result = runToEnd(finder.find(from, to, randomSource(seed)));
  if (!result.ok) throw new Error(result.error.code);
  return result.value;
}

/** The stickers after turns, on a cube of which the unknown pieces are imagined, as cubejs sees them. */
function seenByCubejs(
  from: HeldCube,
  turns: readonly Turn[],
  seed: number,
): string {
  const cubies = sampleState(randomSource(seed), {
    ...from.cubies,
    unplacedCorners: [],
    unplacedEdges: [],
  });
  const whole = wholeCubeTurnsBetween(NO_ROTATION, from.hold);
  return Cube.fromString(formatFacelets({ cubies, hold: NO_ROTATION }))
    .move(formatTurns([...whole, ...turns]))
    .asString();
}

/** Where a string of stickers differs from one in which `?` stands for any. */
function differences(seen: string, wanted: string): number {
  return [...wanted].filter((letter, i) => letter !== "?" && letter !== seen[i])
    .length;
}

const FREE_TURNS: readonly Cubies[] = [
  SOLVED,
  ...([1, 2, 3] as const).map(
    (quarters) => FACE_TURNS[faceTurnIndex("D", quarters)] ?? SOLVED,
  ),
];

/** Whether two effects on all pieces are the same but for turns of the free layer before and after. */
function isSameButForFreeTurns(a: Cubies, b: Cubies): boolean {
  return FREE_TURNS.some((before) =>
    FREE_TURNS.some((after) =>
      isSameState(compose(compose(before, a), after), b),
    ),
  );
}

describe("a set-up", () => {
  const lengths: number[] = [];
  /** Set-ups that turn the whole cube for a single turn. */
  let brief = 0;

  it.each(FIRST_LAYER_IDS)(
    "of %s leads from what a beginner's cube has to the position, for every home and both holds, by another route than any way taken back",
    (id) => {
      const random = randomSource(SEED + FIRST_LAYER_IDS.indexOf(id));
      for (const home of HOME_INDICES) {
        for (const hold of HOLDS) {
          const variant = randomVariant(random, id, {
            homes: [home],
            turnedAway: true,
            seenFromAnywhere: true,
            placedCount: mostPlaced(id) as 2 | 3,
          });
          const whole = randomPosition(random, id, variant, hold);
          const to = partlyKnownPosition(whole, "named");
          const from = held(enoughFor(id), hold);
          const seed = random.below(1_000_000);
          const { turns, after } = setUp(from, to, seed);

          expect(after).toEqual(applyTurns(from, turns));
          const seen = seenByCubejs(from, turns, seed);
          const text = `${id} ${formatTurns(turns)}`;
          expect([
            text,
            differences(seen, formatFacelets(startOf(to))),
          ]).toEqual([text, 0]);

          const effect = applyTurns(
            { cubies: SOLVED, hold: from.hold },
            turns,
          ).cubies;
          const inFront = holdOfVariant({ home, seenFrom: 0 }, hold);
          const taken = HANDS.flatMap((hand) => waysOf(id, hold, hand))
            .map((way) =>
              applyTurns({ cubies: SOLVED, hold: inFront }, way.turns),
            )
            .some((way) => isSameButForFreeTurns(effect, invert(way.cubies)));
          expect([text, taken]).toEqual([text, false]);

          expect(turns.some(isWholeCubeTurn)).toBe(true);
          expect(turns.some(({ layer }) => layer === "B")).toBe(false);
          const free = hold === "up" ? "D" : "U";
          expect([text, turns.some(({ layer }) => layer === free)]).toEqual([
            text,
            true,
          ]);
          lengths.push(turns.length);
          if (
            turns.some(
              (turn, i) =>
                isWholeCubeTurn(turn) &&
                i + 2 < turns.length &&
                isWholeCubeTurn(turns[i + 2] ?? turn),
            )
          )
            brief += 1;
        }
      }
    },
  );

  it("turns the whole cube for a single turn once in twenty times at most", () => {
    expect(brief / lengths.length).toBeLessThanOrEqual(0.05);
  });

  it("takes a few turns: half of them seven or fewer, none more than twelve", () => {
    const sorted = lengths.toSorted((a, b) => a - b);
    expect(sorted.length).toBe(FIRST_LAYER_IDS.length * 8);
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(7);
    expect(sorted.at(-1)).toBeLessThanOrEqual(12);
  });

  it("does not happen to place pieces that must not be, where they are known", () => {
    const random = randomSource(SEED + 100);
    for (const id of ["E1", "E3", "E8a", "C1", "C3", "C6"] as const) {
      for (const placedCount of [0, 1] as const) {
        const variant = randomVariant(random, id, { placedCount });
        const to = partlyKnownPosition(
          randomPosition(random, id, variant, "up"),
          "named",
        );
        const { after } = setUp(held(LAYER, "up"), to, random.below(1000));
        const { corners, edges } = unmarkedOf(to);
        expect(corners.length + edges.length).toBeGreaterThan(0);
        expect([
          ...corners.filter((piece) => isCornerPlaced(after.cubies, piece)),
          ...edges.filter((piece) => isEdgePlaced(after.cubies, piece)),
        ]).toEqual([]);
      }
    }
  });

  it("leads on from a position that was skipped, and keeps following what was known", () => {
    const random = randomSource(SEED + 200);
    let cube = held(LAYER, "down");
    for (const id of ["C3", "C10", "S1", "C6", "C1", "E5b"] as const) {
      const variant = randomVariant(random, id, { turnedAway: true });
      const to = partlyKnownPosition(
        randomPosition(random, id, variant, "down"),
        "named",
      );
      const { turns, after } = setUp(cube, to, random.below(1000));
      const seen = formatFacelets(after);
      expect(differences(seen, formatFacelets(startOf(to)))).toBe(0);
      expect(differences(seenByCubejs(cube, turns, 1), seen)).toBe(0);
      const known = [...after.cubies.cornerPermutation].filter(
        (piece) => piece !== UNKNOWN,
      );
      expect(known.toSorted()).toEqual([...FIRST_LAYER_CORNERS]);
      cube = after;
    }
  });

  it("is repeated by its seed, and another seed brings another", () => {
    const variant = { home: 1, placed: [0, 2, 3], turnedAway: 0, seenFrom: 0 };
    const to = partlyKnownPosition(
      randomPosition(
        randomSource(1),
        "E3",
        variant as Position["variant"],
        "up",
      ),
      "named",
    );
    const texts = [1, 1, 2, 3, 4, 5].map((seed) =>
      formatTurns(setUp(held(CROSS, "up"), to, seed).turns),
    );
    expect(texts[0]).toBe(texts[1]);
    expect(new Set(texts).size).toBeGreaterThan(3);
  });

  it("turns the whole cube over where it is held the other way up", () => {
    const variant = randomVariant(randomSource(2), "E1");
    const to = partlyKnownPosition(
      randomPosition(randomSource(2), "E1", variant, "down"),
      "named",
    );
    const from = held(CROSS, "up");
    const { turns } = setUp(from, to, 3);
    const seen = seenByCubejs(from, turns, 3);
    expect(differences(seen, formatFacelets(startOf(to)))).toBe(0);
  });

  it("asks for no face turn where the cube shows the position already", () => {
    const variant = randomVariant(randomSource(3), "C4");
    const to = partlyKnownPosition(
      randomPosition(randomSource(3), "C4", variant, "up"),
      "named",
    );
    const { turns } = setUp(held(to.cubies, "up"), to, 1);
    expect(outerBlockTurns(turns)).toBe(0);
    expect(setUp(startOf(to), to, 1).turns).toEqual([]);
  });

  it("of a position in which every piece is known leads there from a solved cube in at most 23 face turns", () => {
    const random = randomSource(SEED + 300);
    for (const id of ["E3", "C2", "S2"] as const) {
      for (const hold of HOLDS) {
        const variant = randomVariant(random, id);
        const to = randomPosition(random, id, variant, hold);
        const from = held(SOLVED, hold);
        const { turns } = setUp(from, to, random.below(1000));
        expect(seenByCubejs(from, turns, 1)).toBe(formatFacelets(startOf(to)));
        expect(outerBlockTurns(turns)).toBeLessThanOrEqual(23);
      }
    }
  });

  it("is found even where so many pieces are named that no short one exists", () => {
    const random = randomSource(SEED + 400);
    const variant = randomVariant(random, "C5");
    const whole = randomPosition(random, "C5", variant, "up");
    const to = {
      ...whole,
      cubies: knownOnly(
        whole.cubies,
        new Set(CORNERS),
        new Set(EDGES.slice(0, 9)),
      ),
    };
    const from = held(sampleState(random, ANY_STATE), "up");
    const { turns } = setUp(from, to, 5);
    const seen = seenByCubejs(from, turns, 5);
    expect(differences(seen, formatFacelets(startOf(to)))).toBe(0);
    expect(outerBlockTurns(turns)).toBeLessThanOrEqual(23);
  });
});

describe("what cannot be set up", () => {
  const random = randomSource(SEED + 500);
  const whole = randomPosition(random, "C1", randomVariant(random, "C1"), "up");
  const corner = partlyKnownPosition(whole, "named");

  it("a corner on a cube of which only the cross is known: the unknown pieces are named", () => {
    const found = runToEnd(finder.find(held(CROSS, "up"), corner, random));
    const named = { corners: [...FIRST_LAYER_CORNERS], edges: [] };
    expect(found).toEqual({
      ok: false,
      error: { code: "piece-not-known", ...named },
    });
  });

  it("anything from or to a cube that cannot be", () => {
    const twisted: Cubies = {
      ...SOLVED,
      cornerOrientation: Uint8Array.of(1, 0, 0, 0, 0, 0, 0, 0),
    };
    expect(runToEnd(finder.find(held(twisted, "up"), corner, random))).toEqual({
      ok: false,
      error: { code: "impossible-cube", which: "from" },
    });
    expect(
      runToEnd(
        finder.find(held(SOLVED, "up"), { ...whole, cubies: twisted }, random),
      ),
    ).toEqual({ ok: false, error: { code: "impossible-cube", which: "to" } });
  });
});
