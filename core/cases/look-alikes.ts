/** Which cases only a look at their stickers tells apart. */
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

/** The cases whose stickers differ from a case's in the fewest places, each in its nearest look. */
function lastLayerLookAlikes(one: LastLayerCase): LookAlike[] {
  const mine = lookColours(one.stage, one.lookAt(0));
  return rivalsOf(one)
    .map((other) => {
      const distances = Array.from({ length: other.size }, (_, i) =>
        stickersThatDiffer(mine, lookColours(other.stage, other.lookAt(i))),
      );
      const distance = Math.min(...distances);
      return { case: other.id, look: distances.indexOf(distance), distance };
    })
    .toSorted((a, b) => a.distance - b.distance)
    .slice(0, MOST)
    .map(({ case: id, look }) => ({ case: id, look }));
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
      return lastLayerLookAlikes(entry.shows);
  }
}
