/** A weak spot in words. */
import type { WeakSpot } from "../../../core/memory/weak-spots";

/** What is lost at a case: "12 s where 8 are wanted", "you may not know it any more". */
export function weakSpotWords({
  planned,
  frequency,
  time,
  certainty,
}: WeakSpot): string {
  if (certainty > time) return "you may not know it any more";
  const usual = planned.target + time / frequency;
  const shown = (seconds: number) =>
    seconds < 10 ? seconds.toFixed(1) : String(Math.round(seconds));
  return `${shown(usual)} s where ${planned.target} are wanted`;
}
