import type { Turn } from "../cube/turns";

const SUFFIX = { 1: "", 2: "2", 3: "'" } as const;

/** A turn in the notation of the WCA Regulations, wide turns as `Rw`. */
export function formatTurn(turn: Turn): string {
  return turn.layer + SUFFIX[turn.quarters];
}

/** A sequence in the notation of the WCA Regulations; no turns are no text. */
export function formatTurns(turns: readonly Turn[]): string {
  return turns.map(formatTurn).join(" ");
}
