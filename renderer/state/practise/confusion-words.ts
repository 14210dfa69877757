/** What a way of another case says about what the learner saw. */
import { caseEntry, wayOfSchool } from "../../../core/cases/case-table";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseTitle } from "../../../core/cases/case-words";
import { wholeCubeNaming } from "../../../core/cases/whole-cube-naming";
import { type Position, startOf } from "../../../core/cases/position";
import { situationIn } from "../../../core/cases/situation";
import { faceletFace } from "../../../core/cube/facelets";
import type { Face } from "../../../core/cube/faces";
import { turnsMade } from "../../../core/notation/metrics";
import { onSideInWords } from "../../../core/notation/place-words";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import { capitalised } from "../../../core/notation/sentence";
import { placeFacelets } from "./case-picture";
import { positionInWords } from "./case-words";
import { homeSide } from "./looks";
import type { CubePiece } from "./own-cube";
import type { VerdictWords } from "./right-words";

/** The two stickers to point at: where the first colour is, and where it was taken to be. */
export interface Leaders {
  /** Facelets as the holder sees them. */
  readonly is: number;
  readonly taken: number;
  readonly isWords: string;
  readonly takenWords: string;
}

/** A confusion in words, with what to point at where it can be pointed at. */
export interface DiagnosisWords extends VerdictWords {
  readonly leaders: Leaders | undefined;
}

interface Seat {
  readonly piece: CubePiece;
  readonly position: number;
  readonly orientation: number;
}

/**
 * Where a case would have its one piece in this position's variant; undefined
 * where it has two, which may face any way: nothing could be said of "it".
 */
function seatIn(id: CaseId, { variant }: Position): Seat | undefined {
  const entry = caseEntry(id);
  if (entry.group !== "first-layer") return undefined;
  const { corners, edges } = situationIn(entry.id, variant);
  const seats: readonly (Partial<Seat> & Omit<Seat, "orientation">)[] = [
    ...corners.map(({ piece, ...seat }) => ({
      piece: { kind: "corner", piece } as const,
      ...seat,
    })),
    ...edges.map(({ piece, ...seat }) => ({
      piece: { kind: "edge", piece } as const,
      ...seat,
    })),
  ];
  const [only, ...more] = seats;
  const orientation = only?.orientation;
  return only === undefined || orientation === undefined || more.length > 0
    ? undefined
    : { ...only, orientation };
}

function lengthOf(id: CaseId, { hold }: Position): number {
  return turnsMade(wayOfSchool(id, "first", hold)?.turns ?? []);
}

/** How the two cases are kin, if they are. */
function kinship(position: Position, other: CaseId): string {
  if (caseEntry(position.case).twin !== other) return "";
  const less = lengthOf(other, position) - lengthOf(position.case, position);
  if (less === 0) return "The two are twins: each is the other in a mirror.";
  const turns = Math.abs(less) === 1 ? "one turn" : `${Math.abs(less)} turns`;
  return `The two are twins. This one needs ${turns} ${less > 0 ? "less" : "more"}.`;
}

/** The words for a case that was taken for another, in any stage. */
export function confusionWords(
  position: Position,
  answered: CaseId,
  scheme: ColourScheme,
): DiagnosisWords {
  return (
    seatWords(position, answered, scheme) ??
    titleWords(position, answered, scheme)
  );
}

/** By the names of the two cases, where there is more than one piece to look at. */
function titleWords(
  position: Position,
  answered: CaseId,
  scheme: ColourScheme,
): DiagnosisWords {
  const { hold } = startOf(position);
  const naming = wholeCubeNaming(scheme, position.hold, hold);
  return {
    sentence: `You answered as if it were “${caseTitle(answered, naming)}”.`,
    more: `It is “${caseTitle(position.case, naming)}”. ${kinship(position, answered)}`.trim(),
    leaders: undefined,
  };
}

/** By where the one piece is that is to be brought home, and how it faces; undefined where there are more, or none. */
function seatWords(
  position: Position,
  answered: CaseId,
  scheme: ColourScheme,
): DiagnosisWords | undefined {
  const cube = startOf(position);
  const here = seatIn(position.case, position);
  if (here === undefined) return undefined;
  const other = seatIn(answered, position);
  if (other === undefined) return undefined;
  if (other.position !== here.position)
    return {
      sentence: `You answered as if it were ${positionInWords(cube, here.piece.kind, other.position)}.`,
      more: `It is ${positionInWords(cube, here.piece.kind, here.position)}. ${kinship(position, answered)}`.trim(),
      leaders: undefined,
    };
  const facelets = placeFacelets(cube, here.piece.kind, here.position);
  const is = facelets[here.orientation];
  const taken = facelets[other.orientation];
  if (is === undefined || taken === undefined) return undefined;
  const isWords = onSideInWords(faceletFace(is));
  const takenWords = onSideInWords(faceletFace(taken));
  const hiddenSides: readonly Face[] = [
    "D",
    "B",
    homeSide(position) === 1 ? "L" : "R",
  ];
  const hidden = hiddenSides.includes(faceletFace(is))
    ? "It was hidden: look underneath and behind first."
    : "";
  return {
    sentence: `You answered as if ${scheme.U} were ${takenWords}. It is ${isWords}.`,
    more: [kinship(position, answered), hidden]
      .filter((words) => words !== "")
      .join(" "),
    leaders: {
      is,
      taken,
      isWords: `${capitalised(scheme.U)} is here, ${isWords}`,
      takenWords: `You answered as if it were ${takenWords}`,
    },
  };
}
