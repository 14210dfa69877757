/**
 * Names of the last layer's families and cases for people: what is up, what
 * must change places, and the trade's number or letters where it has them.
 *
 * A title is short enough for a shelf and tells its case from every other of
 * the stage. In the two largest stages only a count can: the smaller case that
 * shows is named, and the case numbered within it, in the order of the codes,
 * which is fixed for ever. What a person sees is in `lastLayerCaseInWords`.
 */
import { present } from "../invariant";
import { capitalised } from "../notation/sentence";
import { type LastLayerCase, lastLayerCases } from "./last-layer-cases";
import {
  type LastLayerFamily,
  lastLayerFamilies,
  lastLayerFamilyOf,
  upShape,
} from "./last-layer-families";
import { SOLVED_LOOK } from "./last-layer-look";
import {
  lastLayerButForTurnsInWords,
  movesInWords,
} from "./last-layer-look-words";
import { tradeNameOf } from "./last-layer-names";
import { lastLayerOrbits, type SeenLook } from "./last-layer-orbits";
import {
  cornersInWords,
  type LastNaming,
  movedCount,
  movedInWords,
  swapInWords,
  twistDetail,
  twistsInWords,
  upInWords,
  upLyingInWords,
} from "./last-layer-phrases";
import { briefestLook, roundDirection, roundsOf } from "./last-layer-rounds";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";

/** The case of a smaller stage by its code; undefined for its solved look. */
function caseOfCode(
  stage: LastLayerStage,
  code: string,
): LastLayerCase | undefined {
  return lastLayerCases(stage).find((one) => one.code === code);
}

/**
 * A family's name: "Two edges up, next to each other", "Three corners go
 * round", "OLL 27: all edges up, one corner up".
 */
export function lastLayerFamilyName(
  family: LastLayerFamily,
  naming: LastNaming,
): string {
  switch (family.kind) {
    case "up": {
      const { corners, edges } = family;
      if (edges === undefined)
        return capitalised(upLyingInWords("corner", corners ?? "all", ", "));
      if (corners === undefined)
        return capitalised(upLyingInWords("edge", edges, ", "));
      return capitalised(
        `${upLyingInWords("edge", edges, " ")}; ${upLyingInWords("corner", corners, " ")}`,
      );
    }
    case "moved": {
      const said = [
        movedInWords("corners", family.corners ?? "none"),
        movedInWords("edges", family.edges ?? "none"),
      ].filter((words) => words !== undefined);
      return capitalised(said.join("; "));
    }
    case "shows": {
      const shown = caseOfCode(family.stage, family.code);
      if (shown !== undefined) return lastLayerTitle(shown, naming);
      return family.stage === "last-layer-turned"
        ? `The whole top is ${naming.last}`
        : "All corners home";
    }
  }
}

/** The case of placing the last layer that a look shows: none unless all is turned. */
function placingShown(look: SeenLook): LastLayerCase | undefined {
  const shown = lastLayerOrbits("last-layer-placed").caseOf({
    ...SOLVED_LOOK,
    ...look,
  });
  return typeof shown === "number"
    ? lastLayerCases("last-layer-placed")[shown]
    : undefined;
}

const NUMBERS = new Map<LastLayerStage, ReadonlyMap<string, number>>();

/** The place of a case in its family, counted from 1. */
function numberInFamily({ stage, code }: LastLayerCase): number {
  const numbers =
    NUMBERS.get(stage) ??
    new Map(
      lastLayerFamilies(stage).flatMap(({ cases }) =>
        cases.map((one, i) => [one.code, i + 1]),
      ),
    );
  NUMBERS.set(stage, numbers);
  return present(numbers.get(code), "every case is in a family");
}

/** A case as the trade calls it: "OLL 27", "PLL Ua"; undefined where it has no name. */
export function lastLayerTradeTitle(one: LastLayerCase): string | undefined {
  const name = tradeNameOf(one);
  if (name === undefined) return undefined;
  return `${/^\d/.test(name) ? "OLL" : "PLL"} ${name}`;
}

/** A case of placing in few words: "three edges go round clockwise", "two corners and two edges change places". */
function placingInWords(one: LastLayerCase): string {
  const family = lastLayerFamilyOf(one);
  if (family.kind !== "moved") return "";
  const { corners = "none", edges = "none" } = family;
  if (corners !== "none" && edges !== "none") {
    const both = [movedCount("corners", corners), movedCount("edges", edges)];
    const verb = corners === "three" ? "go round" : "change places";
    return `${both.join(" and ")} ${verb}`;
  }
  const words =
    movedInWords("corners", corners) ?? movedInWords("edges", edges) ?? "";
  const { cornerPlaces, edgePlaces } = briefestLook(one);
  const [round = []] = [cornerPlaces, edgePlaces].flatMap((text) =>
    text === undefined ? [] : roundsOf(text),
  );
  const direction = roundDirection(round);
  return direction === undefined ? words : `${words} ${direction}`;
}

/** A case of turning in few words. */
function turningInWords(one: LastLayerCase, naming: LastNaming): string {
  const { asks }: LastLayerRule = LAST_LAYER_RULES[one.stage];
  const {
    cornerTwists = SOLVED_LOOK.cornerTwists,
    edgeFlips = SOLVED_LOOK.edgeFlips,
  } = one.lookAt(0);
  if (!asks.includes("cornerTwists"))
    return upLyingInWords("edge", upShape(edgeFlips), ", ");
  if (!asks.includes("edgeFlips")) return twistsInWords(cornerTwists, naming);
  return [
    upInWords("edge", upShape(edgeFlips)),
    upInWords("corner", upShape(cornerTwists)),
  ].join(", ");
}

/**
 * A case's whole name, unique in its stage and short enough for a shelf: "OLL
 * 27: all edges up, one corner up", "PLL Ua: three edges go round
 * anticlockwise", "One corner up, others clockwise; front two swap". Sides are
 * those of the look that names the case, the first layer underneath.
 */
export function lastLayerTitle(one: LastLayerCase, naming: LastNaming): string {
  switch (one.stage) {
    case "last-layer-corners":
      return capitalised(cornersInWords(briefestLook(one), naming));
    case "last-layer-but-edges-turned":
    case "last-layer-whole": {
      const placing = placingShown(one.lookAt(0));
      if (placing !== undefined) return lastLayerTitle(placing, naming);
      return `${familyShort(one, naming)} · ${String(numberInFamily(one))}`;
    }
    case "last-layer-edges-placed":
    case "last-layer-corners-placed":
    case "last-layer-corners-placed-first":
    case "last-layer-edges-placed-last":
    case "last-layer-placed":
      return named(one, placingInWords(one));
    case "last-layer-edges-turned":
    case "last-layer-corners-turned-last":
    case "last-layer-corners-turned":
    case "last-layer-turned":
      return named(one, turningInWords(one, naming));
  }
}

/** The stages whose learners do not know the trade's names yet: there they stand last. */
function isInTwoLooks({ stage }: LastLayerCase): boolean {
  return (
    stage === "last-layer-corners-turned" ||
    stage === "last-layer-edges-placed-last"
  );
}

function named(one: LastLayerCase, words: string): string {
  const trade = lastLayerTradeTitle(one);
  if (trade === undefined) return capitalised(words);
  return isInTwoLooks(one)
    ? `${capitalised(words)} (${trade})`
    : `${trade}: ${words}`;
}

/** What a case of the two largest stages shows in the smaller one: "OLL 27". */
function familyShort(one: LastLayerCase, naming: LastNaming): string {
  const family = lastLayerFamilyOf(one);
  const shown =
    family.kind === "shows" ? caseOfCode(family.stage, family.code) : undefined;
  return (
    (shown && lastLayerTradeTitle(shown)) ?? lastLayerFamilyName(family, naming)
  );
}

/**
 * What tells a case from the others of its family: "OLL 27", "Yellow on two
 * sides", "Front and right edges change places".
 */
export function lastLayerNameInFamily(
  one: LastLayerCase,
  naming: LastNaming,
): string {
  const trade = lastLayerTradeTitle(one);
  if (trade !== undefined) return trade;
  const look = briefestLook(one);
  const {
    cornerTwists = SOLVED_LOOK.cornerTwists,
    cornerPlaces = SOLVED_LOOK.cornerPlaces,
    edgePlaces = SOLVED_LOOK.edgePlaces,
  } = look;
  switch (one.stage) {
    case "last-layer-corners-turned-last":
    case "last-layer-corners": {
      const said = [
        twistDetail(cornerTwists, naming, "the others turn"),
        ...(one.stage === "last-layer-corners" ? [swapInWords(look)] : []),
      ].filter((words) => words !== undefined);
      return said.length === 0
        ? lastLayerTitle(one, naming)
        : capitalised(said.join("; "));
    }
    case "last-layer-but-edges-turned":
    case "last-layer-whole": {
      const placing = placingShown(look);
      if (placing !== undefined) return lastLayerNameInFamily(placing, naming);
      const moves = [
        ...(one.stage === "last-layer-whole"
          ? [movesInWords("corners", cornerPlaces)]
          : []),
        movesInWords("edges", edgePlaces),
      ].filter((words) => words !== "");
      if (moves.length > 0) return capitalised(moves.join("; "));
      return one.stage === "last-layer-whole"
        ? "Every piece in its place"
        : "Every edge in its place";
    }
    case "last-layer-edges-turned":
    case "last-layer-edges-placed":
    case "last-layer-corners-placed":
    case "last-layer-corners-turned":
    case "last-layer-corners-placed-first":
    case "last-layer-edges-placed-last":
    case "last-layer-turned":
    case "last-layer-placed":
      return lastLayerTitle(one, naming);
  }
}

/**
 * What a person sees of a case from above, place by place, in the look that
 * names it, and what must go where but for a turn of the top. For a screen
 * reader, where the title is too short.
 */
export function lastLayerCaseInWords(
  one: LastLayerCase,
  naming: LastNaming,
): string {
  return lastLayerButForTurnsInWords(briefestLook(one), naming);
}
