/** A weak spot in words. */
import type { CaseId } from "../../../core/cases/case-ids";
import type { WeakSpot } from "../../../core/memory/weak-spots";
import { aboutMinutes } from "./today-words";

/** What is lost at a case: "12 s where 8 are wanted", "known 75 times in 100 where 90 are wanted". Units: `level` 0–1. */
export function weakSpotWords(
  { planned, frequency, time, certainty, unsure }: WeakSpot,
  level: number,
): string {
  if (certainty > time) {
    const hundred = (share: number) => Math.round(100 * share);
    return `you’d know it ${hundred(level - unsure)} times in 100 where ${hundred(level)} are wanted`;
  }
  const usual = planned.target + time / frequency;
  const shown = (seconds: number) =>
    seconds < 10 ? seconds.toFixed(1) : String(Math.round(seconds));
  return `${shown(usual)} s where ${planned.target} are wanted`;
}

/** What the round beside the schedule asks: those that were named, and how many beyond them. Units: seconds. */
export function weakSpotsOffer(
  named: readonly CaseId[],
  asked: readonly CaseId[],
  seconds: number,
): string {
  const more = asked.filter((id) => !named.includes(id)).length;
  return `Practise these${more === 0 ? "" : ` and ${more} more`}, ${aboutMinutes(seconds)}`;
}
