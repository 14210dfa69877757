/** The last answers of one of the class to a case, read when they are asked for. */
import type { AskedCase } from "../../../core/progress/answer-log";
import { type GradedReview, gradeLog } from "../../../core/memory/grader";
import { ok, type Result } from "../../../core/result";
import type { TurnwiseDatabase } from "../../storage/database";
import type { StorageError } from "../../storage/storage-error";
import { type ClassAnswer, type Enrolled, readClassLog } from "./class-log";

/** How many answers are shown. */
const SHOWN = 12;

/** The answers, the newest first, or why they could not be read. */
export type CellAnswersRead = Result<
  readonly GradedReview<ClassAnswer>[],
  StorageError
>;

/** The last answers to a case. All of the log is graded: what one is worth depends on those before it. */
export async function readCellAnswers(
  database: TurnwiseDatabase,
  one: Pick<Enrolled, "id" | "isHere">,
  { case: id, hold }: AskedCase,
): Promise<CellAnswersRead> {
  const log = await readClassLog(database, one);
  if (!log.ok) return log;
  const answers = gradeLog(log.value).filter(
    ({ review }) =>
      review.case === id && review.hold === hold && review.asking !== "shown",
  );
  return ok(answers.slice(-SHOWN).toReversed());
}
