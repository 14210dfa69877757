/** The lock that keeps a learner's desk to one window. */
import { ok, type Result } from "../../../core/result";
import { now } from "../../platform/clock";
import { type PracticeLock, takePracticeLock } from "../../storage/locks";
import type { StorageError } from "../../storage/storage-error";
import type { LearnerState } from "../learner.svelte";

/** This window's own lock on its way out: leaving the place and coming back must not find it taken. */
let releasing: Promise<void> = Promise.resolve();

/** The lock as one visit to the place holds it. */
export class DeskLock {
  #release: (() => void) | undefined;

  /** Whether the desk is this window's. */
  get isHeld(): boolean {
    return this.#release !== undefined;
  }

  /** Takes the desk, where no other window has it. */
  async take({
    database,
    learner,
  }: LearnerState): Promise<Result<PracticeLock, StorageError>> {
    await releasing;
    const lock = await takePracticeLock(database, learner.id, now());
    if (!lock.ok || !lock.value.held) return lock;
    const { release } = lock.value;
    this.#release = () => {
      releasing = release();
    };
    return ok(lock.value);
  }

  /** Another window may have the desk. */
  release(): void {
    this.#release?.();
    this.#release = undefined;
  }
}
