/**
 * Answers that are a whole way of something else, turn for turn.
 *
 * Only a whole way played from its first to its last turn is taken for another
 * case's: the first turns of many ways agree, and a guess that blames the
 * wrong confusion teaches it.
 */
import { lastLayerInverseOf } from "../cases/last-layer-cases";
import type { CaseEntry } from "../cases/case-entry";
import type { CaseId } from "../cases/case-ids";
import { FREE_LAYER, homeAfter, rotationToHome } from "../cases/stage";
import { bodyTurns, holdAfterTurn, viewFace } from "../cube/held-cube";
import { inverseTurns } from "../notation/inverse";
import { bodyLine } from "./body-line";
import type { RightLine } from "./right-lines";
import { faceImage } from "../cube/symmetries";
import type { Quarters } from "../cube/turns";
import type { Explanation } from "./explanation";
import type { GivenLine, Reading } from "./given-line";
import { type FaceStep, inOrder, lineKey, splitLine } from "./known-ways";
import { otherHomeReached, wrongPiecesBrought } from "./where-pieces-went";

const EVIDENCE = "from-known-way";

/** Whether a reading's lining up is the one that the learner saw to be needed; in the last layer each case is lined up after its own look. */
function isLinedUp({ entry, linedUpBy }: GivenLine, reading: Reading): boolean {
  return (
    entry.group === "last-layer" ||
    linedUpBy === undefined ||
    linedUpBy === reading.linedUpBy
  );
}

/** A whole way brought other pieces home. */
export function wrongPieceByWay(given: GivenLine): Explanation | undefined {
  if (given.readings.length === 0) return undefined;
  const brought = wrongPiecesBrought(given);
  const own = given.readings.find(({ steps }) => steps === 0)?.way.id;
  return (
    brought && {
      kind: "wrong-piece",
      evidence: EVIDENCE,
      ...brought,
      ...(own === undefined ? {} : { case: own }),
    }
  );
}

/** A whole way brought the piece to another home. */
export function anotherHomeByWay(given: GivenLine): Explanation | undefined {
  if (given.readings.every(({ steps }) => steps === 0)) return undefined;
  const home = otherHomeReached(given);
  return home === undefined
    ? undefined
    : { kind: "another-home", evidence: EVIDENCE, home };
}

/** The way of the case that a mirror shows. */
export function twinByWay(given: GivenLine): Explanation | undefined {
  const { twin, id } = given.entry;
  const isTwins =
    twin !== id &&
    given.readings.some(
      (reading) =>
        reading.way.id === twin &&
        reading.steps === 0 &&
        isLinedUp(given, reading),
    );
  return isTwins ? { kind: "twin", evidence: EVIDENCE, case: twin } : undefined;
}

/** How many homes further on a known way was made for, all else as it should be: 1–3; undefined where it was not. */
export function sideTaken(given: GivenLine): 1 | 2 | 3 | undefined {
  // One turn of another side is no way: any turn is one.
  if (given.committing < 2) return undefined;
  const played = lineKey(given.split.core);
  return ([1, 2, 3] as const).find((steps) => {
    const rotation = rotationToHome(steps);
    return given.rightLines.some(({ line, isFromHome }) => {
      if (!isFromHome) return false;
      const { lead, core } = splitLine(line);
      const moved = core.map(({ face, quarters }) => ({
        face: faceImage(rotation, face),
        quarters,
      }));
      return lead === given.split.lead && lineKey(inOrder(moved)) === played;
    });
  });
}

/** The case's own way, had another side been in front. */
export function otherSideByWay(given: GivenLine): Explanation | undefined {
  const steps = sideTaken(given);
  return steps === undefined
    ? undefined
    : {
        kind: "other-side",
        evidence: EVIDENCE,
        asIf: homeAfter(given.position.variant.home, steps),
      };
}

/** The case that answers of this one make on a solved cube; undefined where its stage has none, or it is its own. */
export function inverseOf(entry: CaseEntry): CaseId | undefined {
  const inverse =
    entry.group === "last-layer"
      ? lastLayerInverseOf(entry.shows)?.id
      : undefined;
  return inverse === entry.id ? undefined : inverse;
}

function backwards(steps: readonly FaceStep[]): readonly FaceStep[] {
  const turnedBack = steps.toReversed().map(({ face, quarters }) => ({
    face,
    quarters: (4 - quarters) as Quarters,
  }));
  return inOrder(turnedBack);
}

/**
 * A way as its letters read backwards. Where it ends held otherwise than it
 * began, that is other turns than undoing it. Its own first turn of the free
 * layer, which lining up has swallowed, may stand at the end.
 */
function writtenBackwards(
  { hold }: GivenLine,
  { turns, isFromHome }: RightLine,
): readonly (readonly FaceStep[])[] {
  if (!isFromHome) return [];
  let held = hold;
  let start = 0;
  for (const turn of turns) {
    if (bodyTurns(held, turn).some(([face]) => face !== FREE_LAYER)) break;
    held = holdAfterTurn(held, turn);
    start++;
  }
  const rest = turns.slice(start);
  if (rest.reduce(holdAfterTurn, held) === held) return [];
  const undone = inverseTurns(rest);
  const layer = viewFace(held, FREE_LAYER);
  return ([undefined, 1, 2, 3] as const).map((quarters) => {
    const last = quarters === undefined ? [] : [{ layer, quarters }];
    return splitLine(bodyLine(held, [...undone, ...last])).core;
  });
}

/** The case's own way from its end to its beginning, or a way of its inverse. */
export function inverseByWay(given: GivenLine): Explanation | undefined {
  const inverse = inverseOf(given.entry);
  const played = lineKey(given.split.core);
  const isBackwards =
    given.committing > 1 &&
    given.rightLines.some(
      (way) =>
        lineKey(backwards(splitLine(way.line).core)) === played ||
        writtenBackwards(given, way).some((core) => lineKey(core) === played),
    );
  const isOfInverse = given.readings.some(
    ({ way, steps }) => way.id === inverse && steps === 0,
  );
  return isBackwards || isOfInverse
    ? {
        kind: "inverse",
        evidence: EVIDENCE,
        ...(inverse === undefined ? {} : { case: inverse }),
      }
    : undefined;
}

/** The way of another case, lined up for what was shown. */
export function otherCaseByWay(given: GivenLine): Explanation | undefined {
  const found = given.readings.find(
    (reading) =>
      reading.way.id !== given.entry.id &&
      reading.steps === 0 &&
      isLinedUp(given, reading),
  );
  return (
    found && { kind: "other-case", evidence: EVIDENCE, case: found.way.id }
  );
}

/**
 * The way of another case, and not lined up for it either: two mistakes, so
 * believed only of three turns and more.
 */
export function otherCaseLinedUpWrongly(
  given: GivenLine,
): Explanation | undefined {
  if (given.committing < 3 || given.linedUpBy === undefined) return undefined;
  const found = given.readings.find(
    ({ way, steps }) => way.id !== given.entry.id && steps === 0,
  );
  if (found === undefined) return undefined;
  const off = (given.linedUpBy - found.linedUpBy + 4) % 4;
  return {
    kind: "other-case",
    evidence: EVIDENCE,
    case: found.way.id,
    ...(off === 0 ? {} : { off: off as Quarters }),
  };
}
