/**
 * An answer given by turning a cube on the screen, as it grows: where it
 * began, the turns that stand, and everything that happened with its time.
 *
 * It knows turns, never what is right: judging is core's.
 */
import type { AnswerEvent } from "../../../core/answer/measure";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurn, type HeldCube } from "../../../core/cube/held-cube";
import { inverseTurn, type Turn } from "../../../core/cube/turns";

/** Shape: `line` applied to `start` is `cube`; `events` are in order of time. */
export interface TurnedAnswer {
  readonly start: HeldCube<PartlyKnownCubies>;
  readonly cube: HeldCube<PartlyKnownCubies>;
  /** The turns that stand, those taken back left out. */
  readonly line: readonly Turn[];
  readonly events: readonly AnswerEvent[];
}

/** What an action did: the answer after it, and the turn to show, if any. */
export interface TurnedStep {
  readonly answer: TurnedAnswer;
  readonly shown: Turn | undefined;
}

/** An answer with nothing turned yet. */
export function beginTurning(start: HeldCube<PartlyKnownCubies>): TurnedAnswer {
  return { start, cube: start, line: [], events: [] };
}

/** Makes a turn. Units: `at` in milliseconds since the case was shown. */
export function makeTurn(
  answer: TurnedAnswer,
  turn: Turn,
  at: number,
): TurnedStep {
  return {
    answer: {
      ...answer,
      cube: applyTurn(answer.cube, turn),
      line: [...answer.line, turn],
      events: [...answer.events, { kind: "turn", turn, at }],
    },
    shown: turn,
  };
}

/** Takes the last standing turn back; nothing happens where there is none. */
export function takeTurnBack(answer: TurnedAnswer, at: number): TurnedStep {
  const last = answer.line.at(-1);
  if (last === undefined) return { answer, shown: undefined };
  const shown = inverseTurn(last);
  return {
    answer: {
      ...answer,
      cube: applyTurn(answer.cube, shown),
      line: answer.line.slice(0, -1),
      events: [...answer.events, { kind: "take-back", at }],
    },
    shown,
  };
}

/** Puts the cube back to the position as it was shown. */
export function startOver(answer: TurnedAnswer, at: number): TurnedAnswer {
  if (answer.line.length === 0) return answer;
  return {
    ...answer,
    cube: answer.start,
    line: [],
    events: [...answer.events, { kind: "restart", at }],
  };
}

/** Notes something that happened and moved no piece: a look, a hint. */
export function note(answer: TurnedAnswer, event: AnswerEvent): TurnedAnswer {
  return { ...answer, events: [...answer.events, event] };
}
