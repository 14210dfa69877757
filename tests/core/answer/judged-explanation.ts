/**
 * Whether an explanation of an answer is as good as the true one.
 *
 * Brevity: how many things must have gone wrong for the turns that were made.
 * - 1: the turns are those of a known way with one thing wrong: cut short, not
 *   lined up, one turn changed, or a whole way of something else.
 * - 2: the explanation says what the turns did or what would have made them
 *   right, but from no way that is known; or two things went wrong.
 * - none: it explains nothing.
 *
 * Nothing that diagnosis says is believed: each explanation is played, on a
 * cube or against the table of ways, and one that does not give the turns that
 * were made counts as none. Turns of the free layer at the end do not count.
 */
import { judge } from "../../../core/answer/judge";
import type { Explanation } from "../../../core/answer/explanation";
import type { WaySource } from "../../../core/answer/known-ways";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { piecesOfHome, targetsOf } from "../../../core/cases/constraint";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import { lastLayerInverseOf } from "../../../core/cases/last-layer-cases";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { isLastLayerStage } from "../../../core/cases/stage";
import { HOME_INDICES, type HomeIndex } from "../../../core/cases/variant";
import { HANDS } from "../../../core/cases/way";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import type { Pieces } from "../../../core/cube/pieces";
import { NO_ROTATION, rotationAbout } from "../../../core/cube/symmetries";
import { FACES } from "../../../core/cube/faces";
import {
  isWholeCubeTurn,
  type Quarters,
  type Turn,
  TURN_LAYERS,
} from "../../../core/cube/turns";
import { wholeCubeTurnsBetween } from "../../../core/cube/whole-cube-turns";
import { faceTurnsOf } from "../../../core/solver/face-turn-sequence";
import { inverseTurns } from "../../../core/notation/inverse";
import {
  mirrorTurns,
  turnsThroughSymmetry,
} from "../../../core/notation/mirror";
import { randomSource } from "../../../core/random-source";
import type { Mistake } from "./simulated-mistakes";
import { TWO_LARGEST } from "./table-of-ways";

const QUARTERS = [1, 2, 3] as const;

/** Body face D in the order U R F D L B. */
const FREE_FACE = 3;

/** A way backwards, held as for the way. */
function backwards(turns: readonly Turn[]): readonly Turn[] {
  const start = turns.findIndex((turn) => !isWholeCubeTurn(turn));
  return [...turns.slice(0, start), ...inverseTurns(turns.slice(start))];
}

/**
 * The faces of the body that turns turn, as one text: turns of one face joined,
 * opposite ones in one order, those of the free layer at the end left out.
 * Worked out here and not by `bodyLine`, which diagnosis goes by.
 */
function lineOf(position: Position, turns: readonly Turn[]): string {
  const { hold } = startOf(position);
  const line: number[] = [];
  for (const turn of faceTurnsOf(hold, turns)) {
    const face = Math.floor(turn / 3);
    const opposite = (face + 3) % 6;
    const last = line.at(-1);
    const hasSwapped =
      last !== undefined &&
      Math.floor(last / 3) === opposite &&
      Math.floor((line.at(-2) ?? -3) / 3) === face;
    const at = hasSwapped ? line.length - 2 : line.length - 1;
    const same = line[at];
    if (same !== undefined && Math.floor(same / 3) === face) {
      const quarters = ((same % 3) + 1 + (turn % 3) + 1) % 4;
      line.splice(at, 1, ...(quarters === 0 ? [] : [3 * face + quarters - 1]));
    } else if (
      last !== undefined &&
      Math.floor(last / 3) === opposite &&
      face < opposite
    )
      line.splice(-1, 0, turn);
    else line.push(turn);
  }
  if (Math.floor((line.at(-1) ?? 0) / 3) === FREE_FACE) line.pop();
  return line.join(" ");
}

function freeTurn(position: Position, quarters: number): readonly Turn[] {
  const layer = viewFace(startOf(position).hold, "D");
  return quarters === 0 ? [] : [{ layer, quarters: quarters as Quarters }];
}

/** Whether the answer is a way of a case, or one backwards, for a home, however it was lined up. */
function isWayOf(
  { position, turns }: Mistake,
  source: WaySource,
  id: CaseId,
  home: HomeIndex,
  isBackwards = false,
): boolean {
  const { stage } = caseEntry(id);
  const made = lineOf(position, turns);
  const bring = wholeCubeTurnsBetween(
    startOf(position).hold,
    holdInStage(stage, { home, seenFrom: 0 }, position.hold),
  );
  return HANDS.flatMap((hand) => source(id, position.hold, hand)).some((way) =>
    HOME_INDICES.some((quarters) => {
      const played = [
        ...freeTurn(position, quarters),
        ...bring,
        ...(isBackwards ? backwards(way.turns) : way.turns),
      ];
      return lineOf(position, played) === made;
    }),
  );
}

function isAnyWay(mistake: Mistake, source: WaySource): boolean {
  const { position } = mistake;
  const { stage } = caseEntry(position.case);
  return HOME_INDICES.some((home) =>
    casesOfStage(stage).some(({ id }) => isWayOf(mistake, source, id, home)),
  );
}

function isRight(position: Position, turns: readonly Turn[]): boolean {
  return judge(position, applyTurns(startOf(position), turns)).right;
}

/** Whether turns are a known way for the position: the taught one, or one of the table. */
function isKnownWay(
  mistake: Mistake,
  source: WaySource,
  turns: readonly Turn[],
): boolean {
  const { position, taught } = mistake;
  if (!isRight(position, turns)) return false;
  const isTaught = lineOf(position, turns) === lineOf(position, taught);
  const isInLastLayer = isLastLayerStage(caseEntry(position.case).stage);
  const homes = isInLastLayer ? HOME_INDICES : [position.variant.home];
  return (
    isTaught ||
    homes.some((home) =>
      isWayOf({ ...mistake, turns }, source, position.case, home),
    )
  );
}

/** Whether the answer is a right one with one turn missing, too many or changed. */
function isOneTurnOff({ position, turns }: Mistake, right: readonly Turn[]) {
  const made = lineOf(position, turns);
  const isMade = (changed: readonly Turn[]) =>
    lineOf(position, changed) === made;
  for (let i = 0; i <= right.length; i++) {
    const before = right.slice(0, i);
    if (isMade([...before, ...right.slice(i + 1)])) return true;
    for (const layer of TURN_LAYERS)
      for (const quarters of QUARTERS) {
        const other = { layer, quarters };
        const isFace = FACES.some((face) => face === layer);
        if (isFace && isMade([...before, other, ...right.slice(i)]))
          return true;
        if (isMade([...before, other, ...right.slice(i + 1)])) return true;
      }
  }
  return false;
}

/** Whether the turns would be right seen from some side, lined up in some way. */
function isRightSomehow(position: Position, turns: readonly Turn[]): boolean {
  return HOME_INDICES.some((quarters) =>
    HOME_INDICES.some((steps) =>
      isRight(position, [
        ...freeTurn(position, quarters),
        ...turnsThroughSymmetry(turns, rotationAbout("y", steps)),
      ]),
    ),
  );
}

/** Whether the turns are right for another case in the same home, lined up in some way. */
function isRightForCase({ position, turns }: Mistake, id: CaseId): boolean {
  const other = randomPosition(
    randomSource(1),
    id,
    { ...position.variant, placed: [], turnedAway: 0 },
    position.hold,
  );
  return HOME_INDICES.some((quarters) =>
    isRight(other, [...freeTurn(position, quarters), ...turns]),
  );
}

/** Whether pieces of a home are in a home, whatever their side colours. */
function areIn(
  after: PartlyKnownCubies,
  { corners, edges }: Pieces,
  seats: Pieces,
): boolean {
  return (
    corners.every((piece, i) => {
      const seat = seats.corners[i] ?? -1;
      return (
        after.cornerPermutation[seat] === piece &&
        after.cornerOrientation[seat] === 0
      );
    }) &&
    edges.every(
      (piece, i) => after.edgePermutation[seats.edges[i] ?? -1] === piece,
    )
  );
}

/** Whether what is missing does not mend the layer that was turned last. */
function goesOnWithAnotherLayer(
  turns: readonly Turn[],
  missing: readonly Turn[],
): boolean {
  const last = turns.at(-1);
  return last === undefined || last.layer !== missing[0]?.layer;
}

/** How many things went wrong by an explanation; undefined where it does not give the turns that were made. */
export function brevityOf(
  explanation: Explanation,
  mistake: Mistake,
  source: WaySource,
): 1 | 2 | undefined {
  const { position, turns } = mistake;
  const { home } = position.variant;
  const entry = caseEntry(position.case);
  const { stage, twin, id } = entry;
  const after = applyTurns(startOf(position), turns).cubies;
  const isOfCase = (other: CaseId) => isWayOf(mistake, source, other, home);
  const ifTrue = (isTrue: boolean, brevity: 1 | 2) =>
    isTrue ? brevity : undefined;
  switch (explanation.kind) {
    case "stopped-early": {
      const { missing, wrong } = explanation;
      if (wrong === undefined)
        return ifTrue(
          isKnownWay(mistake, source, [...turns, ...missing]) &&
            goesOnWithAnotherLayer(turns, missing),
          1,
        );
      if (wrong.wanted === undefined) return undefined;
      const putRight = turns.with(wrong.index, wrong.wanted);
      return ifTrue(isKnownWay(mistake, source, [...putRight, ...missing]), 2);
    }
    case "lined-up-wrongly":
      return ifTrue(isRight(position, [explanation.wanted, ...turns]), 1);
    case "wrong-piece":
    case "another-home": {
      if (isLastLayerStage(stage)) return undefined;
      const [pieces, into] =
        explanation.kind === "wrong-piece"
          ? [explanation.pieces, explanation.into]
          : [targetsOf(position), explanation.home];
      if (!areIn(after, pieces, piecesOfHome(stage, into))) return undefined;
      return isAnyWay(mistake, source) ? 1 : 2;
    }
    case "one-turn":
      if (!isOneTurnOff(mistake, explanation.right)) return undefined;
      if (isKnownWay(mistake, source, explanation.right)) return 1;
      return ifTrue(isRight(position, explanation.right), 2);
    case "twin":
      if (explanation.case !== twin) return undefined;
      if (isOfCase(twin)) return 1;
      return ifTrue(
        isRightSomehow(position, mirrorTurns(turns, "left-right")),
        2,
      );
    case "other-side":
      if (isWayOf(mistake, source, id, explanation.asIf)) return 1;
      return ifTrue(isRightSomehow(position, turns), 2);
    case "inverse": {
      const inverse =
        entry.group === "last-layer"
          ? lastLayerInverseOf(entry.shows)?.id
          : undefined;
      const homes = isLastLayerStage(stage) ? HOME_INDICES : [home];
      if (
        homes.some((one) => isWayOf(mistake, source, id, one, true)) ||
        (inverse !== undefined && isOfCase(inverse))
      )
        return 1;
      return ifTrue(isRightSomehow(position, inverseTurns(turns)), 2);
    }
    case "other-case":
      if (isOfCase(explanation.case))
        return explanation.off === undefined ? 1 : 2;
      return ifTrue(isRightForCase(mistake, explanation.case), 2);
    case "others-lost": {
      const verdict = judge(position, { cubies: after, hold: NO_ROTATION });
      if (verdict.right) return undefined;
      const { corners, edges } = verdict.missing;
      return ifTrue(corners.length + edges.length === 0, 2);
    }
    case "unexplained":
      return undefined;
  }
}

/** How many things went wrong by the true explanation; the two largest sets have no known ways but the taught one. */
function trueBrevity({ kind, position }: Mistake): 1 | 2 {
  const { stage } = caseEntry(position.case);
  const isByEffect =
    TWO_LARGEST.includes(stage) &&
    ["twin", "other-side", "inverse", "other-case"].includes(kind);
  return kind === "others-lost" || isByEffect ? 2 : 1;
}

/** What became of one mistake. */
export type Finding = "right-kind" | "as-brief" | "wrong";

/** Whether the right kind was named, or one that explains the same turns at least as briefly; played, and not believed. */
export function findingOf(
  explanation: Explanation,
  mistake: Mistake,
  source: WaySource,
): Finding {
  const brevity = brevityOf(explanation, mistake, source);
  if (brevity === undefined) return "wrong";
  if (
    explanation.kind === mistake.kind &&
    (mistake.detail === "" || detailOf(explanation) === mistake.detail)
  )
    return "right-kind";
  return brevity <= trueBrevity(mistake) ? "as-brief" : "wrong";
}

/** What an explanation names, as a mistake's `detail` has it. */
function detailOf(explanation: Explanation): string {
  switch (explanation.kind) {
    case "lined-up-wrongly":
      return String(explanation.off);
    case "another-home":
      return String(explanation.home);
    case "one-turn":
      return explanation.slip;
    case "twin":
    case "inverse":
    case "other-case":
      return explanation.case ?? "";
    case "other-side":
      return String(explanation.asIf);
    case "wrong-piece":
      return String(explanation.into);
    case "stopped-early":
    case "others-lost":
    case "unexplained":
      return "";
  }
}
