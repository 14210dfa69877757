import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { casesOfStage } from "../../../core/cases/case-table";
import {
  isEnoughKnown,
  knownAfterAnswer,
  notKnownFor,
  shownOf,
} from "../../../core/cases/known-layer";
import { LAST_LAYER_STAGES } from "../../../core/cases/last-layer-stages";
import type { LastLayerStage } from "../../../core/cases/last-layer-stages";
import { compose, SOLVED } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { agreesWith } from "../../../core/cube/partly-known";
import { effectOf } from "../../../core/solver/face-turn-sequence";
import { sequencesKeepingTwoLayers } from "../../../core/solver/short-sequences";

function asked(stage: LastLayerStage) {
  const [entry] = casesOfStage(stage);
  if (entry === undefined) throw new Error(stage);
  const variant = { home: 0, placed: [], turnedAway: 0 } as const;
  return { case: entry.id, variant };
}

const EFFECTS = sequencesKeepingTwoLayers().map(effectOf);
const arbitraryEffect = fc.constantFrom(...EFFECTS);

describe.each(LAST_LAYER_STAGES)("what %s shows", (stage) => {
  it("is followed through turns that keep the first two layers as the whole cube is", () => {
    fc.assert(
      fc.property(arbitraryEffect, arbitraryEffect, (begun, turned) => {
        const shown = shownOf(asked(stage), begun);
        const whole = compose(begun, turned);
        expect(compose(shown, turned)).toEqual(shownOf(asked(stage), whole));
        expect(agreesWith(whole, compose(shown, turned))).toBe(true);
      }),
    );
  });

  it("is enough, once answered, to set up the next of the stage", () => {
    for (const effect of EFFECTS.slice(0, 200))
      expect(
        isEnoughKnown(
          knownAfterAnswer(asked(stage)),
          shownOf(asked(stage), effect),
        ),
      ).toBe(true);
  });
});

it("shows of a last layer that was turned its own colour on top, and no sides", () => {
  const known = knownAfterAnswer(asked("last-layer-turned"));
  const text = formatFacelets({ cubies: known, hold: NO_ROTATION });
  expect(text).toBe("UUUUUUUUURRRRRR???FFFFFF???DDDDDDDDDLLLLLL???BBBBBB???");
});

it("names what is missing: where pieces are, and how those on top are turned", () => {
  const turned = knownAfterAnswer(asked("last-layer-turned"));
  const placed = shownOf(asked("last-layer-placed"), SOLVED);
  expect(notKnownFor(turned, placed).pieces.corners).toHaveLength(4);
  const edgesTurned = knownAfterAnswer(asked("last-layer-edges-turned"));
  expect(notKnownFor(edgesTurned, turned)).toMatchObject({
    pieces: { corners: [], edges: [] },
    turnedAt: { edges: [] },
  });
  expect(notKnownFor(edgesTurned, turned).turnedAt.corners).toHaveLength(4);
});
