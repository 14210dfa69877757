/**
 * Who may be in a class, and all their answers: those who practise on this
 * machine and those who shared their results with it. One who does both is
 * one, by their id; so is an answer that is in their log here and in what they
 * shared.
 */
import type { Learner } from "../../../core/memory/learner";
import type { Review } from "../../../core/memory/review";
import {
  inReplayOrder,
  type ScheduleSettings,
} from "../../../core/memory/schedule";
import { ok, type Result } from "../../../core/result";
import type { SharedAnswer } from "../../../core/sharing/shared-answer";
import {
  type Classmate,
  heardDigests,
  readClassmates,
  readHeardAnswers,
} from "../../storage/classmates";
import { noteDamagedResults } from "../../storage/damaged-results";
import type { TurnwiseDatabase } from "../../storage/database";
import { learnerSettingsKey } from "../../storage/learners";
import { readLogDigests } from "../../storage/log-digest";
import { readLog } from "../../storage/reviews";
import { readSetting } from "../../storage/settings";
import type { StorageError } from "../../storage/storage-error";
import { parseLearnerSettings } from "../learner-settings";

/** Somebody who may be in the class. */
export interface Enrolled {
  /** The learner's id. */
  readonly id: string;
  /** No two alike. */
  readonly name: string;
  /** Whether they practise on this machine. */
  readonly isHere: boolean;
  /** The ids of the decks they chose; undefined: they chose none, or nobody here knows. */
  readonly decks: readonly string[] | undefined;
  readonly schedule: ScheduleSettings;
  /** Changes with their answers, wherever these come from. */
  readonly digest: string;
}

/** An answer, as it was given here or as it was shared. */
export type ClassAnswer = Review | SharedAnswer;

/** By name, as people sort them; two of one name are told apart by a number that makes nobody else's name. */
export function withNamesApart<
  One extends { readonly id: string; readonly name: string },
>(people: readonly One[]): readonly One[] {
  const { compare } = new Intl.Collator("en", { numeric: true });
  const met = new Map<string, number>();
  const taken = new Set(people.map(({ name }) => name));
  return people
    .toSorted((a, b) => compare(a.name, b.name) || (a.id < b.id ? -1 : 1))
    .map((one) => {
      let number = (met.get(one.name) ?? 0) + 1;
      // Somebody may be called "Ann (2)" by themselves.
      while (number > 1 && taken.has(`${one.name} (${number})`)) number += 1;
      met.set(one.name, number);
      return number === 1 ? one : { ...one, name: `${one.name} (${number})` };
    });
}

async function readChoices(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<Pick<Enrolled, "decks" | "schedule">, StorageError>> {
  const stored = await readSetting(database, learnerSettingsKey(learner));
  if (!stored.ok) return stored;
  const { level, fit, decks } = parseLearnerSettings(stored.value);
  const weights = fit?.weights;
  const schedule = weights === undefined ? { level } : { level, weights };
  return ok({ decks, schedule });
}

/** Everybody who may be in the class, by name. */
export async function readEnrolled(
  database: TurnwiseDatabase,
  learners: readonly Learner[],
): Promise<Result<readonly Enrolled[], StorageError>> {
  const classmates = await readClassmates(database);
  if (!classmates.ok) return classmates;
  const heard = await heardDigests(database);
  if (!heard.ok) return heard;
  const ids = learners.map(({ id }) => id);
  const logs = await readLogDigests(database, ids);
  if (!logs.ok) return logs;
  const shared = new Map<string, Classmate>(
    classmates.value.map((one) => [one.id, one]),
  );
  const heardOf = (id: string) =>
    shared.has(id) ? (heard.value.get(id) ?? "") : "";
  const people: Enrolled[] = [];
  for (const [i, { id, name }] of learners.entries()) {
    const choices = await readChoices(database, id);
    if (!choices.ok) return choices;
    people.push({
      id,
      name: shared.get(id)?.nickname ?? name,
      isHere: true,
      digest: `${logs.value[i] ?? ""} ${heardOf(id)}`,
      ...choices.value,
    });
  }
  for (const { id, name, nickname } of classmates.value)
    if (!ids.includes(id))
      people.push({
        id,
        name: nickname ?? name,
        isHere: false,
        decks: undefined,
        schedule: {},
        digest: heardOf(id),
      });
  return ok(withNamesApart(people));
}

/**
 * All answers of somebody of the class, in the order of replay, each once.
 * What they shared and is damaged here is noted: the next look at the folder
 * reads it again.
 */
export async function readClassLog(
  database: TurnwiseDatabase,
  { id, isHere }: Pick<Enrolled, "id" | "isHere">,
): Promise<Result<readonly ClassAnswer[], StorageError>> {
  const own = isHere
    ? await readLog(database, id, "indexed")
    : ok({ reviews: [] });
  if (!own.ok) return own;
  const heard = await readHeardAnswers(database, id);
  if (!heard.ok) return heard;
  const { damagedBlocks } = heard.value;
  if (damagedBlocks.length > 0) {
    const noted = await noteDamagedResults(database, damagedBlocks);
    if (!noted.ok) return noted;
  }
  const { reviews } = own.value;
  const { answers } = heard.value;
  if (answers.length === 0) return ok(reviews);
  // Of an answer that is in both, the log here counts: it knows more, and
  // nobody else can write in it.
  const here = new Set(reviews.map(({ id: one }) => one));
  const others = answers.filter(({ id: one }) => !here.has(one));
  return ok(inReplayOrder<ClassAnswer>([...reviews, ...others]));
}
