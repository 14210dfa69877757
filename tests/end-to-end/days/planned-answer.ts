/**
 * An answer as it is going to be given: which keys, how long before each, and
 * what the log should say of it afterwards. The expectation is made from what
 * the learner means to do, not with the code that measures answers.
 */
import { isAnswered } from "../../../core/answer/judge";
import type { CaseId } from "../../../core/cases/case-ids";
import { type Position, startOf } from "../../../core/cases/position";
import { applyTurn } from "../../../core/cube/held-cube";
import { isWholeCubeTurn, type Turn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import type { Hint } from "../../../core/memory/review";

/** The button that gives up. */
export const SHOW_ME = "Show me (a miss)";

/** A key, or a button pressed by one. */
export interface Press {
  readonly key: string;
  /** How long the learner waits before it. Units: milliseconds. */
  readonly wait: number;
  /** Whether it turns a layer for good: it neither searches nor lines up. */
  readonly commits?: boolean;
  /** Whether it turns a layer at all. */
  readonly turns?: boolean;
}

/** What the log should say. Units: milliseconds, as planned: a case is on the screen up to a frame longer. */
export interface ExpectedAnswer {
  readonly verdict: "right" | "missed";
  readonly hints: readonly Hint[];
  readonly corrections: number;
  readonly slips: number;
  /** Absent where no turn commits. */
  readonly thinking?: number;
  readonly turning?: number;
  readonly total: number;
}

/** What a learner does, told apart for the tally of a test. */
export const DOINGS = [
  "told",
  "helped",
  "recalled",
  "mistaken",
  "wrong turn",
  "given up",
  "left",
] as const;

/** An answer that is going to be given. */
export interface PlannedAnswer {
  readonly doing: (typeof DOINGS)[number];
  readonly presses: readonly Press[];
  readonly expected: ExpectedAnswer;
  /** The case that the learner took it for. */
  readonly takenFor?: CaseId;
}

function keysOf({ layer, quarters }: Turn): readonly string[] {
  const letter = layer.charAt(0).toLowerCase();
  const one = quarters === 3 ? `Shift+${letter.toUpperCase()}` : letter;
  const wide = layer.endsWith("w") ? ["w", one] : [one];
  return quarters === 2 ? [...wide, ...wide] : wide;
}

/** Whether a turn only moves the layer that is free in the case's stage, as the learner sees it. */
function isLiningUp({ layer }: Turn, { hold }: Position): boolean {
  return layer === (hold === "up" ? "D" : "U");
}

/** Turns as keys. */
export interface TurnPresses {
  readonly presses: readonly Press[];
  /** Whether the last of them answers the case. */
  readonly answers: boolean;
}

/** How soon the second half of a half turn follows the first. Units: milliseconds. */
const HALF_TURN = 120;

/**
 * The keys of turns, one after the other, up to the one that answers the case.
 *
 * Units: milliseconds before the `first` key, and before `each` further turn.
 */
export function pressesOf(
  position: Position,
  turns: readonly Turn[],
  first: number,
  each: number,
): TurnPresses {
  let cube = startOf(position);
  let hasCommitted = false;
  const presses: Press[] = [];
  for (const turn of turns) {
    const isSearching: boolean =
      isWholeCubeTurn(turn) || (!hasCommitted && isLiningUp(turn, position));
    hasCommitted ||= !isSearching;
    const half: Turn = turn.quarters === 2 ? { ...turn, quarters: 1 } : turn;
    for (const [i, key] of keysOf(turn).entries()) {
      const isPrefix = key === "w";
      presses.push({
        key,
        wait: presses.length === 0 ? first : i === 0 ? each : HALF_TURN,
        commits: !isPrefix && !isSearching,
        turns: !isPrefix && !isWholeCubeTurn(turn),
      });
      if (isPrefix) continue;
      cube = applyTurn(cube, half);
      if (isAnswered(position, cube)) return { presses, answers: true };
    }
  }
  return { presses, answers: false };
}

/** Enter for every turn that is told, up to the one that answers the case. Units: as above. */
export function pressesTold(
  position: Position,
  turns: readonly Turn[],
  first: number,
  each: number,
): readonly Press[] {
  let cube = startOf(position);
  const presses: Press[] = [];
  for (const turn of turns) {
    if (isAnswered(position, cube)) break;
    presses.push({
      key: "Enter",
      wait: presses.length === 0 ? first : each,
      commits: !isWholeCubeTurn(turn) && !isLiningUp(turn, position),
      turns: !isWholeCubeTurn(turn),
    });
    cube = applyTurn(cube, turn);
  }
  return presses;
}

const SIDES = ["F", "R", "L", "B"] as const;

/** A turn of a side that is wrong by itself. */
export function wrongTurn(position: Position): Turn {
  const wrong = SIDES.map((layer): Turn => ({ layer, quarters: 1 })).find(
    (turn) => !isAnswered(position, applyTurn(startOf(position), turn)),
  );
  return present(wrong, "no case is answered by every side");
}

/** A wrong turn made and taken back at the start. Units: milliseconds. */
export function madeAndTakenBack(
  position: Position,
  first: number,
  after: number,
): readonly Press[] {
  return [
    ...keysOf(wrongTurn(position)).map((key) => ({
      key,
      wait: first,
      commits: true,
      turns: true,
    })),
    { key: "Backspace", wait: after, turns: true },
  ];
}

/** What the log should say of the times. */
export function timesOf(
  presses: readonly Press[],
): Pick<ExpectedAnswer, "thinking" | "turning" | "total"> {
  let at = 0;
  let committed: number | undefined;
  let turned: number | undefined;
  for (const { wait, commits, turns } of presses) {
    at += wait;
    if (commits === true) committed ??= at;
    if (turns === true && committed !== undefined) turned = at;
  }
  return committed === undefined || turned === undefined
    ? { total: at }
    : { total: at, thinking: committed, turning: turned - committed };
}
