/** The search for a set-up that an attempt waits for: one at a time, and none once it is left. */
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { Result } from "../../../core/result";
import type { SolverError } from "../../workers/solver-client";
import type { SetUpFinder } from "./my-cube-stage";

/** Looks for set-ups, the newest only. */
export class SetUpSearch {
  readonly #find: SetUpFinder;
  #running = new AbortController();

  constructor(find: SetUpFinder) {
    this.#find = find;
  }

  /**
   * Looks for a set-up. Resolves with undefined where it was stopped meanwhile;
   * progress is then told no more either.
   */
  async run(
    from: HeldCube<PartlyKnownCubies>,
    to: Position,
    seed: number,
    onprogress: (progress: number) => void,
  ): Promise<Result<readonly Turn[], SolverError> | undefined> {
    this.stop();
    this.#running = new AbortController();
    const { signal } = this.#running;
    const found = await this.#find(from, to, seed, {
      signal,
      onprogress: (progress) => {
        if (!signal.aborted) onprogress(progress);
      },
    });
    return signal.aborted ? undefined : found;
  }

  /** Nothing is looked for any more. */
  stop(): void {
    this.#running.abort();
  }
}
