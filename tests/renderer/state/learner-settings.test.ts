import { describe, expect, it } from "vitest";
import { OLDER_SCHEME, USUAL_SCHEME } from "../../../core/picture/colour-sets";
import {
  cubeScheme,
  DEFAULT_SETTINGS,
  firstLayerScheme,
  parseLearnerSettings,
} from "../../../renderer/state/learner-settings";

describe("a learner's settings", () => {
  it("need no choosing: each has a default", () => {
    expect(parseLearnerSettings(undefined)).toEqual(DEFAULT_SETTINGS);
    expect(DEFAULT_SETTINGS).toMatchObject({
      cubeColours: "usual",
      hold: "up",
      ways: "first",
      letters: false,
      clockRunning: false,
      motion: "system",
      answerWay: "on-screen",
      turnsOverAt: 3,
      level: 0.9,
    });
  });

  it("that cannot be read fall back one by one, and unknown ones are kept", () => {
    const read = parseLearnerSettings({
      hold: "sideways",
      ways: "magic",
      letters: true,
      turnsOverAt: 30,
      ownColours: { ...USUAL_SCHEME, D: "white" },
      ofALaterVersion: [1, 2],
    });
    expect(read).toEqual({
      ...DEFAULT_SETTINGS,
      letters: true,
      ownColours: undefined,
      ofALaterVersion: [1, 2],
    });
  });

  it("turn the cube so that the first layer's colour is on the first layer", () => {
    const yellow = firstLayerScheme({
      cubeColours: "usual",
      ownColours: undefined,
      firstColour: "yellow",
    });
    expect(yellow.U).toBe("yellow");
    expect(yellow.D).toBe("white");
    // Turning a cube over keeps it the same cube: never its mirror image.
    expect([yellow.F, yellow.R]).not.toEqual([USUAL_SCHEME.F, USUAL_SCHEME.R]);
  });

  it("forget a first colour that the learner's cube does not have", () => {
    expect(
      firstLayerScheme({
        cubeColours: "usual",
        ownColours: undefined,
        firstColour: "pink",
      }),
    ).toEqual(USUAL_SCHEME);
  });

  it("name the cube's own colouring", () => {
    const own = { ...USUAL_SCHEME, U: "black" } as const;
    const settings = { ownColours: own };
    expect(cubeScheme({ ...settings, cubeColours: "own" })).toEqual(own);
    expect(cubeScheme({ ...settings, cubeColours: "older" })).toEqual(
      OLDER_SCHEME,
    );
    expect(cubeScheme({ ownColours: undefined, cubeColours: "own" })).toEqual(
      USUAL_SCHEME,
    );
  });

  it("keep a fit that can be read, and drop one that cannot", () => {
    const fit = {
      weightsVersion: 2,
      weights: Array.from({ length: 21 }, (_, i) => i / 10),
      tried: { answers: 900, isTaken: true, gain: 0.05 },
    };
    expect(parseLearnerSettings({ fit }).fit).toEqual(fit);
    for (const broken of [
      { ...fit, weights: [1, 2, 3] },
      { ...fit, weights: fit.weights.map(() => NaN) },
      { ...fit, weightsVersion: 0 },
      { ...fit, tried: undefined },
    ])
      expect(parseLearnerSettings({ fit: broken }).fit).toBeUndefined();
  });
});
