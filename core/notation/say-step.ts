/**
 * A way told turn by turn, following the piece that matters: "Bottom to the
 * left; the corner steps aside." What is told about it is what a learner looks
 * for, in this order: piece and home together, the piece arriving or leaving,
 * home moving, the piece moving. How home is understood: `followed-piece.ts`.
 *
 * From a turn of two layers or of the middle on, only the turns are told where
 * a home can go along with its sides: the centres have moved, and where home
 * is now is more than a sentence can say.
 */
import type { Face } from "../cube/faces";
import { applyTurn, type HeldCube, viewFace } from "../cube/held-cube";
import type { Corner, Edge } from "../cube/pieces";
import { isWholeCubeTurn, type Turn, turnParts } from "../cube/turns";
import {
  afterTurn,
  canBeFollowed,
  canGoAlong,
  facesOf,
  followCorner,
  type FollowedPiece,
  followEdge,
  isSamePlace,
  type Standing,
  standingOf,
} from "./followed-piece";
import { type ColourNames, coloursInWords, placeInWords } from "./place-words";
import { homeGoes, pieceGoes, rise, together } from "./moves-in-words";
import { isPair, pairComes, pairHappens, pairStanding } from "./say-pair";
import { turnInWords } from "./say-in-words";

/**
 * The pieces to follow; those of the last layer are not. Of several the first
 * that is not placed yet is told about, but a corner and the edge of its slot
 * are told about as a pair.
 */
export interface PiecesToFollow {
  readonly corners: readonly Corner[];
  readonly edges: readonly Edge[];
}

/** What may be left out. */
export interface StepOptions {
  /** The learner's own colour names: sides are then named by them, and pieces where several are followed. */
  readonly colours?: ColourNames;
}

/**
 * A way in words, one sentence a turn, from the cube as it is before the first.
 *
 * Shape: as many sentences as turns.
 */
export function sayWay(
  cube: HeldCube,
  turns: readonly Turn[],
  follow: PiecesToFollow,
  options: StepOptions = {},
): readonly string[] {
  const { colours } = options;
  let now = cube;
  let followed: readonly FollowedPiece[] = [
    ...follow.corners.map(followCorner),
    ...follow.edges.map(followEdge),
  ].filter((one) => canBeFollowed(facesOf(one)));
  return turns.map((turn) => {
    if (movesCentres(turn))
      followed = followed.filter((one) => !canGoAlong(one));
    const before = now;
    const after = applyTurn(before, turn);
    const seen =
      colours === undefined ? undefined : { hold: before.hold, colours };
    const words = turnInWords(turn, "short", seen);

    const then = followed;
    followed = then.map((one) => afterTurn(one, before, after, turn));
    now = after;
    const happens =
      pairTold(then, followed, before, after, turn) ??
      pieceTold(then, followed, before, after, turn, colours);
    return happens === undefined ? `${words}.` : `${words}; ${happens}.`;
  });
}

/** Whether a turn moves centres without being a turn of the whole cube. */
function movesCentres(turn: Turn): boolean {
  const { rotationQuarters } = turnParts(turn);
  return rotationQuarters !== 0 && !isWholeCubeTurn(turn);
}

/** What becomes of a corner and the edge of its slot; undefined where something else is followed. */
function pairTold(
  followed: readonly FollowedPiece[],
  moved: readonly FollowedPiece[],
  before: HeldCube,
  after: HeldCube,
  turn: Turn,
): string | undefined {
  if (!isPair(followed) || !isPair(moved)) return undefined;
  const from = pairStanding(followed, before);
  const to = pairStanding(moved, after);
  if (from === undefined || to === undefined) return undefined;
  return isWholeCubeTurn(turn) ? pairComes(to) : pairHappens(from, to);
}

/** What becomes of the first piece that is not placed yet; undefined where none is known. */
function pieceTold(
  followed: readonly FollowedPiece[],
  moved: readonly FollowedPiece[],
  before: HeldCube,
  after: HeldCube,
  turn: Turn,
  colours: ColourNames | undefined,
): string | undefined {
  const told = pieceToTell(followed, before);
  const later = told === undefined ? undefined : moved[followed.indexOf(told)];
  if (told === undefined || later === undefined) return undefined;
  const from = standingOf(told, before);
  const to = standingOf(later, after);
  if (from === undefined || to === undefined) return undefined;
  const names = namesOf(told, followed.length > 1 ? colours : undefined);
  return isWholeCubeTurn(turn)
    ? `${names.the} comes to the ${placeInWords(to.at)}`
    : whatHappens(names, from, to, viewFace(after.hold, "U"));
}

function pieceToTell(
  followed: readonly FollowedPiece[],
  cube: HeldCube,
): FollowedPiece | undefined {
  const known = followed.filter((one) => standingOf(one, cube) !== undefined);
  return (
    known.find((one) => standingOf(one, cube)?.isPlaced === false) ?? known[0]
  );
}

interface Names {
  /** "the corner", or by its colours. */
  readonly the: string;
  /** The same where it was just named. */
  readonly again: string;
  readonly withHome: string;
  readonly home: string;
  /** What it is where it is in its home but not right. */
  readonly wrong: string;
}

function namesOf(
  followed: FollowedPiece,
  colours: ColourNames | undefined,
): Names {
  const { kind } = followed;
  const again = `the ${kind}`;
  const wrong = kind === "corner" ? "twisted" : "flipped";
  if (colours === undefined)
    return {
      the: again,
      again,
      withHome: `${kind} and home`,
      home: "its home",
      wrong,
    };
  const the = `the ${coloursInWords(facesOf(followed), colours)} ${kind}`;
  const withHome = `${the} and its home`;
  return { the, again, withHome, home: `the home of ${the}`, wrong };
}

function whatHappens(
  names: Names,
  from: Standing,
  to: Standing,
  firstLayerSeen: Face,
): string {
  const moves = !isSamePlace(from.at, to.at);
  const homeMoves = !isSamePlace(from.home, to.home);

  if (to.isGapBroken) {
    const apart = `${names.home} comes apart`;
    return moves ? `${apart}, ${names.again} ${pieceGoes(from, to)}` : apart;
  }
  if (from.isHome && to.isHome) {
    if (moves) return `${names.withHome} ${together(from.at, to.at)}`;
    return `${names.the} stays ${to.isRight ? "home" : "as it is"}`;
  }
  if (to.isHome) return arrives(names, to, moves);

  const home = homeMoves ? `${names.home} ${homeGoes(from, to)}` : undefined;
  if (from.isHome)
    return home === undefined
      ? `${names.the} leaves its home`
      : `${home} without ${names.again}`;

  const beside = besideHome(firstLayerSeen);
  if (home !== undefined && moves)
    return to.isBesideHome
      ? `${home}, ${names.again} comes ${beside} it`
      : `${home}, ${names.again} ${pieceGoes(from, to)}`;
  if (home !== undefined) return home;
  if (to.isBesideHome)
    return `${names.the} ${moves ? "comes" : "waits"} ${beside} its home`;
  if (!moves) return `${names.the} waits`;
  const stepsAside = from.isBesideHome && rise(from.at, to.at) === "level";
  return `${names.the} ${stepsAside ? "steps aside" : pieceGoes(from, to)}`;
}

function arrives(names: Names, to: Standing, moves: boolean): string {
  const but = to.isRight ? "" : `, but ${names.wrong}`;
  if (!moves) return `${names.home} comes to ${names.again}${but}`;
  const verb = to.isHomeTakenAlong ? "slides into its home" : "goes home";
  return `${names.the} ${verb}${but}`;
}

/** Next to its home, as it is seen while the first layer is on this side. */
function besideHome(firstLayerSeen: Face): string {
  if (firstLayerSeen === "U") return "under";
  return firstLayerSeen === "D" ? "above" : "next to";
}
