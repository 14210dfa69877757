/**
 * Writes a round as it goes on, one thing after the other: an older row never
 * overwrites a newer one, however soon the next thing happens.
 */
import { ok, type Result } from "../../../core/result";
import type { TurnwiseDatabase } from "../../storage/database";
import { type RoundRow, saveRound } from "../../storage/rounds";
import type { StorageError } from "../../storage/storage-error";

/** Keeps the writes of one round in order. */
export class RoundKeeper {
  #writing: Promise<unknown> = Promise.resolve();

  /** Resolves when everything so far is written. */
  async settled(): Promise<void> {
    await this.#writing;
  }

  /** Writes a round. Shape: `row` is how it stands when it is its turn to be written. */
  save(
    database: TurnwiseDatabase,
    row: () => RoundRow | undefined,
  ): Promise<Result<unknown, StorageError>> {
    return this.inTurn(async () => {
      const now = row();
      return now === undefined ? ok(undefined) : saveRound(database, now);
    });
  }

  /** Runs a write when those before it are done. */
  inTurn<T>(write: () => Promise<T>): Promise<T> {
    const writing = this.#writing.then(write);
    this.#writing = writing;
    return writing;
  }
}
