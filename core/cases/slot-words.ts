/**
 * Names of the second layer's cases and of pairs for people: where the pieces
 * of a slot are and which way they face, seen with the first layer underneath
 * and the slot at the front right.
 *
 * A corner is told by its first-layer colour. An edge has none, so it is told
 * by the two colours that it shares with the slot's sides: its front colour
 * and its right colour, or by their names where the naming gives them.
 */
import type { Face } from "../cube/faces";
import { viewFace } from "../cube/held-cube";
import { CORNER_FACES, EDGE_FACES } from "../cube/pieces";
import { present } from "../invariant";
import { onSideInWords, placeInWords } from "../notation/place-words";
import { capitalised } from "../notation/sentence";
import type { Whereabouts } from "./orbits";
import { holdInStage } from "./hold-in-stage";
import type { SlotCase, SlotFamily, SlotPlace } from "./slot-cases";
import { edgeOfSlot } from "./slot-stages";
import type { WholeCubeNaming } from "./whole-cube-naming";

/**
 * How a slot's case is seen in its reference: slot 0 (body FR) at the front
 * right, the first layer underneath.
 */
const SLOT_HOLD = holdInStage("pairs", { home: 0, seenFrom: 0 }, "down");

/** A piece as it is seen. */
interface PieceSeen {
  readonly where: SlotPlace;
  readonly place: readonly Face[];
  /** Where each of its stickers shows, in the order of the piece's own faces. */
  readonly stickers: readonly Face[];
}

function pieceSeen(
  where: SlotPlace,
  faces: readonly Face[] | undefined,
  { orientation }: Whereabouts,
): PieceSeen {
  const place = present(faces, "pieces are at positions").map((face) =>
    viewFace(SLOT_HOLD, face),
  );
  return {
    where,
    place,
    stickers: place.map((_, k) =>
      present(place[(k + orientation) % place.length], "stickers are on it"),
    ),
  };
}

interface SlotSeen {
  readonly corner?: PieceSeen;
  readonly edge: PieceSeen;
}

function slotSeen({ family, orbit }: SlotCase): SlotSeen {
  const linedUp = present(orbit[0], "no orbit is empty");
  const at = present(linedUp.at(-1), "a slot has an edge");
  const edge = pieceSeen(family.edge, EDGE_FACES[at.position], at);
  const [first] = linedUp;
  if (family.corner === undefined || first === undefined) return { edge };
  return {
    corner: pieceSeen(family.corner, CORNER_FACES[first.position], first),
    edge,
  };
}

/** The sides where an edge's two stickers belong, in the order of its own faces. */
const EDGE_SIDES = present(
  EDGE_FACES[edgeOfSlot(0)],
  "a slot is a position",
).map((face) => viewFace(SLOT_HOLD, face));

const FRONT_STICKER = EDGE_SIDES.indexOf("F");
const RIGHT_STICKER = EDGE_SIDES.indexOf("R");

/** A colour of the edge: "red", or "front colour" where no colours are named. */
function edgeColour(side: "F" | "R", { sides }: WholeCubeNaming): string {
  if (sides !== undefined) return sides[side];
  return side === "F" ? "front colour" : "right colour";
}

/** Where one of an edge's colours shows: in the top layer the one on top, elsewhere the front one. */
function edgeFacing(edge: PieceSeen, naming: WholeCubeNaming): string {
  const front = edge.stickers[FRONT_STICKER];
  const right = edge.stickers[RIGHT_STICKER];
  if (right === "U") return `${edgeColour("R", naming)} on top`;
  return `${edgeColour("F", naming)} ${onSideInWords(present(front, "an edge has two stickers"))}`;
}

function cornerFacing(corner: PieceSeen, { first }: WholeCubeNaming): string {
  const [facing] = corner.stickers;
  return `${first} ${onSideInWords(present(facing, "a corner has stickers"))}`;
}

/** Whether a piece at home faces as it should. */
function isPlaced({ where, stickers }: PieceSeen, side: Face): boolean {
  return where === "home" && stickers[0] === side;
}

function isCornerPlaced(corner: PieceSeen): boolean {
  return isPlaced(corner, "D");
}

function isEdgePlaced(edge: PieceSeen): boolean {
  return isPlaced(edge, present(EDGE_SIDES[0], "an edge has two sides"));
}

function cornerPhrase(corner: PieceSeen, naming: WholeCubeNaming): string {
  if (isCornerPlaced(corner)) return "placed";
  const facing = cornerFacing(corner, naming);
  switch (corner.where) {
    case "last-layer":
      return `above its slot, ${facing}`;
    case "home":
      return `at home, ${facing}`;
    case "elsewhere":
      return `${placeInWords(corner.place)}, ${facing}`;
  }
}

function edgePhrase(edge: PieceSeen, naming: WholeCubeNaming): string {
  if (isEdgePlaced(edge)) return "placed";
  if (edge.where === "home") return "at home, flipped";
  return `${placeInWords(edge.place)}, ${edgeFacing(edge, naming)}`;
}

/** An edge alone, which stands above the centre whose colour its side has. */
function loneEdgePhrase(edge: PieceSeen, naming: WholeCubeNaming): string {
  if (edge.where !== "last-layer") return edgePhrase(edge, naming);
  const isAboveFront = edge.place.includes("F");
  const above = isAboveFront ? "above the front" : "above the right side";
  if (naming.sides !== undefined)
    return `${above}, ${edgeFacing(edge, naming)}`;
  return `${above}, its top colour belongs ${isAboveFront ? "on the right" : "on the front"}`;
}

const WHERE: Readonly<Record<SlotPlace, string>> = {
  "last-layer": "in the top layer",
  home: "at home",
  elsewhere: "in another slot",
};

/** A family's name: "Corner in the top layer, edge at home", "In another slot". */
export function slotFamilyName({ corner, edge }: SlotFamily): string {
  if (corner === undefined) return capitalised(WHERE[edge]);
  if (corner !== edge) return `Corner ${WHERE[corner]}, edge ${WHERE[edge]}`;
  // Both may be in the same other slot, or in two.
  return edge === "elsewhere" ? "Both in a wrong slot" : `Both ${WHERE[edge]}`;
}

/**
 * A case's whole name, unique in its stage: "Corner above its slot, white on
 * the right; edge at home, flipped", "Above the front, its top colour belongs
 * on the right".
 */
export function slotTitle(one: SlotCase, naming: WholeCubeNaming): string {
  const { corner, edge } = slotSeen(one);
  return corner === undefined
    ? capitalised(loneEdgePhrase(edge, naming))
    : `Corner ${cornerPhrase(corner, naming)}; edge ${edgePhrase(edge, naming)}`;
}

/** What tells a case from the others of its family: "White on the right; edge top left, front colour on top". */
export function slotNameInFamily(
  one: SlotCase,
  naming: WholeCubeNaming,
): string {
  const { corner, edge } = slotSeen(one);
  if (corner === undefined)
    return edge.where === "home" ? "Flipped" : slotTitle(one, naming);
  if (corner.where === "elsewhere") return slotTitle(one, naming);
  const first = isCornerPlaced(corner)
    ? "corner placed"
    : cornerFacing(corner, naming);
  return `${capitalised(first)}; edge ${edgePhrase(edge, naming)}`;
}

/** Where the slot's home is seen: "middle front right", for a pair with the bottom below it. */
export const SLOT_PLACE: string = placeInWords(EDGE_SIDES);

/**
 * What a person sees of a case, every sticker that tells: "The corner is top
 * front right, white on the right. The edge is top left, front colour on top,
 * right colour on the left."
 */
export function slotInWords(one: SlotCase, naming: WholeCubeNaming): string {
  const { corner, edge } = slotSeen(one);
  const sticker = (side: "F" | "R") => {
    const index = side === "F" ? FRONT_STICKER : RIGHT_STICKER;
    const at = present(edge.stickers[index], "an edge has two stickers");
    return `${edgeColour(side, naming)} ${onSideInWords(at)}`;
  };
  const edgeSaid = `The edge is ${placeInWords(edge.place)}, ${sticker("F")}, ${sticker("R")}.`;
  return corner === undefined
    ? edgeSaid
    : `The corner is ${placeInWords(corner.place)}, ${cornerFacing(corner, naming)}. ${edgeSaid}`;
}
