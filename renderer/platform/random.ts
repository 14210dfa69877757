/** Chance from the machine: seeds for core's generator, and ids. */

/** A fresh seed for `randomSource`. Units: an unsigned 32-bit integer. */
export function freshSeed(): number {
  const [seed] = crypto.getRandomValues(new Uint32Array(1));
  return seed ?? 0;
}

/** A random UUID: logs that hold such ids merge in any order as a union. */
export function freshId(): string {
  return crypto.randomUUID();
}
