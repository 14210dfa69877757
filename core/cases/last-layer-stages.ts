/**
 * The stages of the last layer: each is what it asks for and what those before
 * it have done. From that alone its cases follow (`last-layer-orbits.ts`).
 */
import { LOOK_PARTS, type LookPart } from "./last-layer-look";

/** What a stage of the last layer takes as done, up to turns of the layer, and what it asks for. */
export interface LastLayerRule {
  readonly done: readonly LookPart[];
  readonly asks: readonly LookPart[];
}

/**
 * Every stage of the last layer.
 *
 * Source: the division into steps is common practice; the names are ours.
 */
export const LAST_LAYER_RULES = {
  "last-layer-edges-turned": { done: [], asks: ["edgeFlips"] },
  "last-layer-edges-placed": { done: ["edgeFlips"], asks: ["edgePlaces"] },
  "last-layer-corners-placed": {
    done: ["edgeFlips", "edgePlaces"],
    asks: ["cornerPlaces"],
  },
  "last-layer-corners-turned-last": {
    done: ["edgeFlips", "cornerPlaces", "edgePlaces"],
    asks: ["cornerTwists"],
  },
  "last-layer-corners-turned": {
    done: ["edgeFlips"],
    asks: ["cornerTwists"],
  },
  "last-layer-corners-placed-first": {
    done: ["cornerTwists", "edgeFlips"],
    asks: ["cornerPlaces"],
  },
  "last-layer-edges-placed-last": {
    done: ["cornerTwists", "edgeFlips", "cornerPlaces"],
    asks: ["edgePlaces"],
  },
  "last-layer-turned": { done: [], asks: ["cornerTwists", "edgeFlips"] },
  "last-layer-placed": {
    done: ["cornerTwists", "edgeFlips"],
    asks: ["cornerPlaces", "edgePlaces"],
  },
  "last-layer-corners": { done: [], asks: ["cornerTwists", "cornerPlaces"] },
  "last-layer-but-edges-turned": {
    done: ["edgeFlips"],
    asks: ["cornerTwists", "cornerPlaces", "edgePlaces"],
  },
  "last-layer-whole": { done: [], asks: LOOK_PARTS },
} as const satisfies Readonly<Record<string, LastLayerRule>>;

/** A stage of the last layer. */
export type LastLayerStage = keyof typeof LAST_LAYER_RULES;

/** All stages of the last layer, in the order of `LAST_LAYER_RULES`. */
export const LAST_LAYER_STAGES: readonly LastLayerStage[] = Object.keys(
  LAST_LAYER_RULES,
) as LastLayerStage[];

/**
 * Ways to solve the last layer, each as the stages it goes through. Stages
 * that two ways share are one stage: what was learnt in the first stays learnt.
 *
 * Source: common practice.
 */
export const LAST_LAYER_COURSES = {
  "beginners-steps": [
    "last-layer-edges-turned",
    "last-layer-edges-placed",
    "last-layer-corners-placed",
    "last-layer-corners-turned-last",
  ],
  "two-looks-each": [
    "last-layer-edges-turned",
    "last-layer-corners-turned",
    "last-layer-corners-placed-first",
    "last-layer-edges-placed-last",
  ],
  "one-look-each": ["last-layer-turned", "last-layer-placed"],
} as const satisfies Readonly<Record<string, readonly LastLayerStage[]>>;
