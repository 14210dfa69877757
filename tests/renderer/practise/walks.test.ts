import { describe, expect, it } from "vitest";
import { isSameState, SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import type { Turn } from "../../../core/cube/turns";
import {
  cubeAtStation,
  goToStation,
  nextTurn,
  playOn,
  replayOf,
  togglePlaying,
} from "../../../renderer/state/practise/replay";
import {
  beginWalk,
  cubeOfWalk,
  turnAskedFor,
  walkBack,
  walkOn,
} from "../../../renderer/state/practise/turn-walk";

const START = { cubies: SOLVED, hold: NO_ROTATION };
const TURNS: readonly Turn[] = [
  { layer: "R", quarters: 1 },
  { layer: "U", quarters: 3 },
  { layer: "F", quarters: 2 },
];

describe("a replay", () => {
  it("shows at each station the cube after that many turns", () => {
    const replay = replayOf(START, TURNS);
    for (let n = 0; n <= TURNS.length; n++) {
      const seen = cubeAtStation(goToStation(replay, n)).cubies;
      const played = applyTurns(START, TURNS.slice(0, n)).cubies;
      expect(isSameState(seen, played)).toBe(true);
    }
  });

  it("plays to its end and stops there", () => {
    let replay = togglePlaying(replayOf(START, TURNS));
    const met: (string | undefined)[] = [];
    for (let n = 0; n < 5 && replay.playing; n++) {
      met.push(nextTurn(replay)?.layer);
      replay = playOn(replay);
    }
    expect(met).toEqual(["R", "U", "F"]);
    expect(replay).toMatchObject({ station: 3, playing: false });
  });

  it("begins again when it is played from its end", () => {
    const atEnd = goToStation(replayOf(START, TURNS), 3);
    expect(togglePlaying(atEnd)).toMatchObject({ station: 0, playing: true });
  });

  it("stops where the learner steps, and never leaves its stations", () => {
    const playing = togglePlaying(replayOf(START, TURNS));
    expect(goToStation(playing, 1)).toMatchObject({
      station: 1,
      playing: false,
    });
    expect(goToStation(playing, -1).station).toBe(0);
    expect(goToStation(playing, 9).station).toBe(3);
  });
});

describe("a walk of turns on the learner's cube", () => {
  it("asks for each turn in order and then for none", () => {
    let walk = beginWalk(START, TURNS);
    const asked: (string | undefined)[] = [];
    for (let n = 0; n <= TURNS.length; n++) {
      asked.push(turnAskedFor(walk)?.layer);
      walk = walkOn(walk);
    }
    expect(asked).toEqual(["R", "U", "F", undefined]);
  });

  it("shows the cube before the turn that is asked for", () => {
    const walk = walkOn(beginWalk(START, TURNS));
    const expected = applyTurns(START, TURNS.slice(0, 1)).cubies;
    expect(isSameState(cubeOfWalk(walk).cubies, expected)).toBe(true);
  });

  it("goes one turn back, and not before its beginning", () => {
    const walk = walkOn(beginWalk(START, TURNS));
    expect(walkBack(walk).done).toBe(0);
    expect(walkBack(walkBack(walk)).done).toBe(0);
  });
});
