/**
 * Whether a way that a coach typed answers its case, found out by playing it.
 *
 * Played on many positions rather than reasoned about, and judged by the judge
 * of the learners' answers, so that a way is taken exactly where an answer
 * would be. Each set of other homes that the case allows comes up, in every
 * home; 200 positions take about 10 ms.
 */
import type { CaseId } from "../cases/case-ids";
import {
  allowedPlacedSets,
  isInFreeLayer,
  mostPlaced,
} from "../cases/constraint";
import { caseEntry } from "../cases/case-table";
import { holdFor } from "../cases/hold-in-stage";
import { type Position, startOf } from "../cases/position";
import { randomPosition } from "../cases/random-position";
import { HOME_INDICES, type Hold, type Variant } from "../cases/variant";
import { lineUp, turnsForPosition } from "../cases/way-for-position";
import { diagnose, type Diagnosis } from "../answer/diagnose";
import { judge, type MissVerdict } from "../answer/judge";
import type { Cubies } from "../cube/cubies";
import { applyTurns } from "../cube/held-cube";
import type { Turn } from "../cube/turns";
import { present } from "../invariant";
import { formatTurns } from "../notation/format";
import type { NotationError } from "../notation/parse";
import { simplifyTurns } from "../notation/simplify";
import type { RandomSource } from "../random-source";
import { err, ok, type Result } from "../result";
import { readTypedWay } from "./deck-contradiction";
import { turnedOver, writtenHold } from "./way-of-deck";

/** How a typed way is tried. */
export interface WayTrial {
  /** How whoever typed it holds the cube; absent: as a deck writes it down. Counts in the first layer alone. */
  readonly hold?: Hold;
  /** At least so many positions, and one for each set of placed homes; absent: 200. */
  readonly positions?: number;
  /** How many other homes the deck has placed; absent: every number that the case allows. */
  readonly placed?: 0 | 1 | 2 | 3;
}

/** A way that answered every position it was tried on. */
export interface CheckedWay {
  /** As they were typed. */
  readonly turns: readonly Turn[];
  /** As a deck keeps them: in its hold, in the coach's own writing where that was typed in it. */
  readonly kept: string;
  /** How many positions it was played on. */
  readonly positions: number;
}

/** Why a typed way is not taken. */
export type WayRefusal =
  | { readonly code: "way-not-notation"; readonly notation: NotationError }
  /** Nothing turns, or only the whole cube. */
  | { readonly code: "way-without-turns" }
  /**
   * Two corners in each other's homes, either twisted in any way: a sequence
   * twists each by a fixed amount, so it is right for one in nine at most.
   */
  | { readonly code: "no-one-way" }
  /** The first position that it does not answer, those with the fewest homes placed first. */
  | {
      readonly code: "does-not-answer";
      readonly position: Position<Cubies>;
      readonly verdict: MissVerdict;
      readonly diagnosis: Diagnosis;
      /** What makes it a way of the case when it comes first; absent: nothing of that kind. */
      readonly answersAfter?: AnswersAfter;
    };

/** What a typed way lacks at its beginning. */
export interface AnswersAfter {
  /** One turn of the free layer. */
  readonly lead: readonly Turn[];
  /** The whole way to type, in the coach's own writing as far as that goes. */
  readonly way: string;
}

function variantsOf(
  id: CaseId,
  placed: number | undefined,
): readonly Variant[] {
  const most = mostPlaced(id);
  const counts = [0, 1, 2, 3].filter((count) =>
    placed === undefined ? count <= most : count === Math.min(placed, most),
  );
  return counts.flatMap((count) =>
    HOME_INDICES.flatMap((home) =>
      allowedPlacedSets(id, home, count).map((set) => ({
        home,
        placed: set,
        turnedAway: 0 as const,
        seenFrom: 0 as const,
      })),
    ),
  );
}

/**
 * The turns of the free layer that may come before a way. Turns of the whole
 * cube need no trying: what is made in the last layer from another side is the
 * same with a turn of the layer before and after, and that after it is free.
 */
function leadsOf(id: CaseId, hold: Hold): readonly (readonly Turn[])[] {
  if (!isInFreeLayer(id)) return [];
  return HOME_INDICES.filter((turnedAway) => turnedAway !== 0).map(
    (turnedAway) => lineUp({ turnedAway }, hold),
  );
}

/** A lead with the way as it was typed after it, or with its first turn where the two are one. */
function typedAfter(
  lead: readonly Turn[],
  turns: readonly Turn[],
  text: string,
): string {
  const isOne = lead.some(({ layer }) => layer === turns[0]?.layer);
  return isOne
    ? formatTurns(simplifyTurns([...lead, ...turns]))
    : `${formatTurns(lead)} ${text.trim()}`;
}

/** Plays a typed way on random positions of its case, lined up with the home in front. */
export function checkWay(
  id: CaseId,
  text: string,
  random: RandomSource,
  { hold: typedIn, positions = 200, placed }: WayTrial = {},
): Result<CheckedWay, WayRefusal> {
  const read = readTypedWay(id, text);
  if (!read.ok) return err(read.error);
  const turns = read.value;
  const hold = holdFor(caseEntry(id).stage, typedIn ?? "up");
  const variants = variantsOf(id, placed);
  const count = Math.max(positions, variants.length);
  const firstMissed = (played: readonly Turn[]) => {
    for (let i = 0; i < count; i++) {
      const variant = present(variants[i % variants.length], "a case has some");
      const position = randomPosition(random, id, variant, hold);
      const verdict = judge(position, applyTurns(startOf(position), played));
      if (!verdict.right) return { position, verdict };
    }
    return undefined;
  };
  const missed = firstMissed(turns);
  if (missed !== undefined) {
    const { position } = missed;
    const lead = leadsOf(id, hold).find(
      (before) => firstMissed([...before, ...turns]) === undefined,
    );
    return err({
      code: "does-not-answer",
      ...missed,
      diagnosis: diagnose(position, turns, turnsForPosition(position)),
      ...(lead && {
        answersAfter: { lead, way: typedAfter(lead, turns, text) },
      }),
    });
  }
  const kept =
    hold === writtenHold(id) ? text.trim() : formatTurns(turnedOver(turns));
  return ok({ turns, kept, positions: count });
}
