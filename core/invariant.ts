/**
 * States a fact that our own code guarantees.
 *
 * Errors: throws when the fact does not hold, which is a bug of ours; only the
 *         edges of the window, a worker or a process catch it. Outside input
 *         never comes here: it is parsed into a `Result`.
 */
export function invariant(fact: boolean, claim: string): asserts fact {
  if (!fact) throw new Error(`broken invariant: ${claim}`);
}

/** The value itself, where our own tables guarantee that there is one. */
export function present<T>(value: T | undefined, claim: string): T {
  invariant(value !== undefined, claim);
  return value;
}
