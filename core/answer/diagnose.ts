/**
 * What went wrong in an answer, first version: where it left the way, and
 * whether it was the whole way of something else.
 */
import type { Position } from "../cases/position";
import type { Turn } from "../cube/turns";
import { answeredAs, type AnsweredAs } from "./answered-as";
import { departure, type Departure } from "./departure";

/** What is known of an answer. Both absent: it is the way, or equal to it. */
export interface Diagnosis {
  readonly leftWay?: Departure;
  readonly answeredAs?: AnsweredAs;
}

/**
 * Compares an answer with the way of its position.
 *
 * Shape: `turns` are those that stood at the end, as the learner made them
 *        from `startOf(position)`; `way` is that of `turnsForPosition`.
 */
export function diagnose(
  position: Position,
  turns: readonly Turn[],
  way: readonly Turn[],
): Diagnosis {
  const leftWay = departure(position, turns, way);
  if (leftWay === undefined) return {};
  const meant = answeredAs(position, turns);
  return { leftWay, ...(meant === undefined ? {} : { answeredAs: meant }) };
}
