/** What each picture of the progress page shows for this learner, in sentences with numbers. */
import { pieceNamed } from "../../../core/answer/recognising-question";
import { stageNames } from "../../../core/cases/stage-words";
import type { PieceName } from "../../../core/cube/pieces";
import type { LocalDay } from "../../../core/memory/review";
import { capitalised } from "../../../core/notation/sentence";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import {
  type CaseTimes,
  shareOfTarget,
  turningTells,
} from "../../../core/progress/case-times";
import type { ComingBack } from "../../../core/progress/coming-back";
import type {
  Confusions,
  PieceConfusion,
} from "../../../core/progress/confusions";
import {
  ENOUGH_FORECASTS,
  type Forecast,
  forecastVerdict,
} from "../../../core/progress/forecast";
import type { KeptOnDay } from "../../../core/progress/kept";
import type { StageMilestones } from "../../../core/progress/milestones";
import { CONFUSION_DAYS } from "../../../core/progress/progress-facts";
import { LEAST_POINTS } from "../../../core/progress/smooth-curve";
import type { CaseTurns } from "../../../core/progress/turning-speed";
import { averageOfFive, meanOfThree } from "../../../core/runs/run-averages";
import type { RunResult } from "../../../core/runs/run-result";
import { dayInWords, seconds } from "../../components/time-words";
import { pieceInWords } from "../../state/practise/prompt-words";

/** A number of things: "1 case", "3 cases". */
export function counted(count: number, thing: string): string {
  return `${count.toLocaleString("en")} ${thing}${count === 1 ? "" : "s"}`;
}

/** Minutes as people say them. Units: minutes, more than 0. */
export function minutesInWords(minutes: number): string {
  return minutes < 0.75
    ? "less than a minute"
    : `about ${counted(Math.round(minutes), "minute")}`;
}

/** What comes back today and in the days ahead. */
export function comingBackSentence(
  { days, later, resting }: ComingBack,
  today: LocalDay,
): string {
  const [first] = days;
  const now = first?.memories.length ?? 0;
  const forToday =
    first === undefined || now === 0
      ? "Nothing is due today."
      : `Today ${counted(now, "case")}, ${minutesInWords(first.minutes)}.`;
  const fullest = days
    .slice(1)
    .reduce<(typeof days)[number] | undefined>(
      (most, day) => (day.minutes > (most?.minutes ?? 0) ? day : most),
      undefined,
    );
  const ahead =
    fullest === undefined
      ? ""
      : ` The fullest day after that is ${dayInWords(fullest.day, today)}, ${minutesInWords(fullest.minutes)}.`;
  const beyond =
    later === 0
      ? ""
      : ` ${counted(later, "case")} ${later === 1 ? "lasts" : "last"} longer than these ${days.length} days.`;
  const others =
    resting === 0
      ? ""
      : ` ${counted(resting, "other case")} ${resting === 1 ? "does" : "do"} not come back: no deck of yours asks for ${resting === 1 ? "it" : "them"} as you hold the cube now.`;
  return forToday + ahead + beyond + others;
}

/** How many times as long turns take as others. */
export function timesAsLong({
  besideOthers,
}: Pick<CaseTurns, "besideOthers">): string {
  return `${besideOthers.toFixed(1)} times`;
}

/** What a case's turns tell, in a sentence: a long way from a fumbled one; undefined where they tell nothing. */
export function turningSentence(times: CaseTimes): string | undefined {
  const told = turningTells(times);
  const { turns } = times;
  if (told === undefined || turns === undefined) return undefined;
  const its = `Its ${turns.usual} turns`;
  switch (told) {
    case "fumbled":
      return `${its} take ${timesAsLong(turns)} as long as your others.`;
    case "as-others":
      return `${its} are about as fast as your others.`;
  }
}

/** How many cases are slow, which is the slowest, and what its turns tell. Shape: `times` slowest first. */
export function slowSentence(
  times: readonly CaseTimes[],
  titleOf: (times: CaseTimes) => string,
): string {
  const [slowest] = times;
  if (slowest === undefined) return "";
  const over = times.filter((one) => shareOfTarget(one) > 1).length;
  const all =
    over === 0
      ? times.length === 1
        ? "The case is within its target."
        : `All ${times.length} cases are within their targets.`
      : `${over} of ${counted(times.length, "case")} ${over === 1 ? "takes" : "take"} longer than the target.`;
  const turning = turningSentence(slowest);
  return `${all} The slowest by its target is “${titleOf(slowest)}”: ${seconds(slowest.total)}, target ${seconds(1000 * slowest.target)}.${turning === undefined ? "" : ` ${turning}`}`;
}

/** How many misses were confusions. */
export function confusionSentence({
  pairs,
  missed,
  pieces,
}: Confusions): string {
  const timesOf = (all: readonly { readonly times: number }[]) =>
    all.reduce((sum, { times }) => sum + times, 0);
  const chosen = timesOf(pieces);
  const within = `in ${CONFUSION_DAYS} days`;
  const wrong = `another piece or home was chosen ${counted(chosen, "time")}`;
  if (missed === 0)
    return chosen === 0
      ? `No answer was missed ${within}.`
      : `${capitalised(wrong)} ${within}.`;
  const times = timesOf(pairs);
  const cases = `Of ${counted(missed, "missed answer")} ${within}, ${times === 0 ? "none" : times} ${times < 2 ? "was" : "were"} for another case.`;
  return chosen === 0 ? cases : `${cases} ${capitalised(wrong)}.`;
}

/** A piece that was asked for or chosen, or its home: "The white and green edge", "Home of the white and green edge". */
export function confusedPieceWords(
  name: PieceName,
  { answerWay }: Pick<PieceConfusion, "answerWay">,
  scheme: ColourScheme,
): string {
  const piece = pieceInWords(pieceNamed(name), scheme);
  return answerWay === "find-it" ? capitalised(piece) : `Home of ${piece}`;
}

/** Whether the forecast holds: a verdict, and the numbers behind it. */
export function forecastWords(forecast: Forecast): {
  readonly verdict: string;
  readonly numbers: string;
} {
  const { answers, right, expected } = forecast;
  const numbers = `It expected ${Math.round(expected)} right answers of ${answers}; you gave ${right}.`;
  switch (forecastVerdict(forecast)) {
    case "too-few":
      return {
        verdict: "Too early to say.",
        numbers: `${answers} of the ${ENOUGH_FORECASTS} answers that it takes; a first answer to a case does not count, for nothing was foretold.`,
      };
    case "holds":
      return { verdict: "Yes, so far.", numbers };
    case "too-careful":
      return { verdict: "It is too careful: you know more.", numbers };
    case "too-bold":
      return { verdict: "It promises too much.", numbers };
  }
}

/** How many of the cases met are kept, and how many were a month before. Shape: oldest first. */
export function keptSentence(kept: readonly KeptOnDay[]): string {
  const now = kept.at(-1);
  if (now === undefined) return "";
  const met = now.kept + now.settling + now.fading;
  const monthAgo = kept.findLast(({ day }) => day <= now.day - 30);
  const before =
    monthAgo === undefined ? "" : ` A month ago ${monthAgo.kept} were kept.`;
  return `${now.kept} of ${counted(met, "case")} kept, ${now.settling} settling, ${now.fading} fading.${before}`;
}

/** What has been reached in a stage, in plain numbers. */
export function milestoneWords({
  stage,
  met,
  kept,
  thinking,
}: StageMilestones): string {
  const fast =
    thinking === undefined
      ? ""
      : `; median thinking under ${seconds(thinking.under)} on ${thinking.cases} of ${met}`;
  return `${stageNames(stage).name}: ${kept} of ${met} kept${fast}.`;
}

/** The height of a curve at its two ends; each in seconds, or in times the target. */
export interface CurveEnds {
  readonly first: number;
  readonly last: number;
}

/** A factor of the target, in words. */
export function timesTarget(share: number): string {
  return `${share.toFixed(2)} times the target`;
}

/** How times went: from where to where, or that it is too early for a curve. */
export function fasterSentence(
  days: number,
  ends: CurveEnds | undefined,
  inWords: (height: number) => string,
): string {
  if (ends === undefined)
    return `${counted(days, "day")} with answers so far; a curve is drawn from ${LEAST_POINTS} on.`;
  const { first, last } = ends;
  const went =
    last < 0.93 * first
      ? "Yes"
      : last > 1.07 * first
        ? "Slower, for now"
        : "About the same";
  return `${went}: a usual answer took ${inWords(first)} at first and takes ${inWords(last)} now.`;
}

function attemptInWords(attempt: RunResult): string {
  return attempt === "did-not-finish"
    ? "none"
    : `${(attempt / 1000).toFixed(2)} s`;
}

/** The averages that competitions count, of the last attempts; empty where there are too few. Shape: at most five, oldest first. */
export function averageWords(attempts: readonly RunResult[]): string {
  const average = averageOfFive(attempts);
  const mean = meanOfThree(attempts);
  if (average === undefined || mean === undefined) return "";
  return `Average of the last 5, best and worst left out: ${attemptInWords(average)}. Mean of the last 3: ${attemptInWords(mean)}.`;
}
