/** Which cases only a look at their stickers tells apart. */
import type { Face } from "../cube/faces";
import { present } from "../invariant";
import type { CaseEntry, SlotEntry } from "./case-entry";
import type { CaseId, FirstLayerId } from "./case-ids";
import { caseEntry, casesOfStage, FIRST_LAYER_TABLE } from "./case-table";
import { type LastLayerCase, lastLayerCases } from "./last-layer-cases";
import { lastLayerFamilyOf } from "./last-layer-families";
import { lookColours, stickersThatDiffer } from "./look-colours";
import type { Arrangement } from "./orbits";
import { situationOf } from "./situation";

/** A case that another is easily taken for, and how to see it so. */
export interface LookAlike {
  readonly case: CaseId;
  /**
   * Which of its looks is the nearest: in the last layer an index of its
   * `lookAt`, of a slot the quarters that the free layer is turned on from
   * lined up; 0 in the first layer.
   */
  readonly look: number;
}

/** In the last layer, so many of the nearest. */
const MOST = 4;

function placeOf(id: FirstLayerId): string {
  const { corners, edges } = situationOf(id);
  return [...corners, ...edges]
    .map(({ piece, position }) => `${piece}@${position}`)
    .join(" ");
}

function placesOf(arrangement: Arrangement | undefined): string | undefined {
  return arrangement?.map(({ position }) => position).join();
}

/** The other cases of a slot whose pieces are in the same places, turned on as far as that takes. */
function slotLookAlikes({ id, stage, shows }: SlotEntry): LookAlike[] {
  const places = placesOf(shows.orbit[0]);
  return casesOfStage(stage).flatMap((other: CaseEntry) => {
    if (other.group !== "slot" || other.id === id) return [];
    const look = other.shows.orbit.findIndex(
      (member) => placesOf(member) === places,
    );
    return look < 0 ? [] : [{ case: other.id, look }];
  });
}

/** The cases among which one of the last layer is mistaken: in the two largest stages those that show the same in the smaller one. */
function rivalsOf(one: LastLayerCase): readonly LastLayerCase[] {
  const family = lastLayerFamilyOf(one);
  return lastLayerCases(one.stage).filter((other) => {
    if (other.id === one.id) return false;
    if (family.kind !== "shows") return true;
    const otherFamily = lastLayerFamilyOf(other);
    return otherFamily.kind === "shows" && otherFamily.code === family.code;
  });
}

/** A case of the last layer and how far it is from another, in its nearest look. */
interface Distant extends LookAlike {
  readonly distance: number;
}

const COLOURS_OF = new WeakMap<
  LastLayerCase,
  readonly (readonly (Face | undefined)[])[]
>();

/** The colours of all looks of a case. Kept: who asks for one case's nearest soon asks for those of its rivals, and making the colours is nearly all of the work. */
function coloursOfLooks(
  one: LastLayerCase,
): readonly (readonly (Face | undefined)[])[] {
  const known = COLOURS_OF.get(one);
  if (known !== undefined) return known;
  const colours = Array.from({ length: one.size }, (_, i) =>
    lookColours(one.stage, one.lookAt(i)),
  );
  COLOURS_OF.set(one, colours);
  return colours;
}

function distanceTo(one: LastLayerCase, other: LastLayerCase): Distant {
  const mine = present(coloursOfLooks(one)[0], "a case has a look");
  const distances = coloursOfLooks(other).map((theirs) =>
    stickersThatDiffer(mine, theirs),
  );
  const distance = Math.min(...distances);
  return { case: other.id, look: distances.indexOf(distance), distance };
}

const NEAREST = new WeakMap<LastLayerCase, readonly Distant[]>();

/** The cases whose stickers differ from a case's in the fewest places, each in its nearest look. */
function nearestTo(one: LastLayerCase): readonly Distant[] {
  const known = NEAREST.get(one);
  if (known !== undefined) return known;
  const nearest = rivalsOf(one)
    .map((other) => distanceTo(one, other))
    .toSorted((a, b) => a.distance - b.distance)
    .slice(0, MOST);
  NEAREST.set(one, nearest);
  return nearest;
}

/**
 * The cases that a case is easily taken for: below the last layer those whose
 * pieces are in the same places and face another way; in the last layer the
 * few whose stickers differ in the fewest places.
 */
export function lookAlikes(id: CaseId): readonly LookAlike[] {
  const entry = caseEntry(id);
  switch (entry.group) {
    case "first-layer": {
      const place = placeOf(entry.id);
      return FIRST_LAYER_TABLE.filter(
        (other) =>
          other.stage === entry.stage &&
          other.id !== entry.id &&
          placeOf(other.id) === place,
      ).map((other) => ({ case: other.id, look: 0 }));
    }
    case "slot":
      return slotLookAlikes(entry);
    case "last-layer":
      return nearestTo(entry.shows).map(({ case: other, look }) => ({
        case: other,
        look,
      }));
  }
}

/**
 * The look-alikes of a case and the cases that have it among theirs, nearest
 * first: in the last layer a case may have more near ones than are counted.
 */
export function lookAlikesEitherWay(id: CaseId): readonly CaseId[] {
  const entry = caseEntry(id);
  if (entry.group !== "last-layer")
    return lookAlikes(id).map((other) => other.case);
  const one = entry.shows;
  const mine = nearestTo(one);
  const theirs = rivalsOf(one).filter(
    (other) =>
      mine.every((near) => near.case !== other.id) &&
      nearestTo(other).some((near) => near.case === id),
  );
  return [...mine, ...theirs.map((other) => distanceTo(one, other))]
    .toSorted((a, b) => a.distance - b.distance)
    .map((other) => other.case);
}
