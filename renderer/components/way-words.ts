/** Ways and their lengths, as people read them. */
import type { Turn } from "../../core/cube/turns";
import { formatTurn, formatTurns } from "../../core/notation/format";
import { outerBlockTurns } from "../../core/notation/metrics";

/** A sequence that is one pattern, made so many times. */
export interface Repetition {
  readonly pattern: readonly Turn[];
  readonly times: number;
}

/** The shortest pattern that a sequence repeats; the sequence itself, once, where it repeats none. */
export function repetitionIn(turns: readonly Turn[]): Repetition {
  const written = turns.map(formatTurn);
  for (let length = 1; length <= turns.length / 2; length++) {
    const repeats =
      turns.length % length === 0 &&
      written.every((turn, i) => turn === written[i % length]);
    if (repeats)
      return {
        pattern: turns.slice(0, length),
        times: turns.length / length,
      };
  }
  return { pattern: turns, times: 1 };
}

const TIMES = ["", "once", "twice", "three times", "four times", "five times"];

/** How many times, in words. */
export function timesInWords(times: number): string {
  return TIMES[times] ?? `${times} times`;
}

/** A length in turns: "1 turn", "4 turns". Whole-cube turns do not count (WCA 12a5). */
export function turnCount(turns: readonly Turn[]): string {
  const count = outerBlockTurns(turns);
  return count === 1 ? "1 turn" : `${count} turns`;
}

/** A way on one line: its turns, a repeated pattern written once. */
export function wayOnOneLine(turns: readonly Turn[]): string {
  const { pattern, times } = repetitionIn(turns);
  return times === 1
    ? formatTurns(turns)
    : `${formatTurns(pattern)}, ${timesInWords(times)}`;
}
