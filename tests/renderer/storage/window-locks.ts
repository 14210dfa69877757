/**
 * Web Locks for tests: node has none before version 24. Several "windows"
 * share one manager, as windows of one browser do.
 *
 * Source: the Web Locks API, W3C: one exclusive holder a name, the others in
 *         the order of asking, `ifAvailable` answered with null at once.
 */
import type { Locks } from "../../../renderer/platform/web-locks";

/** A manager of locks with nothing locked. */
export function windowLocks(): Locks & { readonly log: readonly string[] } {
  const held = new Map<string, Promise<unknown>>();
  const log: string[] = [];
  const run = (
    name: string,
    callback: (lock: Lock | null) => unknown,
    mode: LockMode,
  ) => {
    log.push(`${mode} ${name}`);
    const result = Promise.resolve(callback({ name, mode }));
    const settled = result.then(
      () => undefined,
      () => undefined,
    );
    const done = settled.then(() => {
      if (held.get(name) === done) held.delete(name);
    });
    held.set(name, done);
    return result;
  };
  const request = async (
    name: string,
    ...rest:
      | [callback: (lock: Lock | null) => unknown]
      | [options: LockOptions, callback: (lock: Lock | null) => unknown]
  ): Promise<unknown> => {
    const options = rest.length === 1 ? {} : rest[0];
    const callback = rest.length === 1 ? rest[0] : rest[1];
    const mode = options.mode ?? "exclusive";
    if (options.ifAvailable === true && held.has(name)) return callback(null);
    for (let held_ = held.get(name); held_; held_ = held.get(name)) await held_;
    return run(name, callback, mode);
  };
  return { request, log };
}
