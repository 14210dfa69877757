import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { judge, type MissVerdict } from "../../../core/answer/judge";
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import {
  LAST_LAYER_RULES,
  LAST_LAYER_STAGES,
  type LastLayerRule,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { isLastLayerStage, STAGES } from "../../../core/cases/stage";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import { CORNER_FACES, EDGE_FACES } from "../../../core/cube/pieces";
import { type Turn, TURN_LAYERS } from "../../../core/cube/turns";
import { inverseTurns } from "../../../core/notation/inverse";
import { randomSource } from "../../../core/random-source";
import { turnsOf } from "../notation/turns-of";

const SEED = 41;

function positionOf(id: CaseId, seed = SEED): Position {
  const random = randomSource(seed);
  const variant = randomVariant(random, id, {
    turnedAway: true,
    seenFromAnywhere: true,
  });
  return randomPosition(random, id, variant, seed % 2 === 0 ? "up" : "down");
}

function missAfter(position: Position, turns: readonly Turn[]) {
  const verdict = judge(position, applyTurns(startOf(position), turns));
  return verdict.right ? undefined : verdict;
}

const turnArbitrary = fc.record({
  layer: fc.constantFrom(...TURN_LAYERS),
  quarters: fc.constantFrom(1 as const, 2 as const, 3 as const),
});

const positionArbitrary = fc
  .record({
    stage: fc.constantFrom(...STAGES),
    which: fc.nat(),
    seed: fc.nat(10_000),
  })
  .map(({ stage, which, seed }) => {
    const cases = casesOfStage(stage);
    const id = cases[which % cases.length]?.id ?? "E1";
    return positionOf(id, seed);
  });

/** Pieces as text, for comparing as sets. */
function names({ lost, missing }: Pick<MissVerdict, "lost" | "missing">) {
  const of = ({ corners, edges }: MissVerdict["lost"]) =>
    [
      ...corners.map((piece) => CORNER_FACES[piece]?.join("") ?? ""),
      ...edges.map((piece) => EDGE_FACES[piece]?.join("") ?? ""),
    ].toSorted();
  return { lost: of(lost), missing: of(missing) };
}

/**
 * What is lost and missing after an answer in the last layer, worked out from
 * the rules of the stages and the cube's numbers alone, not from a goal: body
 * face D is the last layer, and its turns leave twists and flips as they are.
 */
function byTheRules(
  stage: LastLayerStage,
  position: Position,
  turns: readonly Turn[],
) {
  const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const held = applyTurns(startOf(position), turns);
  const layer = viewFace(held.hold, "D");
  const looked = (["", 1, 2, 3] as const).map((quarters) => {
    const { cubies }: { cubies: PartlyKnownCubies } = applyTurns(
      held,
      quarters === "" ? [] : [{ layer, quarters }],
    );
    const lost: string[] = [];
    const missing: string[] = [];
    for (const [kind, faces, permutation, orientation] of [
      [
        "corner",
        CORNER_FACES,
        cubies.cornerPermutation,
        cubies.cornerOrientation,
      ],
      ["edge", EDGE_FACES, cubies.edgePermutation, cubies.edgeOrientation],
    ] as const) {
      const [isTurnedSeen, isPlaceSeen] = [
        kind === "corner" ? "cornerTwists" : "edgeFlips",
        kind === "corner" ? "cornerPlaces" : "edgePlaces",
      ] as const;
      const isAskedOf =
        asks.includes(isTurnedSeen) || asks.includes(isPlaceSeen);
      faces.forEach((own, piece) => {
        const at = permutation.indexOf(piece);
        const isAtHome = at === piece;
        const isUpright = orientation[at] === 0;
        if (!own.includes("D")) {
          if (!isAtHome || !isUpright) lost.push(own.join(""));
          return;
        }
        const isLayer = faces[at]?.includes("D") ?? false;
        const seen = [...done, ...asks];
        const isWrong =
          (seen.includes(isTurnedSeen) && !(isLayer && isUpright)) ||
          (seen.includes(isPlaceSeen) && !isAtHome);
        if (isWrong) (isAskedOf ? missing : lost).push(own.join(""));
      });
    }
    return { lost: lost.toSorted(), missing: missing.toSorted() };
  });
  // A lining up that keeps the layer comes first, then the one with least wrong.
  const broken = (one: { readonly lost: readonly string[] }) =>
    one.lost.filter((piece) => piece.includes("D")).length;
  const [best] = looked.toSorted(
    (a, b) =>
      Math.sign(broken(a)) - Math.sign(broken(b)) ||
      a.lost.length + a.missing.length - b.lost.length - b.missing.length ||
      a.lost.length - b.lost.length,
  );
  return best;
}

describe("a miss", () => {
  it("has something missing or lost, in every stage and after any turns", () => {
    fc.assert(
      fc.property(
        positionArbitrary,
        fc.array(turnArbitrary, { maxLength: 9 }),
        (position, turns) => {
          const miss = missAfter(position, turns);
          if (miss === undefined) return;
          const { lost, missing } = names(miss);
          expect(lost.length + missing.length).toBeGreaterThan(0);
          expect(lost.filter((one) => missing.includes(one))).toEqual([]);
          expect(miss.pieceState === "placed").toBe(missing.length === 0);
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });

  it("has lost nothing where the turns undo one another, whatever the case", () => {
    fc.assert(
      fc.property(
        positionArbitrary,
        fc.array(turnArbitrary, { maxLength: 4 }),
        (position, turns) => {
          const answer = [...turns, ...inverseTurns(turns)];
          const miss = missAfter(position, answer);
          expect(names(miss ?? never()).lost).toEqual([]);
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
    for (const stage of STAGES)
      for (const { id } of casesOfStage(stage).slice(0, 40))
        expect(
          names(missAfter(positionOf(id), []) ?? never()).lost,
          id,
        ).toEqual([]);
  });

  it("has lost and is missing in the last layer what the rules of its stage say", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LAST_LAYER_STAGES),
        fc.nat(),
        fc.array(
          fc.constantFrom(
            "R U R' U'",
            "R U2 R'",
            "F R U R' U' F'",
            "R U R' U R U2 R'",
            "U",
            "R2",
          ),
          { maxLength: 3 },
        ),
        (stage, which, parts) => {
          const cases = casesOfStage(stage);
          const position = positionOf(
            cases[which % cases.length]?.id ?? "E1",
            which,
          );
          const turns = turnsOf(parts.join(" "));
          const miss = missAfter(position, turns);
          if (miss !== undefined)
            expect(names(miss)).toEqual(byTheRules(stage, position, turns));
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });

  it("of the last layer has lost the edges that its stage keeps", () => {
    // The turns bring the corners home and one of the edges with them.
    const position = positionOf("last-layer-corners-placed:2301");
    const answer = turnsOf("R U R' U R U2 R' U2");
    const miss = missAfter(position, answer) ?? never();
    expect(names(miss)).toEqual({
      lost: ["DB", "DF", "DR"],
      missing: [],
    });
    expect(
      diagnose(position, answer, turnsForPosition(position)),
    ).toMatchObject({ explanation: { kind: "others-lost", lost: miss.lost } });
    expect(miss).not.toHaveProperty("now");
  });
});

describe("what explains a miss of the last layer", () => {
  it("is never that others were lost where nothing moved", () => {
    for (const stage of STAGES.filter(isLastLayerStage))
      for (const { id } of casesOfStage(stage).slice(0, 30)) {
        const position = positionOf(id);
        const way = turnsForPosition(position);
        const { explanation } = diagnose(position, turnsOf("R R'"), way);
        expect(explanation?.kind, id).not.toBe("others-lost");
      }
  });
});

function never(): never {
  throw new Error("it is a miss");
}
