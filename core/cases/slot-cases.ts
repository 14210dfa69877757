/**
 * The cases of the second layer and of pairs: the orbits of one slot while no
 * other needs to be placed, each with a code, a family and its twin. Placing
 * other slots only takes cases away, those whose pieces stand there: so a case
 * keeps its code however many slots are placed.
 */
import {
  CORNER_FACES,
  CORNER_NAMES,
  CORNERS,
  EDGE_FACES,
  EDGE_NAMES,
  EDGES,
} from "../cube/pieces";
import {
  conjugate,
  LEFT_RIGHT_MIRROR,
  rotationAbout,
  thenSymmetry,
} from "../cube/symmetries";
import { present } from "../invariant";
import { type ComputedId, computedId } from "./case-ids";
import {
  type Arrangement,
  arrangementIn,
  arrangementKey,
  caseOrbits,
  type Orbit,
  stateShowing,
} from "./orbits";
import { slotConstraint, slotOfEdge } from "./slot-stages";
import { FREE_LAYER, homeOfCorner, type SlotStage } from "./stage";
import { HOME_INDICES, type HomeIndex } from "./variant";

/** Where a piece of a slot is: in the last layer, in its own slot, or in another one. */
export type SlotPlace = "last-layer" | "home" | "elsewhere";

/** The family of a slot's case: where its pieces are. */
export interface SlotFamily {
  /** Left out where the stage has no corner to bring home. */
  readonly corner?: SlotPlace;
  readonly edge: SlotPlace;
}

/** A case of a slot. */
export interface SlotCase {
  readonly id: ComputedId;
  readonly stage: SlotStage;
  /** Its place in `slotCases`. */
  readonly index: number;
  /**
   * What names it: for each piece its position and the face where its
   * first-named sticker is, lined up (`DFR-R FR-F`). Unique in its stage.
   */
  readonly code: string;
  readonly family: SlotFamily;
  /** Where its pieces are in the body frame for slot 0: lined up, then turned by 1, 2, 3 quarters. */
  readonly orbit: Orbit;
  /** The other slots, counted from slot 0, in which its pieces stand. */
  readonly slotsTakenUp: readonly HomeIndex[];
}

/** What a piece shows of itself: its position's name, and where its first sticker is. */
interface PiecePlace {
  readonly at: string;
  readonly facing: string;
  readonly slot: HomeIndex | undefined;
  readonly isCorner: boolean;
}

function placesOf(
  stage: SlotStage,
  arrangement: Arrangement,
): readonly PiecePlace[] {
  const corners = slotConstraint(stage, []).targetCorners.length;
  return arrangement.map(({ position, orientation }, i) => {
    const isCorner = i < corners;
    const faces = isCorner ? CORNER_FACES[position] : EDGE_FACES[position];
    return {
      at: present(
        isCorner ? CORNER_NAMES[position] : EDGE_NAMES[position],
        "a piece is at a position",
      ),
      facing: present(faces?.[orientation], "a piece is turned as it can be"),
      slot: isCorner
        ? homeOfCorner(present(CORNERS[position], "corners are below 8"))
        : slotOfEdge(present(EDGES[position], "edges are below 12")),
      isCorner,
    };
  });
}

/**
 * Whether a piece in the free layer is lined up: a corner stands under slot 0;
 * an edge under the face whose colour its side sticker has (F where its first
 * sticker is on the side, else R). A piece elsewhere is where it is.
 */
function isLinedUp({ at, facing, slot, isCorner }: PiecePlace): boolean {
  if (slot !== undefined) return true;
  if (isCorner) return at === "DFR";
  return at === (facing === FREE_LAYER ? "DR" : "DF");
}

/** The orbit turned on so that its first member is lined up: by its corner where that is in the free layer, else by its edge. */
function linedUpFirst(stage: SlotStage, orbit: Orbit): Orbit {
  const start = orbit.findIndex((member) => {
    const inFreeLayer = placesOf(stage, member).find(
      ({ slot }) => slot === undefined,
    );
    return inFreeLayer === undefined || isLinedUp(inFreeLayer);
  });
  return [...orbit.slice(start), ...orbit.slice(0, start)];
}

function placeOf({ slot }: PiecePlace): SlotPlace {
  if (slot === undefined) return "last-layer";
  return slot === 0 ? "home" : "elsewhere";
}

function familyOf(places: readonly PiecePlace[]): SlotFamily {
  const corner = places.find(({ isCorner }) => isCorner);
  const edge = present(
    places.find(({ isCorner }) => !isCorner),
    "a slot has an edge",
  );
  return corner === undefined
    ? { edge: placeOf(edge) }
    : { corner: placeOf(corner), edge: placeOf(edge) };
}

function casesOf(stage: SlotStage): readonly SlotCase[] {
  return caseOrbits(slotConstraint(stage, [])).map((unordered, index) => {
    const orbit = linedUpFirst(stage, unordered);
    const places = placesOf(stage, present(orbit[0], "no orbit is empty"));
    const code = places.map(({ at, facing }) => `${at}-${facing}`).join(" ");
    return {
      id: computedId(stage, code),
      stage,
      index,
      code,
      family: familyOf(places),
      orbit,
      slotsTakenUp: [
        ...new Set(
          places
            .map(({ slot }) => slot)
            .filter((slot) => slot !== undefined && slot !== 0),
        ),
      ].toSorted(),
    };
  });
}

/** A case, and how many quarters of the free layer its pieces are from lined up. */
export interface SlotRecognition {
  readonly case: SlotCase;
  readonly turnedAway: 0 | 1 | 2 | 3;
}

interface SlotTable {
  readonly cases: readonly SlotCase[];
  readonly byArrangement: ReadonlyMap<string, SlotRecognition>;
}

function tableOf(stage: SlotStage): SlotTable {
  const cases = casesOf(stage);
  return {
    cases,
    byArrangement: new Map(
      cases.flatMap((one) =>
        HOME_INDICES.slice(0, one.orbit.length).map((turnedAway) => [
          arrangementKey(present(one.orbit[turnedAway], "an orbit is short")),
          { case: one, turnedAway },
        ]),
      ),
    ),
  };
}

// Made when first asked for: the pairs take 17 ms (Node 20), which the window's start
// need not wait for.
const TABLES = new Map<SlotStage, SlotTable>();

function tableFor(stage: SlotStage): SlotTable {
  const known = TABLES.get(stage);
  if (known !== undefined) return known;
  const table = tableOf(stage);
  TABLES.set(stage, table);
  return table;
}

/** All cases of a slot, without the solved one: 9 edges, 167 pairs. */
export function slotCases(stage: SlotStage): readonly SlotCase[] {
  return tableFor(stage).cases;
}

/**
 * The cases that are left where some other slots are placed: 9, 7, 5 and 3
 * edges; 167, 113, 71 and 41 pairs with 0 to 3.
 */
export function slotCasesBeside(
  stage: SlotStage,
  placed: readonly HomeIndex[],
): readonly SlotCase[] {
  return slotCases(stage).filter(({ slotsTakenUp }) =>
    slotsTakenUp.every((slot) => !placed.includes(slot)),
  );
}

/** The case of slot 0 that an arrangement of its pieces shows, or undefined where they are placed. */
export function slotCaseShownBy(
  stage: SlotStage,
  arrangement: Arrangement,
): SlotRecognition | undefined {
  return tableFor(stage).byArrangement.get(arrangementKey(arrangement));
}

/** The mirror that keeps slot 0: front and right exchanged. */
const SLOT_MIRROR = thenSymmetry(LEFT_RIGHT_MIRROR, rotationAbout("y", -1));

/** The case that a case shows in a mirror, front and right exchanged. */
export function slotTwinOf({ stage, orbit }: SlotCase): SlotCase {
  const constraint = slotConstraint(stage, []);
  const mirrored = arrangementIn(
    conjugate(
      stateShowing(constraint, present(orbit[0], "no orbit is empty")),
      SLOT_MIRROR,
    ),
    constraint,
  );
  return present(
    slotCaseShownBy(stage, present(mirrored, "a mirror loses no piece")),
    "the mirror keeps slot 0",
  ).case;
}
