/**
 * The questions that are answered by choosing: which case a cube shows, where
 * a piece is, where it belongs. The other choices are what is easily taken for
 * the right one, so that a miss says what a learner mixes up.
 */
import { alikeCases } from "../cases/alike";
import { familyOf } from "../cases/case-families";
import type { CaseId } from "../cases/case-ids";
import { caseEntry, casesOfStage } from "../cases/case-table";
import { piecesOfHome, targetsOf } from "../cases/constraint";
import { type Position, startOf } from "../cases/position";
import { isLastLayerStage } from "../cases/stage";
import { HOME_INDICES } from "../cases/variant";
import type { PartlyKnownCubies } from "../cube/cubies";
import type { HeldCube } from "../cube/held-cube";
import {
  CORNER_FACES,
  CORNER_NAMES,
  CORNERS,
  EDGE_FACES,
  EDGE_NAMES,
  EDGES,
  type PieceName,
} from "../cube/pieces";
import type { Face } from "../cube/faces";
import { invariant, present } from "../invariant";
import { isRecognisable } from "../memory/recognising-round";
import type { RecognisingWay } from "../memory/review";
import { seenCornerFaces, seenEdgeFaces } from "../notation/place-words";
import { pick, type RandomSource, shuffled } from "../random-source";

/** How many choices a question has at most. */
export const MOST_CHOICES = 4;

/** A piece that is looked for, or whose home is. */
export type ChosenPiece =
  | { readonly kind: "corner"; readonly piece: (typeof CORNERS)[number] }
  | { readonly kind: "edge"; readonly piece: (typeof EDGES)[number] };

/** A piece's name. */
export function nameOfPiece({ kind, piece }: ChosenPiece): PieceName {
  const name = kind === "corner" ? CORNER_NAMES[piece] : EDGE_NAMES[piece];
  return present(name, "pieces have names");
}

/** The piece of a name. */
export function pieceNamed(name: PieceName): ChosenPiece {
  const at = CORNERS.find((piece) => CORNER_NAMES[piece] === name);
  if (at !== undefined) return { kind: "corner", piece: at };
  const piece = EDGES.find((one) => EDGE_NAMES[one] === name);
  return { kind: "edge", piece: present(piece, "a name is some piece's") };
}

/** Which case a position shows. */
export interface WhichQuestion {
  readonly way: "which-is-it";
  readonly choices: readonly CaseId[];
  /** The index of the right choice. */
  readonly right: number;
}

/** Where a piece is, or where it belongs: the choices are pieces where they are, or the homes of pieces. */
export interface PieceQuestion {
  readonly way: "find-it" | "where-is-home";
  readonly piece: ChosenPiece;
  /** As they are met on the cube: from the top down, then from left to right, then from front to back. */
  readonly choices: readonly ChosenPiece[];
  readonly right: number;
}

/** A question with its choices. */
export type RecognisingQuestion = WhichQuestion | PieceQuestion;

/** What a learner's past says about which choices to offer. */
export interface KnownOfCases {
  /** What the case was mistaken for or what was mistaken for it, most often first. */
  readonly mixedUpWith: readonly CaseId[];
  readonly isMet: (id: CaseId) => boolean;
}

/** The others of its family: they fill up where a case has few look-alikes. */
function familyOthers(id: CaseId): readonly CaseId[] {
  const entry = caseEntry(id);
  const family = JSON.stringify(familyOf(entry));
  return casesOfStage(entry.stage)
    .filter((other) => JSON.stringify(familyOf(other)) === family)
    .map((other) => other.id);
}

/**
 * The cases to choose from besides the right one: first what the learner has
 * mistaken, then look-alikes that were met, then the others. Where these are
 * few, what stands in the same family or in that of a look-alike, then any
 * case that was met: between two choices a toss would be right half the time.
 */
function othersFor(
  id: CaseId,
  { mixedUpWith, isMet }: KnownOfCases,
): readonly CaseId[] {
  const { stage } = caseEntry(id);
  const alike = alikeCases(id);
  const others = new Set<CaseId>();
  const sources: readonly (() => readonly CaseId[])[] = [
    () => mixedUpWith.filter((other) => caseEntry(other).stage === stage),
    () => alike.filter(isMet),
    () => alike,
    () => familyOthers(id),
    () => alike.flatMap(familyOthers),
    () => casesOfStage(stage).flatMap((one) => (isMet(one.id) ? one.id : [])),
  ];
  for (const source of sources) {
    if (others.size >= MOST_CHOICES - 1) break;
    for (const other of source())
      if (other !== id && isRecognisable(other, "which-is-it"))
        others.add(other);
  }
  return [...others].slice(0, MOST_CHOICES - 1);
}

function facesOf({ kind, piece }: ChosenPiece): readonly Face[] {
  const faces = kind === "corner" ? CORNER_FACES[piece] : EDGE_FACES[piece];
  return present(faces, "pieces have colours");
}

function coloursShared(a: ChosenPiece, b: ChosenPiece): number {
  const theirs = facesOf(b);
  return facesOf(a).filter((face) => theirs.includes(face)).length;
}

function isSamePiece(a: ChosenPiece, b: ChosenPiece): boolean {
  return a.kind === b.kind && a.piece === b.piece;
}

function piecesOfKind(kind: ChosenPiece["kind"]): readonly ChosenPiece[] {
  return kind === "corner"
    ? CORNERS.map((piece) => ({ kind, piece }))
    : EDGES.map((piece) => ({ kind, piece }));
}

/**
 * Pieces that are easily taken for one: of its kind, with one of its colours,
 * a corner rather with two. Each of its colours is on another one as well, or
 * a glance at one colour would find it.
 */
function easilyTakenFor(
  piece: ChosenPiece,
  random: RandomSource,
): readonly ChosenPiece[] {
  const sharing = shuffled(random, piecesOfKind(piece.kind))
    .filter((other) => !isSamePiece(other, piece))
    .toSorted((a, b) => coloursShared(b, piece) - coloursShared(a, piece));
  const byColour = facesOf(piece).map((face) =>
    present(
      sharing.find((other) => facesOf(other).includes(face)),
      "every colour is on several pieces",
    ),
  );
  return [...new Set([...byColour, ...sharing])].slice(0, MOST_CHOICES - 1);
}

/** The faces on which a holder sees a place. */
function seenAt(
  cube: HeldCube<PartlyKnownCubies>,
  place: ChosenPiece,
): readonly Face[] {
  return place.kind === "corner"
    ? seenCornerFaces(cube.hold, place.piece)
    : seenEdgeFaces(cube.hold, place.piece);
}

/** The place, named like the piece that belongs there, where a piece is on a cube. */
export function placeOfPiece(
  { cubies }: HeldCube<PartlyKnownCubies>,
  { kind, piece }: ChosenPiece,
): ChosenPiece {
  return kind === "corner"
    ? {
        kind,
        piece: present(
          CORNERS[cubies.cornerPermutation.indexOf(piece)],
          "a question's cube is fully known",
        ),
      }
    : {
        kind,
        piece: present(
          EDGES[cubies.edgePermutation.indexOf(piece)],
          "a question's cube is fully known",
        ),
      };
}

/** From the top down, then from left to right, then from front to back. */
function orderSeen(faces: readonly Face[]): number {
  const along = (first: Face, last: Face) =>
    faces.includes(first) ? 0 : faces.includes(last) ? 2 : 1;
  return 9 * along("U", "D") + 3 * along("L", "R") + along("F", "B");
}

function inOrderSeen(
  places: readonly { readonly choice: ChosenPiece; readonly at: ChosenPiece }[],
  cube: HeldCube<PartlyKnownCubies>,
): readonly ChosenPiece[] {
  return places
    .toSorted(
      (a, b) => orderSeen(seenAt(cube, a.at)) - orderSeen(seenAt(cube, b.at)),
    )
    .map(({ choice }) => choice);
}

function listOf({
  corners,
  edges,
}: ReturnType<typeof targetsOf>): readonly ChosenPiece[] {
  return [
    ...corners.map((piece) => ({ kind: "corner" as const, piece })),
    ...edges.map((piece) => ({ kind: "edge" as const, piece })),
  ];
}

function pieceQuestion(
  position: Position,
  way: PieceQuestion["way"],
  random: RandomSource,
): PieceQuestion {
  const { stage } = caseEntry(position.case);
  invariant(!isLastLayerStage(stage), "the last layer asks for no one piece");
  // Of a pair one of the two.
  const piece = pick(random, listOf(targetsOf(position)));
  const cube = startOf(position);
  const choices =
    way === "find-it"
      ? inOrderSeen(
          [piece, ...easilyTakenFor(piece, random)].map((choice) => ({
            choice,
            at: placeOfPiece(cube, choice),
          })),
          cube,
        )
      : inOrderSeen(
          HOME_INDICES.flatMap((home) => listOf(piecesOfHome(stage, home)))
            .filter(({ kind }) => kind === piece.kind)
            .map((choice) => ({ choice, at: choice })),
          cube,
        );
  return {
    way,
    piece,
    choices,
    right: choices.findIndex((choice) => isSamePiece(choice, piece)),
  };
}

/**
 * The question that a position asks in a way, the same again from the same
 * source of chance.
 *
 * Shape: `position` is fully known, its case `isRecognisable` in the way. Two
 *        to four choices.
 */
export function recognisingQuestion(
  position: Position,
  way: RecognisingWay,
  random: RandomSource,
  known: KnownOfCases,
): RecognisingQuestion {
  const id = position.case;
  invariant(isRecognisable(id, way), "the case can be asked in this way");
  if (way !== "which-is-it") return pieceQuestion(position, way, random);
  const choices = shuffled(random, [id, ...othersFor(id, known)]);
  return { way, choices, right: choices.indexOf(id) };
}
