/**
 * What a learner may choose, with a default for each: nobody has to choose
 * anything before the first case.
 *
 * A stored value that cannot be read falls back to its default alone, and
 * fields of a newer version are kept when the rest is written again.
 */
import * as v from "valibot";
import { HOLDS } from "../../core/cases/variant";
import { HANDS, type WaySchool } from "../../core/cases/way";
import { TURNED_WAYS } from "../../core/memory/review";
import { WEIGHT_COUNT } from "../../core/memory/fit";
import { DAY_TURNS_OVER_AT } from "../../core/memory/local-day";
import { DEFAULT_LEVEL, WEIGHTS_VERSION } from "../../core/memory/schedule";
import { DEFAULT_MINUTES } from "../../core/memory/today";
import { FACES } from "../../core/cube/faces";
import {
  COLOUR_NAMES,
  type ColourScheme,
  isColourScheme,
  OLDER_SCHEME,
  PAINTS,
  schemeWithFirstColour,
  USUAL_SCHEME,
} from "../../core/picture/colour-sets";

/** Whose colouring the cube has: the usual one, the older one, or the learner's own six. */
export const CUBE_COLOURS = ["usual", "older", "own"] as const;

/** How much things move: as the system says, or not at all. */
export const MOTIONS = ["system", "instant"] as const;

/** How turns are told: letters with words, or words alone. */
export const NOTATIONS = ["both", "words"] as const;

const COLOUR = v.picklist(COLOUR_NAMES);

const SCHEME = v.pipe(
  v.object({
    U: COLOUR,
    R: COLOUR,
    F: COLOUR,
    D: COLOUR,
    L: COLOUR,
    B: COLOUR,
  }),
  v.check(isColourScheme),
);

/** The schools that a learner chooses among: as they are taught, the least trouble, the fewest turns. */
export const LEARNT_WAYS = [
  "first",
  "easiest",
  "shortest",
] as const satisfies readonly WaySchool[];

const COUNT = v.pipe(v.number(), v.integer(), v.minValue(0));

/** What fitting the memory model to the learner has come to. */
const FIT = v.looseObject({
  /** Counts up with every fit that was taken; stored with each review. */
  weightsVersion: v.pipe(v.number(), v.integer(), v.minValue(WEIGHTS_VERSION)),
  /** The learner's own; absent: the library's. */
  weights: v.exactOptional(
    v.pipe(
      v.array(v.pipe(v.number(), v.finite())),
      v.length(WEIGHT_COUNT),
      v.readonly(),
    ),
  ),
  /** The last time it was tried: on how many answers, whether it was taken, and by which share it foretold the newest better. */
  tried: v.object({
    answers: COUNT,
    isTaken: v.boolean(),
    gain: v.pipe(v.number(), v.finite()),
  }),
});

/** How many minutes a day may be practised. */
export const DAY_MINUTES = [5, 10, 15, 20, 30, 45, 60] as const;

const SETTINGS_SCHEMA = v.looseObject({
  cubeColours: v.fallback(v.picklist(CUBE_COLOURS), "usual"),
  /** The learner's own six, as the cube is held with them set up. */
  ownColours: v.fallback(v.optional(SCHEME), undefined),
  /** The first layer's colour; undefined follows the cube's top. */
  firstColour: v.fallback(v.optional(COLOUR), undefined),
  paints: v.fallback(v.picklist(PAINTS), "plain"),
  letters: v.fallback(v.boolean(), false),
  /** Whether the piece to bring home and its home are marked; finding them is part of the skill. */
  marks: v.fallback(v.boolean(), true),
  hold: v.fallback(v.picklist(HOLDS), "up"),
  hand: v.fallback(v.picklist(HANDS), "right"),
  /** Which ways are learnt where no deck says another. */
  ways: v.fallback(v.picklist(LEARNT_WAYS), "first"),
  motion: v.fallback(v.picklist(MOTIONS), "system"),
  notation: v.fallback(v.picklist(NOTATIONS), "both"),
  clockRunning: v.fallback(v.boolean(), false),
  /** Hour at which the learner's day turns over. */
  turnsOverAt: v.fallback(
    v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(12)),
    DAY_TURNS_OVER_AT,
  ),
  /** How long the learner wants to practise a day. Units: minutes. */
  minutes: v.fallback(v.picklist(DAY_MINUTES), DEFAULT_MINUTES),
  /** Chance of recall at which a case comes back. */
  level: v.fallback(
    v.pipe(v.number(), v.minValue(0.7), v.maxValue(0.97)),
    DEFAULT_LEVEL,
  ),
  /** The decks that are practised, in the learner's order; undefined: not chosen yet. */
  decks: v.fallback(
    v.optional(
      v.pipe(
        v.array(v.string()),
        v.transform((ids) => [...new Set(ids)]),
      ),
    ),
    undefined,
  ),
  answerWay: v.fallback(v.picklist(TURNED_WAYS), "on-screen"),
  /** undefined: not tried yet. */
  fit: v.fallback(v.optional(FIT), undefined),
});

/** What fitting the memory model to a learner has come to. */
export type StoredFit = Readonly<v.InferOutput<typeof FIT>>;

/** Everything a learner has chosen, or its default. */
export type LearnerSettings = Readonly<v.InferOutput<typeof SETTINGS_SCHEMA>>;

/** The settings of somebody who has chosen nothing. */
export const DEFAULT_SETTINGS: LearnerSettings = parseLearnerSettings({});

/** Reads stored settings; what cannot be read falls back to its default. */
export function parseLearnerSettings(stored: unknown): LearnerSettings {
  const parsed = v.safeParse(SETTINGS_SCHEMA, stored);
  // Only a value that is no object at all fails as a whole.
  return parsed.success ? parsed.output : v.parse(SETTINGS_SCHEMA, {});
}

/** The colouring of the learner's cube, whichever way it is held. */
export function cubeScheme(
  settings: Pick<LearnerSettings, "cubeColours" | "ownColours">,
): ColourScheme {
  switch (settings.cubeColours) {
    case "usual":
      return USUAL_SCHEME;
    case "older":
      return OLDER_SCHEME;
    case "own":
      return settings.ownColours ?? USUAL_SCHEME;
  }
}

/** The colouring with the first layer's colour at body face U. */
export function firstLayerScheme(
  settings: Pick<LearnerSettings, "cubeColours" | "ownColours" | "firstColour">,
): ColourScheme {
  const scheme = cubeScheme(settings);
  const { firstColour } = settings;
  const onThisCube = FACES.some((face) => scheme[face] === firstColour);
  return firstColour === undefined || !onThisCube
    ? scheme
    : schemeWithFirstColour(scheme, firstColour);
}
