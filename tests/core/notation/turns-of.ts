import { parseTurns } from "../../../core/notation/parse";
import type { Turn } from "../../../core/cube/turns";

/** The turns that a test writes down; the test is wrong where there are none. */
export function turnsOf(text: string): readonly Turn[] {
  const result = parseTurns(text);
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.error)}`);
  return result.value;
}
