/** The concrete cube of a round's item: the one stored, or drawn from its seed. */
import { type Position } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import type { Cubies } from "../../../core/cube/cubies";
import { formatFacelets } from "../../../core/cube/facelets";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { parseFacelets } from "../../../core/cube/validity";
import type { RoundItem } from "../../../core/memory/round";
import { randomSource } from "../../../core/random-source";

/**
 * The position of an item. A stored one comes first: a newer program may draw
 * another from the same seed, and the learner must see what they saw.
 */
export function positionOfItem(item: RoundItem): Position<Cubies> {
  const { case: id, hold, variant, seed } = item;
  const stored =
    item.position === undefined ? undefined : parseFacelets(item.position);
  return stored?.ok === true
    ? { case: id, hold, variant, cubies: stored.value.cubies }
    : randomPosition(randomSource(seed), id, variant, hold);
}

/** A position as it is stored with a round and a review: facelets in the body frame. */
export function formatPosition(position: Position): string {
  return formatFacelets({ cubies: position.cubies, hold: NO_ROTATION });
}
