/**
 * One layer on its way on the screen. It only shows: the cube it leads to is
 * already the cube, so a turn never has to wait for another to end.
 */
import type { Turn } from "../../../core/cube/turns";
import type { Turning } from "../../../core/picture/slabs";
import type { CubeOnItsWay } from "./case-picture";

/** Units: milliseconds. */
const QUARTER_TURN = 220;
const HALF_TURN = 320;

interface Running extends Turning {
  readonly before: CubeOnItsWay;
}

function easeInOut(share: number): number {
  return share * share * (3 - 2 * share);
}

/** Shows turns as motion, or not at all. */
export class TurnMotion {
  #running: Running | undefined = $state.raw();
  #frame = 0;
  readonly #still: () => boolean;

  /** Shape: `still` says whether nothing should move just now. */
  constructor(still: () => boolean) {
    this.#still = still;
  }

  /** The turn under way and the cube before it. */
  get running(): Running | undefined {
    return this.#running;
  }

  /** Shows a turn; one that is still under way is cut to its end. `then` runs when it is over. */
  show(before: CubeOnItsWay, turn: Turn, then?: () => void): void {
    this.stop();
    if (this.#still()) {
      then?.();
      return;
    }
    const duration = turn.quarters === 2 ? HALF_TURN : QUARTER_TURN;
    let began: number | undefined;
    const draw = (time: number) => {
      began ??= time;
      const share = (time - began) / duration;
      if (share >= 1) {
        this.#running = undefined;
        then?.();
        return;
      }
      this.#running = { before, turn, progress: easeInOut(share) };
      this.#frame = requestAnimationFrame(draw);
    };
    this.#running = { before, turn, progress: 0 };
    this.#frame = requestAnimationFrame(draw);
  }

  /** Ends what is under way: the cube is seen as it is. */
  stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#running = undefined;
  }
}
