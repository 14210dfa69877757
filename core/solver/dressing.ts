/**
 * A sequence of face turns made fit for a learner's hands: how the cube is
 * held at the start and at the end is given, and in between it is turned
 * about so that no turn has to be made behind it.
 *
 * The cheapest of all ways to mix in turns about the upright axis, found from
 * the end backwards over (turns left, how the cube is held and was turned): 16 states a turn.
 */
import { FREE_LAYER } from "../cases/stage";
import { FACES } from "../cube/faces";
import { bodyFace } from "../cube/held-cube";
import { type Rotation, rotationAbout, thenSymmetry } from "../cube/symmetries";
import type { Quarters, Turn } from "../cube/turns";
import { wholeCubeTurnsBetween } from "../cube/whole-cube-turns";
import { invariant, present } from "../invariant";
import {
  type FaceTurnSequence,
  faceOfTurn,
  turnSeen,
} from "./face-turn-sequence";

/** The turns as the learner makes them, and how much trouble they are. */
export interface DressedSequence {
  readonly turns: readonly Turn[];
  /** Units: a quarter turn of the right side is 1. */
  readonly trouble: number;
}

/** What a set-up asks of the hands; common practice for beginners. */
const TROUBLE = {
  turn: 1,
  /** On top of the turn. */
  halfTurn: 0.3,
  /** On top of the turn: the back is out of sight and its direction confuses. */
  behind: 2.5,
  wholeCube: 0.7,
  wholeCubeHalf: 0.9,
  /** On top: at the very start or end it hides nothing, it only holds the cube anew. */
  wholeCubeOutside: 0.4,
  /** On top: only turns of the top and the bottom since the last one, which it changes nothing about. */
  wholeCubeIdle: 5,
  /** On top: a single turn since the last one, which could have been made without both. */
  wholeCubeBrief: 1.6,
  /** Added once where no turn of the free layer is mixed in, which hides most. */
  noFreeLayer: 4,
} as const;

const QUARTERS = [0, 1, 2, 3] as const;

/**
 * Dresses a sequence.
 *
 * Shape: `mustTurnWhole` asks for at least one turn of the whole cube; it
 *        needs at least one face turn.
 */
export function dressed(
  sequence: FaceTurnSequence,
  from: Rotation,
  to: Rotation,
  mustTurnWhole: boolean,
): DressedSequence {
  const lead = turnsThatBringUp(from, to);
  const upright = lead.reduce(
    (hold, { layer, quarters }) =>
      thenSymmetry(
        hold,
        rotationAbout(layer === "x" || layer === "z" ? layer : "y", quarters),
      ),
    from,
  );
  const holds = QUARTERS.map((quarters) =>
    thenSymmetry(upright, rotationAbout("y", quarters)),
  );
  const end = holds.indexOf(to);
  invariant(end >= 0, "turns about the upright axis reach the wanted hold");
  const plan = cheapestPlan(sequence, holds, end, mustTurnWhole);

  const turns: Turn[] = [...lead];
  let held = 0;
  for (let i = 0; i <= sequence.length; i++) {
    const next = present(plan.holds[i], "the plan covers every turn");
    if (next !== held) {
      const quarters = ((next - held + 4) % 4) as Quarters;
      turns.push({ layer: "y", quarters });
    }
    held = next;
    const turn = sequence[i];
    const hold = present(holds[held], "there are four holds");
    if (turn !== undefined) turns.push(turnSeen(hold, turn));
  }
  const hasFree = sequence.some(
    (turn) => FACES[faceOfTurn(turn)] === FREE_LAYER,
  );
  const trouble = plan.trouble + (hasFree ? 0 : TROUBLE.noFreeLayer);
  return { turns, trouble };
}

/** The whole-cube turns, if any, that bring the right face up. */
function turnsThatBringUp(from: Rotation, to: Rotation): readonly Turn[] {
  const up = bodyFace(to, "U");
  if (bodyFace(from, "U") === up) return [];
  const ways = QUARTERS.map((quarters) =>
    wholeCubeTurnsBetween(from, thenSymmetry(to, rotationAbout("y", quarters))),
  );
  return present(
    ways.toSorted((a, b) => a.length - b.length)[0],
    "four ways are listed",
  );
}

interface Plan {
  /** How the cube is held (quarters about the upright axis) for each turn, and at the end. */
  readonly holds: readonly number[];
  readonly trouble: number;
}

/** The whole cube: never turned, turned with only upright turns since, with one other turn since, with more. */
const NOT_TURNED = 0;
const JUST_TURNED = 1;
const ONE_SINCE = 2;
const TURNED = 3;
const WHOLE_STATES = 4;

/** What each of them is after a turn of a layer that is not upright. */
const AFTER_TURN = [NOT_TURNED, ONE_SINCE, TURNED, TURNED] as const;

function cheapestPlan(
  sequence: FaceTurnSequence,
  holds: readonly Rotation[],
  end: number,
  mustTurnWhole: boolean,
): Plan {
  const n = sequence.length;
  // trouble[i][held + 4 × whole]: least trouble from turn i on.
  const trouble = Array.from({ length: n + 2 }, () =>
    new Float64Array(4 * WHOLE_STATES).fill(Infinity),
  );
  const choice = Array.from(
    { length: n + 1 },
    () => new Uint8Array(4 * WHOLE_STATES),
  );
  const goal = trouble[n + 1]!;
  goal[end + 4 * JUST_TURNED] = 0;
  goal[end + 4 * ONE_SINCE] = 0;
  goal[end + 4 * TURNED] = 0;
  if (!mustTurnWhole) goal[end + 4 * NOT_TURNED] = 0;
  const stateAfter = (i: number, state: number, next: number): number => {
    const before = Math.floor(state / 4);
    const turned = next === state % 4 ? before : JUST_TURNED;
    if (i === n || isUpright(sequence[i]!)) return next + 4 * turned;
    return next + 4 * AFTER_TURN[turned]!;
  };
  const isUpright = (turn: number) => {
    const { layer } = turnSeen(holds[0]!, turn);
    return layer === "U" || layer === "D";
  };
  for (let i = n; i >= 0; i--) {
    for (let state = 0; state < 4 * WHOLE_STATES; state++) {
      const held = state % 4;
      for (let next = 0; next < 4; next++) {
        const whole = troubleOfWhole(next - held, i === 0 || i === n);
        const since = next === held ? NOT_TURNED : Math.floor(state / 4);
        const seen = i < n ? troubleOfTurn(holds[next]!, sequence[i]!) : 0;
        const sum =
          whole +
          (since === JUST_TURNED ? TROUBLE.wholeCubeIdle : 0) +
          (since === ONE_SINCE ? TROUBLE.wholeCubeBrief : 0) +
          seen +
          trouble[i + 1]![stateAfter(i, state, next)]!;
        if (sum >= trouble[i]![state]!) continue;
        trouble[i]![state] = sum;
        choice[i]![state] = next;
      }
    }
  }
  const plan: number[] = [];
  let state = 0;
  for (let i = 0; i <= n; i++) {
    const next = choice[i]![state]!;
    state = stateAfter(i, state, next);
    plan.push(next);
  }
  return { holds: plan, trouble: trouble[0]![0]! };
}

function troubleOfWhole(quarters: number, isOutside: boolean): number {
  const rest = (quarters + 4) % 4;
  if (rest === 0) return 0;
  const turn = rest === 2 ? TROUBLE.wholeCubeHalf : TROUBLE.wholeCube;
  return isOutside ? turn + TROUBLE.wholeCubeOutside : turn;
}

function troubleOfTurn(hold: Rotation, turn: number): number {
  const { layer, quarters } = turnSeen(hold, turn);
  return (
    TROUBLE.turn +
    (quarters === 2 ? TROUBLE.halfTurn : 0) +
    (layer === "B" ? TROUBLE.behind : 0)
  );
}
