/** Whole runs in words that a ten-year-old reads. */
import { listInWords } from "../../../core/notation/sentence";
import { inspectionPenalty } from "../../../core/runs/inspection";
import { USUAL_OF } from "../../../core/runs/run-averages";
import type { RunDay, RunHistory } from "../../../core/runs/run-history";
import {
  PENALTY,
  penaltiesOf,
  type RunResult,
} from "../../../core/runs/run-result";
import type { Run, RunKind, RunPart, TimedPart } from "../../../core/runs/run";

/** What a kind of run is called, as a thing that is done. */
export const RUN_NAMES: Readonly<Record<RunKind, string>> = {
  cross: "The cross",
  "first-layer": "The first layer",
  "two-layers": "Two layers",
  solve: "The whole cube",
};

/** What is done when a run ends: "the cross". */
export function runThing(kind: RunKind): string {
  const name = RUN_NAMES[kind];
  return name.charAt(0).toLowerCase() + name.slice(1);
}

const PART_NAMES: Readonly<Record<RunPart, string>> = {
  "edge-1": "1st edge",
  "edge-2": "2nd edge",
  "edge-3": "3rd edge",
  "edge-4": "4th edge",
  cross: "cross",
  "corner-1": "1st corner",
  "corner-2": "2nd corner",
  "corner-3": "3rd corner",
  "corner-4": "4th corner",
  corners: "corners",
  "second-layer": "second layer",
  "last-layer": "last layer",
};

/** What a part is called; several that were not tapped apart are the first to the last of them. */
export function partName({ parts }: Pick<TimedPart, "parts">): string {
  const [first, ...rest] = parts;
  const last = rest.at(-1);
  if (first === undefined) return "";
  return last === undefined
    ? PART_NAMES[first]
    : `${PART_NAMES[first]} to ${PART_NAMES[last]}`;
}

/** What the next tap says. Shape: `last` where it ends the run. */
export function tapPrompt(part: RunPart, last: boolean): string {
  if (last) return "Tap when your hands are off the cube";
  const isOne = part.startsWith("edge-") || part.startsWith("corner-");
  if (isOne) return `Tap when the ${PART_NAMES[part]} is home`;
  return part === "corners"
    ? "Tap when the corners are home"
    : `Tap when the ${PART_NAMES[part]} is done`;
}

/** What is said aloud when a part was tapped: "Cross done". */
export function partDone(part: RunPart): string {
  const name = PART_NAMES[part];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} done`;
}

const MINUTE = 60_000;
const TEN_MINUTES = 600_000;

/** A time of a run: "48.21 s", "1 min 12.30 s", "12 min 5 s". Units: milliseconds, cut as it is shown. */
export function runTime(time: number): string {
  const minutes = Math.floor(time / MINUTE);
  const rest = time - minutes * MINUTE;
  if (time >= TEN_MINUTES) return `${minutes} min ${Math.floor(rest / 1000)} s`;
  const hundredths = Math.floor(rest / 10);
  const seconds = `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, "0")} s`;
  return minutes === 0 ? seconds : `${minutes} min ${seconds}`;
}

/** What a run came to: its time, or "not done". */
export function resultWords(result: RunResult): string {
  return result === "did-not-finish" ? "not done" : runTime(result);
}

/** What was added to a run and why; undefined: nothing was. */
export function penaltyWords(run: Run): string | undefined {
  const count = penaltiesOf(run);
  if (count === 0) return undefined;
  const why = [
    ...(run.inspection !== undefined &&
    inspectionPenalty(run.inspection) === "two-seconds"
      ? ["you looked for more than 15 seconds"]
      : []),
    ...(run.ending === "one-turn-off" ? ["one turn was missing"] : []),
  ];
  return `${(count * PENALTY) / 1000} seconds are added, because ${listInWords(why)}.`;
}

/** Why a run that has a time does not count as done; undefined: it does. */
export function notDoneWords(run: Run, result: RunResult): string | undefined {
  if (result !== "did-not-finish") return undefined;
  if (run.ending !== "done")
    return `You turned for ${runTime(run.time)}. Every run teaches your hands something.`;
  return `You looked for more than 17 seconds, so by competition rules it does not count. You turned for ${runTime(run.time)}.`;
}

/** How a run stands among those before it; undefined where there is nothing to say. */
export function standingWords(
  result: RunResult,
  before: Pick<RunHistory, "best" | "usual">,
): string | undefined {
  if (result === "did-not-finish") return undefined;
  const { best, usual } = before;
  if (best === undefined) return "That is your first number to show at home.";
  if (result < best)
    return `That is your best so far: ${runTime(best - result)} quicker than before.`;
  if (usual === undefined) return `Your best is ${runTime(best)}.`;
  return result <= usual
    ? `That is quicker than usual: you usually take ${runTime(usual)}.`
    : `You usually take ${runTime(usual)}. Not every run is a quick one.`;
}

const NOT_DONE = ["None", "One", "Two", "Three", "Four"] as const;

function notDoneOfFive(notDone: number, by: string): string {
  const many = NOT_DONE[notDone];
  return many === undefined
    ? `None of your last five${by} was done, so they have no average.`
    : `${many} of your last five${by} were not done, so they have no average.`;
}

/** The averages in sentences, with their rules where it is not plain which; none where there are not three runs by these. */
export function averagesInWords({
  averages: { rules, ofFive, ofThree, notDone },
  isMixed,
}: Pick<RunHistory, "averages" | "isMixed">): readonly string[] {
  const by = isMixed || rules === "competition" ? ` by ${rules} rules` : "";
  return [
    ...(ofFive === undefined
      ? []
      : [
          ofFive === "did-not-finish"
            ? notDoneOfFive(notDone, by)
            : `Your last five${by}: ${runTime(ofFive)} on average, with the best and the worst left out.`,
        ]),
    ...(ofThree === undefined || ofThree === "did-not-finish"
      ? []
      : [`Your last three${by}: ${runTime(ofThree)} on average.`]),
  ];
}

/** What "usually" means here. */
export const USUAL_NOTE = `Usually: the middle one of your last ${USUAL_OF} that were done.`;

/** A day's runs in a sentence. */
export function dayInRuns({ runs, best }: RunDay): string {
  const count = runs.length === 1 ? "1 run" : `${runs.length} runs`;
  if (best === undefined)
    return runs.length === 1
      ? "1 run, not done yet."
      : `${count}, none done yet.`;
  return runs.length === 1
    ? `1 run, ${runTime(best)}.`
    : `${count}, the best ${runTime(best)}.`;
}

/** How the runs have gone, in a sentence. */
export function historyInWords({ runs, best }: RunHistory): string {
  if (runs.length === 0) return "Your runs will stand here, day by day.";
  const count = runs.length === 1 ? "1 run" : `${runs.length} runs`;
  return best === undefined
    ? `${count}, none done yet.`
    : `${count} so far, the best ${runTime(best)}.`;
}

/** What else there is to say of a run in a list: by which rules it went, and what was odd. */
export function runNotes(run: Run): readonly string[] {
  const added = penaltiesOf(run);
  return [
    ...(added === 0 ? [] : [`${(added * PENALTY) / 1000} s added`]),
    ...(run.rules === "competition" ? ["by competition rules"] : []),
    ...(run.wasHidden === true ? ["window out of sight"] : []),
  ];
}
