/**
 * Skipping: a case that was only looked at is passed over. Once an answer was
 * begun or help was asked for, leaving it is a miss like any other.
 */
import type { Attempt } from "./answered-case.svelte";
import { CaseAttempt } from "./case-attempt.svelte";

/**
 * Whether skipping ends the attempt as missed. A showing cannot be missed, and
 * nothing of a retry is recorded.
 */
export function isSkipMissed(attempt: Attempt): boolean {
  if (attempt.isRetry || attempt.item.asking === "shown") return false;
  if (attempt instanceof CaseAttempt) return attempt.hasBegun;
  const { stage, hints } = attempt;
  return (
    hints.length > 0 ||
    stage.kind === "report" ||
    // Nobody sees what is turned on a cube in the hands, unless it is said.
    (stage.kind === "turning" && stage.hasSaidKnown)
  );
}
