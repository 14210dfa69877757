/** Blocks that others shared, put together from the parts in which a backup has them. */
import { isSameJson } from "../same-json";
import type { BackupRow, HeardPart } from "./class-lines";

/** Puts blocks together. */
export interface HeardCollector {
  /** Answers in what was taken. */
  readonly answers: number;
  /** Takes a part, wherever in the file it stands, and says whether it agrees with what is there. The first counts. */
  take(part: HeardPart): boolean;
  /** The rows of the blocks that are whole, and how many are not. */
  finish(): {
    readonly blocks: ReadonlyMap<string, BackupRow>;
    readonly unfinished: number;
  };
}

interface Collected {
  readonly row: BackupRow;
  readonly parts: number;
  readonly lists: Map<number, readonly unknown[] | undefined>;
}

function whole({ row, parts, lists }: Collected): BackupRow | undefined {
  if (lists.size < parts) return undefined;
  const answers: unknown[] = [];
  let isList = true;
  for (let part = 0; part < parts; part += 1) {
    const list = lists.get(part);
    if (list === undefined) isList = false;
    else for (const answer of list) answers.push(answer);
  }
  return isList ? { ...row, answers } : row;
}

/** Begins to put blocks together. */
export function heardCollector(): HeardCollector {
  const collected = new Map<string, Collected>();
  let count = 0;
  return {
    get answers() {
      return count;
    },
    take({ row, part, parts, answers }) {
      const known = collected.get(row.id);
      const block = known ?? { row, parts, lists: new Map() };
      if (known === undefined) collected.set(row.id, block);
      else if (parts !== block.parts || !isSameJson(row, block.row))
        return false;
      if (block.lists.has(part))
        return isSameJson(block.lists.get(part), answers);
      block.lists.set(part, answers);
      count += answers?.length ?? 0;
      return true;
    },
    finish() {
      const blocks = new Map<string, BackupRow>();
      for (const [id, block] of collected) {
        const row = whole(block);
        if (row !== undefined) blocks.set(id, row);
      }
      return { blocks, unfinished: collected.size - blocks.size };
    },
  };
}
