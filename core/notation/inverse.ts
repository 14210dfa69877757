import { inverseTurn, type Turn } from "../cube/turns";

/** The sequence that takes a sequence back: last turn first, each undone. */
export function inverseTurns(turns: readonly Turn[]): readonly Turn[] {
  return turns.map(inverseTurn).reverse();
}
