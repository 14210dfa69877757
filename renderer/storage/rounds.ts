/**
 * The round a learner is in, as it stood after the last thing that happened:
 * a reload, a crash and a closed window come back to the same position.
 *
 * A finished round is removed: what happened in it is in the log.
 */
import * as v from "valibot";
import { ok, type Result } from "../../core/result";
import type { TurnwiseDatabase } from "./database";
import type { DamagedRow } from "./damaged-row";
import { type StorageError, tryReading, tryWriting } from "./storage-error";

const ROUND_ROW_SCHEMA = v.object({
  id: v.pipe(v.string(), v.uuid()),
  learner: v.pipe(v.string(), v.minLength(1)),
  savedAt: v.pipe(v.number(), v.finite()),
  round: v.unknown(),
  desk: v.unknown(),
});

/** A stored round. Its two parts are parsed by those who own them. */
export interface RoundRow {
  readonly id: string;
  readonly learner: string;
  /** When it was last saved, UTC. Units: milliseconds. */
  readonly savedAt: number;
  /** The round itself, as `core/memory/round-schema` reads it. */
  readonly round: unknown;
  /** What lies on the desk: how it is answered, the position shown, the learner's cube. */
  readonly desk: unknown;
}

/** Stores a round as it stands. */
export function saveRound(
  database: TurnwiseDatabase,
  row: RoundRow,
): Promise<Result<string, StorageError>> {
  return tryWriting(() => database.rounds.put({ ...row }));
}

/** The rounds a learner is in, the last saved first; and what could not be read. */
export interface OpenRounds {
  readonly rows: readonly RoundRow[];
  readonly damaged: readonly DamagedRow[];
}

/** Finds the rounds a learner is in: the one on the desk, and those put aside for it. */
export async function openRoundsOf(
  database: TurnwiseDatabase,
  learner: string,
): Promise<Result<OpenRounds, StorageError>> {
  const read = await tryReading(() =>
    database.rounds.where("learner").equals(learner).toArray(),
  );
  if (!read.ok) return read;
  const rows: RoundRow[] = [];
  const damaged: DamagedRow[] = [];
  for (const raw of read.value) {
    const parsed = v.safeParse(ROUND_ROW_SCHEMA, raw);
    if (!parsed.success) {
      const field = v.getDotPath(parsed.issues[0]) ?? "";
      damaged.push({ table: "rounds", key: String(raw["id"]), field });
    } else {
      const { round, desk, ...rest } = parsed.output;
      rows.push({ ...rest, round, desk });
    }
  }
  return ok({ rows: rows.sort((a, b) => b.savedAt - a.savedAt), damaged });
}

/** Removes a round that is over. */
export function removeRound(
  database: TurnwiseDatabase,
  id: string,
): Promise<Result<void, StorageError>> {
  return tryWriting(() => database.rounds.delete(id));
}
