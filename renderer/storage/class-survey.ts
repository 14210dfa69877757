/**
 * What of a backup only a coach's machine has, written: sheets that were
 * printed, people who shared results, and the blocks that they shared, read
 * one at a time.
 *
 * Not carried: what this machine itself sent, since another shares nothing by
 * itself, and the rows of blocks that hold nothing any more: what was taken
 * back or deleted here is said by the people's rows and by the withdrawals.
 */
import type { BackupWriter } from "../../core/backup/backup-writer";
import { inParts } from "../../core/backup/in-parts";
import type { RawRow, TurnwiseDatabase } from "./database";

/** The rows and keys that these lines are written from. */
export interface ClassSurvey {
  readonly sheets: readonly RawRow[];
  readonly classmates: readonly RawRow[];
  /** Of blocks, by their ids. */
  readonly blocks: readonly string[];
  /** Blocks that the file has no room for, the oldest. */
  readonly leftOut: number;
}

/** Surveys it. Shape: `room` answers may be in the blocks. Call it inside a transaction over the three tables. */
export async function surveyClass(
  { sheets, classmates, heard }: TurnwiseDatabase,
  room: number,
): Promise<ClassSurvey> {
  const withdrawals: string[] = [];
  const blocks: { id: string; madeAt: number; size: number }[] = [];
  await heard.each(({ kind, madeAt, answers }, { primaryKey: id }) => {
    if (kind === "withdrawn") withdrawals.push(id);
    else if (kind !== "sent" && kind !== "emptied")
      blocks.push({
        id,
        madeAt: typeof madeAt === "number" ? madeAt : 0,
        // None is free: it takes a line.
        size: Array.isArray(answers) ? Math.max(1, answers.length) : 1,
      });
  });
  blocks.sort((a, b) => b.madeAt - a.madeAt);
  let left = room;
  const carried = blocks.filter(({ size }) => (left -= size) >= 0);
  return {
    sheets: await sheets.toArray(),
    classmates: await classmates.toArray(),
    blocks: [...withdrawals, ...carried.map(({ id }) => id)],
    leftOut: blocks.length - carried.length,
  };
}

/** Their lines. A block that was emptied since the survey is not carried. */
export async function* classLines(
  { heard }: TurnwiseDatabase,
  writer: BackupWriter,
  survey: ClassSurvey,
): AsyncGenerator<string> {
  for (const content of survey.sheets) {
    const key = String(content["code"]);
    yield writer.row({ kind: "sheet", content, table: "sheets", key });
  }
  for (const content of survey.classmates) {
    const key = String(content["id"]);
    yield writer.row({ kind: "classmate", content, table: "classmates", key });
  }
  for (const id of survey.blocks) {
    const row = await heard.get(id);
    if (row === undefined || row["kind"] === "emptied") continue;
    for (const content of inParts({ ...row, id }))
      yield writer.row({ kind: "heard", content, table: "heard", key: id });
  }
}
