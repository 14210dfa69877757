/** Blocks that others shared, cut into parts for a backup's lines. */
import { jsonOf } from "./backup-writer";
import type { BackupRow, HeardPart } from "./class-lines";

/** So much of a block goes into one part, one answer excepted that is larger. Units: UTF-16 code units. */
const PART = 200_000;

/** A block's row in parts, each to be a line; at least one. Shape: a row without a list of answers is one part. */
export function inParts(
  { answers, ...row }: BackupRow & { readonly id: string },
  most = PART,
): readonly HeardPart[] {
  if (!Array.isArray(answers)) return [{ row, part: 0, parts: 1 }];
  const lists: unknown[][] = [[]];
  let size = 0;
  for (const answer of answers as readonly unknown[]) {
    const more = jsonOf(answer)?.length ?? 0;
    if (size > 0 && size + more > most) {
      lists.push([]);
      size = 0;
    }
    lists[lists.length - 1]?.push(answer);
    size += more;
  }
  return lists.map((list, part) => ({
    row,
    part,
    parts: lists.length,
    answers: list,
  }));
}
