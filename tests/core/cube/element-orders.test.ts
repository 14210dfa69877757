import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cubiesFrom,
  isSameState,
  order,
  SOLVED,
} from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { validateCubies } from "../../../core/cube/validity";
import {
  ELEMENT_ORDERS,
  SEQUENCE_ORDERS,
} from "../../reference/published-values";
import { turnsOf } from "../notation/turns-of";
import { arbitraryCubies, START } from "./arbitrary-cubes";

/** One cycle of pieces; after going round once its pieces are turned by `turned`. */
interface Cycle {
  readonly length: number;
  readonly turned: number;
}

/** Every way to part `n` pieces into cycles whose turnings sum to 0. */
function cycleTypes(n: number, modulus: 2 | 3): readonly (readonly Cycle[])[] {
  const found: Cycle[][] = [];
  const extend = (type: readonly Cycle[], left: number) => {
    if (left === 0) {
      const sum = type.reduce((total, cycle) => total + cycle.turned, 0);
      if (sum % modulus === 0) found.push([...type]);
      return;
    }
    // Never a greater cycle than the one before: each type comes once.
    const last = type.at(-1) ?? { length: n, turned: modulus - 1 };
    for (let length = 1; length <= Math.min(left, last.length); length++)
      for (let turned = 0; turned < modulus; turned++)
        if (length < last.length || turned <= last.turned)
          extend([...type, { length, turned }], left - length);
  };
  extend([], n);
  return found;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

function lcm(a: number, b: number): number {
  return (a / gcd(a, b)) * b;
}

/** A twisted cycle must go round `modulus` times before nothing is left of it. */
function typeOrder(type: readonly Cycle[], modulus: 2 | 3): number {
  return type.reduce(
    (n, { length, turned }) => lcm(n, turned === 0 ? length : length * modulus),
    1,
  );
}

function isOddType(type: readonly Cycle[]): boolean {
  return type.filter(({ length }) => length % 2 === 0).length % 2 === 1;
}

/** Pieces and turnings of some state with these cycles. */
function arrangement(type: readonly Cycle[]): readonly [number[], number[]] {
  const permutation: number[] = [];
  const turned: number[] = [];
  for (const cycle of type) {
    const first = permutation.length;
    for (let i = 0; i < cycle.length; i++) {
      permutation.push(first + ((i + 1) % cycle.length));
      turned.push(i === 0 ? cycle.turned : 0);
    }
  }
  return [permutation, turned];
}

/** For each order that occurs, cycles that have it. */
const EXAMPLES = (() => {
  const examples = new Map<
    number,
    readonly [readonly Cycle[], readonly Cycle[]]
  >();
  const edgeTypes = cycleTypes(12, 2);
  for (const corners of cycleTypes(8, 3))
    for (const edges of edgeTypes) {
      // A reachable state is even as a whole.
      if (isOddType(corners) !== isOddType(edges)) continue;
      const n = lcm(typeOrder(corners, 3), typeOrder(edges, 2));
      if (!examples.has(n)) examples.set(n, [corners, edges]);
    }
  return examples;
})();

describe("orders of elements", () => {
  it("are 73 different ones, the greatest 1260, over all types of cycles (OEIS A338883)", () => {
    expect(EXAMPLES.size).toBe(ELEMENT_ORDERS.different);
    expect(Math.max(...EXAMPLES.keys())).toBe(ELEMENT_ORDERS.greatest);
  });

  it("each of them is the order of a state that can be reached", () => {
    for (const [n, [corners, edges]] of EXAMPLES) {
      const state = cubiesFrom(...arrangement(corners), ...arrangement(edges));
      expect(validateCubies(state)).toEqual({ ok: true, value: state });
      expect(order(state)).toBe(n);
    }
  });

  it("of random states are among them", () => {
    fc.assert(
      fc.property(arbitraryCubies, (state) => {
        expect([...EXAMPLES.keys()]).toContain(order(state));
      }),
    );
  });

  it.each(SEQUENCE_ORDERS)("%s has order %i", (moves, n) => {
    const turns = turnsOf(moves);
    const once = applyTurns(START, turns);
    // A slice moves the centres along; the sequence's order counts them too.
    let cube = once;
    let times = 1;
    while (!isSameState(cube.cubies, SOLVED) || cube.hold !== START.hold) {
      cube = applyTurns(cube, turns);
      times++;
    }
    expect(times).toBe(n);
    if (once.hold === START.hold) expect(order(once.cubies)).toBe(n);
  });
});
