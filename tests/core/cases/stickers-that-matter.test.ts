import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lastLayerCases } from "../../../core/cases/last-layer-cases";
import { stateOfLook } from "../../../core/cases/last-layer-look";
import { lastLayerPositionSampler } from "../../../core/cases/last-layer-position";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { slotCases } from "../../../core/cases/slot-cases";
import { slotPositionSampler } from "../../../core/cases/slot-position";
import { SLOT_STAGES } from "../../../core/cases/stage";
import {
  lastLayerSeen,
  lastLayerStickers,
  lastLayerTellingFacelets,
  slotFacelets,
} from "../../../core/cases/stickers-that-matter";
import { HOME_INDICES } from "../../../core/cases/variant";
import type { Cubies } from "../../../core/cube/cubies";
import { stickersOf } from "../../../core/cube/facelets";
import { FACES, type Face } from "../../../core/cube/faces";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import { emptyCubies } from "../../../core/cube/sample-state";
import {
  rotationAbout,
  ROTATIONS,
  thenSymmetry,
} from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import { inverseTurns } from "../../../core/notation/inverse";
import { randomSource } from "../../../core/random-source";
import {
  afterTurns,
  faceletString,
  solvedStickers,
} from "../../oracles/geometric-cube";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
} from "../../reference/published-values";
import { arbitraryTurns } from "../notation/arbitrary-turns";
import { turnsOf } from "../notation/turns-of";
import { madeOnTop } from "./made-on-top";

const SEED = 21;

/** The cube turned over: the last layer, body face D, on top. */
const TURNED_OVER = rotationAbout("z", 2);
const onTop = (cubies: Cubies) => ({ cubies, hold: TURNED_OVER });

/** The facelets of the top and of the upper row of each side, where the last layer is. */
const TOP_LAYER = Array.from({ length: 54 }, (_, facelet) => facelet).filter(
  (facelet) => {
    const face = FACES[Math.floor(facelet / 9)];
    return face === "U" || (face !== "D" && facelet % 9 < 3);
  },
);
const TOP_CENTRE = 4;

/** Stages whose looks are few enough to be gone through one by one. */
const SMALL_STAGES = LAST_LAYER_STAGES.filter(
  (stage) => lastLayerCases(stage).length < 100,
);

describe("the last layer's stickers that a stage looks at", () => {
  // Common practice: how a piece is turned is told by the last layer's colour
  // alone; which piece it is, by its other colours.
  const EXPECTED: Readonly<
    Record<LastLayerStage, readonly [corners: string, edges: string]>
  > = {
    "last-layer-edges-turned": ["none", "last-colour"],
    "last-layer-edges-placed": ["none", "all"],
    "last-layer-corners-placed": ["all", "all"],
    "last-layer-corners-turned-last": ["all", "all"],
    "last-layer-corners-turned": ["last-colour", "last-colour"],
    "last-layer-corners-placed-first": ["all", "last-colour"],
    "last-layer-edges-placed-last": ["all", "all"],
    "last-layer-turned": ["last-colour", "last-colour"],
    "last-layer-placed": ["all", "all"],
    "last-layer-corners": ["all", "none"],
    "last-layer-but-edges-turned": ["all", "all"],
    "last-layer-whole": ["all", "all"],
  };

  it.each(LAST_LAYER_STAGES)("of %s are those of common practice", (stage) => {
    const { corners, edges } = lastLayerSeen(stage);
    expect([corners, edges]).toEqual(EXPECTED[stage]);
  });

  it.each([
    ...LAST_LAYER_ORIENTATIONS.map(({ number, sequence }) => ({
      stage: "last-layer-turned" as const,
      name: String(number),
      sequence,
    })),
    ...LAST_LAYER_PERMUTATIONS.map(({ name, sequence }) => ({
      stage: "last-layer-placed" as const,
      name,
      sequence,
    })),
  ])(
    "of $stage $name are, on an independent cube, the top's colour in turning and every colour in placing; the rest is bare (last-layer.json)",
    ({ stage, sequence }) => {
      const turns = inverseTurns(turnsOf(sequence));
      const seen = faceletString(
        afterTurns(solvedStickers(), formatTurns(turns)),
      );
      // A listed sequence may leave the whole cube turned: a colour is then
      // the side whose centre carries it.
      const sideOf = (letter: string) =>
        FACES.find((_, i) => seen[9 * i + 4] === letter);
      const stickers = lastLayerStickers(stage, onTop(madeOnTop(turns)));
      const expected = [...seen].map((letter, facelet) => {
        const isBare =
          stage === "last-layer-turned" &&
          TOP_LAYER.includes(facelet) &&
          letter !== "U";
        return isBare ? undefined : sideOf(letter);
      });
      expect(
        stickers.map((face) => face && viewFace(TURNED_OVER, face)),
      ).toEqual(expected);
    },
  );

  it.each(SMALL_STAGES)(
    "of %s tell every case: no two cases ever look the same",
    (stage) => {
      const caseByPicture = new Map<string, number>();
      for (const { index, size, lookAt } of lastLayerCases(stage))
        for (let i = 0; i < size; i++) {
          const cube = onTop(stateOfLook(lookAt(i)));
          const picture = lastLayerStickers(stage, cube).join();
          expect(caseByPicture.get(picture) ?? index).toBe(index);
          caseByPicture.set(picture, index);
        }
      expect(new Set(caseByPicture.values()).size).toBe(
        lastLayerCases(stage).length,
      );
    },
  );

  it.each(
    SMALL_STAGES.filter((stage) => stage !== "last-layer-corners-placed"),
  )(
    "of %s tell nothing else: every position of a look looks the same",
    (stage) => {
      const random = randomSource(SEED);
      for (const one of lastLayerCases(stage)) {
        const sampler = lastLayerPositionSampler(one, 0);
        const pictures = new Set<string>();
        for (let n = 0; n < 10; n++) {
          const cubies = emptyCubies();
          sampler.drawInPlace(random, cubies);
          pictures.add(lastLayerStickers(stage, onTop(cubies)).join());
        }
        expect(pictures.size, one.code).toBe(1);
      }
    },
  );

  it.each(LAST_LAYER_STAGES)(
    "of %s are what its picture shows on the top layer, in any hold, beside the centre",
    (stage) => {
      const [one] = lastLayerCases(stage);
      if (one === undefined) throw new Error(`${stage} has cases`);
      for (const hold of ROTATIONS) {
        const cube = { cubies: stateOfLook(one.lookAt(0)), hold };
        const shown = lastLayerStickers(stage, cube);
        const telling = lastLayerTellingFacelets(stage, cube);
        const all = stickersOf(cube);
        const layer = lastLayerTellingFacelets("last-layer-whole", cube);
        expect(layer).toHaveLength(20);
        shown.forEach((face, facelet) => {
          const isShown = telling.includes(facelet) || !layer.includes(facelet);
          expect(face).toBe(isShown ? all[facelet] : undefined);
        });
      }
      const onTopTelling = lastLayerTellingFacelets(
        stage,
        onTop(stateOfLook(one.lookAt(0))),
      );
      for (const facelet of onTopTelling) {
        expect(TOP_LAYER).toContain(facelet);
        expect(facelet).not.toBe(TOP_CENTRE);
      }
    },
  );
});

describe("a last-layer piece on its way", () => {
  it.each(LAST_LAYER_STAGES)(
    "keeps in %s the stickers it showed, and no other piece loses one",
    (stage) => {
      const [one] = lastLayerCases(stage);
      if (one === undefined) throw new Error("every stage has cases");
      const start = onTop(stateOfLook(one.lookAt(0)));
      const shown = (cube: typeof start) =>
        lastLayerStickers(stage, cube)
          .map((face) => face ?? "bare")
          .toSorted();
      fc.assert(
        fc.property(arbitraryTurns(), (turns) => {
          expect(shown(applyTurns(start, turns))).toEqual(shown(start));
        }),
        { numRuns: 20, seed: SEED },
      );
    },
  );
});

describe("the facelets of a slot's pieces", () => {
  it.each(SLOT_STAGES)(
    "of %s carry the slot's own colours, and its homes lie where the slot is seen",
    (stage) => {
      const random = randomSource(SEED);
      for (const one of slotCases(stage))
        for (const slot of HOME_INDICES) {
          const cubies = emptyCubies();
          slotPositionSampler(one, {
            home: slot,
            placed: [],
            turnedAway: 0,
          }).drawInPlace(random, cubies);
          // Turned over, and so that the slot is at the front right.
          const hold = thenSymmetry(rotationAbout("y", 1 - slot), TURNED_OVER);
          const stickers = stickersOf({ cubies, hold });
          const { pieces, homes } = slotFacelets(stage, slot, { cubies, hold });
          const carried = (facelets: readonly number[]) =>
            facelets.map((facelet) => stickers[facelet]);
          const seenAt = (face: Face | undefined) =>
            face && viewFace(hold, face);
          const isPair = stage === "pairs";
          expect(
            pieces.map((piece) => carried(piece).map(seenAt).toSorted()),
          ).toEqual(
            isPair
              ? [
                  ["D", "F", "R"],
                  ["F", "R"],
                ]
              : [["F", "R"]],
          );
          // Bottom front right, and the middle of the front's and the right's edge.
          expect(homes.toSorted((a, b) => a - b)).toEqual(
            isPair ? [12, 15, 23, 26, 29] : [12, 23],
          );
        }
    },
  );

  it("leave out a piece that is not known", () => {
    const [one] = slotCases("pairs");
    if (one === undefined) throw new Error("there are pairs");
    const cubies = emptyCubies();
    slotPositionSampler(one, {
      home: 0,
      placed: [],
      turnedAway: 0,
    }).drawInPlace(randomSource(SEED), cubies);
    cubies.cornerPermutation.fill(255);
    const { pieces, homes } = slotFacelets("pairs", 0, onTop(cubies));
    expect(pieces.map((piece) => piece.length)).toEqual([2]);
    expect(homes).toHaveLength(5);
  });
});
