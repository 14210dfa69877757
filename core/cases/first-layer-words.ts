/**
 * Names of the first layer's cases and families for people: the learner's own name for the first
 * layer's colour, places as the learner sees them, correct for either hold.
 *
 * A hold is never put into words by itself: what is under its home with the
 * first layer up is above it with the first layer down, because places are
 * computed from the situation and only the few words that no place gives
 * (straight up, go down first) are written twice.
 */
import type { Face } from "../cube/faces";
import { viewFace } from "../cube/held-cube";
import { CORNER_FACES, EDGE_FACES } from "../cube/pieces";
import { present } from "../invariant";
import { onSideInWords, placeInWords } from "../notation/place-words";
import type { Family } from "./case-entry";
import type { FirstLayerId } from "./case-ids";
import { firstLayerEntry } from "./case-table";
import { isSituationInFreeLayer, situationOf } from "./situation";
import {
  cornerOfHome,
  edgeOfHome,
  FIRST_LAYER_FACE,
  type FirstLayerStage,
} from "./stage";
import { type Hold, holdOfVariant } from "./variant";
import { capitalised } from "../notation/sentence";

/** What the names of cases depend on. */
export interface CaseNaming {
  /** The learner's name for the first layer's colour: "white". */
  readonly first: string;
  readonly hold: Hold;
}

/** A family's name: "White on a side". */
export function firstLayerFamilyName(
  family: Family,
  naming: CaseNaming,
): string {
  const isUp = naming.hold === "up";
  const first = capitalised(naming.first);
  switch (family) {
    case "straight-up":
      return isUp ? "Straight up" : "Straight down";
    case "looks-from-below":
      return `${first} looks at you from ${isUp ? "below" : "above"}`;
    case "go-down-first":
      return isUp ? "Go down first" : "Go up first";
    case "flipped-at-home":
      return "Flipped at home";
    case "in-anothers-home":
      return "In another's home";
    case "on-a-side":
      return `${first} on a side`;
    case "underneath":
      return isUp ? `${first} underneath` : `${first} on top`;
    case "twisted-at-home":
      return "Home but twisted";
    case "next-to-its-home":
      return "In another corner's home, next to its own";
    case "across-from-its-home":
      return "In another corner's home, across from its own";
    case "in-each-others-homes":
      return "In each other's homes";
  }
}

/** What to do with a whole family, where one sentence says it for all its cases. */
export function firstLayerFamilyAdvice(
  family: Family,
  naming: CaseNaming,
): string | undefined {
  const isUp = naming.hold === "up";
  switch (family) {
    case "next-to-its-home":
    case "across-from-its-home":
      return isUp
        ? `Bring it down with ${naming.first} not underneath, then as above`
        : `Bring it up with ${naming.first} not on top, then as above`;
    case "in-each-others-homes":
      return "Bring the first home as if it were alone, then the other";
    case "straight-up":
    case "looks-from-below":
    case "go-down-first":
    case "flipped-at-home":
    case "in-anothers-home":
    case "on-a-side":
    case "underneath":
    case "twisted-at-home":
      return undefined;
  }
}

interface Seen {
  /** The sides on which the learner sees the piece. */
  readonly place: readonly Face[];
  /** The side on which its first colour shows; absent: any. */
  readonly facing?: Face;
  readonly isHome: boolean;
}

/** Where the first piece to bring home is, as the learner sees it from the reference. */
function seen(id: FirstLayerId, hold: Hold): Seen {
  const rotation = holdOfVariant({ home: 0, seenFrom: 0 }, hold);
  const { corners, edges } = situationOf(id);
  const [corner] = corners;
  const [edge] = edges;
  const where = present(corner ?? edge, "a case has a piece to bring home");
  const faces = present(
    (corner === undefined ? EDGE_FACES : CORNER_FACES)[where.position],
    "positions are in range",
  );
  const facing =
    where.orientation === undefined ? undefined : faces[where.orientation];
  return {
    place: faces.map((face) => viewFace(rotation, face)),
    ...(facing === undefined ? {} : { facing: viewFace(rotation, facing) }),
    isHome: where.position === where.piece,
  };
}

/** The place of the piece: "top front left". For two corners in each other's homes, that of the one whose home is in front. */
export function firstLayerPlace(id: FirstLayerId, naming: CaseNaming): string {
  return placeInWords(seen(id, naming.hold).place);
}

/**
 * Which way the piece faces: "white on the front", or "flipped" for an edge in
 * the first layer with its other colour outward; undefined where it may face
 * any way.
 */
export function firstLayerFacing(
  id: FirstLayerId,
  naming: CaseNaming,
): string | undefined {
  const { facing, place } = seen(id, naming.hold);
  if (facing === undefined) return undefined;
  const outward = viewFace(
    holdOfVariant({ home: 0, seenFrom: 0 }, naming.hold),
    FIRST_LAYER_FACE,
  );
  const isFlipped =
    place.length === 2 && place.includes(outward) && facing !== outward;
  return isFlipped ? "flipped" : `${naming.first} ${onSideInWords(facing)}`;
}

/** How a task of two corners lies: it has no facing of its own. */
function swapDistance(id: FirstLayerId): string {
  return id === "S1" ? "next to one another" : "across from one another";
}

/**
 * A case's whole name: "Under its home, white on the front", "At home,
 * flipped", "Top front left, white on top".
 */
export function firstLayerTitle(id: FirstLayerId, naming: CaseNaming): string {
  const facing = firstLayerFacing(id, naming);
  if (facing === undefined)
    return `${firstLayerFamilyName("in-each-others-homes", naming)}, ${swapDistance(id)}`;
  return `${capitalised(placeFromHome(id, naming))}, ${facing}`;
}

function placeFromHome(id: FirstLayerId, naming: CaseNaming): string {
  if (seen(id, naming.hold).isHome) return "at home";
  if (!isSituationInFreeLayer(id)) return firstLayerPlace(id, naming);
  return naming.hold === "up" ? "under its home" : "above its home";
}

/** Families whose cases differ by their facing alone, their place being the same. */
const TOLD_BY_FACING: ReadonlySet<Family> = new Set([
  "looks-from-below",
  "flipped-at-home",
  "on-a-side",
  "underneath",
  "twisted-at-home",
] satisfies Family[]);

/** What tells a case from the others of its family: "White on the front"; the whole name where that needs the place. */
export function firstLayerNameInFamily(
  id: FirstLayerId,
  naming: CaseNaming,
): string {
  const facing = firstLayerFacing(id, naming);
  if (facing === undefined) return capitalised(swapDistance(id));
  return TOLD_BY_FACING.has(firstLayerEntry(id).family)
    ? capitalised(facing)
    : firstLayerTitle(id, naming);
}

/** Where the home of a stage is seen when it is in front: "top front right". */
export function homePlace(stage: FirstLayerStage, naming: CaseNaming): string {
  const rotation = holdOfVariant({ home: 0, seenFrom: 0 }, naming.hold);
  const faces =
    stage === "first-layer-edges"
      ? EDGE_FACES[edgeOfHome(0)]
      : CORNER_FACES[cornerOfHome(0)];
  return placeInWords(
    present(faces, "homes are positions").map((face) =>
      viewFace(rotation, face),
    ),
  );
}
