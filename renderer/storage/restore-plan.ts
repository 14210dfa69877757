/**
 * What restoring a backup would do to this store, answer by answer: found by
 * looking, inside whatever transaction the caller is in, so that the preview
 * and the restore itself go by one set of rules.
 *
 * Answers are matched by their id, learners by theirs: the same name under
 * another id is somebody else. What is stored stays; the file only adds, and
 * puts a readable answer in the place of a damaged one.
 */
import {
  type DamagedInBackup,
  DEEPEST_LINE,
} from "../../core/backup/backup-line";
import type { BackupRow } from "../../core/backup/class-lines";
import type { BackupContents } from "../../core/backup/backup-reader";
import { nestingDepth, prototypeKeyIn } from "../../core/json-guard";
import { type Learner, parseLearner } from "../../core/memory/learner";
import type { Review } from "../../core/memory/review";
import { parseReview } from "../../core/memory/review-schema";
import type { RunRow } from "../../core/runs/run";
import { isSameJson } from "../../core/same-json";
import { reviewsInBlock } from "./backup-survey";
import type { RawRow, TurnwiseDatabase } from "./database";
import { readDeckRow } from "./decks";
import type { ClassPlan } from "./restore-class";

/** A readable answer for one that is damaged here. */
export interface Repair {
  readonly review: Review;
  /** The damaged row that it takes the place of; absent for one in a sealed block, which stays. */
  readonly replaces: RawRow | undefined;
}

/** What the file would bring one learner. */
export interface LearnerPlan {
  readonly id: string;
  /** As the file has them; undefined where it has only their answers. */
  readonly learner: Learner | undefined;
  /** Their row here, readable or not. */
  readonly here: RawRow | undefined;
  /** Whether that row can be read. */
  readonly isReadableHere: boolean;
  readonly settings: BackupRow | undefined;
  /** Answers of theirs in the file. */
  readonly inFile: number;
  /** Of these, stored here already and the same. */
  readonly alreadyHere: number;
  /** Of these and of the whole runs, stored here already and different: the stored ones stay. */
  readonly conflicts: number;
  readonly fresh: readonly Review[];
  readonly repairs: readonly Repair[];
  /** Answers that cannot be read, put back as they were. */
  readonly damaged: readonly RawRow[];
  /** Whole runs whose id is nowhere here, and their being struck out. */
  readonly freshRuns: readonly RunRow[];
  /** Runs that cannot be read, put back as they were. */
  readonly damagedRuns: readonly RawRow[];
}

/** A deck that is here under the same id with other content. */
export interface ChangedDeck {
  readonly here: RawRow;
  readonly inFile: RawRow;
}

/** What restoring would do. */
export interface RestorePlan {
  readonly learners: readonly LearnerPlan[];
  readonly newDecks: readonly RawRow[];
  readonly changedDecks: readonly ChangedDeck[];
  /** What it would bring a class. */
  readonly ofClass: ClassPlan;
  /** Rows of the file that stay there: damaged ones without a place here, and decks that cannot be read. */
  readonly leftInFile: number;
}

/** How an answer of the file stands here. */
type Standing =
  | { readonly as: "same" }
  | { readonly as: "other" }
  | { readonly as: "damaged"; readonly loose: RawRow | undefined };

function standingOf(review: Review, stored: RawRow, loose: boolean): Standing {
  if (isSameJson(stored, review)) return { as: "same" };
  if (parseReview(stored).ok) return { as: "other" };
  return { as: "damaged", loose: loose ? stored : undefined };
}

/** The answer or the run in a damaged row, as far as it has a place of its own in the store. */
function rowToPutBack({ row, cut }: DamagedInBackup): RawRow | undefined {
  if (cut === true) return undefined;
  if (nestingDepth(row, DEEPEST_LINE) > DEEPEST_LINE) return undefined;
  let value: unknown;
  try {
    value = JSON.parse(row);
  } catch (thrown) {
    if (thrown instanceof SyntaxError) return undefined;
    throw thrown;
  }
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return undefined;
  if (prototypeKeyIn(value) !== undefined) return undefined;
  return { ...value };
}

function idOf(row: unknown): string | undefined {
  if (typeof row !== "object" || row === null || !("id" in row))
    return undefined;
  return typeof row.id === "string" && row.id !== "" ? row.id : undefined;
}

/** The file's damaged rows of a table that have an id of their own, by this; none that a readable row of the file has. */
function rowsToPutBack(
  { damaged }: BackupContents,
  table: "reviews" | "runs",
  readable: ReadonlyMap<string, unknown>,
): Map<string, RawRow> {
  const rows = new Map<string, RawRow>();
  for (const one of damaged) {
    const row = one.table === table ? rowToPutBack(one) : undefined;
    const id = idOf(row);
    if (row !== undefined && id !== undefined && !readable.has(id))
      rows.set(id, row);
  }
  return rows;
}

/** How the file's whole runs of one learner stand here. */
interface RunsFound {
  readonly fresh: RunRow[];
  conflicts: number;
}

interface Found {
  /** By their learner. */
  readonly runs: ReadonlyMap<string, RunsFound>;
  readonly standings: ReadonlyMap<string, Standing>;
  /** Damaged rows of the file whose id is nowhere here. */
  readonly damaged: readonly RawRow[];
  readonly damagedRuns: readonly RawRow[];
}

/** Shape: `here` holds, for each of the file's whole runs, the row of its id in the store. */
function runsFound(
  inFile: readonly RunRow[],
  here: readonly (RawRow | undefined)[],
): ReadonlyMap<string, RunsFound> {
  const found = new Map<string, RunsFound>();
  inFile.forEach((run, i) => {
    const theirs = found.get(run.learner) ?? { fresh: [], conflicts: 0 };
    found.set(run.learner, theirs);
    if (here[i] === undefined) theirs.fresh.push(run);
    else if (!isSameJson(here[i], run)) theirs.conflicts += 1;
  });
  return found;
}

/** Looks for the file's answers in the loose ones and inside the sealed blocks. */
async function findInStore(
  database: TurnwiseDatabase,
  contents: BackupContents,
): Promise<Found> {
  const { reviews, blocks } = database;
  const standings = new Map<string, Standing>();
  const damaged = rowsToPutBack(contents, "reviews", contents.reviews);
  const look = (row: unknown, isLoose: boolean) => {
    const id = idOf(row);
    if (id === undefined) return;
    damaged.delete(id);
    const review = contents.reviews.get(id);
    if (review === undefined) return;
    const standing = standingOf(review, row as RawRow, isLoose);
    // One that is damaged in a block may have been repaired as a loose one.
    if (standings.get(id)?.as !== "same") standings.set(id, standing);
  };
  const inFile = [...contents.runs.values()];
  const here = await database.runs.bulkGet(inFile.map(({ id }) => id));
  const torn = [...rowsToPutBack(contents, "runs", contents.runs)];
  const tornHere = await database.runs.bulkGet(torn.map(([id]) => id));
  await blocks.each((block) =>
    reviewsInBlock(block)?.forEach((row) => look(row, false)),
  );
  await reviews.each((row) => look(row, true));
  return {
    standings,
    damaged: [...damaged.values()],
    damagedRuns: torn.flatMap(([, row], i) =>
      tornHere[i] === undefined ? [row] : [],
    ),
    runs: runsFound(inFile, here),
  };
}

function planFor(
  id: string,
  theirs: readonly Review[],
  here: RawRow | undefined,
  contents: BackupContents,
  { standings, damaged, damagedRuns, runs }: Found,
): LearnerPlan {
  const theirRuns = runs.get(id);
  let alreadyHere = 0;
  let conflicts = theirRuns?.conflicts ?? 0;
  const fresh: Review[] = [];
  const repairs: Repair[] = [];
  for (const review of theirs) {
    const standing = standings.get(review.id);
    if (standing === undefined) fresh.push(review);
    else if (standing.as === "same") alreadyHere += 1;
    else if (standing.as === "other") conflicts += 1;
    else repairs.push({ review, replaces: standing.loose });
  }
  return {
    id,
    learner: contents.learners.get(id),
    here,
    isReadableHere: here !== undefined && parseLearner(here).ok,
    settings: contents.settings.get(id),
    inFile: theirs.length,
    alreadyHere,
    conflicts,
    fresh,
    repairs,
    damaged: damaged.filter((row) => row["learner"] === id),
    freshRuns: theirRuns?.fresh ?? [],
    damagedRuns: damagedRuns.filter((row) => row["learner"] === id),
  };
}

/** Those who were there first come first, as in the list of who may sit down; who has no row of their own in the file comes last. */
function inOrder(plans: readonly LearnerPlan[]): readonly LearnerPlan[] {
  const since = ({ learner }: LearnerPlan) => learner?.createdAt ?? Infinity;
  // Two without a row leave no number when taken from one another.
  return plans.toSorted((a, b) => since(a) - since(b) || 0);
}

/** Works out what restoring would do. Call it inside a transaction over learners, decks, reviews, blocks and runs. */
export async function planRestore(
  database: TurnwiseDatabase,
  contents: BackupContents,
  ofClass: ClassPlan,
): Promise<RestorePlan> {
  const byLearner = new Map<string, Review[]>(
    [...contents.learners.keys()].map((id) => [id, []]),
  );
  for (const review of contents.reviews.values()) {
    const theirs = byLearner.get(review.learner);
    if (theirs === undefined) byLearner.set(review.learner, [review]);
    else theirs.push(review);
  }
  for (const { learner } of contents.runs.values())
    if (!byLearner.has(learner)) byLearner.set(learner, []);
  const found = await findInStore(database, contents);
  const rows = await database.learners.bulkGet([...byLearner.keys()]);
  const learners = inOrder(
    [...byLearner].map(([id, theirs], i) =>
      planFor(id, theirs, rows[i], contents, found),
    ),
  );
  const decks = [...contents.decks];
  const stored = await database.decks.bulkGet(decks.map(([id]) => id));
  const newDecks: RawRow[] = [];
  const changedDecks: ChangedDeck[] = [];
  let unreadableDecks = 0;
  decks.forEach(([, inFile], i) => {
    const here = stored[i];
    if (!readDeckRow(inFile).ok) {
      unreadableDecks += 1;
      return;
    }
    if (here === undefined) newDecks.push(inFile);
    else if (!isSameJson(here, inFile)) changedDecks.push({ here, inFile });
  });
  const putBack = learners.reduce(
    (sum, plan) => sum + plan.damaged.length + plan.damagedRuns.length,
    0,
  );
  return {
    learners,
    newDecks,
    changedDecks,
    ofClass,
    leftInFile:
      contents.damaged.length - putBack + unreadableDecks + ofClass.leftInFile,
  };
}
