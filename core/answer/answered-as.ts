/**
 * Whether an answer is the whole way of something else.
 *
 * Only a whole way played from its first to its last turn is taken for another
 * case's: the first turns of many ways agree, and a guess that blames the
 * wrong confusion teaches it.
 */
import type { CaseId } from "../cases/case-ids";
import { caseEntry, casesOfStage, waysOf } from "../cases/case-table";
import { isInFreeLayer } from "../cases/constraint";
import { holdFor, holdInStage } from "../cases/hold-in-stage";
import { type Position, startOf } from "../cases/position";
import { recognise } from "../cases/recognise";
import {
  FREE_LAYER,
  homeAfter,
  rotationToHome,
  type Stage,
} from "../cases/stage";
import { HOME_INDICES, type HomeIndex } from "../cases/variant";
import { HANDS } from "../cases/way";
import { thenSymmetry } from "../cube/symmetries";
import type { Quarters, Turn } from "../cube/turns";
import { type BodyStep, bodyLine, isSameStep } from "./body-line";

/** Another case, home or line-up for which the answer is a whole way. */
export interface AnsweredAs {
  readonly case: CaseId;
  /** The home that the way brings a piece to. */
  readonly home: HomeIndex;
  /** Quarters by which the free layer was off when the way began; absent: lined up, or no matter. */
  readonly misaligned?: Quarters;
}

interface SplitLine {
  /** Quarters of the free layer before the first turn that commits. */
  readonly lead: number;
  /** The rest, without turns of the free layer at its end. */
  readonly core: readonly BodyStep[];
}

function split(line: readonly BodyStep[]): SplitLine {
  const isFree = (step: BodyStep | undefined) => step?.face === FREE_LAYER;
  const start = isFree(line[0]) ? 1 : 0;
  const end = line.length > start && isFree(line.at(-1)) ? -1 : undefined;
  return {
    lead: start === 1 ? (line[0]?.quarters ?? 0) : 0,
    core: line.slice(start, end),
  };
}

function isSameCore(a: SplitLine, b: SplitLine): boolean {
  return (
    a.core.length === b.core.length &&
    a.core.every((step, i) => isSameStep(step, b.core[i]))
  );
}

/** A whole way that the answer is, and how well it fits: the lower, the likelier. */
interface Candidate {
  readonly answered: AnsweredAs;
  readonly rank: number;
}

/** A way in the body's frame for home 0, which is the same for either hold. */
interface KnownWay {
  readonly id: CaseId;
  readonly line: SplitLine;
}

// Worked out at the first miss: a few hundred lines, needed for every further one.
const KNOWN_WAYS = new Map<Stage, readonly KnownWay[]>();

function knownWays(stage: Stage): readonly KnownWay[] {
  const known = KNOWN_WAYS.get(stage);
  if (known !== undefined) return known;
  const hold = holdFor(stage, "up");
  const held = holdInStage(stage, { home: 0, seenFrom: 0 }, hold);
  const ways = casesOfStage(stage).flatMap(({ id }) =>
    HANDS.flatMap((hand) => waysOf(id, hold, hand)).map(({ turns }) => ({
      id,
      line: split(bodyLine(held, turns)),
    })),
  );
  KNOWN_WAYS.set(stage, ways);
  return ways;
}

/** The case, home and line-up of which an answer is the whole way; undefined where it is none, or the right one. */
export function answeredAs(
  position: Position,
  turns: readonly Turn[],
): AnsweredAs | undefined {
  const { hold } = startOf(position);
  const { stage } = caseEntry(position.case);
  const candidates = HOME_INDICES.flatMap((steps) => {
    const home = homeAfter(position.variant.home, steps);
    // The body renamed so that this home is the reference one.
    const renamed = thenSymmetry(rotationToHome(home), hold);
    const played = split(bodyLine(renamed, turns));
    const leastSteps = steps === 0 ? 1 : 2;
    if (played.core.length < leastSteps) return [];
    return knownWays(stage)
      .filter(({ line }) => isSameCore(line, played))
      .map(({ id, line }) =>
        candidate(position, id, steps, played.lead - line.lead),
      );
  }).filter((found) => found !== undefined);
  return candidates.toSorted((a, b) => a.rank - b.rank)[0]?.answered;
}

/**
 * How likely it is that a way was meant which agrees with the answer but for
 * `lead` quarters of lining up; undefined where it would be no mistake, or is
 * not believed.
 *
 * The likeliest first: the right home with the wrong case, the right case for
 * another home, the right case badly lined up. Another home is believed only
 * of two turns and more, where the piece was lined up for it.
 */
function candidate(
  position: Position,
  id: CaseId,
  steps: HomeIndex,
  lead: number,
): Candidate | undefined {
  const misaligned = quartersOff(position, lead, id, steps);
  const isOwn = id === position.case;
  const isElsewhere = steps !== 0;
  if (isOwn && !isElsewhere && misaligned === undefined) return undefined;
  if (isElsewhere && misaligned !== undefined) return undefined;
  return {
    answered: {
      case: id,
      home: homeAfter(position.variant.home, steps),
      ...(misaligned === undefined ? {} : { misaligned }),
    },
    rank:
      (misaligned === undefined ? 0 : isOwn ? 2 : 3) +
      (isElsewhere ? (isOwn ? 1 : 4) : 0),
  };
}

/** How far the free layer was off; undefined where it was not, or where the way or the piece does not lie in it. */
function quartersOff(
  position: Position,
  lead: number,
  id: CaseId,
  steps: HomeIndex,
): Quarters | undefined {
  if (!isInFreeLayer(id) || !isInFreeLayer(position.case)) return undefined;
  const { stage } = caseEntry(position.case);
  const shown = recognise(position.cubies, stage, position.variant.home);
  // Seen from a home further on, a piece is as much further turned away.
  const away = (shown?.turnedAway ?? 0) + steps;
  const off = (((lead + away) % 4) + 4) % 4;
  return off === 1 || off === 2 || off === 3 ? off : undefined;
}
