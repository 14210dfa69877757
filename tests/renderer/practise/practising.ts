/** Practise over a fresh store, for the tests of what it asks, stores and keeps. */
import { turnsForPosition } from "../../../core/cases/way-for-position";
import type { Review } from "../../../core/memory/review";
import type { AppState } from "../../../renderer/state/app-state.svelte";
import { PractiseState } from "../../../renderer/state/practise.svelte";
import { CaseAttempt } from "../../../renderer/state/practise/case-attempt.svelte";
import { MyCubeAttempt } from "../../../renderer/state/practise/my-cube-attempt.svelte";
import { readLog } from "../../../renderer/storage/reviews";
import { foundAtOnce } from "../state/sheets/found-at-once";

/** Practise as it is opened from the top of the window, with what is then on the desk. */
export async function practising(app: AppState): Promise<PractiseState> {
  const practise = new PractiseState({
    learner: app.current,
    findSetUp: foundAtOnce,
    still: () => true,
  });
  await practise.open(undefined);
  return practise;
}

/** The attempt at the case on the desk; throws where something else is there. */
export function attemptOf(practise: PractiseState): CaseAttempt {
  const { phase } = practise;
  if (phase.kind !== "case" || !(phase.attempt instanceof CaseAttempt))
    throw new Error(`no case on the screen but ${phase.kind}`);
  return phase.attempt;
}

/** The attempt at the case on the learner's own cube; throws where something else is there. */
export function myCubeOf(practise: PractiseState): MyCubeAttempt {
  const { phase } = practise;
  if (phase.kind !== "case" || !(phase.attempt instanceof MyCubeAttempt))
    throw new Error(`no case on the own cube but ${phase.kind}`);
  return phase.attempt;
}

/** Answers the case on the desk by its way, a second a turn, and waits for the store. */
export async function answer(practise: PractiseState): Promise<void> {
  const attempt = attemptOf(practise);
  attempt.caseShown(0);
  turnsForPosition(attempt.position).forEach((turn, n) =>
    attempt.turn(turn, 1000 * (n + 1)),
  );
  await practise.storeAgain();
}

/** The answers of the learner at the desk that are stored, oldest first. */
export async function stored(app: AppState): Promise<readonly Review[]> {
  const log = await readLog(app.database, app.current.learner.id);
  return log.ok ? log.value.reviews : [];
}
