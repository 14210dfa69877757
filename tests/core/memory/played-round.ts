/** Rounds begun from planned cases and played to their end, as a test says or drawn. */
import fc from "fast-check";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { dayNumber } from "../../../core/memory/local-day";
import {
  answerItem,
  currentItem,
  type Round,
  type RoundItem,
  skipItem,
  startRound,
} from "../../../core/memory/round";
import type { MemoryState } from "../../../core/memory/schedule";
import { ms } from "./sample-review";

type Kind = "missed" | "hesitant" | "clean";
/** What becomes of an item: answered in one of three ways, or skipped. */
export type Move = Kind | "skip";

/** A case of a plan. */
export function planned(
  id: CaseId,
  memory: MemoryState = "new",
  times = 1,
): PlannedCase {
  return { case: id, hold: "up", deck: "d", target: 8, memory, times };
}

/** The round, its learner and when it began. */
export const START = {
  id: "r",
  learner: "ada",
  day: dayNumber(20_000),
  now: 0,
};

/** A round at its start. */
export function begin(cases: readonly PlannedCase[], seed = 7): Round {
  return startRound(cases, { ...START, seed });
}

const OUTCOME = {
  clean: "steady",
  hesitant: "slow",
  missed: "missed",
} as const;

/** The round after its current item. */
export function go(round: Round, move: Move): Round {
  if (move === "skip") return skipItem(round, 1);
  return answerItem(
    round,
    {
      id: `review-${round.results.length}`,
      at: ms(round.results.length + 1),
      verdict: move === "missed" ? "missed" : "right",
      corrections: move === "hesitant" ? 1 : 0,
      hints: [],
    },
    OUTCOME[move],
  );
}

/** An item that was asked, with what became of it. */
export interface Asked {
  readonly item: RoundItem;
  readonly move: Move;
}

/** Whether it was missed, and not merely shown. */
export function isMiss({ item, move }: Asked): boolean {
  return move === "missed" && item.asking !== "shown";
}

/** Whether both asked the same case of the plan. */
export function sameCase(a: Asked, b: Asked): boolean {
  return a.item.track === b.item.track;
}

/** Plays a round to its end; the items asked, with what became of each. */
export function play(
  start: Round,
  moveAt: (item: RoundItem, index: number) => Move,
): { round: Round; asked: Asked[] } {
  let round = start;
  const asked: Asked[] = [];
  for (;;) {
    const item = currentItem(round);
    if (item === undefined) return { round, asked };
    if (asked.length > 2000) throw new Error("the round does not end");
    const move = moveAt(item, asked.length);
    asked.push({ item, move });
    round = go(round, move);
  }
}

/** What a round asks, one line for each item. */
export function script(
  start: Round,
  moveAt: (item: RoundItem, index: number) => Move = () => "clean",
): string[] {
  return play(start, moveAt).asked.map(
    ({ item }) => `${item.case} ${item.asking}`,
  );
}

const MEMORIES = ["new", "settling", "kept", "fading"] as const;
const MOVES = ["missed", "hesitant", "clean", "skip"] as const;

const plans = fc
  .uniqueArray(fc.constantFrom(...FIRST_LAYER_IDS), {
    minLength: 1,
    maxLength: 12,
  })
  .chain((ids) =>
    fc.tuple(
      ...ids.map((id) =>
        fc
          .record({
            memory: fc.constantFrom(...MEMORIES),
            times: fc.integer({ min: 1, max: 4 }),
          })
          .map(({ memory, times }) => planned(id, memory, times)),
      ),
    ),
  );
const moves = fc.array(fc.constantFrom(...MOVES), { maxLength: 200 });
/** Any plan of the first layer, with what becomes of its items. */
export const anyRound = fc.record({
  cases: plans,
  seed: fc.integer(),
  moves,
  /** What follows once the moves are used up. */
  then: fc.constantFrom(...MOVES),
});

/** Plays a drawn round to its end. */
export function playAny(input: {
  cases: PlannedCase[];
  seed: number;
  moves: readonly Move[];
  then: Move;
}) {
  return play(
    begin(input.cases, input.seed),
    (_, i) => input.moves[i] ?? input.then,
  );
}
