/** What a backup would bring, and what it brought, in words. */
import { listInWords } from "../../core/notation/sentence";
import { isAnswer } from "../../core/progress/answer-log";
import { isStrike } from "../../core/runs/run";
import type { Restored } from "../storage/restore";
import type { LearnerPlan, RestorePlan } from "../storage/restore-plan";

function counted(count: number, one: string, many: string): string {
  return count === 1 ? `1 ${one}` : `${count.toLocaleString("en")} ${many}`;
}

/** A learner of a backup, as the person who restores it sees them. */
export interface LearnerToRestore {
  readonly id: string;
  readonly name: string;
  readonly what: string;
  /** Whether there is anything to restore. */
  readonly brings: boolean;
}

/** How many whole runs a backup brings somebody. */
function newRuns({ freshRuns }: LearnerPlan): number {
  return freshRuns.filter((row) => !isStrike(row)).length;
}

/** A showing is no answer, and a backup brings it all the same. */
function shownInWords(count: number): string {
  return counted(count, "time shown the way", "times shown the way");
}

function whatOf(plan: LearnerPlan): string {
  const { fresh, alreadyHere, conflicts, repairs, here } = plan;
  const damaged = [...plan.damaged, ...plan.damagedRuns];
  const runs = newRuns(plan);
  const answers = fresh.filter(isAnswer).length;
  const shown = fresh.length - answers;
  const parts = [
    here === undefined
      ? "not here yet"
      : plan.isReadableHere
        ? ""
        : "their name here cannot be read, and is mended",
    fresh.length === 0
      ? here === undefined
        ? "no answers yet"
        : runs === 0
          ? "nothing new"
          : ""
      : answers === 0
        ? ""
        : counted(answers, "new answer", "new answers"),
    shown === 0 ? "" : shownInWords(shown),
    runs === 0 ? "" : counted(runs, "new whole run", "new whole runs"),
    alreadyHere === 0 ? "" : `${alreadyHere.toLocaleString("en")} already here`,
    repairs.length === 0
      ? ""
      : counted(repairs.length, "damaged one mended", "damaged ones mended"),
    damaged.length === 0
      ? ""
      : `${damaged.length} that cannot be read, kept as ${damaged.length === 1 ? "it is" : "they are"}`,
    conflicts === 0
      ? ""
      : `${counted(conflicts, "differs", "differ")} from what is here, which stays`,
  ];
  return `${parts.filter((part) => part !== "").join(", ")}.`;
}

/** The learners of a backup. A name that the file has lost is told so. */
export function learnersToRestore(
  plan: RestorePlan,
): readonly LearnerToRestore[] {
  return plan.learners.map((one) => {
    const hereName: unknown = one.here?.["name"];
    const name =
      one.learner?.name ??
      (typeof hereName === "string" ? hereName : "A learner without a name");
    const brings =
      !one.isReadableHere ||
      one.fresh.length +
        one.repairs.length +
        one.damaged.length +
        one.damagedRuns.length +
        one.freshRuns.length >
        0;
    return { id: one.id, name, what: whatOf(one), brings };
  });
}

function classParts(sheets: number, people: number): readonly string[] {
  return [
    ...(sheets === 0
      ? []
      : [counted(sheets, "printed sheet", "printed sheets")]),
    ...(people === 0
      ? []
      : [
          counted(
            people,
            "person who shared results",
            "people who shared results",
          ),
        ]),
  ];
}

/** What a backup brings for a class; undefined: nothing. */
export function classInWords({ ofClass }: RestorePlan): string | undefined {
  const { sheets, people } = ofClass;
  const parts = classParts(sheets.length, people.length);
  if (parts.length === 0) return undefined;
  const taken = people.filter(({ hides }) => hides).length;
  const goes =
    taken === 0
      ? ""
      : ` ${counted(taken, "person has", "people have")} taken results back: these go from here too, for good.`;
  return `New here: ${listInWords(parts)}.${goes}`;
}

/** What becomes of the decks of a backup; a line each. */
export function decksInWords(plan: RestorePlan): readonly string[] {
  const { newDecks, changedDecks, leftInFile } = plan;
  return [
    ...(newDecks.length === 0
      ? []
      : [`${counted(newDecks.length, "deck is", "decks are")} new here.`]),
    ...(changedDecks.length === 0
      ? []
      : [
          `${counted(changedDecks.length, "deck differs", "decks differ")} from what is here.`,
        ]),
    ...(leftInFile === 0
      ? []
      : [
          `${counted(leftInFile, "damaged row has", "damaged rows have")} no place here and stay in the file.`,
        ]),
  ];
}

/** What was restored. */
export function restoredInWords(restored: Restored): string {
  const {
    learners,
    reviews,
    shown,
    repaired,
    runs,
    decksAdded,
    decksReplaced,
  } = restored;
  const { sheets, people } = restored;
  const parts = [
    ...(learners === 0 ? [] : [counted(learners, "learner", "learners")]),
    counted(reviews - shown, "answer", "answers"),
    ...(shown === 0 ? [] : [shownInWords(shown)]),
    ...(repaired === 0
      ? []
      : [counted(repaired, "mended answer", "mended answers")]),
    ...(runs === 0 ? [] : [counted(runs, "whole run", "whole runs")]),
    ...(decksAdded === 0 ? [] : [counted(decksAdded, "deck", "decks")]),
    ...(decksReplaced === 0
      ? []
      : [counted(decksReplaced, "deck replaced", "decks replaced")]),
    ...classParts(sheets, people),
  ];
  return `Restored: ${listInWords(parts)}.`;
}
