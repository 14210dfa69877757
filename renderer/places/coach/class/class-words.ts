/** A class and its next lesson as their coach reads them. */
import type { CaseId } from "../../../../core/cases/case-ids";
import type { ClassCell } from "../../../../core/class/class-grid";
import type { Lesson, LessonCase } from "../../../../core/class/lesson";
import type { Stuck } from "../../../../core/class/stuck";
import type { Hold } from "../../../../core/cases/variant";
import { capitalised, listInWords } from "../../../../core/notation/sentence";

/** What the sentences are about. */
export interface ClassReader {
  /** A learner's name, by their id. */
  readonly nameOf: (member: string) => string;
  /** A case's title among others, in the coach's colours; held as the coach holds it where nobody says. */
  readonly titleOf: (id: CaseId, hold?: Hold) => string;
  /** The same beside a case of its own stage. */
  readonly shortTitleOf: (id: CaseId, hold?: Hold) => string;
}

const NUMBERS = [
  "none",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
] as const;

/** A number as a word where it is short: "seven", "24". */
export function numberWord(count: number): string {
  return NUMBERS[count] ?? String(count);
}

/** Up to so many are named; of more it is told how many. */
export const NAMED = 3;

/** Names, the last of many counted: "Ada, Ben and 5 more". */
export function someNames(names: readonly string[], most: number): string {
  // "and 1 more" is no shorter than a name.
  if (names.length <= most + 1) return listInWords(names);
  const rest = names.length - most;
  return `${names.slice(0, most).join(", ")} and ${rest} more`;
}

/** That somebody's answers could not be read, beside those of so many others; undefined where everybody's could. */
export function leftOutSentence(
  names: readonly string[],
  others: number,
): string | undefined {
  if (names.length === 0) return undefined;
  const rest = others === 0 ? "." : " and are left out; all others are here.";
  return `The answers of ${someNames(names, NAMED)} could not be read${rest}`;
}

function quoted(
  { case: id, hold }: Pick<LessonCase, "case" | "hold">,
  { titleOf }: ClassReader,
): string {
  return `“${titleOf(id, hold)}”`;
}

/** In how many clauses it is said who is stuck where: a third is read by nobody. */
const CLAUSES = 2;

/** Numbers that stand beside each other, both as words or both as figures: "four of nine", "7 of 24". */
function alike(count: number, whole: number): string {
  return numberWord(whole) === String(whole)
    ? String(count)
    : numberWord(count);
}

function whoIsStuck(
  { learners }: LessonCase,
  practising: number,
  isFirst: boolean,
  { nameOf }: ClassReader,
): string {
  const count = learners.length;
  if (count <= NAMED)
    return listInWords(learners.map(({ member }) => nameOf(member)));
  const number = alike(count, practising);
  if (!isFirst) return number;
  return count === practising
    ? `all ${number} who practised`
    : `${number} of the ${numberWord(practising)} who practised`;
}

/** The cases of which the sentence speaks: those at which most are stuck. */
function toldCases({ cases }: Lesson): readonly LessonCase[] {
  return cases
    .filter(({ learners }) => learners.length > 0)
    .toSorted((a, b) => b.learners.length - a.learners.length)
    .slice(0, CLAUSES);
}

function areSameLearners(one: LessonCase, other: LessonCase): boolean {
  const members = new Set(one.learners.map(({ member }) => member));
  return (
    one.learners.length === other.learners.length &&
    other.learners.every(({ member }) => members.has(member))
  );
}

function stuckClauses(lesson: Lesson, reader: ClassReader): string {
  const told = toldCases(lesson);
  const [first] = told;
  const clauses = told.map((one, i) => {
    const who = whoIsStuck(one, lesson.practising, i === 0, reader);
    const verb = one.learners.length === 1 ? "is" : "are";
    if (i === 0 || first === undefined)
      return `${capitalised(who)} ${verb} stuck at ${quoted(one, reader)}`;
    // The second needs no verb of its own, nor the same names again.
    return areSameLearners(first, one)
      ? ` and at ${quoted(one, reader)}`
      : `; ${who} at ${quoted(one, reader)}`;
  });
  return clauses.join("");
}

function lessonClause(lesson: Lesson): string {
  const told = toldCases(lesson).length;
  const rest = lesson.cases.length - told;
  if (rest > 0)
    return `Monday’s lesson: ${told === 1 ? "this" : "these"} and ${numberWord(rest)} more.`;
  return told === 1
    ? "Monday’s lesson: this one case."
    : "Monday’s lesson: these two cases.";
}

/** For whom the next cases are new. */
function newToWhom({ cases, practising }: Lesson): string {
  if (practising === 1) return "";
  return cases.every(({ notMet = 0 }) => 2 * notMet > practising)
    ? " that most have not met"
    : " that some have not met";
}

/**
 * The answer to "who is stuck where, and what should Monday's lesson be?".
 *
 * `lesson` is the one proposed. Where the coach has made it another one, the
 * sentence says only who is stuck: the lesson stands under it, and is no
 * longer this one.
 */
export function lessonSentence(
  lesson: Lesson,
  reader: ClassReader,
  isChanged = false,
): string {
  const { kind, cases, stuckCases } = lesson;
  switch (kind) {
    case "stuck": {
      const who = `${stuckClauses(lesson, reader)}.`;
      return isChanged ? who : `${who} ${lessonClause(lesson)}`;
    }
    case "next": {
      const first =
        stuckCases === 0 ? "Nobody is stuck." : "No case is hard for many.";
      if (isChanged) return first;
      const next =
        cases.length === 1
          ? "the next case"
          : `something new: the next ${numberWord(cases.length)} cases`;
      return `${first} Monday’s lesson can be ${next}${newToWhom(lesson)}.`;
    }
    case "nobody":
      return "Nobody has practised this week, so nobody knows who is stuck. A check would tell.";
    case "no-cases":
      return "There is no case here, so there is nobody stuck and nothing to teach.";
    case "all-met":
      return "Nobody is stuck, and everybody has met all these cases.";
    case "most-met":
      return "Nobody is stuck, and most have met each of these cases.";
  }
}

/** How many names stand at a case of the lesson. */
const NAMED_AT_CASE = 6;

interface Manner {
  readonly one: string;
  readonly several: string;
}

function mannerOf(
  stuck: Stuck,
  hold: Hold | undefined,
  { shortTitleOf }: ClassReader,
): Manner {
  if (stuck.takenFor !== undefined) {
    const other = `“${shortTitleOf(stuck.takenFor, hold)}”`;
    return { one: `takes it for ${other}`, several: `take it for ${other}` };
  }
  switch (stuck.kind) {
    case "misses":
      return { one: "misses it", several: "miss it" };
    case "lost":
      return {
        one: "knew it, and missed it last time",
        several: "knew it, and missed it last time",
      };
    case "slow":
      return { one: "is slow", several: "are slow" };
  }
}

/** Who is stuck at a case of the lesson and how, one phrase for each way of being stuck, that of most first: "Ada and Ben miss it". */
export function stuckPhrases(
  { learners, hold }: Pick<LessonCase, "learners" | "hold">,
  reader: ClassReader,
): readonly string[] {
  const groups = new Map<string, { manner: Manner; names: string[] }>();
  for (const { member, stuck } of learners) {
    const manner = mannerOf(stuck, hold, reader);
    const group = groups.get(manner.one) ?? { manner, names: [] };
    group.names.push(reader.nameOf(member));
    groups.set(manner.one, group);
  }
  return [...groups.values()]
    .toSorted((a, b) => b.names.length - a.names.length)
    .map(
      ({ manner, names }) =>
        `${someNames(names, NAMED_AT_CASE)} ${names.length === 1 ? manner.one : manner.several}.`,
    );
}

function newTo(notMet: number, practising: number): string {
  if (practising === 1) return "Not met yet.";
  if (notMet === practising) return "Nobody has met it.";
  const have = notMet === 1 ? "has" : "have";
  return `${capitalised(alike(notMet, practising))} of ${numberWord(practising)} ${have} not met it.`;
}

/** A lesson, as far as it decides how its cases' reasons are told. */
export type LessonTold = Pick<Lesson, "practising" | "cases">;

/**
 * Why a case is in the lesson, or could be, where that is not who is stuck
 * there; undefined where it is.
 */
export function otherReason(
  { practising, cases }: LessonTold,
  { case: id, learners, besides, notMet, hold }: LessonCase,
  { shortTitleOf }: Pick<ClassReader, "shortTitleOf">,
): string | undefined {
  if (notMet !== undefined) return newTo(notMet, practising);
  if (besides !== undefined) {
    const place = cases.findIndex((one) => one.case === id);
    return cases[place - 1]?.case === besides
      ? "Mixed up with the one before."
      : `Mixed up with “${shortTitleOf(besides, hold)}”.`;
  }
  return learners.length === 0 ? "Nobody is stuck here." : undefined;
}

function stuckInWords(stuck: Stuck): string {
  switch (stuck.kind) {
    case "misses":
      return `stuck: missed on ${stuck.missed} of the last ${stuck.days} days it was asked`;
    case "lost":
      return "stuck: was kept, and missed last time";
    case "slow":
      return `stuck: ${stuck.share.toFixed(1)} times the target`;
  }
}

/** What is to be said of a learner's case beside its memory: "stuck: missed on 2 of the last 3 days it was asked". */
export function cellNotes(
  { stuck, isSlow, takenFor, record }: ClassCell,
  { shortTitleOf }: Pick<ClassReader, "shortTitleOf">,
): readonly string[] {
  const notes: string[] = [];
  if (stuck !== undefined) notes.push(stuckInWords(stuck));
  if (isSlow && stuck?.kind !== "slow") notes.push("slow");
  if (takenFor !== undefined)
    notes.push(`taken for “${shortTitleOf(takenFor.case, record.hold)}”`);
  return notes;
}

/** A learner's case in a few words, its memory first. */
export function cellInWords(
  cell: ClassCell | undefined,
  reader: Pick<ClassReader, "shortTitleOf">,
): string {
  if (cell === undefined) return "not met";
  const memory = cell.state === "new" ? "not asked alone yet" : cell.state;
  return [memory, ...cellNotes(cell, reader)].join(", ");
}

/** How many learners and answers: "24 learners, 9,412 answers". */
export function classSize(learners: number, answers: number): string {
  const people = learners === 1 ? "1 learner" : `${learners} learners`;
  const given =
    answers === 1 ? "1 answer" : `${answers.toLocaleString("en")} answers`;
  return `${people}, ${given}`;
}
