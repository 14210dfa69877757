/** What fitting the memory model came to, in a sentence or two for the learner. */
import { LEAST_ANSWERS } from "../../core/memory/fit";
import { storageErrorText } from "../error-text";
import { type FitTrouble, TRY_AGAIN_AFTER } from "./fit-desk.svelte";
import type { StoredFit } from "./learner-settings";

const number = (count: number) => count.toLocaleString("en");

/**
 * What the schedule goes by, and why.
 *
 * Units: `answers` are those the model can be fitted to, given on days after a
 *        case was first met.
 */
export function fitWords(fit: StoredFit | undefined, answers: number): string {
  if (fit === undefined)
    return answers < LEAST_ANSWERS
      ? `Turnwise goes by how people usually forget. To find out how you do, it needs ${number(LEAST_ANSWERS)} answers, counting one to each case a day, from its second day on. So far there are ${number(answers)}.`
      : "Turnwise goes by how people usually forget. You have answered often enough now to find out how you do.";
  const { weights, tried } = fit;
  const from = `${number(tried.answers)} of your answers`;
  if (tried.isTaken)
    return `Turnwise goes by how you forget, found out from ${from}: it foretold the newest of them ${percent(tried.gain)} better than before.`;
  return weights === undefined
    ? `Turnwise goes by how people usually forget: what it found out from ${from} did not foretell the newest of them clearly better.`
    : `Turnwise goes by how you forget, as found out before: what it found out anew from ${from} did not foretell the newest of them clearly better.`;
}

/** When it is tried again by itself; undefined before the first time. Units: as above. */
export function nextFitWords(
  fit: StoredFit | undefined,
  answers: number,
): string | undefined {
  if (fit === undefined) return undefined;
  const left = fit.tried.answers + TRY_AGAIN_AFTER - answers;
  return left <= 0
    ? undefined
    : `It looks again by itself after ${number(left)} more.`;
}

/** That it is being found out. */
export const FITTING_WORDS =
  "Turnwise is finding out how you forget. You can go on meanwhile.";

function percent(share: number): string {
  return `${(100 * share).toFixed(share < 0.1 ? 1 : 0)}%`;
}

/** Why it came to nothing, and what to do about it. */
export function fitTroubleText(trouble: FitTrouble): string {
  return trouble.code === "fit-failed"
    ? `It did not work this time (${trouble.reason}). Nothing was changed: your cases come back as before. Try again later.`
    : storageErrorText(trouble);
}
