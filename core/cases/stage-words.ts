/**
 * Names of all stages for people, with one line of what each asks and one of
 * what is done before it, in the learner's own colour names.
 *
 * Abbreviations of the trade come in addition, where a learner is likely to
 * meet them elsewhere, and are never needed to understand a name.
 * Source: the abbreviations are common practice, from memory; the names ours.
 */
import type { LAST_LAYER_COURSES } from "./last-layer-stages";
import type { Stage } from "./stage";
import type { WholeCubeNaming } from "./whole-cube-naming";

/** What a stage is called. */
export interface StageNames {
  /** For the shelf: "Turning the last layer". */
  readonly name: string;
  /** For headings and tabs, where the part of the cube is clear: "Turn all". */
  readonly short: string;
  /** What the trade calls it, where there is a common abbreviation: "OLL". */
  readonly tradeName?: string;
}

/** What a stage is about, in the learner's own colour names. */
export interface StageWords {
  /** What it asks, one sentence. */
  readonly asks: string;
  /** What is already done when it begins, one sentence. */
  readonly before: string;
}

/** What each stage is called. */
const NAMES: Readonly<Record<Stage, StageNames>> = {
  "first-layer-edges": { name: "First-layer edges", short: "First edges" },
  "first-layer-corners": {
    name: "First-layer corners",
    short: "First corners",
  },
  "second-layer-edges": { name: "Second-layer edges", short: "Second layer" },
  pairs: { name: "Pairs", short: "Pairs", tradeName: "F2L" },
  "last-layer-edges-turned": {
    name: "Last-layer edges: turn them up",
    short: "Edges up",
  },
  "last-layer-edges-placed": {
    name: "Last-layer edges: bring them home",
    short: "Edges home",
  },
  "last-layer-corners-placed": {
    name: "Last-layer corners: bring each to its place",
    short: "Corners to their places",
  },
  "last-layer-corners-turned-last": {
    name: "Last-layer corners: turn them in their places",
    short: "Corners turned last",
  },
  "last-layer-corners-turned": {
    name: "Last-layer corners: turn them up",
    short: "Corners up",
  },
  "last-layer-corners-placed-first": {
    name: "Last-layer corners: bring them home, edges later",
    short: "Corners home",
  },
  "last-layer-edges-placed-last": {
    name: "Last-layer edges: bring them home at the end",
    short: "Edges home last",
  },
  "last-layer-turned": {
    name: "Turning the last layer",
    short: "Turn all",
    tradeName: "OLL",
  },
  "last-layer-placed": {
    name: "Placing the last layer",
    short: "Place all",
    tradeName: "PLL",
  },
  "last-layer-corners": {
    name: "Last-layer corners in one go",
    short: "Corners in one go",
    tradeName: "CLL",
  },
  "last-layer-but-edges-turned": {
    name: "Last layer in one go, edges already up",
    short: "All, edges up",
    tradeName: "ZBLL",
  },
  "last-layer-whole": {
    name: "Whole last layer in one go",
    short: "All in one go",
    tradeName: "1LLL",
  },
};

/** What a stage is called. */
export function stageNames(stage: Stage): StageNames {
  return NAMES[stage];
}

/** What a stage is about, in the learner's own words. */
export function stageWords(
  stage: Stage,
  { first, last }: Pick<WholeCubeNaming, "first" | "last">,
): StageWords {
  const twoLayers = "The first two layers are done.";
  const edgesUp = `The first two layers are done, and ${last} faces up on every top edge.`;
  const topDone = `The first two layers are done, and the whole top is ${last}.`;
  switch (stage) {
    case "first-layer-edges":
      return {
        asks: `Bring each ${first} edge home, next to the ${first} centre, so that its other colour matches too.`,
        before: "Nothing needs to be done yet.",
      };
    case "first-layer-corners":
      return {
        asks: `Bring each ${first} corner home between two ${first} edges.`,
        before: `The ${first} edges are home.`,
      };
    case "second-layer-edges":
      return {
        asks: `Bring the edges that have no ${first} and no ${last} home, in the middle.`,
        before: `The ${first} layer is done.`,
      };
    case "pairs":
      return {
        asks: `Bring a ${first} corner and the edge that belongs above it home together.`,
        before: `The ${first} edges are home.`,
      };
    case "last-layer-edges-turned":
      return {
        asks: `Turn the top edges so that ${last} faces up.`,
        before: twoLayers,
      };
    case "last-layer-edges-placed":
      return {
        asks: `Bring the top edges home, with ${last} still facing up.`,
        before: edgesUp,
      };
    case "last-layer-corners-placed":
      return {
        asks: "Bring each top corner to its own place, whichever way it faces.",
        before: "The first two layers are done, and the top edges are home.",
      };
    case "last-layer-corners-turned-last":
      return {
        asks: `Turn the top corners in their places so that ${last} faces up.`,
        before:
          "Everything is done, except that some top corners face the wrong way.",
      };
    case "last-layer-corners-turned":
      return {
        asks: `Turn the top corners so that the whole top is ${last}.`,
        before: edgesUp,
      };
    case "last-layer-corners-placed-first":
      return {
        asks: `Bring the top corners home, with ${last} still facing up. The edges may end up anywhere.`,
        before: topDone,
      };
    case "last-layer-edges-placed-last":
      return {
        asks: "Bring the top edges home and leave the corners where they are.",
        before: `The first two layers are done, the whole top is ${last}, and its corners are home.`,
      };
    case "last-layer-turned":
      return {
        asks: `Make the whole top ${last} in one go.`,
        before: twoLayers,
      };
    case "last-layer-placed":
      return {
        asks: `Bring all top edges and corners home in one go, with ${last} still facing up.`,
        before: topDone,
      };
    case "last-layer-corners":
      return {
        asks: `Bring the top corners home with ${last} facing up. The edges may end up anywhere.`,
        before: twoLayers,
      };
    case "last-layer-but-edges-turned":
      return {
        asks: "Solve the whole last layer in one go.",
        before: edgesUp,
      };
    case "last-layer-whole":
      return {
        asks: "Solve the whole last layer in one go.",
        before: twoLayers,
      };
  }
}

/** The name of a stage with what the trade calls it: "Turning the last layer (OLL)". */
export function stageName(stage: Stage): string {
  const { name, tradeName } = NAMES[stage];
  return tradeName === undefined ? name : `${name} (${tradeName})`;
}

/** A way through the last layer, by how much is done at a time. */
export function lastLayerCourseName(
  course: keyof typeof LAST_LAYER_COURSES,
): string {
  switch (course) {
    case "beginners-steps":
      return "Step by step";
    case "two-looks-each":
      return "In two looks each";
    case "one-look-each":
      return "In one look each";
  }
}
