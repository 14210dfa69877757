/** Going through turns on the big cube, in motion or step by step. */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { CubeOnItsWay } from "./case-picture";
import {
  cubeAtStation,
  goToStation,
  nextTurn,
  playOn,
  type Replay,
  replayOf,
  togglePlaying,
} from "./replay";
import { TurnMotion } from "./turn-motion.svelte";

/** How long the cube rests between two turns while it plays. Units: milliseconds. */
const REST = 260;

/** A replay that moves. */
export class ReplayState {
  #replay: Replay;
  readonly motion: TurnMotion;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    start: HeldCube<PartlyKnownCubies>,
    turns: readonly Turn[],
    still: () => boolean,
  ) {
    this.#replay = $state.raw(replayOf(start, turns));
    this.motion = new TurnMotion(still);
  }

  get turns(): readonly Turn[] {
    return this.#replay.turns;
  }

  get playing(): boolean {
    return this.#replay.playing;
  }

  /** The station that is shown, or that a turn has just left. */
  get station(): number {
    return this.motion.running === undefined
      ? this.#replay.station
      : this.#replay.station - 1;
  }

  /** How far the turn under way has got. Units: 0–1. */
  get progress(): number {
    return this.motion.running?.progress ?? 0;
  }

  /** The cube as it is shown, before the turn under way. */
  get shown(): CubeOnItsWay {
    const { start, turns } = this.#replay;
    const station = this.station;
    return {
      start,
      line: turns.slice(0, station),
      cube: cubeAtStation(this.#replay, station),
    };
  }

  /** Goes through other turns, from their beginning. */
  take(turns: readonly Turn[]): void {
    this.stop();
    this.#replay = replayOf(this.#replay.start, turns);
  }

  /** Goes to a station; one step on is shown as motion. */
  go(station: number): void {
    this.stop();
    const isStepOn = station === this.#replay.station + 1;
    const before = this.shown;
    const turn = isStepOn ? nextTurn(this.#replay) : undefined;
    this.#replay = goToStation(this.#replay, station);
    if (turn !== undefined) this.motion.show(before, turn);
  }

  /** Plays, or stops playing. */
  toggle(): void {
    const wasPlaying = this.#replay.playing;
    this.stop();
    if (wasPlaying) return;
    this.#replay = togglePlaying(this.#replay);
    this.#step();
  }

  /** Ends whatever moves. */
  stop(): void {
    clearTimeout(this.#timer);
    this.motion.stop();
    if (this.#replay.playing)
      this.#replay = { ...this.#replay, playing: false };
  }

  #step(): void {
    const turn = nextTurn(this.#replay);
    if (!this.#replay.playing || turn === undefined) return;
    const before = this.shown;
    this.#replay = playOn(this.#replay);
    this.motion.show(before, turn, () => {
      this.#timer = setTimeout(() => this.#step(), REST);
    });
  }
}
