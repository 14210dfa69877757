/**
 * How easy a sequence is to turn: the least that it costs the two hands of
 * `hands.ts`, over all ways to hold the cube at first, to make each turn and to
 * take hold anew in between.
 *
 * Found by dynamic programming: the costs of being in each of the 18 grips
 * after a turn follow from those before it. (Folding these eighteen numbers
 * into the numbered states of a machine was tried: there are more than 300,000
 * of them.)
 */
import type { Turn } from "../cube/turns";
import {
  CHANGE_COST,
  type Grip,
  GRIPS,
  handTurns,
  REGRIP_COST,
  WRISTS,
} from "./hands";
import {
  EVERY_TURN,
  type GrowingCost,
  indexOfTurn,
  type TurnCosts,
} from "./turn-costs";

/** How many parts of the hands' costs make one easy quarter turn. */
export const EASE_PARTS = 5;

/** Stands for a grip that cannot be. */
const NEVER = 1 << 20;

const COUNT = GRIPS.length;

const GRIP_INDEX: ReadonlyMap<string, number> = new Map(
  GRIPS.map((grip, i) => [nameOf(grip), i]),
);

function nameOf({ right, left, turning }: Grip): string {
  return `${right} ${left} ${turning}`;
}

function indexOfGrip(grip: Grip): number {
  return GRIP_INDEX.get(nameOf(grip))!;
}

/**
 * The changes of grip between turns: the right hand takes hold anew, the left
 * one does, the hands change parts.
 *
 * Shape: `grips` are indices into `GRIPS`, in groups of `size` between whose
 *        members one change leads.
 */
export const GRIP_CHANGES: readonly {
  readonly grips: Uint8Array;
  readonly size: number;
  readonly cost: number;
}[] = [
  {
    grips: grouped((grip) =>
      WRISTS.map((wrist) => ({ ...grip, right: wrist })),
    ),
    size: WRISTS.length,
    cost: REGRIP_COST,
  },
  {
    grips: grouped((grip) => WRISTS.map((wrist) => ({ ...grip, left: wrist }))),
    size: WRISTS.length,
    cost: REGRIP_COST,
  },
  {
    grips: grouped((grip) =>
      (["right", "left"] as const).map((turning) => ({ ...grip, turning })),
    ),
    size: 2,
    cost: CHANGE_COST,
  },
];

function grouped(group: (grip: Grip) => readonly Grip[]): Uint8Array {
  const groups = GRIPS.map((grip) => group(grip).map(indexOfGrip));
  return Uint8Array.from(
    groups.filter((members, i) => Math.min(...members) === i).flat(),
  );
}

/** What is made of a turn: from a grip, to a grip, at a cost. Shape: three numbers each. */
type Made = Uint8Array;

function madeOf(turn: Turn, isBackwards: boolean): Made {
  return Uint8Array.from(
    GRIPS.flatMap((grip, before) =>
      handTurns(grip, turn).flatMap(({ grip: reached, cost }) => {
        const after = indexOfGrip(reached);
        return isBackwards ? [after, before, cost] : [before, after, cost];
      }),
    ),
  );
}

function growingCost(made: readonly Made[], mostTurns: number): GrowingCost {
  const costs = new Int32Array((mostTurns + 1) * COUNT);

  const settle = (from: number): void => {
    for (const { grips, size, cost } of GRIP_CHANGES) {
      for (let group = 0; group < COUNT; group += size) {
        let least = NEVER;
        for (let i = group; i < group + size; i++)
          least = Math.min(least, costs[from + grips[i]!]!);
        least += cost;
        for (let i = group; i < group + size; i++) {
          const at = from + grips[i]!;
          if (costs[at]! > least) costs[at] = least;
        }
      }
    }
  };

  return {
    costWith(depth, turn) {
      const from = depth * COUNT;
      const list = made[turn]!;
      let least = NEVER;
      for (let i = 0; i < list.length; i += 3) {
        const cost = costs[from + list[i]!]! + list[i + 2]!;
        if (cost < least) least = cost;
      }
      return least;
    },
    grow(depth, turn) {
      const from = depth * COUNT;
      const to = from + COUNT;
      const list = made[turn]!;
      costs.fill(NEVER, to, to + COUNT);
      for (let i = 0; i < list.length; i += 3) {
        const cost = costs[from + list[i]!]! + list[i + 2]!;
        const at = to + list[i + 1]!;
        if (cost < costs[at]!) costs[at] = cost;
      }
      settle(to);
    },
  };
}

/**
 * What hands can make of every turn without changing their grip first.
 *
 * Shape: for each turn grip before, grip after and cost in a row, again and again.
 */
export const HANDS_MAKE: readonly Made[] = EVERY_TURN.map((turn) =>
  madeOf(turn, false),
);

const HANDS_MAKE_BACKWARDS = EVERY_TURN.map((turn) => madeOf(turn, true));

/** What turns cost the hands. Units: fifths of an easy quarter turn. */
export const HAND_COSTS: TurnCosts = {
  forwards: (mostTurns) => growingCost(HANDS_MAKE, mostTurns),
  backwards: (mostTurns) => growingCost(HANDS_MAKE_BACKWARDS, mostTurns),
};

/** What a sequence costs the hands. Units: easy quarter turns; 0 for no turns. */
export function easeOf(turns: readonly Turn[]): number {
  const growing = HAND_COSTS.forwards(turns.length);
  let cost = 0;
  turns.map(indexOfTurn).forEach((turn, depth) => {
    cost = growing.costWith(depth, turn);
    growing.grow(depth, turn);
  });
  return cost / EASE_PARTS;
}
