/** What fitting the memory model came to, in one sentence for the learner. */
import { LEAST_ANSWERS } from "../../core/memory/fit";
import { storageErrorText } from "../error-text";
import type { FitTrouble } from "./fit-desk.svelte";
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
      ? `Turnwise goes by how people usually forget. Once you have answered ${number(LEAST_ANSWERS)} times on a later day than the first, it learns how you do; so far that is ${number(answers)}.`
      : "Turnwise goes by how people usually forget. There are enough answers now to learn how you do.";
  const { weights, tried } = fit;
  if (tried.isTaken)
    return `Turnwise goes by how you forget, learnt from ${number(tried.answers)} of your answers: it foretold the newest of them ${percent(tried.gain)} better than before.`;
  return weights === undefined
    ? `Turnwise goes by how people usually forget: what it learnt from ${number(tried.answers)} of your answers did not foretell the newest of them better.`
    : `Turnwise goes by how you forget, as learnt before: what it learnt anew from ${number(tried.answers)} of your answers did not foretell the newest of them better.`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(share < 0.1 ? 1 : 0)}%`;
}

/** Why it came to nothing, and what to do about it. */
export function fitTroubleText(trouble: FitTrouble): string {
  if (trouble.code === "cancelled")
    return "It was stopped. Nothing was changed.";
  if (trouble.code === "fit-failed")
    return `It did not work this time (${trouble.reason}). Nothing was changed: your cases come back as before. Try again later.`;
  return storageErrorText(trouble);
}
