/**
 * What a run comes to: its time with what is added to it, or that it did not
 * finish.
 *
 * Raw milliseconds are kept; they are cut only here. Source: WCA Regulations,
 * from memory. Article 9f: a timed result under 10 minutes is truncated to the
 * hundredth of a second, an average or a mean is rounded to it; what takes 10
 * minutes or longer is rounded to the second (x.49 down, x.50 up). Article 10:
 * 2 seconds are added where the cube is one turn from done, and more than one
 * turn from done did not finish. Article A4: 2 seconds are added where it was
 * looked at for too long. They add up. Rules about touching the cube at the
 * end need a judge's eyes and are not asked here.
 */
import type { Milliseconds } from "../memory/review";
import { inspectionPenalty } from "./inspection";
import type { Run } from "./run";

/** A time that counts, or none. Units: milliseconds, whole hundredths of a second or whole seconds. */
export type RunResult = Milliseconds | "did-not-finish";

/** What a penalty adds. Units: milliseconds. */
export const PENALTY = 2_000;

const HUNDREDTH = 10;
const SECOND = 1_000;
const TEN_MINUTES = 600_000;

/** A measured time as it is written down (9f). Units: milliseconds. */
export function recordedTime(time: number): Milliseconds {
  const recorded =
    time < TEN_MINUTES
      ? Math.floor(time / HUNDREDTH) * HUNDREDTH
      : Math.round(time / SECOND) * SECOND;
  return recorded as Milliseconds;
}

/** A mean of written times as it is written down (9f). Units: milliseconds. */
export function recordedMean(mean: number): Milliseconds {
  const unit = mean < TEN_MINUTES ? HUNDREDTH : SECOND;
  return (Math.round(mean / unit) * unit) as Milliseconds;
}

/** How many times 2 seconds are added to a run. By plain rules none are. */
export function penaltiesOf({
  rules,
  ending,
  inspection,
}: Pick<Run, "rules" | "ending" | "inspection">): number {
  if (rules === "plain") return 0;
  const isLate =
    inspection !== undefined && inspectionPenalty(inspection) === "two-seconds";
  return (isLate ? 1 : 0) + (ending === "one-turn-off" ? 1 : 0);
}

/** What a run comes to. */
export function resultOf(
  run: Pick<Run, "rules" | "ending" | "inspection" | "time">,
): RunResult {
  const { rules, ending, inspection, time } = run;
  if (ending === "not-done") return "did-not-finish";
  // By plain rules a turn that is missing is not done.
  if (rules === "plain" && ending === "one-turn-off") return "did-not-finish";
  if (
    rules === "competition" &&
    inspection !== undefined &&
    inspectionPenalty(inspection) === "did-not-finish"
  )
    return "did-not-finish";
  return recordedTime(time + PENALTY * penaltiesOf(run));
}
