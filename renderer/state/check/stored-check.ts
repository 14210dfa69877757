/**
 * A check as it is kept: what was drawn, before anything is asked, so that a
 * reload goes on with the same five.
 *
 * What was answered is in the log and nowhere else: each case has the id that
 * its review will have, and is answered once the log holds that review. So an
 * answer is stored in one step, and nothing here has to be stored with it.
 */
import * as v from "valibot";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Deck } from "../../../core/deck/deck";
import { present } from "../../../core/invariant";
import { drawCheck } from "../../../core/memory/check-draw";
import {
  type PlannedCase,
  planCandidates,
} from "../../../core/memory/plan-candidates";
import {
  currentItem,
  type Round,
  type RoundItem,
  startRound,
} from "../../../core/memory/round";
import { parseRound } from "../../../core/memory/round-schema";
import { randomSource } from "../../../core/random-source";
import { now } from "../../platform/clock";
import { freshId, freshSeed } from "../../platform/random";
import type { LearnerState } from "../learner.svelte";
import { dayInput } from "../practise/day-input";

/** A check, under way or over. */
export interface Check {
  /** The deck's id. */
  readonly deck: string;
  /** Rounds of one case each, in order; the id of each is that of its review. */
  readonly rounds: readonly Round[];
  /** Ids of those that could not be asked: they have no review. */
  readonly leftOut: readonly string[];
  /** What went wrong, in a sentence, by the review's id; absent: nothing did, or it is not known. */
  readonly said: Readonly<Record<string, string>>;
}

const SCHEMA = v.object({
  version: v.literal(1),
  deck: v.string(),
  rounds: v.pipe(v.array(v.unknown()), v.minLength(1)),
  leftOut: v.array(v.string()),
  said: v.record(v.string(), v.string()),
});

/** The check that was stored; undefined where there is none that can be read: then another one is drawn, and no answer is lost. */
export function parseCheck(stored: unknown): Check | undefined {
  const parsed = v.safeParse(SCHEMA, stored);
  if (!parsed.success) return undefined;
  const { deck, leftOut, said } = parsed.output;
  const rounds = parsed.output.rounds.map(parseRound);
  const read = rounds.flatMap((round) => (round.ok ? [round.value] : []));
  const areAsked = read.every((round) => currentItem(round) !== undefined);
  return read.length === rounds.length && areAsked
    ? { deck, rounds: read, leftOut, said }
    : undefined;
}

/** A check as it is stored. */
export function formatCheck(check: Check): unknown {
  return { version: 1, ...check };
}

/**
 * What one of a check's rounds asks: every case with all stickers, as a real
 * cube has them, whether it is learnt or kept. Else one page would tell of two
 * difficulties.
 */
export function itemOf(round: Round): RoundItem {
  const item = present(currentItem(round), "a check's round asks one case");
  return { ...item, bare: false };
}

/** A case asked once: alone where it was met, so that it counts for memory, and else beside the schedule. */
function askedOnce(planned: PlannedCase): PlannedCase {
  const once = { ...planned, times: 1 };
  return planned.memory === "new" ? { ...once, asking: "extra" } : once;
}

/** A new check of a deck, and not of the cases of the last one; undefined for a deck without cases. */
export function newCheck(
  deck: Deck,
  learner: LearnerState,
  last: Check | undefined,
): Check | undefined {
  const candidates = planCandidates({
    ...dayInput(learner, undefined),
    decks: [deck],
  });
  const before: readonly CaseId[] =
    last?.deck === deck.id
      ? last.rounds.map((round) => itemOf(round).case)
      : [];
  const drawn = drawCheck(
    randomSource(freshSeed()),
    candidates.map(({ planned }) => planned),
    before,
  );
  if (drawn.length === 0) return undefined;
  const rounds = drawn.map((planned) =>
    startRound([askedOnce(planned)], {
      id: freshId(),
      learner: learner.learner.id,
      day: learner.today,
      seed: freshSeed(),
      now: now(),
    }),
  );
  return { deck: deck.id, rounds, leftOut: [], said: {} };
}
