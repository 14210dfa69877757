/**
 * Going through a sequence of turns step by step on the cube: stations with
 * one turn between each two.
 */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, type HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";

/** Shape: `station` is 0 (nothing turned) to `turns.length` (all turned). */
export interface Replay {
  readonly start: HeldCube<PartlyKnownCubies>;
  readonly turns: readonly Turn[];
  readonly station: number;
  readonly playing: boolean;
}

/** A replay standing at its beginning. */
export function replayOf(
  start: HeldCube<PartlyKnownCubies>,
  turns: readonly Turn[],
): Replay {
  return { start, turns, station: 0, playing: false };
}

/** The cube at a station. */
export function cubeAtStation(
  replay: Replay,
  station = replay.station,
): HeldCube<PartlyKnownCubies> {
  return applyTurns(replay.start, replay.turns.slice(0, station));
}

/** The turn that leads on from where the replay stands; undefined at the end. */
export function nextTurn(replay: Replay): Turn | undefined {
  return replay.turns[replay.station];
}

/** Goes to a station and stops there. */
export function goToStation(replay: Replay, station: number): Replay {
  const clamped = Math.max(0, Math.min(replay.turns.length, station));
  return { ...replay, station: clamped, playing: false };
}

/** Plays or stops; playing from the end begins again. */
export function togglePlaying(replay: Replay): Replay {
  if (replay.playing) return { ...replay, playing: false };
  const atEnd = replay.station === replay.turns.length;
  return { ...replay, station: atEnd ? 0 : replay.station, playing: true };
}

/** One turn further while playing; stops at the last station. */
export function playOn(replay: Replay): Replay {
  const station = Math.min(replay.turns.length, replay.station + 1);
  return { ...replay, station, playing: station < replay.turns.length };
}
