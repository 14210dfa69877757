import { describe, expect, it } from "vitest";
import { lastLayerCases } from "../../../core/cases/last-layer-cases";
import { lastLayerPositionSampler } from "../../../core/cases/last-layer-position";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { slotCases } from "../../../core/cases/slot-cases";
import {
  slotPositionSampler,
  slotsAllowed,
} from "../../../core/cases/slot-position";
import { SLOT_STAGES, type SlotStage } from "../../../core/cases/stage";
import {
  lastLayerTellingFacelets,
  slotFacelets,
} from "../../../core/cases/stickers-that-matter";
import { HOME_INDICES } from "../../../core/cases/variant";
import { emptyCubies } from "../../../core/cube/sample-state";
import { rotationAbout, thenSymmetry } from "../../../core/cube/symmetries";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import type { MirrorChoice } from "../../../core/picture/cube-picture";
import {
  smallMirrors,
  stageMirrors,
} from "../../../core/picture/mirrors-needed";
import { cubePalette, type PictureTheme } from "../../../core/picture/palette";
import { targetAt } from "../../../core/picture/pointing";
import { type CubeView, highView } from "../../../core/picture/projection";
import { between } from "../../../core/picture/shapes";
import { randomSource } from "../../../core/random-source";
import { pictureOf } from "./pictures-for-tests";

const SEED = 22;

// The design's sizes, pixels a cubie, and those of a printed sheet.
const SHOWN: readonly (readonly [PictureTheme, number])[] = [
  ...[92, 86, 76, 73, 54, 44, 34, 29, 21, 19, 13].map(
    (size) => ["light", size] as const,
  ),
  ["print", 29],
  ["print", 22.5],
];

/** The facelets whose squares are seen nearly whole, on the cube or in a mirror: the middle and four points near the corners. */
function faceletsSeen(
  theme: PictureTheme,
  view: CubeView,
  mirrors: MirrorChoice,
): ReadonlySet<number> {
  const palette = cubePalette({ scheme: USUAL_SCHEME, theme });
  const picture = pictureOf({ view, mirrors, palette });
  const seen = new Set<number>();
  for (const { facelet, mirror, corners } of picture.targets) {
    const [a, b, c, d] = corners;
    if (!a || !b || !c || !d) throw new Error("a target has four corners");
    const middle = between(a, c, 0.5);
    const points = [middle, ...corners.map((at) => between(middle, at, 0.7))];
    const isSeen = points.every((point) => {
      const found = targetAt(picture, point);
      return found?.facelet === facelet && found.mirror === mirror;
    });
    if (isSeen) seen.add(facelet);
  }
  return seen;
}

function named(mirrors: MirrorChoice): string {
  return Object.keys(mirrors).toSorted().join();
}

/** The same, looked up once for each choice of mirrors. */
function sight(
  theme: PictureTheme,
  view: CubeView,
): (mirrors: MirrorChoice) => ReadonlySet<number> {
  const known = new Map<string, ReadonlySet<number>>();
  return (mirrors) => {
    const key = named(mirrors);
    const seen = known.get(key) ?? faceletsSeen(theme, view, mirrors);
    known.set(key, seen);
    return seen;
  };
}

interface SlotQuestion {
  readonly code: string;
  readonly pieces: readonly (readonly number[])[];
  readonly homes: readonly number[];
}

/** Where a slot's pieces are in every case, slot and turn of the top, the slot at the front right. */
function slotQuestions(stage: SlotStage): readonly SlotQuestion[] {
  const random = randomSource(SEED);
  return slotCases(stage).flatMap((one) =>
    HOME_INDICES.flatMap((home) =>
      one.orbit.map((_, turnedAway) => {
        const cubies = emptyCubies();
        const placed = slotsAllowed(one, home);
        slotPositionSampler(one, { home, placed, turnedAway }).drawInPlace(
          random,
          cubies,
        );
        const hold = thenSymmetry(
          rotationAbout("y", 1 - home),
          rotationAbout("z", 2),
        );
        const { pieces, homes } = slotFacelets(stage, home, { cubies, hold });
        return { code: `${one.code} ${home} ${turnedAway}`, pieces, homes };
      }),
    ),
  );
}

/** The facelets to be seen in a random position of every case; the same ones once, by one of their cases. */
function lastLayerQuestions(
  stage: LastLayerStage,
): readonly (readonly [code: string, telling: readonly number[]])[] {
  const random = randomSource(SEED);
  const hold = rotationAbout("z", 2);
  const cubies = emptyCubies();
  const questions = new Map<string, readonly [string, readonly number[]]>();
  for (const one of lastLayerCases(stage)) {
    lastLayerPositionSampler(one).drawInPlace(random, cubies);
    const telling = lastLayerTellingFacelets(stage, { cubies, hold });
    questions.set(telling.join(), [one.code, telling]);
  }
  return [...questions.values()];
}

const SLOT_QUESTIONS = new Map(
  SLOT_STAGES.map((stage) => [stage, slotQuestions(stage)]),
);
const LAST_LAYER_QUESTIONS = new Map(
  LAST_LAYER_STAGES.map((stage) => [stage, lastLayerQuestions(stage)]),
);

function everySlotQuestion(stage: SlotStage): readonly SlotQuestion[] {
  const questions = SLOT_QUESTIONS.get(stage) ?? [];
  expect(questions.length).toBeGreaterThan(50);
  return questions;
}

function everyLastLayerQuestion(stage: LastLayerStage) {
  const questions = LAST_LAYER_QUESTIONS.get(stage) ?? [];
  expect(questions.length).toBeGreaterThan(0);
  return questions;
}

describe.each(SHOWN)(
  "what decides a case, in %s at %d pixels a cubie,",
  (theme, size) => {
    const see = sight(theme, highView(size));

    it.each(SLOT_STAGES)(
      "is seen in every case of %s: each sticker of the pieces, and both homes",
      (stage) => {
        for (const { code, pieces, homes } of everySlotQuestion(stage)) {
          const mirrors = stageMirrors(pieces.flat(), highView(size));
          const seen = see(mirrors);
          const hidden = pieces.flat().filter((facelet) => !seen.has(facelet));
          expect(hidden, code).toEqual([]);
          // The bottom of an empty home is seen on its two upright sides.
          const upright = homes.filter((facelet) => facelet !== 29);
          expect(upright.filter((facelet) => !seen.has(facelet))).toEqual([]);
        }
      },
    );

    it.each(LAST_LAYER_STAGES)("is seen in every case of %s", (stage) => {
      for (const [code, telling] of everyLastLayerQuestion(stage)) {
        const seen = see(stageMirrors(telling, highView(size)));
        const hidden = telling.filter((facelet) => !seen.has(facelet));
        expect(hidden, code).toEqual([]);
      }
    });
  },
);

describe("the mirrors of a question", () => {
  it("are the same for every case of the last layer and the second, so that none gives an answer away", () => {
    const view = highView(73);
    const choices = new Set<string>();
    for (const stage of LAST_LAYER_STAGES)
      for (const [, telling] of everyLastLayerQuestion(stage))
        choices.add(named(stageMirrors(telling, view)));
    for (const { pieces } of everySlotQuestion("second-layer-edges"))
      choices.add(named(stageMirrors(pieces.flat(), view)));
    expect([...choices]).toEqual(["back,left"]);
  });

  it("stand on the other side where the cube is seen from the left", () => {
    expect(stageMirrors([], highView(73, "left"))).toEqual({
      right: true,
      back: true,
    });
  });

  it("have the floor among them for a corner at the bottom, whose under side nothing else shows", () => {
    expect(stageMirrors([29, 26, 15], highView(73))).toEqual({
      left: true,
      back: true,
      floor: true,
    });
  });
});

describe("the mirrors of a thumbnail", () => {
  it.each(SHOWN.filter(([, size]) => size < 30))(
    "show, in %s at %d pixels a cubie, at least one sticker of each of a slot's pieces",
    (theme, size) => {
      const see = sight(theme, highView(size));
      for (const stage of SLOT_STAGES)
        for (const { code, pieces } of everySlotQuestion(stage)) {
          const seen = see(smallMirrors(pieces, highView(size)));
          for (const piece of pieces)
            expect(
              piece.some((facelet) => seen.has(facelet)),
              code,
            ).toBe(true);
        }
    },
  );

  it("are none where every piece shows itself", () => {
    const view = highView(19);
    expect(
      smallMirrors(
        [
          [8, 9, 20],
          [7, 19],
        ],
        view,
      ),
    ).toEqual({});
    expect(smallMirrors([[1, 46]], view)).toEqual({});
    expect(smallMirrors([[50, 39]], view)).toEqual({ left: true });
    expect(smallMirrors([[48, 14]], view)).toEqual({ back: true });
    expect(smallMirrors([[48, 14]], highView(19, "left"))).toEqual({
      right: true,
    });
  });
});
