/** The part of the Web Locks interface that we use. */
export type Locks = Pick<LockManager, "request">;

/** The browser's locks, or undefined where it has none. */
export function webLocks(): Locks | undefined {
  return "locks" in navigator ? navigator.locks : undefined;
}
