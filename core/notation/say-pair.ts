/**
 * A pair told turn by turn: a corner of the first layer and the edge that
 * belongs above it, which come together on the way and go home as one. Both
 * are told about, because both have to be found and kept in sight.
 */
import type { Face } from "../cube/faces";
import type { HeldCube } from "../cube/held-cube";
import {
  canBeFollowed,
  facesOf,
  type FollowedPiece,
  isSamePlace,
  type Standing,
  standingOf,
  stickerSides,
} from "./followed-piece";
import { homeGoes, pieceGoes, together } from "./moves-in-words";
import { placeInWords } from "./place-words";
import { listInWords } from "./sentence";

/** A corner and its edge, followed. */
export type FollowedPair = readonly [
  corner: FollowedPiece,
  edge: FollowedPiece,
];

/** How a pair stands at one moment. */
export interface PairStanding {
  readonly corner: Standing;
  readonly edge: Standing;
  /** Whether they stand next to each other as they do at home. */
  readonly isJoined: boolean;
}

/** Whether what is followed is a pair: a corner and the edge of its slot, which shares all its colours with it. */
export function isPair(
  followed: readonly FollowedPiece[],
): followed is FollowedPair {
  const [corner, edge] = followed;
  if (followed.length !== 2 || corner?.kind !== "corner") return false;
  if (edge?.kind !== "edge" || !canBeFollowed(facesOf(edge))) return false;
  const [first] = facesOf(corner);
  const ofEdge = facesOf(edge);
  return ofEdge.every(
    (face) => face !== first && facesOf(corner).includes(face),
  );
}

/** How a pair stands on a cube, or undefined where one of the two is not known. */
export function pairStanding(
  [corner, edge]: FollowedPair,
  cube: HeldCube,
): PairStanding | undefined {
  const cornerStands = standingOf(corner, cube);
  const edgeStands = standingOf(edge, cube);
  if (cornerStands === undefined || edgeStands === undefined) return undefined;
  const sideOf = (followed: FollowedPiece, face: Face) =>
    stickerSides(followed, cube)?.[facesOf(followed).indexOf(face)];
  return {
    corner: cornerStands,
    edge: edgeStands,
    // Two stickers on the same two sides: so the pieces touch along both.
    isJoined: facesOf(edge).every(
      (face) => sideOf(corner, face) === sideOf(edge, face),
    ),
  };
}

/** Where a pair is seen after the whole cube was turned. */
export function pairComes({ corner, edge, isJoined }: PairStanding): string {
  return isJoined
    ? `the pair comes to the ${placeInWords(corner.at)}`
    : `the corner comes to the ${placeInWords(corner.at)}, the edge to the ${placeInWords(edge.at)}`;
}

function isHome({ corner, edge, isJoined }: PairStanding): boolean {
  const areHome = corner.isHome && edge.isHome;
  return isJoined && areHome && corner.isRight && edge.isRight;
}

/** Whether both homes are one slot: a turn of the first layer takes the corner's away from under the edge's. */
function isSlotWhole({ corner, edge }: PairStanding): boolean {
  return edge.home.every((face) => corner.home.includes(face));
}

function moves(from: Standing, to: Standing): boolean {
  return !isSamePlace(from.at, to.at);
}

/** What becomes of the home, which both share; undefined where it stays. */
function homeMoves(from: PairStanding, to: PairStanding): string | undefined {
  if (to.corner.isGapBroken || to.edge.isGapBroken) return "comes apart";
  if (isSlotWhole(from) !== isSlotWhole(to))
    return isSlotWhole(to) ? "is whole again" : "comes apart";
  return isSamePlace(from.corner.home, to.corner.home)
    ? undefined
    : homeGoes(from.corner, to.corner);
}

/** What becomes of a pair by a turn of a layer. */
export function pairHappens(from: PairStanding, to: PairStanding): string {
  const home = homeMoves(from, to);
  const doesMove = moves(from.corner, to.corner);
  if (isHome(from) && isHome(to))
    return doesMove
      ? `pair and home ${together(from.corner.at, to.corner.at)}`
      : "the pair stays home";
  if (from.isJoined && isHome(to)) {
    if (!doesMove) return "its home comes to the pair";
    const isTakenAlong = to.corner.isHomeTakenAlong;
    return `the pair ${isTakenAlong ? "slides into its home" : "goes home"}`;
  }
  if (isHome(from) && to.isJoined)
    return home === undefined
      ? "the pair leaves its home"
      : `its home ${home} without the pair`;
  if (from.isJoined && to.isJoined) {
    const said = [
      ...(home === undefined ? [] : [`the home of the pair ${home}`]),
      ...(doesMove ? [`the pair ${pieceGoes(from.corner, to.corner)}`] : []),
    ];
    return said.length === 0 ? "the pair waits" : said.join(", ");
  }
  const homeSaid = home === undefined ? [] : [`their home ${home}`];
  if (to.isJoined)
    return [
      ...homeSaid,
      `corner and edge come together${isHome(to) ? " in their home" : ""}`,
    ].join(", ");
  if (from.isJoined) return [...homeSaid, "corner and edge part"].join(", ");
  const both = bothSaid(from, to);
  if (both !== undefined) return [...homeSaid, both].join(", ");
  const pieces = [
    ...pieceSaid("corner", from.corner, to.corner),
    ...pieceSaid("edge", from.edge, to.edge),
  ];
  if (pieces.length > 0) return [...homeSaid, listInWords(pieces)].join(", ");
  return homeSaid[0] ?? "both wait";
}

/** What becomes of both where it is the same; undefined where it is not. */
function bothSaid(from: PairStanding, to: PairStanding): string | undefined {
  const doMove = moves(from.corner, to.corner) && moves(from.edge, to.edge);
  if (!doMove || !from.corner.isHome || !from.edge.isHome) return undefined;
  if (to.corner.isHome && to.edge.isHome) return "both go with it";
  return to.corner.isHome || to.edge.isHome ? undefined : "both leave it";
}

/** What becomes of one of the two while they are apart; nothing where it stays where it was. */
function pieceSaid(
  kind: "corner" | "edge",
  from: Standing,
  to: Standing,
): readonly string[] {
  const isMoved = moves(from, to);
  if (to.isHome && !from.isHome) {
    const wrong = kind === "corner" ? "twisted" : "flipped";
    const but = to.isRight ? "" : ` but ${wrong}`;
    if (!isMoved) return [`it comes to the ${kind}${but}`];
    const verb = to.isHomeTakenAlong ? "slides into its home" : "goes home";
    return [`the ${kind} ${verb}${but}`];
  }
  if (!isMoved) return [];
  if (from.isHome && to.isHome) return [`the ${kind} goes with it`];
  return [
    from.isHome
      ? `the ${kind} leaves its home`
      : `the ${kind} ${pieceGoes(from, to)}`,
  ];
}
