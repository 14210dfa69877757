/**
 * The rounds a learner is in: the one on the desk, and those put aside for it
 * when a single case or a shelf was to be practised first.
 */
import type { LocalDay } from "../../../core/memory/review";
import { canResume, type Round } from "../../../core/memory/round";
import { parseRound } from "../../../core/memory/round-schema";
import { ok, type Result } from "../../../core/result";
import type { TurnwiseDatabase } from "../../storage/database";
import {
  openRoundsOf,
  removeRound,
  type RoundRow,
  saveRound,
} from "../../storage/rounds";
import type { StorageError } from "../../storage/storage-error";
import { type Desk, formatDesk, parseDesk } from "./desk-schema";
import { isBesideToday, type Practised } from "./practised";

/** A stored round that can go on. */
export interface OpenRound {
  readonly row: RoundRow;
  readonly round: Round;
  readonly desk: Desk;
}

/** The rounds that can go on, the last saved first; those that no longer can are removed. */
export async function roundsThatGoOn(
  database: TurnwiseDatabase,
  learner: string,
  today: LocalDay,
  now: number,
): Promise<Result<readonly OpenRound[], StorageError>> {
  const read = await openRoundsOf(database, learner);
  if (!read.ok) return read;
  const open: OpenRound[] = [];
  for (const row of read.value.rows) {
    const parsed = parseRound(row.round);
    // A round that cannot be read stays for a program that can.
    if (!parsed.ok) continue;
    const round = parsed.value;
    if (canResume(round, today, now))
      open.push({ row, round, desk: parseDesk(row.desk) });
    else {
      const removed = await removeRound(database, row.id);
      if (!removed.ok) return removed;
    }
  }
  return ok(open);
}

/**
 * The round begun for what is asked; where nothing is asked, else the last one
 * under way of chosen cases. Weak spots and telling apart wait for whoever asks
 * for them again: in the way of what today brings, they would be got past only
 * by skipping each question.
 */
export function roundToTakeUp(
  open: readonly OpenRound[],
  of: Practised | undefined,
): OpenRound | undefined {
  return (
    open.find(({ desk }) => desk.of === of) ??
    (of === undefined
      ? open.find(({ desk }) => !isBesideToday(desk.of))
      : undefined)
  );
}

/**
 * Puts every other round aside. What they know of the learner's cube is
 * forgotten: until they are taken up again it will have been turned.
 */
export async function putAside(
  database: TurnwiseDatabase,
  open: readonly OpenRound[],
  taken: OpenRound | undefined,
): Promise<Result<undefined, StorageError>> {
  for (const { row, desk } of open) {
    if (row === taken?.row || desk.ownCube === undefined) continue;
    const aside = { ...row, desk: formatDesk({ of: desk.of }) };
    const saved = await saveRound(database, aside);
    if (!saved.ok) return saved;
  }
  return ok(undefined);
}
