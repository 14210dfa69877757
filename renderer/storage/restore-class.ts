/**
 * Restoring what only a coach's machine has; `undo-class.ts` takes it back.
 *
 * Only what is missing comes, by the rules of `take-in.ts`: a block is known
 * by its id, though nothing may be left in it, but a row that was found damaged
 * (`damaged-results.ts`) is put right and stays so; what a learner took back stays
 * away, wherever it is read that they did; and so does what was deleted here.
 * What somebody is called here, and that they were let in again, is the newer
 * word and stays.
 */
import type { BackupContents } from "../../core/backup/backup-reader";
import type { Milliseconds } from "../../core/memory/review";
import { forgetComputed } from "./cache";
import { joined, later, readClassmateRow, rowOfBlocks } from "./classmate-row";
import { readDamagedResults } from "./damaged-results";
import type { RawRow, TurnwiseDatabase } from "./database";
import {
  type ClassmateRow,
  type HeardRow,
  parseClassmateRow,
  parseHeardRow,
} from "./heard-rows";
import { isTorn, withdraw } from "./take-in";
import type { RestoredPerson, RestoredSheet } from "./undo-class";

type Answers = Extract<HeardRow, { kind: "answers" }>;
type Withdrawn = Extract<HeardRow, { kind: "withdrawn" }>;

/** What the file would bring of somebody who shared results. */
export interface PersonPlan {
  readonly id: string;
  /** Their row here, readable or not. */
  readonly here: RawRow | undefined;
  /** The same, as it is believed. */
  readonly row: ClassmateRow;
  /** Blocks of answers whose id is nowhere here, or damaged, and which may come. */
  readonly answers: readonly Answers[];
  readonly withdrawals: readonly Withdrawn[];
  /** What their row is to say besides what the blocks say. */
  readonly nickname: string | undefined;
  readonly leftOut: true | undefined;
  readonly withdrawnAt: Milliseconds | undefined;
  /** Whether something here was taken back, as the file knows. */
  readonly hides: boolean;
}

/** What the file would bring a class. */
export interface ClassPlan {
  /** Sheets whose code is nowhere here. */
  readonly sheets: readonly RawRow[];
  readonly people: readonly PersonPlan[];
  /** Rows that stay in the file: they cannot be read. */
  readonly leftInFile: number;
}

async function hidesSomething(
  { heard }: TurnwiseDatabase,
  learner: string,
  until: Milliseconds,
): Promise<boolean> {
  const stored = await heard.where("learner").equals(learner).toArray();
  return stored.some((one) => {
    const read = parseHeardRow(one);
    if (!read.ok) return true;
    const { kind, madeAt } = read.value;
    return (kind === "answers" || kind === "sent") && madeAt <= until;
  });
}

async function planPerson(
  database: TurnwiseDatabase,
  id: string,
  inFile: ClassmateRow | undefined,
  fresh: readonly (Answers | Withdrawn)[],
): Promise<PersonPlan | undefined> {
  const here = await database.classmates.get(id);
  const row = await readClassmateRow(database, id);
  const withdrawals = fresh.filter((block) => block.kind === "withdrawn");
  let withdrawnAt = later(row.withdrawnAt, inFile?.withdrawnAt);
  for (const { madeAt } of withdrawals)
    withdrawnAt = later(withdrawnAt, madeAt);
  // Somebody known here was let in by the coach, or let in again.
  const isKnown = here !== undefined && parseClassmateRow(here, id).ok;
  const leftOut =
    row.leftOut ??
    (isKnown || (await rowOfBlocks(database, id)).shared !== undefined
      ? undefined
      : inFile?.leftOut);
  const nickname =
    row.nickname ?? (leftOut === true ? undefined : inFile?.nickname);
  const answers = fresh
    .filter((block) => block.kind === "answers")
    .filter(({ madeAt }) => !leftOut && madeAt > (withdrawnAt ?? -1));
  const isSomething =
    answers.length + withdrawals.length > 0 ||
    nickname !== row.nickname ||
    leftOut !== row.leftOut ||
    withdrawnAt !== row.withdrawnAt;
  if (!isSomething) return undefined;
  const hides =
    withdrawnAt !== undefined &&
    withdrawnAt !== row.withdrawnAt &&
    (await hidesSomething(database, id, withdrawnAt));
  return {
    id,
    here,
    row,
    answers,
    withdrawals,
    nickname,
    leftOut,
    withdrawnAt,
    hides,
  };
}

/** The blocks that were found damaged and still are. */
async function stillTorn(
  database: TurnwiseDatabase,
): Promise<ReadonlySet<string>> {
  const noted = await readDamagedResults(database);
  if (!noted.ok) return new Set();
  const rows = await database.heard.bulkGet([...noted.value]);
  return new Set(
    noted.value.filter((_, i) => {
      const row = rows[i];
      return row !== undefined && isTorn(row);
    }),
  );
}

/** Works out what restoring would bring a class. Call it inside a transaction over sheets, classmates, heard and settings. */
export async function planClass(
  database: TurnwiseDatabase,
  contents: BackupContents,
): Promise<ClassPlan> {
  const { sheets, heard } = database;
  let leftInFile = contents.unfinished;
  const known = new Set(await heard.toCollection().primaryKeys());
  const torn = await stillTorn(database);
  const fresh = new Map<string, (Answers | Withdrawn)[]>();
  for (const [id, row] of contents.heard) {
    const read = parseHeardRow(row);
    if (!read.ok) leftInFile += 1;
    else if (read.value.kind === "answers" || read.value.kind === "withdrawn") {
      const { learner } = read.value;
      const theirs = fresh.get(learner) ?? [];
      fresh.set(learner, theirs);
      if (!known.has(id) || torn.has(id)) theirs.push(read.value);
    }
  }
  const rows = new Map<string, ClassmateRow>();
  for (const [id, row] of contents.classmates) {
    const read = parseClassmateRow(row, id);
    if (read.ok) rows.set(id, read.value);
    else leftInFile += 1;
  }
  const people: PersonPlan[] = [];
  for (const id of new Set([...rows.keys(), ...fresh.keys()])) {
    const theirs = fresh.get(id) ?? [];
    const plan = await planPerson(database, id, rows.get(id), theirs);
    if (plan !== undefined) people.push(plan);
  }
  const inFile = [...contents.sheets];
  const here = await sheets.bulkGet(inFile.map(([code]) => code));
  return {
    sheets: inFile.flatMap(([, row], i) =>
      here[i] === undefined ? [row] : [],
    ),
    people,
    leftInFile,
  };
}

async function restorePerson(
  database: TurnwiseDatabase,
  plan: PersonPlan,
): Promise<RestoredPerson> {
  const { id, answers, withdrawals, nickname, leftOut, withdrawnAt } = plan;
  const { heard, classmates } = database;
  let before = plan.here;
  let { shared } = plan.row;
  let added: readonly HeardRow[] = [...answers, ...withdrawals];
  if (plan.hides && withdrawnAt !== undefined) {
    await heard.bulkPut([...withdrawals]);
    await withdraw(database, plan.row, withdrawnAt);
    before = await classmates.get(id);
    ({ shared } = await readClassmateRow(database, id));
    added = answers;
  }
  const torn = await heard.bulkGet(added.map((block) => block.id));
  await heard.bulkPut([...added]);
  for (const block of answers) shared = joined(shared, block);
  const after: ClassmateRow = {
    id,
    ...(shared !== undefined && { shared }),
    ...(nickname !== undefined && { nickname }),
    ...(withdrawnAt !== undefined && { withdrawnAt }),
    ...(leftOut !== undefined && { leftOut }),
  };
  await classmates.put(after);
  const fresh = added.filter((_, i) => torn[i] === undefined);
  return { id, before, after, added: fresh.map((block) => block.id) };
}

/** Adds what was planned. Call it inside the transaction in which it was planned, which also writes the cache. */
export async function restoreClass(
  database: TurnwiseDatabase,
  plan: ClassPlan,
): Promise<{
  readonly people: readonly RestoredPerson[];
  readonly sheetsAdded: readonly RestoredSheet[];
}> {
  const people: RestoredPerson[] = [];
  for (const one of plan.people)
    people.push(await restorePerson(database, one));
  await database.sheets.bulkAdd([...plan.sheets]);
  await forgetComputed(
    database,
    people.map(({ id }) => id),
  );
  return {
    people,
    sheetsAdded: plan.sheets.map(({ code, printedAt }) => ({
      code: String(code),
      printedAt,
    })),
  };
}
