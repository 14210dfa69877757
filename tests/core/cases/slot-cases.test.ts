import { describe, expect, it } from "vitest";
import { caseOrbits } from "../../../core/cases/orbits";
import { arePlaced, recogniseSlot } from "../../../core/cases/recognise-slot";
import {
  type SlotCase,
  slotCases,
  slotCasesBeside,
  slotCaseShownBy,
  slotTwinOf,
} from "../../../core/cases/slot-cases";
import {
  slotPositionSampler,
  slotsAllowed,
} from "../../../core/cases/slot-position";
import {
  piecesOfSlot,
  placedBeforeSlots,
  slotConstraint,
} from "../../../core/cases/slot-stages";
import { SLOT_STAGES } from "../../../core/cases/stage";
import { HOME_INDICES, type HomeIndex } from "../../../core/cases/variant";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { knownOnly } from "../../../core/cube/partly-known";
import {
  emptyCubies,
  type StateConstraint,
} from "../../../core/cube/sample-state";
import {
  conjugate,
  LEFT_RIGHT_MIRROR,
  NO_ROTATION,
  rotationAbout,
  thenSymmetry,
} from "../../../core/cube/symmetries";
import { validateCubies } from "../../../core/cube/validity";
import { inverseTurns } from "../../../core/notation/inverse";
import { pick, randomSource } from "../../../core/random-source";
import { PUBLISHED_SEQUENCES } from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";
import { madeOnTop } from "./made-on-top";
import { unevenPieces } from "./piece-places";
import { PLACED_SETS } from "./placed-sets";

const SEED = 12;

// Source: check-values, "Cases": 41 common practice, the rest computed.
const PUBLISHED = {
  "second-layer-edges": [9, 7, 5, 3],
  pairs: [167, 113, 71, 41],
} as const;

describe("a slot's cases", () => {
  it.each(SLOT_STAGES)(
    "of %s are as many as published, whichever other slots are placed",
    (stage) => {
      for (const placed of PLACED_SETS) {
        const wanted = PUBLISHED[stage][placed.length];
        const orbits = caseOrbits(slotConstraint(stage, placed));
        expect(orbits.length, placed.join()).toBe(wanted);
        const beside = slotCasesBeside(stage, placed);
        const shown = orbits.map(
          ([member = []]) => slotCaseShownBy(stage, member)?.case.code,
        );
        expect(new Set(shown)).toEqual(new Set(beside.map(({ code }) => code)));
      }
    },
  );

  it.each(SLOT_STAGES)("of %s have a code each of their own", (stage) => {
    const codes = slotCases(stage).map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
  });

  // 2 + 1 + 3 × 2 = 9: check-values. Of the 41 pairs, 3 × 4 × 2 lie in the
  // last layer with both pieces, 3 × 2 with either, and 3 × 2 − 1 in the slot.
  it("fall into families by where their pieces are", () => {
    const tally = (
      stage: (typeof SLOT_STAGES)[number],
      placed: HomeIndex[],
    ) => {
      const counts: Record<string, number> = {};
      for (const { family } of slotCasesBeside(stage, placed)) {
        const name = [family.corner, family.edge].filter(Boolean).join(" ");
        counts[name] = (counts[name] ?? 0) + 1;
      }
      return counts;
    };
    expect(tally("second-layer-edges", [])).toEqual({
      "last-layer": 2,
      home: 1,
      elsewhere: 6,
    });
    expect(tally("pairs", [1, 2, 3])).toEqual({
      "last-layer last-layer": 24,
      "last-layer home": 6,
      "home last-layer": 6,
      "home home": 5,
    });
  });

  it("begin lined up: an edge under its side colour, a pair by its corner", () => {
    const codes = slotCases("second-layer-edges")
      .filter(({ family }) => family.edge === "last-layer")
      .map(({ code }) => code);
    expect(codes.toSorted()).toEqual(["DF-F", "DR-D"]);
    for (const { code, family } of slotCases("pairs"))
      if (family.corner === "last-layer") expect(code).toMatch(/^DFR-/);
  });

  it.each(SLOT_STAGES)(
    "of %s have twins that the mirror between front and right makes",
    (stage) => {
      const mirror = thenSymmetry(LEFT_RIGHT_MIRROR, rotationAbout("y", -1));
      const random = randomSource(SEED);
      const state = emptyCubies();
      for (const one of slotCases(stage)) {
        const twin = slotTwinOf(one);
        expect(slotTwinOf(twin)).toBe(one);
        slotPositionSampler(one, {
          home: 0,
          placed: [],
          turnedAway: 0,
        }).drawInPlace(random, state);
        expect(recogniseSlot(conjugate(state, mirror), stage, 0)?.case).toBe(
          twin,
        );
      }
    },
  );

  // Source: sequences.json (common practice): with the last layer on top, the
  // edge lies in it at the front, its side colour at home there, and goes down
  // to the right, or to the left. The body has the right as its slot 1 and the
  // left as its slot 0.
  it.each([
    ["second layer right", 1, "DR-D"],
    ["second layer left", 0, "DF-F"],
  ] as const)(
    "of the second layer are what the usual eight turns answer: %s",
    (name, slot, code) => {
      const listed = PUBLISHED_SEQUENCES.find((one) => one.name === name);
      const cubies = madeOnTop(inverseTurns(turnsOf(listed?.moves ?? "")));
      const stage = "second-layer-edges";
      expect(arePlaced(cubies, placedBeforeSlots(stage))).toBe(true);
      const shown = HOME_INDICES.map((home) =>
        recogniseSlot(cubies, stage, home),
      );
      expect(shown.map((one) => one?.case.code)).toEqual(
        HOME_INDICES.map((home) => (home === slot ? code : undefined)),
      );
    },
  );
});

describe("recognising a slot", () => {
  it.each(SLOT_STAGES)(
    "finds every case of %s again in 1,000 random positions of it",
    (stage) => {
      const random = randomSource(SEED);
      const state = emptyCubies();
      const before = placedBeforeSlots(stage);
      const missed: string[] = [];
      for (const one of slotCases(stage)) {
        for (let block = 0; block < 100; block++) {
          const home = pick(random, HOME_INDICES);
          const placed = slotsAllowed(one, home).filter(
            () => random.below(2) === 0,
          );
          const turnedAway = random.below(one.orbit.length);
          const sampler = slotPositionSampler(one, {
            home,
            placed,
            turnedAway,
          });
          for (let i = 0; i < 10; i++) {
            sampler.drawInPlace(random, state);
            const shown = recogniseSlot(state, stage, home);
            const marked = HOME_INDICES.filter((slot) =>
              arePlaced(state, piecesOfSlot(stage, slot)),
            );
            if (
              shown?.case !== one ||
              shown.turnedAway !== turnedAway ||
              !arePlaced(state, before) ||
              marked.join() !== placed.join() ||
              !validateCubies(state).ok
            )
              missed.push(`${one.code} ${home} ${placed.join()} ${turnedAway}`);
          }
        }
      }
      expect(missed).toEqual([]);
    },
  );

  it.each(SLOT_STAGES)("names nothing of %s on a solved cube", (stage) => {
    for (const home of HOME_INDICES)
      expect(recogniseSlot(SOLVED, stage, home)).toBeUndefined();
  });

  it("names nothing where a piece is not known", () => {
    const { cubies } = applyTurns(
      { cubies: SOLVED, hold: NO_ROTATION },
      turnsOf("R' D R"),
    );
    expect(recogniseSlot(cubies, "pairs", 0)).toBeDefined();
    const { corners } = piecesOfSlot("pairs", 0);
    const known = knownOnly(cubies, new Set(corners), new Set());
    expect(recogniseSlot(known, "pairs", 0)).toBeUndefined();
  });
});

describe("a slot's position", () => {
  const n = 3_000;

  /** Positions of a case of slot 0, and what they must agree with, said once more. */
  function drawn(one: SlotCase, placed: readonly HomeIndex[]) {
    const { stage } = one;
    const random = randomSource(SEED);
    const sampler = slotPositionSampler(one, {
      home: 0,
      placed,
      turnedAway: 0,
    });
    const states = Array.from({ length: n }, () => {
      const state = emptyCubies();
      sampler.drawInPlace(random, state);
      return state;
    });
    const known = [
      placedBeforeSlots(stage),
      ...[0 as const, ...placed].map((slot) => piecesOfSlot(stage, slot)),
    ];
    const unmarked = HOME_INDICES.filter(
      (slot) => slot !== 0 && !placed.includes(slot),
    ).map((slot) => piecesOfSlot(stage, slot));
    const constraint: StateConstraint = {
      ...knownOnly(
        states[0] ?? SOLVED,
        new Set(known.flatMap(({ corners }) => corners)),
        new Set(known.flatMap(({ edges }) => edges)),
      ),
      unplacedCorners: [],
      unplacedEdges: unmarked.flatMap(({ edges }) => edges),
    };
    return { states, constraint };
  }

  it("has each free piece as often in each free place as counting says", () => {
    const inLastLayer = (stage: (typeof SLOT_STAGES)[number]) =>
      slotCases(stage).filter(({ slotsTakenUp }) => slotsTakenUp.length === 0);
    for (const one of inLastLayer("second-layer-edges"))
      for (const placed of PLACED_SETS.filter((set) => set.length !== 2)) {
        const { states, constraint } = drawn(one, placed);
        expect(unevenPieces(states, constraint), one.code).toEqual([]);
      }
    // A slot of two pieces is unmarked as a whole, which that counting does
    // not know: so with all the others placed.
    for (const one of inLastLayer("pairs")) {
      const { states, constraint } = drawn(one, [1, 2, 3]);
      expect(unevenPieces(states, constraint), one.code).toEqual([]);
    }
  });

  it("the test tells positions of another number of placed slots", () => {
    const [one] = slotCases("second-layer-edges").filter(
      ({ family }) => family.edge === "last-layer",
    );
    if (one === undefined) throw new Error("an edge can be in the last layer");
    const { constraint } = drawn(one, []);
    const { states } = drawn(one, [1]);
    expect(unevenPieces(states, constraint)).not.toEqual([]);
  });

  it("is refused where a case's own pieces stand in a placed slot", () => {
    const elsewhere = slotCases("second-layer-edges").find(
      ({ slotsTakenUp }) => slotsTakenUp.join() === "1",
    );
    if (elsewhere === undefined) throw new Error("an edge can be in slot 1");
    expect(slotsAllowed(elsewhere, 2)).toEqual([0, 1]);
    const variant = { home: 2, placed: [3], turnedAway: 0 } as const;
    expect(() => slotPositionSampler(elsewhere, variant)).toThrow(
      "broken invariant",
    );
  });
});
