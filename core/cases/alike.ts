/**
 * Which cases are taken for one another: what a round sets apart while both
 * are young and side by side once both are kept, and what a question offers as
 * the other choices.
 *
 * Three things make two cases of a stage alike. They look alike (the same
 * places facing otherwise; in the last layer the fewest stickers that differ),
 * they are twins, or the piece stands as it does in the other case when the
 * cube is seen from another side. What a learner has really confused is not
 * known here: the caller adds it.
 *
 * Source: the design's first-layer.md, "What learners really confuse" (common
 *         practice).
 */
import { CORNER_FACES, CORNERS, EDGE_FACES, EDGES } from "../cube/pieces";
import {
  cornerImage,
  edgeImage,
  faceImage,
  type Rotation,
  rotationAbout,
} from "../cube/symmetries";
import { present } from "../invariant";
import type { CaseEntry, SlotEntry } from "./case-entry";
import type { CaseId, FirstLayerId } from "./case-ids";
import { caseEntry, FIRST_LAYER_TABLE, stageOfCase } from "./case-table";
import { lookAlikesEitherWay } from "./look-alikes";
import type { Whereabouts } from "./orbits";
import { situationOf } from "./situation";
import { slotCaseShownBy } from "./slot-cases";
import { slotConstraint } from "./slot-stages";

/** The other sides that a cube can be seen from, the neighbours first. */
const OTHER_SIDES: readonly Rotation[] = [1, 3, 2].map((quarters) =>
  rotationAbout("y", quarters),
);

type PieceKind = "corner" | "edge";

/** Where a piece is when the cube is seen from another side. */
function seenFrom(
  side: Rotation,
  kind: PieceKind,
  { position, orientation }: Whereabouts,
): Whereabouts {
  const isCorner = kind === "corner";
  const faces = isCorner ? CORNER_FACES : EDGE_FACES;
  const facing = present(
    faces[position]?.[orientation],
    "a piece is turned as it can",
  );
  const after = isCorner
    ? cornerImage(side, present(CORNERS[position], "below 8"))
    : edgeImage(side, present(EDGES[position], "below 12"));
  return {
    position: after,
    orientation: present(faces[after], "a place has faces").indexOf(
      faceImage(side, facing),
    ),
  };
}

/** Where the one piece of a first-layer case is; undefined for a task of two. */
function onePieceOf(
  id: FirstLayerId,
): { readonly kind: PieceKind; readonly at: Whereabouts } | undefined {
  const { corners, edges } = situationOf(id);
  const [piece, second] = [...corners, ...edges];
  if (piece?.orientation === undefined || second !== undefined)
    return undefined;
  return {
    kind: corners.length > 0 ? "corner" : "edge",
    at: { position: piece.position, orientation: piece.orientation },
  };
}

function firstLayerFromOtherSides(id: FirstLayerId): readonly CaseId[] {
  const piece = onePieceOf(id);
  if (piece === undefined) return [];
  return OTHER_SIDES.flatMap((side) => {
    const seen = seenFrom(side, piece.kind, piece.at);
    return FIRST_LAYER_TABLE.filter((other) => {
      const theirs = onePieceOf(other.id);
      return (
        theirs?.kind === piece.kind &&
        theirs.at.position === seen.position &&
        theirs.at.orientation === seen.orientation
      );
    }).map((other) => other.id);
  });
}

function slotFromOtherSides({ stage, shows }: SlotEntry): readonly CaseId[] {
  const corners = slotConstraint(stage, []).targetCorners.length;
  const arrangement = present(shows.orbit[0], "no orbit is empty");
  return OTHER_SIDES.flatMap((side) => {
    const seen = arrangement.map((where, i) =>
      seenFrom(side, i < corners ? "corner" : "edge", where),
    );
    // Undefined where the pieces would be placed.
    const other = slotCaseShownBy(stage, seen)?.case.id;
    return other === undefined ? [] : [other];
  });
}

function fromOtherSides(entry: CaseEntry): readonly CaseId[] {
  switch (entry.group) {
    case "first-layer":
      return firstLayerFromOtherSides(entry.id);
    case "slot":
      return slotFromOtherSides(entry);
    case "last-layer":
      return [];
  }
}

function foundAlike(id: CaseId): readonly CaseId[] {
  const entry = caseEntry(id);
  const alike = new Set<CaseId>([
    entry.twin,
    ...lookAlikesEitherWay(id),
    ...fromOtherSides(entry),
  ]);
  alike.delete(id);
  return [...alike];
}

const ALIKE = new Map<CaseId, ReadonlySet<CaseId>>();

function alikesOf(id: CaseId): ReadonlySet<CaseId> {
  const known = ALIKE.get(id);
  if (known !== undefined) return known;
  const alike = new Set(foundAlike(id));
  ALIKE.set(id, alike);
  return alike;
}

/**
 * The cases of its stage that a case is taken for or that are taken for it,
 * without the case itself: its twin, then what looks like it, nearest first,
 * then what is the same seen from another side.
 */
export function alikeCases(id: CaseId): readonly CaseId[] {
  return [...alikesOf(id)];
}

/** Whether two cases are taken for one another; never of a case and itself, nor across stages. */
export function areAlike(a: CaseId, b: CaseId): boolean {
  return stageOfCase(a) === stageOfCase(b) && alikesOf(a).has(b);
}
