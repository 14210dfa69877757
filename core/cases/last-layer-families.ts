/**
 * Families of the last layer's cases, by rules of our own: how many pieces are
 * already up and how they lie, or which must change places. The two largest
 * stages are sorted by what their cases show in a smaller stage.
 */
import { present } from "../invariant";
import { type LastLayerCase, lastLayerCases } from "./last-layer-cases";
import { SOLVED_LOOK } from "./last-layer-look";
import { codeOf, lastLayerOrbits, type SeenLook } from "./last-layer-orbits";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";

/** How many of four pieces are up, and how two of them lie to each other. */
export type UpShape = "none" | "one" | "two-next" | "two-across" | "all";

/** How four pieces must change places: which exchange, or how many go round. */
export type MovedShape =
  | "none"
  | "two-next"
  | "two-across"
  | "three"
  | "two-and-two-next"
  | "two-and-two-across"
  | "four";

/** A family; a part that the stage does not ask for is left out. */
export type LastLayerFamily =
  | {
      readonly kind: "up";
      readonly corners?: UpShape;
      readonly edges?: UpShape;
    }
  | {
      readonly kind: "moved";
      readonly corners?: MovedShape;
      readonly edges?: MovedShape;
    }
  | {
      /** What the cases show in another stage: a case's code there, or that of its solved look. */
      readonly kind: "shows";
      readonly stage: LastLayerStage;
      readonly code: string;
    };

/** The stages that are sorted by the cases of another. */
const SORTED_BY: Partial<Record<LastLayerStage, LastLayerStage>> = {
  "last-layer-but-edges-turned": "last-layer-corners",
  "last-layer-whole": "last-layer-turned",
};

/** The places of a look's digits for which something holds. */
function placesWhere(
  text: string,
  holds: (digit: number, place: number) => boolean,
): readonly number[] {
  return [0, 1, 2, 3].filter((place) => holds(Number(text[place]), place));
}

function areAcross(places: readonly number[]): boolean {
  return (((places[1] ?? 0) - (places[0] ?? 0)) & 1) === 0;
}

/** How the pieces lie that are up, from a text of twists or flips. */
export function upShape(text: string): UpShape {
  const up = placesWhere(text, (digit) => digit === 0);
  switch (up.length) {
    case 0:
      return "none";
    case 1:
      return "one";
    case 2:
      return areAcross(up) ? "two-across" : "two-next";
    default:
      return "all";
  }
}

/** How pieces must change places, from a text of places. */
export function movedShape(text: string): MovedShape {
  const moved = placesWhere(text, (digit, place) => digit !== place);
  switch (moved.length) {
    case 0:
      return "none";
    case 2:
      return areAcross(moved) ? "two-across" : "two-next";
    case 3:
      return "three";
    default: {
      const partner = Number(text[0]);
      if (Number(text[partner]) !== 0) return "four";
      return areAcross([0, partner])
        ? "two-and-two-across"
        : "two-and-two-next";
    }
  }
}

/** How long the longest round is in which pieces must change places. */
const LONGEST_ROUND: Readonly<Record<MovedShape, number>> = {
  none: 1,
  "two-next": 2,
  "two-across": 2,
  three: 3,
  "two-and-two-next": 2,
  "two-and-two-across": 2,
  four: 4,
};

/** What makes a look a better description than another: out of place, in the longest round, corners among them. */
function moveCount({
  cornerPlaces = SOLVED_LOOK.cornerPlaces,
  edgePlaces = SOLVED_LOOK.edgePlaces,
}: SeenLook): readonly [moved: number, longest: number, corners: number] {
  const moved = (text: string) =>
    placesWhere(text, (digit, place) => digit !== place).length;
  const corners = moved(cornerPlaces);
  return [
    corners + moved(edgePlaces),
    Math.max(
      LONGEST_ROUND[movedShape(cornerPlaces)],
      LONGEST_ROUND[movedShape(edgePlaces)],
    ),
    corners,
  ];
}

/**
 * Of the looks of a case in which what is done is as when solved, the one with
 * the fewest pieces out of place; of those the one with the shortest rounds,
 * then the one with the fewest corners.
 */
function leastMoved(
  { size, lookAt }: LastLayerCase,
  { done }: LastLayerRule,
): SeenLook {
  const looks = Array.from({ length: size }, (_, i) => lookAt(i))
    .filter((look) => done.every((part) => look[part] === SOLVED_LOOK[part]))
    .toSorted((a, b) => {
      const [moved, longest, corners] = moveCount(a);
      const [otherMoved, otherLongest, otherCorners] = moveCount(b);
      return (
        moved - otherMoved || longest - otherLongest || corners - otherCorners
      );
    });
  return present(looks[0], "a case has a look with all before it done");
}

const FAMILY_OF = new WeakMap<LastLayerCase, LastLayerFamily>();

/** The family of a case; always the same object for the same case. */
export function lastLayerFamilyOf(one: LastLayerCase): LastLayerFamily {
  const family = FAMILY_OF.get(one) ?? foundFamily(one);
  FAMILY_OF.set(one, family);
  return family;
}

function foundFamily(one: LastLayerCase): LastLayerFamily {
  const sortedBy = SORTED_BY[one.stage];
  if (sortedBy !== undefined) {
    const look = { ...SOLVED_LOOK, ...one.lookAt(0) };
    const shown = lastLayerOrbits(sortedBy).caseOf(look);
    const code =
      typeof shown === "number"
        ? present(lastLayerCases(sortedBy)[shown], "cases are indexed").code
        : codeOf(SOLVED_LOOK, LAST_LAYER_RULES[sortedBy].asks);
    return { kind: "shows", stage: sortedBy, code };
  }
  const rule: LastLayerRule = LAST_LAYER_RULES[one.stage];
  const { cornerTwists, edgeFlips } = one.lookAt(0);
  const asksTwists = rule.asks.includes("cornerTwists");
  const asksFlips = rule.asks.includes("edgeFlips");
  if (asksTwists || asksFlips)
    return {
      kind: "up",
      ...(asksTwists && cornerTwists && { corners: upShape(cornerTwists) }),
      ...(asksFlips && edgeFlips && { edges: upShape(edgeFlips) }),
    };
  const { cornerPlaces, edgePlaces } = leastMoved(one, rule);
  return {
    kind: "moved",
    ...(rule.asks.includes("cornerPlaces") &&
      cornerPlaces && { corners: movedShape(cornerPlaces) }),
    ...(rule.asks.includes("edgePlaces") &&
      edgePlaces && { edges: movedShape(edgePlaces) }),
  };
}

/** A family of a stage with its cases. */
export interface FamilyOfCases {
  readonly family: LastLayerFamily;
  readonly cases: readonly LastLayerCase[];
}

/** A stage's cases by family, both in the order of the cases' codes. */
export function lastLayerFamilies(
  stage: LastLayerStage,
): readonly FamilyOfCases[] {
  const families = new Map<
    string,
    { readonly family: LastLayerFamily; readonly cases: LastLayerCase[] }
  >();
  for (const one of lastLayerCases(stage)) {
    const family = lastLayerFamilyOf(one);
    const name = JSON.stringify(family);
    const known = families.get(name);
    if (known === undefined) families.set(name, { family, cases: [one] });
    else known.cases.push(one);
  }
  return [...families.values()];
}
